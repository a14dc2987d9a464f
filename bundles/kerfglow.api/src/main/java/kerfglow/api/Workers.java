// SPDX-License-Identifier: Apache-2.0
package kerfglow.api;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.function.Function;

/**
 * Measures many things on a few threads while the thread that a check was called on reports progress, because a run may be
 * cancelled at a checkpoint only, and only from that thread. For use in one call of {@link Check#inspect}, by the thread of that
 * call. Threads live no longer than {@link #map}.
 */
public final class Workers {
    /** Progress is told this often (ms): fast enough for a bar, and for a cancelled run to end at once to the eye. */
    private static final int PATIENCE_MS = 20;
    /** More would starve what else the machine runs; parts are many and small. */
    private static final int MOST_THREADS = 4;

    private final Inspection inspection;
    private final Thread caller = Thread.currentThread();
    private volatile boolean stopped;
    private int expected = 1;
    private int done;

    /** Workers for the call that has this inspection; to be made by the thread of that call. */
    public Workers(Inspection inspection) {
        this.inspection = inspection;
    }

    /** Says how many items all calls of {@link #map} together will have, so that progress runs from 0 to 1 once. */
    public void expect(int items) {
        expected = Math.max(1, items);
    }

    /**
     * To be called often, many times a second, by whatever works for this check, on any thread.
     *
     * @throws CancellationException when the run is over; let it pass
     */
    public void pulse() {
        if (stopped) {
            throw new CancellationException();
        }
        if (Thread.currentThread() == caller) {
            inspection.checkpoint(Math.min(1, (double) done / expected));
        }
    }

    /**
     * Measures every item.
     *
     * @param items what is measured; a single one is measured on the calling thread
     * @param work measures one item, on any thread; calls {@link #pulse} often
     * @return in the order of the items
     * @throws CancellationException when the run is over
     */
    public <T, R> List<R> map(List<T> items, Function<? super T, ? extends R> work) {
        pulse();
        List<R> results = new ArrayList<>(items.size());
        int threads = Math.min(MOST_THREADS, Math.min(items.size(), Runtime.getRuntime().availableProcessors()));
        if (threads < 2) {
            for (T item : items) {
                results.add(work.apply(item));
                done++;
                pulse();
            }
            return results;
        }
        ExecutorService pool = Executors.newFixedThreadPool(threads, task -> {
            Thread thread = new Thread(task, caller.getName() + " worker");
            thread.setDaemon(true);
            return thread;
        });
        boolean whole = false;
        try {
            List<Future<R>> futures = new ArrayList<>();
            items.forEach(item -> futures.add(pool.submit(() -> work.apply(item))));
            for (Future<R> future : futures) {
                results.add(result(future));
                done++;
            }
            pulse();
            whole = true;
            return results;
        } finally {
            stopped = !whole; // workers that still run end at their next pulse
            pool.shutdownNow();
        }
    }

    private <R> R result(Future<R> future) {
        while (true) {
            pulse();
            try {
                return future.get(PATIENCE_MS, TimeUnit.MILLISECONDS);
            } catch (TimeoutException notYet) {
                // asks again after the next checkpoint
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
