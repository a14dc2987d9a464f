// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.trim;

import java.util.ArrayList;
import java.util.List;
import java.util.function.BiFunction;
import kerfglow.api.Inspection;

/** Measures many parts on a few threads, and reports progress on the one that the check was called on, as it must. */
final class Progress {
    /** Enough to keep a few threads busy, few enough for a cancelled run to end at once to the eye. */
    private static final int AT_ONCE = 32;

    private final Inspection inspection;
    private final Thread caller = Thread.currentThread();
    private int expected = 1;
    private int done;

    Progress(Inspection inspection) {
        this.inspection = inspection;
    }

    /** Says how much there is to do. */
    void expect(int tasks) {
        expected = Math.max(1, tasks);
    }

    /** To be called often, from any thread. */
    void pulse() {
        if (Thread.currentThread() == caller) {
            inspection.checkpoint((double) done / expected);
        }
    }

    /** Runs every task; results in their order. */
    <T, R> List<R> run(List<T> tasks, BiFunction<T, Runnable, R> work) {
        List<R> results = new ArrayList<>(tasks.size());
        for (int from = 0; from < tasks.size(); from += AT_ONCE) {
            inspection.checkpoint((double) done / expected);
            List<T> some = tasks.subList(from, Math.min(tasks.size(), from + AT_ONCE));
            results.addAll(some.parallelStream().map(task -> work.apply(task, this::pulse)).toList());
            done += some.size();
        }
        inspection.checkpoint((double) Math.min(done, expected) / expected);
        return results;
    }
}
