// SPDX-License-Identifier: Apache-2.0
package kerfglow.api.proof;

import java.util.List;
import java.util.Locale;

/**
 * How an area or a stroke is painted.
 *
 * @param kind what sort of paint it is
 * @param rgb 0xRRGGBB for {@link Kind#COLOUR}; for gradients and patterns the first colour found, else 0
 * @param colours the colour, or those of all stops of a gradient in their order, opacity left aside; empty where they are not known.
 *     Where on the sign which of them is seen, {@link Element#fillGradient()} tells
 */
public record Paint(Kind kind, int rgb, List<Integer> colours) {
    /** Nothing is painted. */
    public static final Paint NONE = new Paint(Kind.NONE, 0);

    private static final int RGB_MASK = 0xFFFFFF;

    /** The sorts of paint. Only {@link #NONE} and {@link #COLOUR} are what a cutter can follow as drawn. */
    public enum Kind { NONE, COLOUR, GRADIENT, PATTERN }

    public Paint {
        colours = List.copyOf(colours);
        if ((rgb & ~RGB_MASK) != 0) {
            throw new IllegalArgumentException("rgb must lie in 0x000000..0xFFFFFF: " + Integer.toHexString(rgb));
        }
    }

    /** A paint whose further colours are not known. */
    public Paint(Kind kind, int rgb) {
        this(kind, rgb, kind == Kind.COLOUR ? List.of(rgb) : List.of());
    }

    /** A flat colour, 0xRRGGBB. */
    public static Paint colour(int rgb) {
        return new Paint(Kind.COLOUR, rgb);
    }

    /** True unless nothing is painted. */
    public boolean isPainted() {
        return kind != Kind.NONE;
    }

    /** {@code #rrggbb}, {@code gradient}, {@code pattern} or {@code none}. */
    @Override
    public String toString() {
        return kind == Kind.COLOUR ? String.format(Locale.ROOT, "#%06x", rgb) : kind.name().toLowerCase(Locale.ROOT);
    }
}
