// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.legibility;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.algorithm.Orientation;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.CoordinateArrays;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Polygon;

/**
 * Where one upright outline ends upward and downward.
 *
 * <p>A letter has one lower and one upper end: the flat edge next to its extreme, or the extreme itself. (A small n in a sans
 * serif is highest at its arch and flat at its stem, and the stem is what stands on the x-height.) A word joined into one piece has
 * many: every rise and dip of its outline.
 *
 * @param bottoms not empty
 * @param tops not empty
 * @param joined true for what looks like several letters in one piece
 */
record Ends(List<Level> bottoms, List<Level> tops, boolean joined) {
    /** A flat edge this near to the extreme, in heights of the letter, decides instead of it: overshoot is 1 to 3 %. Common practice. */
    private static final double NEAR_EXTREME = 0.05;
    /** Assumed: the stem of the lightest letters is 3 % of their height. */
    private static final double LEAST_FLAT = 0.03;
    /** Assumed: beside a round end, a shorter flat one is the tip of a serif, as on S and C. */
    private static final double SHORT_FLAT = 0.08;
    /** Assumed: an edge as long as this is flat even where its corners are rounded off. */
    private static final double LONG_FLAT = 0.25;
    /** Rise over run of an edge that counts as level: 2.5 degrees, for lines whose direction is not yet exact. */
    private static final double LEVEL = Math.tan(Math.toRadians(2.5));
    /** A flat edge ends in corners; the facets of a round turn by less. Assumed. */
    private static final double CORNER = Math.toRadians(25);
    /** Assumed: W, the widest letter, is up to 1.5 times as wide as high in wide faces. */
    private static final double JOINED_WIDTH = 1.6;
    /** Assumed: smaller rises and dips, in heights of the piece, are no letters. */
    private static final double LEAST_RISE = 0.08;
    private static final int LEAST_TOPS = 3;

    /** Measures one outline; v is up. */
    static Ends of(Polygon upright) {
        Coordinate[] ring = CoordinateArrays.removeRepeatedPoints(upright.getExteriorRing().getCoordinates());
        if (!Orientation.isCCW(ring)) {
            CoordinateArrays.reverse(ring);
        }
        Envelope box = upright.getEnvelopeInternal();
        if (isWide(box)) {
            List<Level> bottoms = new ArrayList<>();
            List<Level> tops = new ArrayList<>();
            extremes(ring, LEAST_RISE * box.getHeight(), bottoms, tops);
            if (tops.size() >= LEAST_TOPS && bottoms.size() >= LEAST_TOPS) {
                return new Ends(bottoms, tops, true);
            }
        }
        List<Level> flatBottoms = new ArrayList<>();
        List<Level> flatTops = new ArrayList<>();
        flats(ring, box, flatBottoms, flatTops);
        return new Ends(List.of(end(flatBottoms, ring, -1, box.getHeight())), List.of(end(flatTops, ring, 1, box.getHeight())), false);
    }

    /** True for what is wider than any letter, and so may be a word in one piece. */
    static boolean isWide(Envelope box) {
        return box.getWidth() > JOINED_WIDTH * box.getHeight();
    }

    Level bottom() {
        return bottoms.get(0);
    }

    Level top() {
        return tops.get(0);
    }

    private static Level end(List<Level> flats, Coordinate[] ring, int sign, double height) {
        int n = ring.length - 1;
        int extreme = 0;
        for (int i = 1; i < n; i++) {
            extreme = sign * ring[i].y > sign * ring[extreme].y ? i : extreme;
        }
        boolean smooth = Math.abs(turn(ring, extreme + n - 1, n)) < CORNER;
        return flats.isEmpty() || smooth && flats.get(0).lengthMm() < SHORT_FLAT * height
                ? new Level(ring[extreme].x, ring[extreme].y, false, 0, 0) : flats.get(0);
    }

