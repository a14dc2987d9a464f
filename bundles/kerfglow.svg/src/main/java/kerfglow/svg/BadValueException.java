// SPDX-License-Identifier: Apache-2.0
package kerfglow.svg;

/** An attribute or property whose value cannot be read; the message completes "attribute x ...". */
final class BadValueException extends Exception {
    private static final long serialVersionUID = 1L;

    BadValueException(String message) {
        super(message);
    }
}
