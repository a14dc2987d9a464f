// SPDX-License-Identifier: Apache-2.0
package kerfglow.outlines;

import java.io.IOException;
import java.io.Writer;
import java.util.Locale;
import kerfglow.views.PlainText;

/** The form of a drawing interchange file: pairs of a group code and a value, a line each, and handles that are given once. */
final class DxfPairs {
    /** Handles below are those that entries refer to by name. */
    private static final int FIRST_HANDLE = 0x100;
    private static final int ASCII_END = 0x80;

    private final Writer out;
    private int nextHandle = FIRST_HANDLE;

    DxfPairs(Writer out) {
        this.out = out;
    }

    void pair(int code, String value) throws IOException {
        out.write(code + "\r\n" + value + "\r\n");
    }

    void section(String name) throws IOException {
        pair(0, "SECTION");
        pair(2, name);
    }

    /** A point: its x under a code, its y and z under that code and 10, and 20, more. */
    void place(int code, double x, double y) throws IOException {
        pair(code, number(x));
        pair(code + 10, number(y));
        pair(code + 20, "0.0");
    }

    /** A handle that no other entry has. */
    String handle() {
        return Integer.toHexString(nextHandle++).toUpperCase(Locale.ROOT);
    }

    /** To a millionth of a millimetre. */
    static String number(double value) {
        return String.format(Locale.ROOT, "%.6f", value);
    }

    /** Text on one line, with characters beyond ASCII as their codes. */
    static String ascii(String text) {
        StringBuilder safe = new StringBuilder();
        PlainText.of(text).replace('\n', ' ').replace('\t', ' ').chars().forEach(each -> safe.append(each < ASCII_END ? Character.toString(each) : String.format(Locale.ROOT, "\\U+%04X", each)));
        return safe.toString();
    }
}
