// SPDX-License-Identifier: Apache-2.0
package kerfglow.worker.form;

/** What came is not of the documented form; the message says what is wrong with it. */
public final class FormException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    public FormException(String message) {
        super(message);
    }

    public FormException(String message, Throwable cause) {
        super(message, cause);
    }
}
