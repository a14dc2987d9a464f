// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.legibility;

import java.util.OptionalInt;
import java.util.regex.Pattern;

/** Contrast of two colours, from their sRGB values. Luminance stands in for reflectance: what paint reflects of daylight. */
final class Colours {
    // sRGB as WCAG 2.2 defines relative luminance.
    private static final double RED = 0.2126;
    private static final double GREEN = 0.7152;
    private static final double BLUE = 0.0722;
    private static final double LINEAR_UP_TO = 0.04045;
    private static final double LINEAR = 12.92;
    private static final double SHIFT = 0.055;
    private static final double GAMMA = 2.4;
    private static final double FLARE = 0.05;
    private static final double BYTE = 255;
    private static final Pattern HEX = Pattern.compile("#?[0-9a-fA-F]{6}");

    private Colours() {
    }

    /** Reads #rrggbb; empty for anything else. */
    static OptionalInt parse(String text) {
        String colour = text.strip();
        return HEX.matcher(colour).matches() ? OptionalInt.of(Integer.parseInt(colour.replace("#", ""), 16)) : OptionalInt.empty();
    }

    /** Relative luminance, 0 for black to 1 for white. */
    static double luminance(int rgb) {
        return RED * linear(rgb >> 16 & 0xFF) + GREEN * linear(rgb >> 8 & 0xFF) + BLUE * linear(rgb & 0xFF);
    }

    private static double linear(int value) {
        double share = value / BYTE;
        return share <= LINEAR_UP_TO ? share / LINEAR : Math.pow((share + SHIFT) / (1 + SHIFT), GAMMA);
    }

    /** Contrast ratio of WCAG 2.2, 1 to 21; not rounded, so that 4.48 is not 4.5. */
    static double ratio(int a, int b) {
        double first = luminance(a);
        double second = luminance(b);
        return (Math.max(first, second) + FLARE) / (Math.min(first, second) + FLARE);
    }

    /** (B1 - B2) / B1 with B1 the lighter, 0 to 1; 0 for two blacks. */
    static double reflectance(double first, double second) {
        double lighter = Math.max(first, second);
        return lighter > 0 ? (lighter - Math.min(first, second)) / lighter : 0;
    }
}
