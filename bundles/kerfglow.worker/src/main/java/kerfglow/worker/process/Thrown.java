// SPDX-License-Identifier: Apache-2.0
package kerfglow.worker.process;

/** Words for what a shop's code threw. It may be a class of the shop's own, whose methods throw, return what is endless, or go in circles. */
final class Thrown {
    /** Assumed: more than any message that helps. */
    private static final int MOST_CHARACTERS = 1000;
    /** Assumed: more than any chain of causes that is no circle. */
    private static final int MOST_CAUSES = 50;

    private Thrown() {
    }

    /** What it is and where it was thrown. */
    static String words(Throwable thrown) {
        try {
            StackTraceElement[] stack = thrown.getStackTrace();
            return text(thrown) + (stack.length == 0 ? "" : " at " + stack[0]);
        } catch (Throwable defect) { // asked in vain: its class alone is sure
            return thrown.getClass().getName();
        }
    }

    /** What was thrown first, of which the others are consequences. */
    static String deepest(Throwable thrown) {
        Throwable deepest = thrown;
        try {
            Throwable cause = thrown.getCause();
            for (int i = 0; i < MOST_CAUSES && cause != null; i++) {
                deepest = cause;
                cause = cause.getCause();
            }
            return text(deepest);
        } catch (Throwable defect) { // as above
            return deepest.getClass().getName();
        }
    }

    private static String text(Throwable thrown) {
        String text = String.valueOf(thrown).strip();
        return text.length() <= MOST_CHARACTERS ? text : text.substring(0, MOST_CHARACTERS) + "...";
    }
}
