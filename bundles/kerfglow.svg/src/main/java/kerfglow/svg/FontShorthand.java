// SPDX-License-Identifier: Apache-2.0
package kerfglow.svg;

import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The property font, which sets several at once: CSS Fonts 4, section 2.7. */
final class FontShorthand {
    /** Assumed: a list of families is shorter. */
    private static final int LONGEST = 1000;
    private static final Pattern FORM = Pattern.compile(
            "(?<before>(?:[\\w-]+\\s+)*?)(?<size>[\\d.]+(?:%|[a-z]+)?|(?:xx?-)?(?:small|large)|medium|larger|smaller)(?:\\s*/\\s*\\S+)?\\s+(?<family>.+)",
            Pattern.CASE_INSENSITIVE | Pattern.DOTALL);

    private FontShorthand() {
    }

    /** Puts what the text sets; a text of another form sets nothing. */
    static void expand(String text, Map<String, String> specified) {
        if (text.length() > LONGEST) {
            return;
        }
        Matcher m = FORM.matcher(text.strip());
        if (!m.matches()) {
            return;
        }
        specified.put("font-style", "normal");
        specified.put("font-weight", "normal");
        for (String word : m.group("before").strip().split("\\s+")) {
            if (word.equals("italic") || word.equals("oblique")) {
                specified.put("font-style", word);
            } else if (word.matches("bold|bolder|lighter|[1-9]00")) {
                specified.put("font-weight", word);
            }
        }
        specified.put("font-size", m.group("size"));
        specified.put("font-family", m.group("family").strip());
    }
}
