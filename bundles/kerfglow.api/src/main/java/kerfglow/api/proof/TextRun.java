// SPDX-License-Identifier: Apache-2.0
package kerfglow.api.proof;

import java.util.Objects;

/**
 * The live text behind an element whose outlines were made from a font.
 *
 * @param text the characters, white space collapsed as SVG does
 * @param fontAsked the family that the file names first
 * @param fontUsed the family that the outlines come from
 * @param substituted true when {@code fontUsed} is not a family that the file asks for
 * @param sizeMm the font size (em) at real size, mm
 */
public record TextRun(String text, String fontAsked, String fontUsed, boolean substituted, double sizeMm) {
    public TextRun {
        Objects.requireNonNull(text, "text");
        Objects.requireNonNull(fontAsked, "fontAsked");
        Objects.requireNonNull(fontUsed, "fontUsed");
    }
}
