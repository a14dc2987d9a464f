// SPDX-License-Identifier: Apache-2.0
package kerfglow.views;

import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;

/** Breaks text into lines at spaces. */
public final class Wrap {
    private Wrap() {
    }

    /**
     * The lines.
     *
     * @param text words; line breaks in it are kept
     * @param width the widest a line may be
     * @param measure how wide a line is, in the same unit
     */
    public static List<String> lines(String text, double width, ToDoubleFunction<String> measure) {
        List<String> lines = new ArrayList<>();
        for (String paragraph : text.split("\n", -1)) {
            StringBuilder line = new StringBuilder();
            for (String word : paragraph.strip().split("\\s+")) {
                if (line.length() > 0 && measure.applyAsDouble(line + " " + word) > width) {
                    lines.add(line.toString());
                    line.setLength(0);
                }
                line.append(line.length() == 0 ? "" : " ").append(word);
            }
            lines.add(line.toString());
        }
        return lines;
    }

    /** The lines, no longer than so many characters. */
    static List<String> lines(String text, int characters) {
        return lines(text, characters, String::length);
    }
}