    /** The longest flat edge next to either extreme. */
    private static void flats(Coordinate[] ring, Envelope box, List<Level> bottoms, List<Level> tops) {
        int n = ring.length - 1;
        double height = box.getHeight();
        double longestBottom = 0;
        double longestTop = 0;
        int start = 0;
        while (start < n && isLevel(ring, start, n)) {
            start++; // begin outside a level run, so that none is cut in two
        }
        for (int i = start; i < start + n; i++) {
            if (!isLevel(ring, i, n)) {
                continue;
            }
            int last = i;
            while (last + 1 < start + n && isLevel(ring, last + 1, n) && goesOn(ring, last, n)) {
                last++;
            }
            Coordinate from = ring[i % n];
            Coordinate to = ring[(last + 1) % n];
            double run = to.x - from.x;
            double length = Math.abs(run);
            boolean corners = turn(ring, i - 1 + n, n) >= CORNER && turn(ring, last, n) >= CORNER;
            double level = run > 0 ? Math.min(from.y, to.y) : Math.max(from.y, to.y);
            if (length > 0 && length >= LEAST_FLAT * height && (corners || length >= LONG_FLAT * height && Math.abs(to.y - from.y) < LEVEL * length)) {
                Level flat = new Level((from.x + to.x) / 2, level, true, (to.y - from.y) / run, length);
                // counter-clockwise, so that the lower side runs to the right
                if (run > 0 && level - box.getMinY() <= NEAR_EXTREME * height && length > longestBottom) {
                    bottoms.clear();
                    bottoms.add(flat);
                    longestBottom = length;
                } else if (run < 0 && box.getMaxY() - level <= NEAR_EXTREME * height && length > longestTop) {
                    tops.clear();
                    tops.add(flat);
                    longestTop = length;
                }
            }
            i = last;
        }
    }

    private static boolean isLevel(Coordinate[] ring, int i, int n) {
        Coordinate from = ring[i % n];
        Coordinate to = ring[(i + 1) % n];
        return Math.abs(to.y - from.y) <= LEVEL * Math.abs(to.x - from.x);
    }

    private static boolean goesOn(Coordinate[] ring, int i, int n) {
        return (ring[(i + 1) % n].x - ring[i % n].x) * (ring[(i + 2) % n].x - ring[(i + 1) % n].x) > 0;
    }

    /** By how much the ring turns to the left after an edge; a right turn is no corner of an end. */
    private static double turn(Coordinate[] ring, int edge, int n) {
        Coordinate a = ring[edge % n];
        Coordinate b = ring[(edge + 1) % n];
        Coordinate c = ring[(edge + 2) % n];
        return Math.IEEEremainder(Math.atan2(c.y - b.y, c.x - b.x) - Math.atan2(b.y - a.y, b.x - a.x), 2 * Math.PI);
    }

    /** The rises and dips of a ring that are at least so prominent, each where the material ends. */
    private static void extremes(Coordinate[] ring, double least, List<Level> bottoms, List<Level> tops) {
        int n = ring.length - 1;
        List<Integer> turning = turning(ring, n, least);
        for (int index : turning) {
            Coordinate before = ring[(index - 1 + n) % n];
            Coordinate at = ring[index];
            Coordinate after = ring[(index + 1) % n];
            boolean top = Math.max(before.y, after.y) <= at.y && Math.min(before.y, after.y) < at.y;
            boolean outer = Orientation.index(before, at, after) == Orientation.COUNTERCLOCKWISE;
            if (outer) {
                (top ? tops : bottoms).add(new Level(at.x, at.y, false, 0, 0));
            }
        }
    }

    /** Where the height of a ring turns back by at least so much: highest and lowest places by turns. */
    private static List<Integer> turning(Coordinate[] ring, int n, double least) {
        int lowest = 0;
        for (int i = 1; i < n; i++) {
            lowest = ring[i].y < ring[lowest].y ? i : lowest;
        }
        List<Integer> found = new ArrayList<>(List.of(lowest));
        boolean rising = true;
        int best = lowest;
        for (int k = 1; k <= n; k++) {
            int i = (lowest + k) % n;
            double beyond = rising ? ring[i].y - ring[best].y : ring[best].y - ring[i].y;
            if (beyond > 0) {
                best = i;
            } else if (-beyond >= least) {
                if (best != lowest) {
                    found.add(best);
                }
                rising = !rising;
                best = i;
            }
        }
        return found;
    }
}
