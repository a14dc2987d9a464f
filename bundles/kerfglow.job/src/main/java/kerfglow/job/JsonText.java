// SPDX-License-Identifier: Apache-2.0
package kerfglow.job;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.SerializableString;
import com.fasterxml.jackson.core.io.CharacterEscapes;
import com.fasterxml.jackson.core.io.SerializedString;
import java.io.IOException;
import java.io.Writer;
import java.util.Locale;

/**
 * Writes JSON that is YAML 1.2 too: what YAML does not take as it is (its section 5.1) is escaped. So are the other characters that a terminal takes for
 * commands, or that turn the direction of text (Unicode UAX #9): names in a proof may hold any.
 */
public final class JsonText {
    private static final JsonFactory FACTORY = new JsonFactory().setCharacterEscapes(new Escapes());

    private JsonText() {
    }

    /** A generator; closing it closes the writer unless told otherwise. */
    public static JsonGenerator generator(Writer out) throws IOException {
        return FACTORY.createGenerator(out);
    }

    private static final class Escapes extends CharacterEscapes {
        private static final long serialVersionUID = 1L;
        private static final int DELETE = 0x7f;
        private static final int LAST_CONTROL = 0x9f;
        private static final int FIRST_EMBEDDING = 0x202a;
        private static final int LAST_OVERRIDE = 0x202e;
        private static final int FIRST_ISOLATE = 0x2066;
        private static final int LAST_ISOLATE = 0x2069;
        private static final int FIRST_NONCHARACTER = 0xfffe;
        private static final int BYTE_ORDER_MARK = 0xfeff;

        @Override
        public int[] getEscapeCodesForAscii() {
            int[] codes = standardAsciiEscapesForJSON();
            codes[DELETE] = ESCAPE_CUSTOM;
            return codes;
        }

        @Override
        public SerializableString getEscapeSequence(int character) {
            boolean refused = character >= DELETE && character <= LAST_CONTROL || character >= FIRST_NONCHARACTER || character == BYTE_ORDER_MARK
                    || character >= FIRST_EMBEDDING && character <= LAST_OVERRIDE || character >= FIRST_ISOLATE && character <= LAST_ISOLATE || Character.getType(character) == Character.LINE_SEPARATOR || Character.getType(character) == Character.PARAGRAPH_SEPARATOR;
            return refused ? new SerializedString(String.format(Locale.ROOT, "\\u%04x", character)) : null;
        }
    }
}
