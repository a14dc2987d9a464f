// SPDX-License-Identifier: Apache-2.0
package kerfglow.job;

import java.io.IOException;
import java.time.Duration;
import java.util.concurrent.ScheduledThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import kerfglow.host.SafeFile;

/**
 * Writes the newest state a fixed time after the first change that is not written yet, in a thread of its own. What cannot be written is tried again until
 * it can; that is told once, and once more when it works again.
 */
final class Autosave implements AutoCloseable {
    interface Writing {
        void write(JobState state) throws IOException;
    }

    private final ScheduledThreadPoolExecutor thread = new ScheduledThreadPoolExecutor(1, work -> {
        Thread thread = new Thread(work, "autosave");
        thread.setDaemon(true);
        return thread;
    });
    private final Duration delay;
    private final Writing writing;
    private final Consumer<String> onProblem;
    private final Object disk;
    private JobState waiting;
    private boolean failing;

    /** @param disk held while something is written, so that saving and autosave do not mix */
    Autosave(Duration delay, Object disk, Writing writing, Consumer<String> onProblem) {
        this.delay = delay;
        this.disk = disk;
        this.writing = writing;
        this.onProblem = onProblem;
    }

    synchronized void later(JobState state) {
        boolean first = waiting == null;
        waiting = state;
        if (first && !thread.isShutdown()) { // not put off by later changes, so that a person who never stops loses nothing either
            thread.schedule(this::write, delay.toMillis(), TimeUnit.MILLISECONDS);
        }
    }

    /** What waits is not written. */
    synchronized void forget() {
        waiting = null;
    }

    private synchronized JobState take() {
        JobState state = waiting;
        waiting = null;
        return state;
    }

    private void write() {
        synchronized (disk) { // taken inside, so that nothing older is written after a save
            JobState state = take();
            if (state == null) {
                return;
            }
            try {
                writing.write(state);
                if (failing) {
                    failing = false;
                    onProblem.accept("What was entered is kept again until the next start.");
                }
            } catch (IOException | RuntimeException failed) {
                again(state);
                if (!failing) {
                    failing = true;
                    onProblem.accept("What was entered cannot be kept until the next start (" + SafeFile.reason(failed) + "); make room, or save it elsewhere. It is tried again until it can be kept.");
                }
            }
        }
    }

    private synchronized void again(JobState failed) {
        if (waiting == null && !thread.isShutdown()) {
            later(failed);
        }
    }

    /** Writes what waits, then ends. */
    @Override
    public void close() {
        thread.setExecuteExistingDelayedTasksAfterShutdownPolicy(false);
        thread.shutdown(); // not shutdownNow: an interrupt would end a write half way
        write();
    }
}
