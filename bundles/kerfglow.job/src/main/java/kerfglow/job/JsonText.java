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

/** Writes JSON that is YAML 1.2 too: what YAML does not take as it is (its section 5.1) is escaped. */
final class JsonText {
    private static final JsonFactory FACTORY = new JsonFactory().setCharacterEscapes(new YamlEscapes());

    private JsonText() {
    }

    static JsonGenerator generator(Writer out) throws IOException {
        return FACTORY.createGenerator(out);
    }

    private static final class YamlEscapes extends CharacterEscapes {
        private static final long serialVersionUID = 1L;
        private static final int DELETE = 0x7f;
        private static final int LAST_CONTROL = 0x9f;
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
                    || Character.getType(character) == Character.LINE_SEPARATOR || Character.getType(character) == Character.PARAGRAPH_SEPARATOR;
            return refused ? new SerializedString(String.format(Locale.ROOT, "\\u%04x", character)) : null;
        }
    }
}
