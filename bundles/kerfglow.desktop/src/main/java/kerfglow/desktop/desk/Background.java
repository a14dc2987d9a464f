// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.desk;

import java.util.concurrent.Executor;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;

/** One thread for small work that must not hold up the window: close-ups, dimensions. Ends with the program. */
public final class Background implements Executor {
    private final ExecutorService thread = Executors.newSingleThreadExecutor(work -> {
        Thread made = new Thread(work, "background of the window");
        made.setDaemon(true);
        return made;
    });

    @Override
    public void execute(Runnable work) {
        thread.execute(work);
    }
}
