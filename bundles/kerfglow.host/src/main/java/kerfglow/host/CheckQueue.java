// SPDX-License-Identifier: Apache-2.0
package kerfglow.host;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import java.util.stream.Collectors;

/** Runs checks on as many threads as there are processors; one that reads the tables of others waits for those. */
final class CheckQueue {
    /** How often a run looks whether the person cancelled it or a check's time is up. */
    private static final long LOOK_MILLIS = 5;

    private record Started(CheckRun run, List<Result.CheckRow> read, RunInspection.Asked asked) {
    }

    private final CheckMemory memory;
    private final RunInspection inspection;
    private final Watcher watcher;
    private final double limitSeconds;
    private final Semaphore changed = new Semaphore(0);

    CheckQueue(CheckMemory memory, RunInspection inspection, Watcher watcher) {
        this.memory = memory;
        this.inspection = inspection;
        this.watcher = watcher;
        this.limitSeconds = inspection.given().get(HostSettings.CHECK_TIME_LIMIT);
    }

    /**
     * Runs them all.
     *
     * @param onEnd told of each as it ends, on this thread
     * @throws CancellationException when the person cancelled the run
     */
    void run(List<CheckCatalogue.Entry> checks, Consumer<CheckRun.Ended> onEnd) throws InterruptedException {
        Set<String> asked = checks.stream().map(entry -> entry.info().id()).collect(Collectors.toSet());
        List<CheckCatalogue.Entry> waiting = new ArrayList<>(checks);
        waiting.sort(Comparator.comparingLong(entry -> memory.millis(entry))); // who waits for one change must not wait for the light behind it; equals stay by id
        Map<CheckCatalogue.Entry, Started> running = new LinkedHashMap<>();
        Map<String, Result.CheckRow> ended = new LinkedHashMap<>();
        ExecutorService threads = Executors.newFixedThreadPool(Math.max(1, Runtime.getRuntime().availableProcessors()), CheckQueue::thread);
        Consumer<CheckRun.Ended> end = each -> {
            ended.put(each.row().check(), each.row());
            onEnd.accept(each);
        };
        try {
            while (!waiting.isEmpty() || !running.isEmpty()) {
                boolean moved = start(waiting, asked, running, ended, threads, end);
                moved |= finish(running, end);
                if (running.isEmpty() && !moved && !waiting.isEmpty()) {
                    CheckCatalogue.Entry stuck = waiting.remove(0);
                    end.accept(CheckRun.notStarted(stuck, "it reads tables of a check that reads its own in turn"));
                } else if (!moved && changed.tryAcquire(LOOK_MILLIS, TimeUnit.MILLISECONDS)) {
                    changed.drainPermits();
                }
            }
        } finally {
            threads.shutdownNow();
        }
    }

    private static Thread thread(Runnable work) {
        Thread thread = new Thread(work, "check");
        thread.setDaemon(true); // a check that never ends must not keep the program alive
        return thread;
    }

    private boolean start(List<CheckCatalogue.Entry> waiting, Set<String> asked, Map<CheckCatalogue.Entry, Started> running, Map<String, Result.CheckRow> ended,
            ExecutorService threads, Consumer<CheckRun.Ended> end) {
        Set<CheckCatalogue.Entry> begun = new HashSet<>();
        for (CheckCatalogue.Entry entry : waiting) {
            if (entry.reads().stream().anyMatch(read -> asked.contains(read) && !ended.containsKey(read))) {
                continue;
            }
            begun.add(entry);
            List<Result.CheckRow> read = entry.reads().stream().filter(ended::containsKey).map(ended::get).toList();
            Optional<CheckRun.Ended> known = memory.recall(entry, inspection, read);
            if (known.isPresent()) {
                end.accept(known.get());
                continue;
            }
            RunInspection.Asked questions = new RunInspection.Asked();
            CheckRun run = new CheckRun(entry, inspection.of(entry, read, questions, limitSeconds, watcher), limitSeconds, changed::release);
            running.put(entry, new Started(run, read, questions));
            if (entry.check() instanceof RunsElsewhere) {
                thread(run.task()).start();
            } else {
                threads.execute(run.task());
            }
        }
        waiting.removeAll(begun);
        return !begun.isEmpty();
    }

    private boolean finish(Map<CheckCatalogue.Entry, Started> running, Consumer<CheckRun.Ended> end) throws InterruptedException {
        boolean any = false;
        for (Map.Entry<CheckCatalogue.Entry, Started> each : List.copyOf(running.entrySet())) {
            Optional<CheckRun.Ended> done = each.getValue().run().poll(watcher);
            if (done.isPresent()) {
                running.remove(each.getKey());
                memory.keep(each.getKey(), inspection, each.getValue().read(), each.getValue().asked(), done.get());
                end.accept(done.get());
                any = true;
            }
        }
        return any;
    }
}
