// SPDX-License-Identifier: Apache-2.0
package kerfglow.host;

import java.util.List;

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
     * A check ended; others may still run.
     *
     * @param row how it ended
     * @param findings its findings, grouped as in the result; their ids are given at the end of the run
     */
    default void ended(Result.CheckRow row, List<Result.ReportedFinding> findings) {
        // most only wait for the result
    }

    /** True when the person wants the run to stop. */
    boolean isCancelled();
}
