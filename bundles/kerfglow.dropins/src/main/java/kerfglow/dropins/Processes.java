// SPDX-License-Identifier: Apache-2.0
package kerfglow.dropins;

import java.io.IOException;
import kerfglow.host.HostSettings;
import org.osgi.framework.BundleContext;

/**
 * Where worker processes come from. While a folder is watched one is always ready, so that a bundle that is dropped in waits for no
 * process to start.
 */
final class Processes {
    private final BundleContext context;
    private boolean keepsSpare;
    private WorkerProcess spare;

    Processes(BundleContext context) {
        this.context = context;
    }

    /** Deletes what killed programs left behind. Not in the way of anything, so in a thread of its own. */
    static void clearAbandoned() {
        Thread clearing = new Thread(() -> {
            Worker.clearAbandoned();
            WorkerProcess.clearAbandoned();
        }, "clear temporary folders");
        clearing.setDaemon(true);
        clearing.start();
    }

    /** A process with as much heap that waits to be told its bundle. */
    WorkerProcess take(int heapMib) throws IOException {
        WorkerProcess taken;
        synchronized (this) {
            taken = spare;
            spare = null;
        }
        if (taken == null || !taken.isUsable() || taken.heapMib() != heapMib) {
            if (taken != null) {
                taken.kill();
            }
            taken = start(heapMib);
        }
        prepare();
        return taken;
    }

    private WorkerProcess start(int heapMib) throws IOException {
        return new WorkerProcess(Launch.ofThisProgram(context), heapMib);
    }

    /** From now on one is kept ready, or none any more. */
    void keepSpare(boolean value) throws IOException {
        synchronized (this) {
            keepsSpare = value;
        }
        prepare();
    }

    private synchronized void prepare() throws IOException {
        if (keepsSpare && (spare == null || !spare.isUsable())) {
            spare = start(HostSettings.WORKER_HEAP.defaultValue());
        } else if (!keepsSpare && spare != null) {
            spare.close();
            spare = null;
        }
    }
}
