// SPDX-License-Identifier: Apache-2.0
package kerfglow.host;

/** A job sheet, shop sheet or setting cannot be used. The message names file, line and key, and what would be right. */
public final class SheetException extends Exception {
    private static final long serialVersionUID = 1L;

    SheetException(String message, Throwable cause) {
        super(message, cause);
    }
}
