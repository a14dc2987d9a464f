// SPDX-License-Identifier: Apache-2.0
package kerfglow.geometry;

import org.locationtech.jts.geom.Coordinate;

/** The circle, or straight line, through three vertices of a run of chords. */
final class ArcFit {
    /** Flatter than a nanometre in a metre is straight. */
    private static final double FLAT = 1e-9;
    /** Fewer chords have no vertices a sixth from their ends. */
    private static final int SIXTHS = 6;

    private final RingVertices ring;
    private final int from;
    private final int edges;
    private final double chordErrorMm;
    private final Coordinate a;
    private final Coordinate b;
    private final Coordinate c;

    /**
     * @param ring the outline
     * @param from the vertex that the run begins at
     * @param edges how many chords it has
     * @param chordErrorMm how far a chord may lie from the curve
     */
    ArcFit(RingVertices ring, int from, int edges, double chordErrorMm) {
        this.ring = ring;
        this.chordErrorMm = chordErrorMm;
        this.from = from;
        this.edges = edges;
        // the ends of a run that nearly closes lie too near each other to say where the centre is
        boolean wide = ring.point(from).distance(ring.point(from + edges)) > ring.point(from).distance(ring.point(from + edges / 2));
        int inset = wide || edges < SIXTHS ? 0 : edges / SIXTHS;
        this.a = ring.point(from + inset);
        this.b = ring.point(from + edges / 2);
        this.c = ring.point(from + edges - inset);
    }

    /** The radius of the circle, mm; infinite for a straight line. */
    double radiusMm() {
        double cross = (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
        double chord = a.distance(c);
        return Math.abs(cross) * 2 < chord * chord * FLAT ? Double.POSITIVE_INFINITY
                : a.distance(b) * b.distance(c) * chord / Math.abs(cross) / 2;
    }

    /**
     * The farthest that a vertex lies off a circle of a given radius that passes through the middle one, its centre on the same ray, or a
     * chord's middle by more than the chord error; infinite where there is no such circle.
     */
    double residualMm(double givenRadiusMm) {
        double bx = b.x - a.x;
        double by = b.y - a.y;
        double cx = c.x - a.x;
        double cy = c.y - a.y;
        double cross = 2 * (bx * cy - by * cx);
        double chord = Math.hypot(cx, cy);
        if (chord == 0) {
            return Double.POSITIVE_INFINITY;
        }
        if (Math.abs(cross) < chord * chord * FLAT || Double.isInfinite(givenRadiusMm)) { // flatter than a nanometre in a metre
            return lineResidualMm(cx / chord, cy / chord);
        }
        double b2 = bx * bx + by * by;
        double c2 = cx * cx + cy * cy;
        double ux = (cy * b2 - by * c2) / cross;
        double uy = (bx * c2 - cx * b2) / cross;
        double radius = Math.hypot(ux, uy);
        double share = givenRadiusMm / radius;
        double x = b.x + (a.x + ux - b.x) * share;
        double y = b.y + (a.y + uy - b.y) * share;
        radius *= share;
        double most = 0;
        for (int i = 0; i <= edges; i++) {
            Coordinate p = ring.point(from + i);
            most = Math.max(most, Math.abs(Math.hypot(p.x - x, p.y - y) - radius));
            if (i < edges) {
                Coordinate q = ring.point(from + i + 1);
                double middle = Math.hypot((p.x + q.x) / 2 - x, (p.y + q.y) / 2 - y) - radius;
                most = Math.max(most, Math.abs(middle) - chordErrorMm);
            }
        }
        return most;
    }

    private double lineResidualMm(double dx, double dy) {
        double most = 0;
        for (int i = 0; i <= edges; i++) {
            Coordinate p = ring.point(from + i);
            most = Math.max(most, Math.abs(dx * (p.y - a.y) - dy * (p.x - a.x)));
        }
        return most;
    }
}
