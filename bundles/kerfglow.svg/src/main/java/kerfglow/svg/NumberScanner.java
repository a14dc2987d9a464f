// SPDX-License-Identifier: Apache-2.0
package kerfglow.svg;

import java.util.ArrayList;
import java.util.List;

/** Reads numbers out of attribute text at double precision; SVG 2, 9.3.9 "The grammar for path data". */
final class NumberScanner {
    private static final int LONGEST_QUOTE = 20;
    private final String text;
    private int at;

    NumberScanner(String text) {
        this.text = text;
    }

    boolean isAtEnd() {
        return at >= text.length();
    }

    /** The next character, or NUL at the end. */
    char peek() {
        return isAtEnd() ? '\0' : text.charAt(at);
    }

    char next() {
        char c = peek();
        at++;
        return c;
    }

    void skipSpace() {
        while (!isAtEnd() && isSpace(text.charAt(at))) {
            at++;
        }
    }

    /** Skips space with at most one comma in it. */
    void skipSeparator() {
        skipSpace();
        if (peek() == ',') {
            at++;
            skipSpace();
        }
    }

    boolean isAtNumber() {
        char c = peek();
        return c >= '0' && c <= '9' || c == '.' || c == '-' || c == '+';
    }

    double number() throws BadValueException {
        int start = at;
        int p = at;
        if (p < text.length() && (text.charAt(p) == '+' || text.charAt(p) == '-')) {
            p++;
        }
        int digitsFrom = p;
        p = digits(p);
        int digitCount = p - digitsFrom;
        if (p < text.length() && text.charAt(p) == '.') {
            int end = digits(p + 1);
            digitCount += end - p - 1;
            p = end;
        }
        if (digitCount == 0) {
            throw new BadValueException("has \"" + quoteAt(start) + "\" at character " + (start + 1) + " where a number is expected");
        }
        int exponentFrom = p;
        if (p < text.length() && (text.charAt(p) == 'e' || text.charAt(p) == 'E')) {
            p++;
            if (p < text.length() && (text.charAt(p) == '+' || text.charAt(p) == '-')) {
                p++;
            }
            int end = digits(p);
            p = end > p ? end : exponentFrom; // "2em" is 2 em, not a broken exponent
        }
        at = p;
        double value = Double.parseDouble(text.substring(start, p));
        if (Double.isInfinite(value)) {
            throw new BadValueException("has the number " + quote(start, p) + " at character " + (start + 1) + ", which is too large");
        }
        return value;
    }

    /** A 0 or 1 that needs no separator after it. */
    boolean flag() throws BadValueException {
        char c = peek();
        if (c != '0' && c != '1') {
            throw new BadValueException("has \"" + quoteAt(at) + "\" at character " + (at + 1) + " where a flag 0 or 1 is expected");
        }
        at++;
        return c == '1';
    }

    /** Letters, digits and hyphens, or a percent sign, from here on; possibly none. */
    String word() {
        int start = at;
        if (peek() == '%') {
            at++;
            return "%";
        }
        while (!isAtEnd() && (Character.isLetterOrDigit(text.charAt(at)) || text.charAt(at) == '-')) {
            at++;
        }
        return text.substring(start, at);
    }

    /** What stands here, short enough for a message. */
    String quote() {
        return quoteAt(at);
    }

    int position() {
        return at + 1;
    }

    /** All numbers of a list separated by space or commas. */
    static List<Double> list(String text) throws BadValueException {
        NumberScanner in = new NumberScanner(text);
        List<Double> numbers = new ArrayList<>();
        in.skipSpace();
        while (!in.isAtEnd()) {
            numbers.add(in.number());
            in.skipSeparator();
        }
        return numbers;
    }

    private int digits(int from) {
        int p = from;
        while (p < text.length() && text.charAt(p) >= '0' && text.charAt(p) <= '9') {
            p++;
        }
        return p;
    }

    private String quoteAt(int start) {
        return quote(start, text.length());
    }

    private String quote(int start, int end) {
        return text.substring(start, Math.max(start, Math.min(end, start + LONGEST_QUOTE))).replaceAll("\\s+", " ");
    }

    private static boolean isSpace(char c) {
        return c == ' ' || c == '\t' || c == '\n' || c == '\r' || c == '\f';
    }
}
