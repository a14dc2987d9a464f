// SPDX-License-Identifier: Apache-2.0
package kerfglow.host;

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

    /** True when the person wants the run to stop. */
    boolean isCancelled();
}
