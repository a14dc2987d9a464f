// SPDX-License-Identifier: Apache-2.0
package kerfglow.host;

import java.util.List;
import kerfglow.api.UnitSystem;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Proof;

/** Follows a run. Called from several threads. */
public interface Watcher {
    /** Nobody watches and nobody cancels. */
    Watcher NONE = new Watcher() {
        @Override
        public void progress(String what, double fraction) {
            // nobody to tell
        }

        @Override
        public boolean isCancelled() {
            return false;
        }
    };

    /**
     * How far a stage is.
     *
     * @param what the stage: {@code import}, {@code parts}, or the id of a check
     * @param fraction 0 to 1
     */
    void progress(String what, double fraction);

    /**
     * The proof is imported and its parts are made; the checks come next.
     *
     * @param proof what was drawn
     * @param parts what it becomes
     * @param units the units that a person reads
     */
    default void opened(Proof proof, List<Part> parts, UnitSystem units) {
        // most only wait for the result
    }

    /**
     * What holds in this run; told before anything is opened.
     *
     * @param settings every value that could hold
     */
    default void given(JobSheet job, ShopSheet shop, List<Result.SettingUsed> settings) {
        // most only wait for the result
    }

    /**
     * A check ended; others may still run.
     *
     * @param row how it ended
     * @param findings its findings, grouped as in the result; with the ids that the result will have
     */
    default void ended(Result.CheckRow row, List<Result.ReportedFinding> findings) {
        // most only wait for the result
    }

    /** True when the person wants the run to stop. */
    boolean isCancelled();
}
