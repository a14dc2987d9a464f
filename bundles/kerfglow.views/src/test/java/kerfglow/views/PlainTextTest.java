// SPDX-License-Identifier: Apache-2.0
package kerfglow.views;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class PlainTextTest {
    @Test
    void letters_of_any_writing_stay_as_they_are() {
        String text = "Stra\u00dfe, \u05d0\u05d1 \u4e2d\u6587 \ud83d\ude00\ttab\nline, caf\u00e9 i\u0301 \u200f\u200d";
        assertEquals(text, PlainText.of(text));
    }

    /** Each from its standard: ECMA-48 (controls, CSI), Unicode UAX #9 (overrides, isolates), The Unicode Standard 23.7 (noncharacters). */
    @ParameterizedTest
    @ValueSource(ints = {0, 7, 8, 0x0d, 0x1b, 0x7f, 0x80, 0x85, 0x9b, 0x9d, 0x9f, 0x202a, 0x202e, 0x2066, 0x2069, 0xd800, 0xdfff, 0xfdd0, 0xfffe, 0xffff, 0x1ffff})
    void what_commands_a_terminal_or_turns_text_becomes_a_question_mark(int character) {
        assertEquals("a?b", PlainText.of("a" + new String(Character.toChars(character)) + "b"));
    }
}
