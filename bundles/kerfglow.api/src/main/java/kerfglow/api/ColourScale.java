// SPDX-License-Identifier: Apache-2.0
package kerfglow.api;

/**
 * The one colour scale for levels from least (0) to greatest (1): dark blue over grey to light yellow. It grows lighter all the
 * way, so that it reads in grey too, and runs between blue and yellow, which people who confuse red and green tell apart.
 */
public final class ColourScale {
    /** Assumed: five colours, evenly spaced, each lighter than the one before; tested for that. */
    private static final int[] STOPS = {0x0B1B4A, 0x37507C, 0x7A7C86, 0xBFA85C, 0xFFF2A6};
    /** Where both ends are about as far in lightness; tested. */
    private static final double MIDDLE = 0.4;
    private static final int BYTE = 0xFF;
    private static final int RED_SHIFT = 16;
    private static final int GREEN_SHIFT = 8;

    private ColourScale() {
    }

    /**
     * The colour of a level.
     *
     * @param level 0 to 1; what lies outside counts as the nearer end
     * @return 0xRRGGBB
     */
    public static int rgb(double level) {
        double place = Math.max(0, Math.min(1, level)) * (STOPS.length - 1);
        int below = Math.min(STOPS.length - 2, (int) place);
        double share = place - below;
        return mixed(below, share, RED_SHIFT) << RED_SHIFT | mixed(below, share, GREEN_SHIFT) << GREEN_SHIFT | mixed(below, share, 0);
    }

    /**
     * The colour of a contour line over a picture in this scale: the ground about it has the line's own level, so that the line takes the
     * far end of the scale.
     *
     * @param level 0 to 1
     * @return 0xRRGGBB
     */
    public static int rgbOver(double level) {
        return rgb(level < MIDDLE ? 1 : 0);
    }

    private static int mixed(int below, double share, int shift) {
        int from = STOPS[below] >> shift & BYTE;
        int to = STOPS[below + 1] >> shift & BYTE;
        return (int) Math.round(from + share * (to - from));
    }
}
