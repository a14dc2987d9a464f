// SPDX-License-Identifier: Apache-2.0
package kerfglow.worksheet;

import java.util.Locale;
import java.util.Map;
import kerfglow.api.Units;
import kerfglow.papers.FullSizePages;

/**
 * What a pattern is printed on.
 *
 * @param widthMm of a page; of a roll the longest piece
 * @param heightMm of a page; of a roll its width
 * @param roll true when pages are pieces of a roll, as long as they need be
 */
public record PatternMedia(double widthMm, double heightMm, boolean roll) {
    /** Margin that printers leave white, mm; common practice, no source. */
    static final double MARGIN_MM = 8;
    /** Strip below the drawing for the page's name and the scale bar, mm. */
    static final double FOOT_MM = 16;
    /** Overlap of neighbouring pages, mm: room for tape; common practice, no source. */
    static final double OVERLAP_MM = 15;

    private static final double LEAST_MM = 4 * (MARGIN_MM + OVERLAP_MM);
    private static final Map<String, PatternMedia> SIZES = Map.of("a4", new PatternMedia(210, 297, false), "a3", new PatternMedia(297, 420, false), "a2", new PatternMedia(420, 594, false),
            "a1", new PatternMedia(594, 841, false), "a0", new PatternMedia(841, 1189, false), "letter", new PatternMedia(215.9, 279.4, false), "tabloid", new PatternMedia(279.4, 431.8, false));

    public PatternMedia {
        if (!(widthMm >= LEAST_MM && heightMm >= LEAST_MM && widthMm <= FullSizePages.MOST_MM && heightMm <= FullSizePages.MOST_MM)) {
            throw new IllegalArgumentException("a page must be " + LEAST_MM + " to " + Math.floor(FullSizePages.MOST_MM) + " mm wide and high");
        }
    }

    /** Pieces of a roll, as long as a PDF page can be. */
    public static PatternMedia roll(double rollWidthMm) {
        return new PatternMedia(FullSizePages.MOST_MM, rollWidthMm, true);
    }

    /**
     * Reads a size.
     *
     * @param text a name such as {@code a4} or {@code letter}, or width and height such as {@code 24 in x 36 in}
     * @throws IllegalArgumentException when it cannot be read
     */
    public static PatternMedia parse(String text) {
        PatternMedia named = SIZES.get(text.strip().toLowerCase(Locale.ROOT));
        if (named != null) {
            return named;
        }
        String[] sides = text.split("\\s*[xX×]\\s*");
        if (sides.length != 2) {
            throw new IllegalArgumentException("\"" + text + "\" is no page: write a4, a3, a2, a1, a0, letter, tabloid, or for instance 24 in x 36 in");
        }
        return new PatternMedia(Units.lengthMm(sides[0]), Units.lengthMm(sides[1]), false);
    }

    PatternMedia turned() {
        return roll ? this : new PatternMedia(heightMm, widthMm, false);
    }

    double usableWidthMm() {
        return widthMm - 2 * MARGIN_MM;
    }

    double usableHeightMm() {
        return heightMm - MARGIN_MM - FOOT_MM;
    }
}
