// SPDX-License-Identifier: Apache-2.0
package kerfglow.host;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.util.Random;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class GlobTest {
    /** The definition, by the Java platform's regular expressions: a star is any characters, the rest is itself in any case. */
    private static boolean defined(String pattern, String name) {
        StringBuilder expression = new StringBuilder();
        for (char each : pattern.toCharArray()) {
            expression.append(each == '*' ? ".*" : Pattern.quote(String.valueOf(each)));
        }
        return Pattern.compile(expression.toString(), Pattern.CASE_INSENSITIVE | Pattern.UNICODE_CASE | Pattern.DOTALL).matcher(name).matches();
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3})
    void fits_what_the_definition_fits(long seed) {
        Random random = new Random(seed);
        int fitting = 0;
        for (int i = 0; i < 3000; i++) {
            String pattern = word(random, "aB\u00e4*.\\E");
            String name = word(random, "Ab\u00c4.\\E\n");
            boolean expected = defined(pattern.strip(), name.strip());
            fitting += expected ? 1 : 0;
            assertEquals(expected, Glob.matches(pattern, name), pattern + " on " + name);
        }
        assertTrue(fitting > 100, fitting + " fit; the sample must hold both kinds");
    }

    private static String word(Random random, String letters) {
        StringBuilder word = new StringBuilder();
        for (int i = random.nextInt(6); i >= 0; i--) {
            word.append(letters.charAt(random.nextInt(letters.length())));
        }
        return word.toString();
    }

    @Test
    void a_pattern_made_to_take_for_ever_does_not() {
        assertFalse(assertTimeoutPreemptively(Duration.ofSeconds(5), () -> Glob.matches("*a".repeat(40) + "b", "a".repeat(5000))));
    }
}
