// SPDX-License-Identifier: Apache-2.0
package kerfglow.cli;

import java.util.Comparator;
import java.util.List;

/** What the process answers to the shell. Of several files the first of {@link #INPUT}, {@link #BROKEN}, {@link #FOUND}, {@link #CLEAR} that occurred. */
enum ExitStatus {
    /** Nothing at or above the threshold. */
    CLEAR(0, 3),
    /** Something at or above the threshold. */
    FOUND(1, 2),
    /** The input or the words of the command are at fault. */
    INPUT(2, 0),
    /** A check failed or timed out, or the program did. */
    BROKEN(3, 1);

    private final int code;
    private final int rank;

    ExitStatus(int code, int rank) {
        this.code = code;
        this.rank = rank;
    }

    int code() {
        return code;
    }

    static ExitStatus of(List<ExitStatus> each) {
        return each.stream().min(Comparator.comparingInt(status -> status.rank)).orElse(CLEAR);
    }
}
