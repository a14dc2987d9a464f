// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.artwork;

import org.locationtech.jts.geom.Coordinate;

/**
 * How few straight and circular pieces follow an outline within a tolerance, when pieces begin and end at its nodes. Greedy: each
 * piece goes as far as it can, so the count is small but not proven least. Arcs go through the first, middle and last point.
 */
final class PieceFit {
    /** Below this the three points of an arc lie on a line to within rounding. */
    private static final double FLAT = 1e-12;

    private final Coordinate[] points;
    private final double toleranceMm;

    PieceFit(Coordinate[] points, double toleranceMm) {
        this.points = points;
        this.toleranceMm = toleranceMm;
    }

    /**
     * The number of pieces from the first node to the last.
     *
     * @param nodes places of the nodes among the points, rising
     */
    int pieces(int[] nodes) {
        int pieces = 0;
        int at = 0;
        while (at < nodes.length - 1) {
            at = farthest(nodes, at);
            pieces++;
        }
        return pieces;
    }

    /** Doubling, then halving: a piece that fits over m points costs about m log m. */
    private int farthest(int[] nodes, int from) {
        int fits = from + 1;
        int step = 1;
        while (fits + step < nodes.length && isPiece(nodes[from], nodes[fits + step])) {
            fits += step;
            step *= 2;
        }
        for (; step > 0; step /= 2) {
            if (fits + step < nodes.length && isPiece(nodes[from], nodes[fits + step])) {
                fits += step;
            }
        }
        return fits;
    }

    private boolean isPiece(int from, int to) {
        return isLine(from, to) || isArc(from, to);
    }

    private boolean isLine(int from, int to) {
        Coordinate a = points[from];
        double dx = points[to].x - a.x;
        double dy = points[to].y - a.y;
        double lengthMm = Math.hypot(dx, dy);
        for (int i = from + 1; i < to; i++) {
            double px = points[i].x - a.x;
            double py = points[i].y - a.y;
            double along = lengthMm == 0 ? 0 : (px * dx + py * dy) / lengthMm;
            double aside = lengthMm == 0 ? Math.hypot(px, py) : Math.abs(px * dy - py * dx) / lengthMm;
            if (aside > toleranceMm || along < -toleranceMm || along > lengthMm + toleranceMm) {
                return false;
            }
        }
        return true;
    }

    private boolean isArc(int from, int to) {
        if (to - from < 2) {
            return false;
        }
        Coordinate a = points[from];
        Coordinate b = points[(from + to) / 2];
        Coordinate c = points[to];
        double bx = b.x - a.x;
        double by = b.y - a.y;
        double cx = c.x - a.x;
        double cy = c.y - a.y;
        double cross = 2 * (bx * cy - by * cx);
        double b2 = bx * bx + by * by;
        double c2 = cx * cx + cy * cy;
        if (Math.abs(cross) <= FLAT * Math.max(b2, c2)) {
            return false;
        }
        double x = a.x + (cy * b2 - by * c2) / cross;
        double y = a.y + (bx * c2 - cx * b2) / cross;
        double radiusMm = Math.hypot(a.x - x, a.y - y);
        for (int i = from; i < to; i++) { // points alone would take a square for a circle: middles of segments must lie on it too
            Coordinate p = points[i];
            Coordinate q = points[i + 1];
            if (Math.abs(Math.hypot(p.x - x, p.y - y) - radiusMm) > toleranceMm
                    || Math.abs(Math.hypot((p.x + q.x) / 2 - x, (p.y + q.y) / 2 - y) - radiusMm) > toleranceMm) {
                return false;
            }
        }
        return true;
    }
}
