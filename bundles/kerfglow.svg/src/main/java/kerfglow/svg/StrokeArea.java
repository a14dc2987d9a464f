// SPDX-License-Identifier: Apache-2.0
package kerfglow.svg;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;

/**
 * The rings whose nonzero fill is what a pen paints: SVG 2, 13.5 "Stroke properties".
 *
 * <p>Each ring is the sum of one rectangle for each edge and one wedge for each join, all turning the same way, with the sides that
 * cancel left out; so no winding number is ever 0 inside the stroke. Works on flattened corners, in user units; arcs of round
 * joins and caps are flattened as curves are.
 */
final class StrokeArea {
    /** Below this share of a full turn a join has no wedge worth a corner: rounding of doubles, geometry. */
    private static final double STRAIGHT = 1e-9;
    private final Pen pen;
    private final double half;
    private final double roundStep;
    private final List<Coordinate[]> rings = new ArrayList<>();
    private List<Coordinate> ring = new ArrayList<>();

    /** How line ends look. */
    enum Cap { BUTT, ROUND, SQUARE }

    /** How corners look. */
    enum Join { MITER, ROUND, BEVEL }

    /**
     * A pen.
     *
     * @param width user units
     * @param dashes lengths on and off in turn, user units; empty for a whole line
     * @param offset how far into the dashes the line starts, user units
     */
    record Pen(double width, Cap cap, Join join, double miterLimit, double[] dashes, double offset) {
    }

    private StrokeArea(Pen pen, double roundStep) {
        this.pen = pen;
        this.half = pen.width() / 2;
        this.roundStep = roundStep;
    }

    /** @param roundStep the largest angle, radians, between corners of a round join or cap */
    static List<Coordinate[]> rings(List<Subpath> subpaths, Pen pen, double roundStep) {
        StrokeArea area = new StrokeArea(pen, roundStep);
        for (Subpath subpath : subpaths) {
            if (pen.dashes().length == 0) {
                area.stroke(subpath);
            } else {
                Dashes.cut(subpath, pen.dashes(), pen.offset()).forEach(area::stroke);
            }
        }
        return area.rings;
    }

    private void stroke(Subpath subpath) {
        Line line = Line.of(subpath);
        if (line.n == 1) {
            dot(line);
        } else if (subpath.closed() && line.n > 2) {
            side(line, true);
            endRing();
            side(line.reversed(), true);
            endRing();
        } else {
            // A closed subpath that runs there and back: its two turns are joins.
            Line back = line.reversed();
            side(line, false);
            end(line, subpath.closed());
            side(back, false);
            end(back, subpath.closed());
            endRing();
        }
    }

    /** A subpath without length shows its caps only; a square one lies along the x axis. */
    private void dot(Line line) {
        double x = line.x[0];
        double y = line.y[0];
        if (pen.cap() == Cap.SQUARE) {
            add(x - half, y - half);
            add(x + half, y - half);
            add(x + half, y + half);
            add(x - half, y + half);
        } else if (pen.cap() == Cap.ROUND) {
            arc(x, y, 0, 2 * Math.PI);
        }
        endRing();
    }

    /** The offset on the left of travel (right where y runs down), with the joins. */
    private void side(Line line, boolean closed) {
        int edges = closed ? line.n : line.n - 1;
        if (!closed) {
            offset(line, 0, 0);
        }
        int joins = closed ? line.n : edges - 1;
        for (int k = 0; k < joins; k++) {
            join(line, k, (k + 1) % line.n);
        }
        if (!closed) {
            offset(line, line.n - 1, edges - 1);
        }
    }

    private void join(Line line, int in, int out) {
        double cross = line.dx[in] * line.dy[out] - line.dy[in] * line.dx[out];
        double dot = line.dx[in] * line.dx[out] + line.dy[in] * line.dy[out];
        double turn = Math.atan2(cross, dot);
        // The left offset lies at (dy, -dx): on the outside of a turn to positive angles.
        if (Math.abs(turn) < STRAIGHT) {
            offset(line, out, out);
        } else if (turn > 0 || Math.abs(turn) > Math.PI - STRAIGHT) {
            outer(line, in, out, Math.abs(turn));
        } else {
            inner(line, in, out, turn);
        }
    }

