// SPDX-License-Identifier: Apache-2.0
package kerfglow.light;

/**
 * How finely light is reckoned. Finer costs more and lies nearer the truth.
 *
 * @param cellMm cell of the map, mm; direct light is exact at each cell's centre
 * @param patchShare size of the patches that send light on, as a share of depth or stroke width, whichever is less
 * @param directions plan directions in which each place looks for light sent on
 */
public record Accuracy(double cellMm, double patchShare, int directions) {
    /** Assumed: a map at 2 mm shows every spot that a module makes through an ordinary depth. */
    private static final double USUAL_CELL_MM = 2;
    /** Assumed: four patches across a stroke; the map then lies within 0.7 % (root mean square) of much finer ones, as CavityTest shows. */
    private static final double USUAL_SHARE = 1.0 / 4;
    /** Assumed: likewise. */
    private static final int USUAL_DIRECTIONS = 24;
    private static final int LEAST_DIRECTIONS = 4;
    /** Assumed: as many patches as are solved in less than a tenth of a second; large cans get larger patches. */
    private static final int USUAL_PATCHES = 1000;
    /** What each sees of each other takes 4 bytes: 144 MiB for this many. */
    private static final int MOST_PATCHES = 6000;

    public Accuracy {
        Ranges.require("map cell", cellMm, Double.MIN_NORMAL, Double.MAX_VALUE, "above 0 mm");
        Ranges.require("patch share", patchShare, Double.MIN_NORMAL, 1, "above 0, at most 1");
        Ranges.require("directions", directions, LEAST_DIRECTIONS, Integer.MAX_VALUE, LEAST_DIRECTIONS + " or more");
    }

    /** What serves for a sign. */
    public static Accuracy usual() {
        return new Accuracy(USUAL_CELL_MM, USUAL_SHARE, USUAL_DIRECTIONS);
    }

    /** The same with another cell, mm. */
    public Accuracy cellMm(double value) {
        return new Accuracy(value, patchShare, directions);
    }

    /** How many patches a can may have before they are made larger; four times as many when they are to be half as large. */
    int mostPatches() {
        double times = USUAL_SHARE / patchShare;
        return (int) Math.min(MOST_PATCHES, USUAL_PATCHES * times * times);
    }

    /** Patches half as large and twice as many directions. */
    public Accuracy finer() {
        return new Accuracy(cellMm, patchShare / 2, directions * 2);
    }
}
