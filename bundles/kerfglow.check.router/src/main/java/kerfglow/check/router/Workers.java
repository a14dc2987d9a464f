// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.router;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.DoubleConsumer;
import java.util.function.Function;

/**
 * Measures parts on a few threads while the calling one reports progress, because a check may be cancelled at a checkpoint only,
 * and only from the thread that it was called on. Threads live no longer than the call.
 */
final class Workers {
    /** Progress is told this often (ms): fast enough for a bar, and for a cancelled run to end at once to the eye. */
    private static final int PATIENCE_MS = 20;
    /** More would starve what else the machine runs; parts are many and small. */
    private static final int MOST_THREADS = 4;

    private Workers() {
    }

    /** What a task may call to let itself be stopped. */
    interface Task<R> extends Function<Runnable, R> {
    }

    /**
     * Runs all tasks.
     *
     * @param progress told the fraction done, from the calling thread; may throw to stop everything
     * @return in the order of the tasks
     */
    static <R> List<R> run(List<Task<R>> tasks, DoubleConsumer progress) {
        int threads = Math.max(1, Math.min(MOST_THREADS, Math.min(tasks.size(), Runtime.getRuntime().availableProcessors())));
        AtomicBoolean stopped = new AtomicBoolean();
        Runnable pulse = () -> {
            if (stopped.get()) {
                throw new CancellationException();
            }
        };
        ExecutorService pool = Executors.newFixedThreadPool(threads, work -> {
            Thread thread = new Thread(work, "router check");
            thread.setDaemon(true);
            return thread;
        });
        try {
            List<Future<R>> futures = new ArrayList<>();
            tasks.forEach(task -> futures.add(pool.submit(() -> task.apply(pulse))));
            List<R> results = new ArrayList<>(tasks.size());
            for (Future<R> future : futures) {
                progress.accept((double) results.size() / tasks.size());
                results.add(result(future, () -> progress.accept((double) results.size() / tasks.size())));
            }
            progress.accept(1);
            return results;
        } finally {
            stopped.set(true);
            pool.shutdownNow();
        }
    }

    private static <R> R result(Future<R> future, Runnable waiting) {
        while (true) {
            try {
                return future.get(PATIENCE_MS, TimeUnit.MILLISECONDS);
            } catch (TimeoutException notYet) {
                waiting.run();
            } catch (InterruptedException interrupted) {
                Thread.currentThread().interrupt();
                throw new CancellationException("interrupted");
            } catch (ExecutionException failed) {
                if (failed.getCause() instanceof RuntimeException cause) {
                    throw cause;
                }
                if (failed.getCause() instanceof Error cause) {
                    throw cause;
                }
                throw new IllegalStateException(failed.getCause());
            }
        }
    }
}