    private void outer(Line line, int in, int out, double turn) {
        double x = line.x[out];
        double y = line.y[out];
        offset(line, out, in);
        // Between the chords of one curve the pen goes round: its outer edge then keeps the chord error.
        if (pen.join() == Join.ROUND || !line.corner[out]) {
            arc(x, y, Math.atan2(-line.dx[in], line.dy[in]), turn);
        } else if (pen.join() == Join.MITER && 1 <= pen.miterLimit() * Math.cos(turn / 2)) {
            // miter length / width = 1 / sin(theta / 2) with theta the inside angle, so 1 / cos(turn / 2).
            double reach = half * Math.tan(turn / 2);
            add(x + half * line.dy[in] + reach * line.dx[in], y - half * line.dx[in] + reach * line.dy[in]);
        }
        offset(line, out, out);
    }

    /** Where both edges are long enough the offsets simply meet; else by way of the corner, which keeps the sum of rectangles. */
    private void inner(Line line, int in, int out, double turn) {
        double reach = half * Math.tan(-turn / 2);
        if (reach <= line.length[in] && reach <= line.length[out] && -turn < Math.PI / 2) {
            add(line.x[out] + half * line.dy[in] - reach * line.dx[in], line.y[out] - half * line.dx[in] - reach * line.dy[in]);
            return;
        }
        offset(line, out, in);
        add(line.x[out], line.y[out]);
        offset(line, out, out);
    }

    private void end(Line line, boolean turnsBack) {
        int edge = line.n - 2;
        double x = line.x[line.n - 1];
        double y = line.y[line.n - 1];
        if (turnsBack ? pen.join() == Join.ROUND : pen.cap() == Cap.ROUND) {
            arc(x, y, Math.atan2(-line.dx[edge], line.dy[edge]), Math.PI);
        } else if (!turnsBack && pen.cap() == Cap.SQUARE) {
            double ex = x + half * line.dx[edge];
            double ey = y + half * line.dy[edge];
            add(ex + half * line.dy[edge], ey - half * line.dx[edge]);
            add(ex - half * line.dy[edge], ey + half * line.dx[edge]);
        }
    }

    private void arc(double x, double y, double from, double turn) {
        int steps = Math.max(1, (int) Math.ceil(turn / roundStep));
        for (int i = 1; i < steps; i++) {
            double angle = from + turn * i / steps;
            add(x + half * Math.cos(angle), y + half * Math.sin(angle));
        }
        if (turn >= 2 * Math.PI) {
            add(x + half * Math.cos(from), y + half * Math.sin(from));
        }
    }

    private void offset(Line line, int corner, int edge) {
        add(line.x[corner] + half * line.dy[edge], line.y[corner] - half * line.dx[edge]);
    }

    private void add(double x, double y) {
        ring.add(new Coordinate(x, y));
    }

    private void endRing() {
        if (ring.size() > 2) {
            rings.add(ring.toArray(Coordinate[]::new));
        }
        ring = new ArrayList<>();
    }

    /** Corners without repeats, with unit direction and length of the edge that leaves each. */
    private static final class Line {
        final double[] x;
        final double[] y;
        final double[] dx;
        final double[] dy;
        final double[] length;
        final boolean[] corner;
        final int n;

        private Line(double[] x, double[] y, boolean[] corner, int n) {
            this.x = x;
            this.y = y;
            this.corner = corner;
            this.n = n;
            dx = new double[n];
            dy = new double[n];
            length = new double[n];
            for (int i = 0; i < n; i++) {
                int next = (i + 1) % n;
                double ex = x[next] - x[i];
                double ey = y[next] - y[i];
                length[i] = Math.hypot(ex, ey);
                dx[i] = length[i] == 0 ? 1 : ex / length[i];
                dy[i] = length[i] == 0 ? 0 : ey / length[i];
            }
        }

        static Line of(Subpath subpath) {
            double[] x = new double[subpath.size()];
            double[] y = new double[subpath.size()];
            boolean[] corner = new boolean[subpath.size()];
            int n = 0;
            for (int i = 0; i < subpath.size(); i++) {
                double px = subpath.xs()[i];
                double py = subpath.ys()[i];
                if (n == 0 || px != x[n - 1] || py != y[n - 1]) {
                    x[n] = px;
                    y[n++] = py;
                }
                corner[n - 1] |= subpath.corners()[i];
            }
            while (subpath.closed() && n > 1 && x[0] == x[n - 1] && y[0] == y[n - 1]) {
                n--;
            }
            return new Line(x, y, corner, n);
        }

        Line reversed() {
            double[] rx = new double[n];
            double[] ry = new double[n];
            boolean[] reversedCorner = new boolean[n];
            for (int i = 0; i < n; i++) {
                rx[i] = x[n - 1 - i];
                ry[i] = y[n - 1 - i];
                reversedCorner[i] = corner[n - 1 - i];
            }
            return new Line(rx, ry, reversedCorner, n);
        }
    }
}
