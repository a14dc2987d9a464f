// SPDX-License-Identifier: Apache-2.0
package kerfglow.views;

/** Text from proofs, sheets and file names, made fit to be shown: names in a file may hold anything. */
public final class PlainText {
    private static final int DELETE = 0x7f;
    private static final int LAST_CONTROL = 0x9f;
    private static final int FIRST_EMBEDDING = 0x202a;
    private static final int LAST_OVERRIDE = 0x202e;
    private static final int FIRST_ISOLATE = 0x2066;
    private static final int LAST_ISOLATE = 0x2069;
    /** The last two of every plane, and a row of their own (The Unicode Standard, 23.7). */
    private static final int NONCHARACTER = 0xfffe;
    private static final int FIRST_OTHER_NONCHARACTER = 0xfdd0;
    private static final int LAST_OTHER_NONCHARACTER = 0xfdef;

    private PlainText() {
    }

    /**
     * The text with a question mark for each character that a terminal takes for a command (ECMA-48: all controls but tab and line feed), that turns the direction of
     * the text around it (Unicode UAX #9), or that XML and HTML do not allow.
     */
    public static String of(String text) {
        StringBuilder plain = new StringBuilder(text.length());
        text.codePoints().forEach(each -> plain.appendCodePoint(isPlain(each) ? each : '?'));
        return plain.toString();
    }

    static boolean isPlain(int character) {
        return character == '\t' || character == '\n' || character >= ' ' && !(character >= DELETE && character <= LAST_CONTROL)
                && !(character >= FIRST_EMBEDDING && character <= LAST_OVERRIDE) && !(character >= FIRST_ISOLATE && character <= LAST_ISOLATE)
                && Character.getType(character) != Character.SURROGATE && (character & NONCHARACTER) != NONCHARACTER
                && !(character >= FIRST_OTHER_NONCHARACTER && character <= LAST_OTHER_NONCHARACTER);
    }
}
