// SPDX-License-Identifier: Apache-2.0
package kerfglow.outlines;

import java.util.ArrayList;
import java.util.List;

/**
 * A line of straights and arcs, mm.
 *
 * @param vertices in order; each says how the line goes on to the next
 * @param closed true when the last goes on to the first
 */
public record CutPath(List<Vertex> vertices, boolean closed) {
    private static final double QUARTERS = 4;

    /**
     * A point and how the line goes on from it.
     *
     * @param xMm right
     * @param yMm down, as in the proof
     * @param bulge tangent of a quarter of the angle of the arc to the next vertex, positive when the direction turns from the x axis towards the y axis; 0 for a
     *     straight
     */
    public record Vertex(double xMm, double yMm, double bulge) {
    }

    public CutPath {
        vertices = List.copyOf(vertices);
    }

    /** True when the stretch after a vertex is an arc. */
    boolean isArc(int index) {
        return vertices.get(index).bulge() != 0;
    }

    /** The vertex after another, round and round. */
    Vertex next(int index) {
        return vertices.get((index + 1) % vertices.size());
    }

    /** The angle of the arc after a vertex, radians, with the sign of its bulge. */
    double sweep(int index) {
        return QUARTERS * Math.atan(vertices.get(index).bulge());
    }

    /** The radius of the arc after a vertex, mm. */
    double radiusMm(int index) {
        Vertex from = vertices.get(index);
        Vertex to = next(index);
        double chord = Math.hypot(to.xMm() - from.xMm(), to.yMm() - from.yMm());
        return chord * (1 + from.bulge() * from.bulge()) / (QUARTERS * Math.abs(from.bulge()));
    }

    /** The area that it encloses, arcs and all, mm²; positive when it turns from the x axis towards the y axis. */
    public double areaMm2() {
        double sum = 0;
        for (int i = 0; i < vertices.size(); i++) {
            Vertex from = vertices.get(i);
            Vertex to = next(i);
            sum += (from.xMm() * to.yMm() - to.xMm() * from.yMm()) / 2;
            if (isArc(i)) {
                double radius = radiusMm(i);
                sum += radius * radius / 2 * (sweep(i) - Math.sin(sweep(i)));
            }
        }
        return sum;
    }

    /** The same turned over: what is at x is then at {@code aboutMm - x}. */
    CutPath mirrored(double aboutMm) {
        List<Vertex> turned = new ArrayList<>();
        vertices.forEach(vertex -> turned.add(new Vertex(aboutMm - vertex.xMm(), vertex.yMm(), -vertex.bulge())));
        return new CutPath(turned, closed);
    }
}
