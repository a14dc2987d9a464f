// SPDX-License-Identifier: Apache-2.0
package kerfglow.job;

/** What is wrong with a place of a job file. */
final class JobProblem extends Exception {
    private static final long serialVersionUID = 1L;

    private final int line;
    private final int column;

    JobProblem(String message, int line, int column) {
        super(message);
        this.line = line;
        this.column = column;
    }

    /** For a person: line, column, and what is wrong. */
    String told() {
        return "line " + line + ", column " + column + ": " + getMessage();
    }
}
