// SPDX-License-Identifier: Apache-2.0
package kerfglow.geometry;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.LinearRing;

/** The vertices of a ring, how far each turns, and which are corners and not places where a curve was flattened. */
final class RingVertices {
    /** A chord may depart by this many chord errors before it must be a corner; flatteners spread chords unevenly where curvature changes. */
    private static final double CHORD_SLACK = 2;
    /** Beside short chords: a vertex that turns this far, radians (20 degrees), is a corner if its neighbours turn far less. Assumed. */
    private static final double CLEAR_TURN = Math.toRadians(20);
    /** Far less: by this factor. Assumed. */
    private static final double CLEAR_FACTOR = 2.5;
    /** Points no farther apart than the chord error are one: overlays leave such jogs, and chords of any curve that matters are longer. */
    private static final double SAME_POINT_SHARE = 1;

    final Coordinate[] points;
    /** Radians, positive to the left. */
    final double[] turns;
    final boolean[] corners;

    RingVertices(LinearRing ring, double chordErrorMm) {
        points = distinct(ring, chordErrorMm * SAME_POINT_SHARE);
        turns = new double[points.length];
        for (int i = 0; i < points.length; i++) {
            turns[i] = turn(point(i - 1), point(i), point(i + 1));
        }
        corners = new boolean[points.length];
        boolean[] sure = new boolean[points.length];
        for (int i = 0; i < points.length; i++) {
            sure[i] = isBeyondCurve(i, chordErrorMm);
        }
        for (int i = 0; i < points.length; i++) {
            corners[i] = sure[i] || standsOut(i, sure);
        }
    }

    private static Coordinate[] distinct(LinearRing ring, double apartMm) {
        List<Coordinate> kept = new ArrayList<>();
        for (int i = 0; i < ring.getNumPoints() - 1; i++) {
            Coordinate at = ring.getCoordinateN(i);
            if (kept.isEmpty() || kept.get(kept.size() - 1).distance(at) > apartMm) {
                kept.add(at.copy());
            }
        }
        while (kept.size() > 1 && kept.get(0).distance(kept.get(kept.size() - 1)) <= apartMm) {
            kept.remove(kept.size() - 1);
        }
        return kept.toArray(new Coordinate[0]);
    }

    /** A vertex by its number, counted round and round. */
    Coordinate point(int i) {
        return points[Math.floorMod(i, points.length)];
    }

    private static double turn(Coordinate a, Coordinate b, Coordinate c) {
        double ux = b.x - a.x;
        double uy = b.y - a.y;
        double vx = c.x - b.x;
        double vy = c.y - b.y;
        return Math.atan2(ux * vy - uy * vx, ux * vx + uy * vy);
    }

    private boolean isBeyondCurve(int i, double chordErrorMm) {
        double shorter = Math.min(point(i).distance(point(i - 1)), point(i).distance(point(i + 1)));
        return shorter / 2 * Math.tan(Math.abs(turns[i]) / 4) > CHORD_SLACK * chordErrorMm;
    }

    /** Against its neighbours, of which those that are corners or turn the other way are no part of a curve that this vertex might belong to. */
    private boolean standsOut(int i, boolean[] sure) {
        double beside = 0;
        for (int neighbour : new int[] {Math.floorMod(i - 1, points.length), Math.floorMod(i + 1, points.length)}) {
            boolean sameCurve = !sure[neighbour] && turns[neighbour] > 0 == turns[i] > 0;
            beside = sameCurve ? Math.max(beside, Math.abs(turns[neighbour])) : beside;
        }
        return Math.abs(turns[i]) > CLEAR_TURN && Math.abs(turns[i]) > CLEAR_FACTOR * beside;
    }
}
