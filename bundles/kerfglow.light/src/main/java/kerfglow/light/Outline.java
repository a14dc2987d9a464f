// SPDX-License-Identifier: Apache-2.0
package kerfglow.light;

import java.util.Arrays;
import org.locationtech.jts.algorithm.Orientation;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Polygon;

/**
 * The walls of a can in plan, sorted into bins so that the first wall in a direction is found without looking at all. Every edge runs
 * with the inside on its left (y taken upwards), so that its normal points inwards. Immutable.
 */
final class Outline {
    /** Bins along the longer side of the box: few edges in each, and few bins on the way to a wall. */
    private static final int BINS = 64;
    /** How far beyond its ends an edge still stops light, as a share of its length: nothing leaks through a corner. */
    private static final double CLOSED = 1e-9;
    /** A wall nearer than this (mm) is the one that the light comes from. */
    private static final double NEAREST_MM = 1e-7;

    final Envelope box;
    /** From (ax, ay) to (ax + ex, ay + ey), mm. */
    final double[] ax;
    final double[] ay;
    final double[] ex;
    final double[] ey;
    /** The first edge of each ring, and one past the last. */
    final int[] rings;

    private final double bin;
    private final int columns;
    private final int rows;
    private final int[] starts;
    private final int[] members;

    /** What a ray meets; reused. */
    static final class Hit {
        /** How far the wall is, mm; 0 where none was met. */
        double distance;
        /** Which edge it is; -1 where none was met. */
        int edge;
    }

    Outline(Polygon inside) {
        int count = inside.getNumPoints() - 1 - inside.getNumInteriorRing();
        ax = new double[count];
        ay = new double[count];
        ex = new double[count];
        ey = new double[count];
        rings = new int[inside.getNumInteriorRing() + 2];
        int next = add(inside.getExteriorRing(), true, 0);
        for (int i = 0; i < inside.getNumInteriorRing(); i++) {
            rings[i + 1] = next;
            next = add(inside.getInteriorRingN(i), false, next);
        }
        rings[rings.length - 1] = next;
        box = inside.getEnvelopeInternal();
        bin = Math.max(box.getWidth(), box.getHeight()) / BINS;
        columns = (int) (box.getWidth() / bin) + 1;
        rows = (int) (box.getHeight() / bin) + 1;
        int[] counts = new int[columns * rows + 1];
        visitBins((edge, cell) -> counts[cell + 1]++);
        for (int i = 0; i < columns * rows; i++) {
            counts[i + 1] += counts[i];
        }
        starts = counts;
        members = new int[starts[columns * rows]];
        int[] filled = Arrays.copyOf(starts, columns * rows);
        visitBins((edge, cell) -> members[filled[cell]++] = edge);
    }

    private int add(LinearRing ring, boolean shell, int first) {
        Coordinate[] points = ring.getCoordinates();
        boolean forwards = Orientation.isCCW(points) == shell;
        int n = points.length - 1;
        int at = first;
        for (int i = 0; i < n; i++) {
            Coordinate a = points[forwards ? i : n - i];
            Coordinate b = points[forwards ? i + 1 : n - i - 1];
            ax[at] = a.x;
            ay[at] = a.y;
            ex[at] = b.x - a.x;
            ey[at] = b.y - a.y;
            at++;
        }
        return at;
    }

    private interface BinVisitor {
        void visit(int edge, int cell);
    }

    /** Every bin that an edge may touch, row of bins by row of bins, with a little to spare. */
    private void visitBins(BinVisitor visitor) {
        double spare = bin * CLOSED + NEAREST_MM;
        for (int edge = 0; edge < ax.length; edge++) {
            double top = Math.min(ay[edge], ay[edge] + ey[edge]);
            double bottom = Math.max(ay[edge], ay[edge] + ey[edge]);
            int lastRow = clamp((bottom + spare - box.getMinY()) / bin, rows);
            for (int row = clamp((top - spare - box.getMinY()) / bin, rows); row <= lastRow; row++) {
                double y0 = Math.max(top, box.getMinY() + row * bin - spare);
                double y1 = Math.min(bottom, box.getMinY() + (row + 1) * bin + spare);
                double x0 = ax[edge];
                double x1 = ax[edge] + ex[edge];
                if (Math.abs(ey[edge]) > spare) {
                    x0 = ax[edge] + ex[edge] * (y0 - ay[edge]) / ey[edge];
                    x1 = ax[edge] + ex[edge] * (y1 - ay[edge]) / ey[edge];
                }
                int lastColumn = clamp((Math.max(x0, x1) + spare - box.getMinX()) / bin, columns);
                for (int column = clamp((Math.min(x0, x1) - spare - box.getMinX()) / bin, columns); column <= lastColumn; column++) {
                    visitor.visit(edge, row * columns + column);
                }
            }
        }
    }

