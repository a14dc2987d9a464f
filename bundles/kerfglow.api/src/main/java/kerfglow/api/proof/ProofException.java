// SPDX-License-Identifier: Apache-2.0
package kerfglow.api.proof;

/** The file is not a usable proof. The message says what, where and what to do about it, in one or two sentences. */
public final class ProofException extends Exception {
    private static final long serialVersionUID = 1L;
    private final int line;
    private final int column;

    /**
     * A refusal.
     *
     * @param message what is wrong and what to do, without file name, line and column
     * @param line line in the file, from 1; 0 where it is not known
     * @param column column in the file, from 1; 0 where it is not known
     * @param cause what was thrown underneath, or null
     */
    public ProofException(String message, int line, int column, Throwable cause) {
        super(line > 0 ? "line " + line + (column > 0 ? ", column " + column : "") + ": " + message : message, cause);
        this.line = line;
        this.column = column;
    }

    /** Line in the file, from 1; 0 where it is not known. */
    public int line() {
        return line;
    }

    /** Column in the file, from 1; 0 where it is not known. */
    public int column() {
        return column;
    }
}
