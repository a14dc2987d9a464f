// SPDX-License-Identifier: Apache-2.0
package kerfglow.host;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;
import kerfglow.api.Finding;
import kerfglow.api.Inspection;
import kerfglow.api.Outcome;
import kerfglow.api.Table;
import kerfglow.api.TableInfo;

/** One check at work in a thread of its own, and the row that comes of it, whatever the check does. */
final class CheckRun {
    private static final long BYTES_PER_MIB = 1 << 20;
    private static final double NANOS_PER_MILLI = 1e6;
    private static final double NANOS_PER_SECOND = 1e9;

    private final CheckCatalogue.Entry entry;
    private final double limitSeconds;
    private volatile long startedNanos;
    private final FutureTask<Ended> task;

    /**
     * How a check ended.
     *
     * @param groups its findings, those that are one collected, when it measured
     */
    record Ended(Result.CheckRow row, List<List<Finding>> groups) {
    }

    /**
     * A check about to start.
     *
     * @param ended told, on any thread, when the check ended by itself
     */
    CheckRun(CheckCatalogue.Entry entry, Inspection inspection, double limitSeconds, Runnable ended) {
        this.entry = entry;
        this.limitSeconds = limitSeconds;
        this.task = new FutureTask<>(() -> {
            startedNanos = System.nanoTime();
            return ended(NotConcerned.why(entry.info().concerns(), inspection).map(Outcome::notMeasured).orElseGet(() -> entry.check().inspect(inspection)));
        }) {
            @Override
            protected void done() {
                ended.run();
            }
        };
    }

    Runnable task() {
        return task;
    }

    /**
     * How the check ended; empty while it runs and its time, counted from when it started, is not up.
     *
     * @throws CancellationException when the person cancelled the run
     */
    Optional<Ended> poll(Watcher watcher) throws InterruptedException {
        if (watcher.isCancelled()) {
            task.cancel(true);
            throw new CancellationException();
        }
        if (!task.isDone()) {
            if (startedNanos != 0 && System.nanoTime() - startedNanos > limitSeconds * NANOS_PER_SECOND) {
                task.cancel(true); // the thread is a daemon; a check that ignores its checkpoints is left behind
                return Optional.of(timedOut());
            }
            return Optional.empty();
        }
        try {
            return Optional.of(task.get());
        } catch (ExecutionException thrown) {
            return Optional.of(thrown.getCause() instanceof CancellationException ? timedOut() : thrown.getCause() instanceof OutOfMemoryError ? tooLarge() : failed(describe(thrown.getCause())));
        }
    }

    /** A check that cannot start. */
    static Ended notStarted(CheckCatalogue.Entry entry, String why) {
        return new CheckRun(entry, null, 0, () -> { }).failed(why);
    }

    /** On the check's own thread and in its time: to collect the repeats among a hundred thousand findings takes long too. */
    private Ended ended(Outcome outcome) {
        Optional<String> broken = brokenPromise(outcome);
        if (broken.isPresent()) {
            return failed(broken.get());
        }
        Result.Status status = !outcome.measured() ? Result.Status.NOT_MEASURED
                : outcome.findings().isEmpty() ? Result.Status.PASSED : Result.Status.FINDINGS;
        return new Ended(new Result.CheckRow(entry.info().id(), entry.info().title(), entry.version(), status, millis(), String.join(" ", outcome.missing()),
                outcome.tables(), outcome.layers()), Repeats.collect(outcome.findings()));
    }

    /** What a check must not do: report rules or tables that it does not declare, or a place that is not finite. */
    private Optional<String> brokenPromise(Outcome outcome) {
        if (outcome == null) {
            return Optional.of("it answered nothing (null)");
        }
        Set<String> rules = new HashSet<>();
        entry.info().rules().forEach(rule -> rules.add(rule.id()));
        for (Finding finding : outcome.findings()) {
            if (!rules.contains(finding.rule().id())) {
                return Optional.of("it reported the rule " + finding.rule().id() + ", which it does not declare");
            }
            if (finding.at().filter(at -> !Double.isFinite(at.x) || !Double.isFinite(at.y)).isPresent()) {
                return Optional.of("it reported " + finding.rule().id() + " at a place that is not finite");
            }
        }
        Set<TableInfo> tables = new HashSet<>(entry.info().tables());
        for (Table table : outcome.tables()) {
            if (!tables.contains(table.info())) {
                return Optional.of("it measured the table " + table.info().id() + ", which it does not declare");
            }
        }
        return Optional.empty();
    }

    private Ended timedOut() {
        return new Ended(row(Result.Status.TIMED_OUT, "took longer than " + limitSeconds + " s; raise " + HostSettings.CHECK_TIME_LIMIT.key()
                + " if the proof is very large"), List.of());
    }

    private Ended tooLarge() {
        return new Ended(row(Result.Status.FAILED, "needed more than the " + Runtime.getRuntime().maxMemory() / BYTES_PER_MIB + " MiB of memory that the program may take; check fewer parts at a time, or allow more"
                + " (KERFGLOW_VMARGS=-Xmx8g); the other checks are not touched by it"), List.of());
    }

    private Ended failed(String why) {
        return new Ended(row(Result.Status.FAILED, why + "; this is a defect of the check, the other checks are not touched by it"), List.of());
    }

    private Result.CheckRow row(Result.Status status, String why) {
        return new Result.CheckRow(entry.info().id(), entry.info().title(), entry.version(), status, millis(), why, List.of(), List.of());
    }

    private long millis() {
        return startedNanos == 0 ? 0 : Math.round((System.nanoTime() - startedNanos) / NANOS_PER_MILLI);
    }

    private static String describe(Throwable defect) {
        if (defect instanceof CheckFailedException elsewhere) {
            return elsewhere.getMessage();
        }
        StackTraceElement[] stack = defect.getStackTrace();
        return "it threw " + defect + (stack.length == 0 ? "" : " at " + stack[0]);
    }
}
