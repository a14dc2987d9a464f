// SPDX-License-Identifier: Apache-2.0
package kerfglow.host;

/** Thrown in place of a check that runs elsewhere and failed there; the message says what happened and becomes the check's row. */
public final class CheckFailedException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    public CheckFailedException(String what) {
        super(what);
    }
}
