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
    /** Points nearer than this share of the chord error are one: what overlays leave. */
    private static final double SAME_POINT_SHARE = 0.25;

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
        for (int i = 0; i < points.length; i++) {
            corners[i] = isCorner(i, chordErrorMm);
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

    private boolean isCorner(int i, double chordErrorMm) {
        double turn = Math.abs(turns[i]);
        double shorter = Math.min(point(i).distance(point(i - 1)), point(i).distance(point(i + 1)));
        if (shorter / 2 * Math.tan(turn / 4) > CHORD_SLACK * chordErrorMm) {
            return true;
        }
        double beside = Math.max(Math.abs(turns[Math.floorMod(i - 1, points.length)]), Math.abs(turns[Math.floorMod(i + 1, points.length)]));
        return turn > CLEAR_TURN && turn > CLEAR_FACTOR * beside;
    }
}
