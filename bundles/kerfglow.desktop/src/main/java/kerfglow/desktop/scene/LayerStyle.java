// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.scene;

import java.util.List;

/**
 * How the lines, areas and points of one overlay layer are drawn: a colour, a dash and a sign together, so that no two layers are told apart
 * by colour alone.
 *
 * @param rgb 0xRRGGBB; at least 4.5 on white (W3C WCAG 2.1, 1.4.3)
 * @param dash lengths of strokes and gaps in turn, pixels; empty for an unbroken line
 * @param sign what a point is drawn as
 */
public record LayerStyle(int rgb, List<Integer> dash, Sign sign) {
    /** What a point is drawn as. */
    public enum Sign { DISC, SQUARE, TRIANGLE, DIAMOND, CROSS }

    /** Six that stay apart for eyes that see red and green alike; tested. */
    private static final int[] COLOURS = {0x0067a3, 0xb84300, 0x2b2f9a, 0xa0417f, 0x5a3000, 0x333a40};
    private static final List<List<Integer>> DASHES = List.of(List.of(), List.of(9, 4), List.of(2, 3), List.of(10, 3, 2, 3), List.of(14, 3, 2, 3, 2, 3));
    /** So many come before the first is used again. */
    public static final int COUNT = COLOURS.length * DASHES.size();

    /** The style of a layer by its place among all layers; colour and dash change with each step. */
    public static LayerStyle of(int place) {
        int at = Math.floorMod(place, COUNT);
        return new LayerStyle(COLOURS[at % COLOURS.length], DASHES.get(at % DASHES.size()), Sign.values()[at % Sign.values().length]);
    }
}
