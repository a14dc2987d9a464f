// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.trim;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.algorithm.Orientation;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.LinearRing;

/**
 * Finds the bends of a flattened outline that are tighter than a limit.
 *
 * <p>At a node the radius is the mean length of the edges beside it over the turn there, which for chords of an arc is the arc's
 * radius whatever their lengths. A node that turns by the corner angle or more is a corner and no part of a bend. The least radius of
 * a bend is taken over three nodes, so that one misplaced node does not decide. Nodes that turn to and fro are no bend: what leads up
 * to a bend and what leads away from it must differ in direction too.
 *
 * @param outsideMm least radius where the part bulges, mm
 * @param insideMm least radius where it is hollow, mm
 * @param cornerRadians turn at one node that makes a corner
 * @param cornerRadiusMm radius up to which a rounded corner is folded, mm
 * @param leastTurnRadians turn of a bend that is looked at
 */
record Bends(double outsideMm, double insideMm, double cornerRadians, double cornerRadiusMm, double leastTurnRadians) {
    /** Nodes over which the least radius is taken. */
    private static final int WINDOW = 3;
    /** How far to either side of a bend its turn must be seen to last, in least radii. */
    private static final double BESIDE = 0.25;
    /** The share of its turn that a bend must keep together with what lies beside it. */
    private static final double KEPT = 0.5;
    /** Nodes that wander do not turn this far (a right angle) one way. */
    private static final double SURE_RADIANS = Math.PI / 2;
    private static final double SAME_POINT_MM = 1e-9;
    /** Bends whose mean radius is this near to the least one are arcs. */
    private static final double EVEN_SHARE = 0.02;

    /** The tight bends of one ring, in its order. */
    List<Curve> of(LinearRing ring, boolean hole) {
        Nodes nodes = new Nodes(ring, hole);
        List<Curve> found = new ArrayList<>();
        if (nodes.count < WINDOW) {
            return found;
        }
        int first = 0;
        while (first < nodes.count && isTight(nodes, first) && isTight(nodes, first - 1) && nodes.sameWay(first, first - 1)) {
            first++;
        }
        if (first == nodes.count) {
            add(nodes, 0, nodes.count, ring, found);
            return found;
        }
        int start = -1;
        for (int i = first; i <= first + nodes.count; i++) {
            boolean goesOn = i < first + nodes.count && isTight(nodes, i) && (start < 0 || nodes.sameWay(i, i - 1));
            if (start >= 0 && !goesOn) {
                add(nodes, start, i, ring, found);
                start = -1;
            }
            if (start < 0 && i < first + nodes.count && isTight(nodes, i)) {
                start = i;
            }
        }
        return found;
    }

    private boolean isTight(Nodes nodes, int i) {
        double turn = nodes.turn(i);
        double limit = turn > 0 ? outsideMm : insideMm;
        return turn != 0 && Math.abs(turn) < cornerRadians && nodes.length(i) < limit * Math.abs(turn);
    }

    private void add(Nodes nodes, int from, int to, LinearRing ring, List<Curve> found) {
        double turn = 0;
        for (int i = from; i < to; i++) {
            turn += nodes.turn(i);
        }
        if (Math.abs(turn) < leastTurnRadians) {
            return;
        }
        boolean outside = turn > 0;
        boolean closed = to - from == nodes.count;
        double limit = outside ? outsideMm : insideMm;
        if (!closed && Math.abs(turn) < SURE_RADIANS
                && nodes.across(from, to, limit * BESIDE, cornerRadians) * Math.signum(turn) < KEPT * Math.abs(turn)) {
            return;
        }
        int window = Math.min(WINDOW, to - from);
        double least = Double.POSITIVE_INFINITY;
        int at = from;
        for (int i = from; i + window <= to; i++) {
            double length = 0;
            double bend = 0;
            for (int k = i; k < i + window; k++) {
                length += nodes.length(k);
                bend += Math.abs(nodes.turn(k));
            }
            if (length / bend < least - SAME_POINT_MM) {
                least = length / bend;
                at = i + window / 2;
            }
        }
        if (least <= cornerRadiusMm || least >= limit) {
            return;
        }
        double all = 0;
        for (int i = from; i < to; i++) {
            all += nodes.length(i);
        }
        // on an arc every place is as tight as the others, and a person looks in the middle
        boolean even = Math.abs(all / Math.abs(turn) - least) < EVEN_SHARE * least;
        Coordinate marker = nodes.point(even ? (from + to) / 2 : at);
        List<Coordinate> line = new ArrayList<>();
        for (int i = from - 1; i <= to; i++) {
            line.add(nodes.point(i));
        }
        if (closed) {
            line = new ArrayList<>(List.of(ring.getCoordinates()));
        }
        found.add(new Curve(ring.getFactory().createLineString(line.toArray(new Coordinate[0])), least, marker, outside));
    }

    /** A ring's nodes with their turns, positive where the part bulges; any number stands for a node, round and round. */
    private static final class Nodes {
        private final List<Coordinate> points = new ArrayList<>();
        /** 1 when a turn to the left is a bulge, -1 when it is a hollow. */
        private final double way;
        private final double[] turns;
        private final double[] lengths;
        final int count;

        Nodes(LinearRing ring, boolean hole) {
            Coordinate[] all = ring.getCoordinates();
            for (int i = 0; i < all.length - 1; i++) {
                if (points.isEmpty() || all[i].distance(points.get(points.size() - 1)) > SAME_POINT_MM) {
                    points.add(all[i]);
                }
            }
            count = points.size();
            turns = new double[count];
            lengths = new double[count];
            way = Orientation.isCCW(all) == hole ? -1 : 1;
            for (int i = 0; i < count; i++) {
                Coordinate before = point(i - 1);
                Coordinate here = point(i);
                Coordinate after = point(i + 1);
                double ax = here.x - before.x;
                double ay = here.y - before.y;
                double bx = after.x - here.x;
                double by = after.y - here.y;
                turns[i] = way * turn(ax, ay, bx, by);
                lengths[i] = (Math.hypot(ax, ay) + Math.hypot(bx, by)) / 2;
            }
        }

        Coordinate point(int i) {
            return points.get(Math.floorMod(i, count));
        }

        double turn(int i) {
            return turns[Math.floorMod(i, count)];
        }

        double length(int i) {
            return lengths[Math.floorMod(i, count)];
        }

        boolean sameWay(int i, int j) {
            return turn(i) > 0 == turn(j) > 0;
        }

        /** The turn from what leads up to a bend to what leads away from it, each seen as a whole over a distance or up to a corner. */
        double across(int from, int to, double withinMm, double cornerRadians) {
            Coordinate before = onOneSide(from, -1, withinMm, cornerRadians);
            Coordinate after = onOneSide(to - 1, 1, withinMm, cornerRadians);
            return way * turn(point(from).x - before.x, point(from).y - before.y, after.x - point(to - 1).x, after.y - point(to - 1).y);
        }

        private Coordinate onOneSide(int end, int step, double withinMm, double cornerRadians) {
            double walked = 0;
            int i = end + step;
            while (Math.abs(i - end) < count - 1) {
                walked += point(i).distance(point(i - step));
                if (walked >= withinMm || Math.abs(turn(i)) >= cornerRadians) {
                    break;
                }
                i += step;
            }
            return point(i);
        }

        private static double turn(double ax, double ay, double bx, double by) {
            return Math.atan2(ax * by - ay * bx, ax * bx + ay * by);
        }
    }
}
