// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.artwork;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.algorithm.Intersection;
import org.locationtech.jts.algorithm.Orientation;
import org.locationtech.jts.algorithm.PolygonNodeTopology;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;

/**
 * Two outlines that come near each other, or one that comes near itself: where they cross, and where they run side by side.
 * Segments are handed in pair by pair.
 */
final class NearPair {
    /** Where they cross: the point, and its distance along the first and the second outline, mm. */
    record Crossing(Coordinate at, double stationMm, double otherStationMm) {
    }

    private final Contour a;
    private final Contour b;
    private final double[] stationsA;
    private final double[] stationsB;
    private final double withinMm;
    private final double greatestSine;
    private final List<Crossing> crossings = new ArrayList<>();
    private final Stretches alongA = new Stretches();
    private final Stretches alongB = new Stretches();

    NearPair(Contour a, double[] stationsA, Contour b, double[] stationsB, double withinMm, double greatestSine) {
        this.a = a;
        this.b = b;
        this.stationsA = stationsA;
        this.stationsB = stationsB;
        this.withinMm = withinMm;
        this.greatestSine = greatestSine;
    }

    Contour a() {
        return a;
    }

    Contour b() {
        return b;
    }

    double[] stationsA() {
        return stationsA;
    }

    double[] stationsB() {
        return stationsB;
    }

    boolean isOneOutline() {
        return a == b;
    }

    List<Crossing> crossings() {
        return crossings;
    }

    Stretches alongA() {
        return alongA;
    }

    Stretches alongB() {
        return alongB;
    }

    /** Takes in segment i of the first outline with segment j of the second. */
    void add(int i, int j) {
        Coordinate[] p = a.points();
        Coordinate[] q = b.points();
        addSideBySide(i, j);
        if (!Envelope.intersects(p[i], p[i + 1], q[j], q[j + 1])) {
            return;
        }
        int start = Orientation.index(p[i], p[i + 1], q[j]);
        int end = Orientation.index(p[i], p[i + 1], q[j + 1]);
        int otherStart = Orientation.index(q[j], q[j + 1], p[i]);
        int otherEnd = Orientation.index(q[j], q[j + 1], p[i + 1]);
        if (start * end < 0 && otherStart * otherEnd < 0) {
            Coordinate at = Intersection.intersection(p[i], p[i + 1], q[j], q[j + 1]);
            if (at != null) {
                addCrossing(at, i, j);
            }
        } else if (start == 0 && !q[j].equals2D(p[i + 1]) && Envelope.intersects(p[i], p[i + 1], q[j])) {
            boolean atNode = q[j].equals2D(p[i]);
            addIfThrough(q[j], atNode ? before(a, i) : p[i], p[i + 1], before(b, j), q[j + 1], i, j);
        } else if (otherStart == 0 && !p[i].equals2D(q[j]) && !p[i].equals2D(q[j + 1]) && Envelope.intersects(q[j], q[j + 1], p[i])) {
            addIfThrough(p[i], before(a, i), p[i + 1], q[j], q[j + 1], i, j);
        }
    }

    /** At a node touching and crossing differ only in how the four branches lie around it. */
    private void addIfThrough(Coordinate node, Coordinate a0, Coordinate a1, Coordinate b0, Coordinate b1, int i, int j) {
        if (a0 != null && b0 != null && PolygonNodeTopology.isCrossing(node, a0, a1, b0, b1)) {
            addCrossing(node.copy(), i, j);
        }
    }

    private void addCrossing(Coordinate at, int i, int j) {
        crossings.add(new Crossing(at, stationsA[i] + at.distance(a.points()[i]), stationsB[j] + at.distance(b.points()[j])));
    }

    /** The point before one of an outline's points; null before the start of an open one. */
    private static Coordinate before(Contour contour, int i) {
        if (i > 0) {
            return contour.points()[i - 1];
        }
        return contour.isRing() ? contour.points()[contour.points().length - 2] : null;
    }

    private void addSideBySide(int i, int j) {
        Coordinate p = a.points()[i];
        Coordinate q = b.points()[j];
        double lengthMm = stationsA[i + 1] - stationsA[i];
        double otherMm = stationsB[j + 1] - stationsB[j];
        double ux = (a.points()[i + 1].x - p.x) / lengthMm;
        double uy = (a.points()[i + 1].y - p.y) / lengthMm;
        double vx = (b.points()[j + 1].x - q.x) / otherMm;
        double vy = (b.points()[j + 1].y - q.y) / otherMm;
        if (Math.abs(ux * vy - uy * vx) > greatestSine) {
            return;
        }
        double first = (q.x - p.x) * ux + (q.y - p.y) * uy;
        double second = first + otherMm * (ux * vx + uy * vy);
        double from = Math.max(0, Math.min(first, second));
        double to = Math.min(lengthMm, Math.max(first, second));
        if (to <= from) {
            return;
        }
        double middle = (from + to) / 2;
        double mx = p.x + middle * ux - q.x;
        double my = p.y + middle * uy - q.y;
        if (Math.abs(mx * vy - my * vx) > withinMm) {
            return;
        }
        alongA.add(stationsA[i] + from, stationsA[i] + to);
        double along = mx * vx + my * vy;
        double half = (to - from) / 2;
        alongB.add(stationsB[j] + Math.max(0, along - half), stationsB[j] + Math.min(otherMm, along + half));
    }
}
