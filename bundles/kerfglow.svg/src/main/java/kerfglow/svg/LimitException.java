// SPDX-License-Identifier: Apache-2.0
package kerfglow.svg;

/** A limit of {@link Limits} is crossed while drawing; becomes a refusal of the file. */
final class LimitException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    LimitException(String message) {
        super(message);
    }
}
