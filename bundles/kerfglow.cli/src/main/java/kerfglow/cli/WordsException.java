// SPDX-License-Identifier: Apache-2.0
package kerfglow.cli;

/** Words of the command that turn out to be wrong only while it runs. */
final class WordsException extends Exception {
    private static final long serialVersionUID = 1L;

    WordsException(String message, Throwable cause) {
        super(message, cause);
    }
}