    private static int clamp(double place, int count) {
        return Math.max(0, Math.min(count - 1, (int) Math.floor(place)));
    }

    int edges() {
        return ax.length;
    }

    double length(int edge) {
        return Math.hypot(ex[edge], ey[edge]);
    }

    /** The square of the distance of a point from an edge, mm². */
    double distance2(int edge, double x, double y) {
        double px = x - ax[edge];
        double py = y - ay[edge];
        double length2 = ex[edge] * ex[edge] + ey[edge] * ey[edge];
        double share = length2 == 0 ? 0 : Math.max(0, Math.min(1, (px * ex[edge] + py * ey[edge]) / length2));
        double dx = px - share * ex[edge];
        double dy = py - share * ey[edge];
        return dx * dx + dy * dy;
    }

    /** True when a point lies inside, by the number of edges to its right. */
    boolean contains(double x, double y) {
        boolean inside = false;
        for (int i = 0; i < ax.length; i++) {
            double dy = y - ay[i];
            if (dy >= 0 != y - ay[i] - ey[i] >= 0 && x < ax[i] + ex[i] * dy / ey[i]) {
                inside = !inside;
            }
        }
        return inside;
    }

    /**
     * The first wall that light from a point inside meets.
     *
     * @param x where it starts; inside or on a wall
     * @param y likewise
     * @param dx its direction, of length 1
     * @param dy likewise
     * @param hit is told what it meets
     */
    void cast(double x, double y, double dx, double dy, Hit hit) {
        hit.edge = -1;
        hit.distance = 0;
        double best = Double.POSITIVE_INFINITY;
        double left = box.getMinX();
        double top = box.getMinY();
        int column = clamp((x - left) / bin, columns);
        int row = clamp((y - top) / bin, rows);
        int stepX = dx > 0 ? 1 : -1;
        int stepY = dy > 0 ? 1 : -1;
        double perX = dx == 0 ? Double.POSITIVE_INFINITY : bin / Math.abs(dx);
        double perY = dy == 0 ? Double.POSITIVE_INFINITY : bin / Math.abs(dy);
        double nextX = dx == 0 ? Double.POSITIVE_INFINITY : (left + (column + (dx > 0 ? 1 : 0)) * bin - x) / dx;
        double nextY = dy == 0 ? Double.POSITIVE_INFINITY : (top + (row + (dy > 0 ? 1 : 0)) * bin - y) / dy;
        while (column >= 0 && column < columns && row >= 0 && row < rows) {
            int cell = row * columns + column;
            for (int k = starts[cell]; k < starts[cell + 1]; k++) {
                int i = members[k];
                double cross = dx * ey[i] - dy * ex[i];
                if (cross <= 0) {
                    continue; // light from inside meets a wall's inner side only
                }
                double px = ax[i] - x;
                double py = ay[i] - y;
                double t = (px * ey[i] - py * ex[i]) / cross;
                if (t > NEAREST_MM && t < best) {
                    double u = (px * dy - py * dx) / cross;
                    if (u >= -CLOSED && u <= 1 + CLOSED) {
                        best = t;
                        hit.edge = i;
                    }
                }
            }
            if (best <= Math.min(nextX, nextY)) {
                break;
            }
            if (nextX < nextY) {
                column += stepX;
                nextX += perX;
            } else {
                row += stepY;
                nextY += perY;
            }
        }
        hit.distance = hit.edge < 0 ? 0 : best;
    }
}
