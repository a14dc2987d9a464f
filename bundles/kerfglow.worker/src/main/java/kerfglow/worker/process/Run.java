// SPDX-License-Identifier: Apache-2.0
package kerfglow.worker.process;

import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.CancellationException;
import java.util.concurrent.TimeUnit;
import java.util.function.BiConsumer;
import java.util.function.BooleanSupplier;
import kerfglow.api.Check;
import kerfglow.api.Outcome;
import kerfglow.worker.form.FormNode;
import kerfglow.worker.form.OutcomeForm;
import kerfglow.worker.form.ReadInspection;

/** One call of a check, and the answer that is given whatever it does. */
final class Run {
    /** Progress is told no more often than this: fast enough for a bar. */
    private static final long PROGRESS_MILLIS = 50;
    /** Threads that are about to end get this long. */
    private static final long ENDING_MILLIS = 200;

    private final FormNode message;
    private final Check check;
    private final Drawing drawing;
    private final Printed printed;
    private final BiConsumer<String, Map<String, ?>> answer;
    private volatile boolean cancelled;
    private long toldNanos;

    Run(FormNode message, Check check, Drawing drawing, Printed printed, BiConsumer<String, Map<String, ?>> answer) {
        this.message = message;
        this.check = check;
        this.drawing = drawing;
        this.printed = printed;
        this.answer = answer;
    }

    long number() {
        return message.whole("run");
    }

    void cancel() {
        cancelled = true;
    }

    /**
     * Calls the check.
     *
     * @param alone true while no other check runs, so that threads that were left are this one's
     */
    void run(BooleanSupplier alone) {
        long printedBefore = printed.count();
        boolean wasAlone = alone.getAsBoolean();
        Set<Thread> before = wasAlone ? new HashSet<>(Thread.getAllStackTraces().keySet()) : Set.of();
        Map<String, Object> fields = new LinkedHashMap<>();
        fields.put("run", number());
        String kind = "outcome";
        try {
            Outcome outcome = check.inspect(new ReadInspection(check.info(), drawing.proof(), drawing.parts(), message.node("given"), this::checkpoint));
            boolean changed = drawing.isChanged();
            if (outcome == null || changed) {
                kind = "failed";
                fields.put("why", changed ? "it changed the geometry that it was given, which belongs to the host" : "it answered nothing (null)");
                fields.put("retire", changed);
            } else {
                fields.put("outcome", OutcomeForm.fields(outcome, (int) message.whole("mostFindings")));
            }
        } catch (CancellationException stopped) {
            kind = "cancelled";
        } catch (Throwable defect) { // an Error too; the process goes on unless it is out of memory
            kind = "failed";
            fields.put("why", "it threw " + Thrown.words(defect));
        }
        fields.put("printed", printed.count() - printedBefore);
        fields.put("threads", wasAlone && alone.getAsBoolean() ? left(before) : 0);
        answer.accept(kind, fields);
    }

    private void checkpoint(double fraction) {
        if (cancelled) {
            throw new CancellationException();
        }
        long now = System.nanoTime();
        if (now - toldNanos > TimeUnit.MILLISECONDS.toNanos(PROGRESS_MILLIS)) {
            toldNanos = now;
            answer.accept("progress", Map.of("run", number(), "fraction", fraction));
        }
    }

    /** How many threads there are that were not before; those of the platform's common pool go by themselves. */
    private static int left(Set<Thread> before) {
        long start = System.nanoTime();
        while (true) {
            int left = (int) Thread.getAllStackTraces().keySet().stream().filter(each -> each.isAlive() && !before.contains(each))
                    .filter(each -> !each.getName().startsWith("ForkJoinPool.commonPool")).count();
            if (left == 0 || System.nanoTime() - start > TimeUnit.MILLISECONDS.toNanos(ENDING_MILLIS)) {
                return left;
            }
            try {
                Thread.sleep(PROGRESS_MILLIS);
            } catch (InterruptedException byTheCheck) {
                return left;
            }
        }
    }
}
