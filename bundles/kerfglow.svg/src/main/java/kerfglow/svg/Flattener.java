// SPDX-License-Identifier: Apache-2.0
package kerfglow.svg;

import java.awt.geom.AffineTransform;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Turns curves into chords that lie within the chord error of the true curve once {@code toMm} is applied. Every corner lies on
 * the true curve. Works in user units, so that strokes can be made before the transform.
 */
final class Flattener {
    private static final int FIRST_ROOM = 64;
    /** Assumed: a curve that turns less in a node, radians, is drawn smooth; a join there would be thinner than a micrometre. */
    private static final double SMOOTH = 1e-3;
    private final AffineTransform toMm;
    private final double chordErrorMm;
    private final Budget budget;
    private final List<Subpath> done = new ArrayList<>();
    private double[] xs = new double[FIRST_ROOM];
    private double[] ys = new double[FIRST_ROOM];
    private int[] nodes = new int[FIRST_ROOM];
    private boolean[] corners = new boolean[FIRST_ROOM];
    private double firstX;
    private double firstY;
    private double lastX;
    private double lastY;
    private int size;
    private int nodeCount;

    private Flattener(AffineTransform toMm, double chordErrorMm, Budget budget) {
        this.toMm = toMm;
        this.chordErrorMm = chordErrorMm;
        this.budget = budget;
    }

    static List<Subpath> flatten(DrawnPath path, AffineTransform toMm, double chordErrorMm, Budget budget) {
        Flattener f = new Flattener(toMm, chordErrorMm, budget);
        f.run(path);
        return f.done;
    }

    private void run(DrawnPath path) {
        int n = 0;
        for (int i = 0; i < path.size(); i++) {
            DrawnPath.Kind kind = path.kind(i);
            switch (kind) {
                case MOVE -> {
                    finish(false);
                    node(path.number(n), path.number(n + 1));
                }
                case LINE -> {
                    double dx = path.number(n) - xs[size - 1];
                    double dy = path.number(n + 1) - ys[size - 1];
                    leaves(dx, dy);
                    node(path.number(n), path.number(n + 1));
                    arrives(dx, dy);
                }
                case QUADRATIC -> quadratic(path, n);
                case CUBIC -> cubic(path, n);
                case ARC -> arc(path, n);
                case CLOSE -> finish(true);
            }
            n += kind.numbers;
        }
        finish(false);
    }

    /** A quadratic's second derivative is constant: the chord of a step h departs by h² / 8 of it. */
    private void quadratic(DrawnPath p, int n) {
        double x0 = xs[size - 1];
        double y0 = ys[size - 1];
        double x1 = p.number(n);
        double y1 = p.number(n + 1);
        double x2 = p.number(n + 2);
        double y2 = p.number(n + 3);
        leaves(x1 - x0, y1 - y0, x2 - x0, y2 - y0);
        int steps = stepsFor(2 * lengthMm(x0 - 2 * x1 + x2, y0 - 2 * y1 + y2));
        for (int i = 1; i < steps; i++) {
            double t = (double) i / steps;
            double s = 1 - t;
            corner(s * s * x0 + 2 * s * t * x1 + t * t * x2, s * s * y0 + 2 * s * t * y1 + t * t * y2);
        }
        node(x2, y2);
        arrives(x2 - x1, y2 - y1, x2 - x0, y2 - y0);
    }

    /** A cubic's second derivative is largest at an end: 6 times the larger second difference. */
    private void cubic(DrawnPath p, int n) {
        double x0 = xs[size - 1];
        double y0 = ys[size - 1];
        double x1 = p.number(n);
        double y1 = p.number(n + 1);
        double x2 = p.number(n + 2);
        double y2 = p.number(n + 3);
        double x3 = p.number(n + 4);
        double y3 = p.number(n + 5);
        double bend = Math.max(lengthMm(x0 - 2 * x1 + x2, y0 - 2 * y1 + y2), lengthMm(x1 - 2 * x2 + x3, y1 - 2 * y2 + y3));
        leaves(x1 - x0, y1 - y0, x2 - x0, y2 - y0, x3 - x0, y3 - y0);
        int steps = stepsFor(6 * bend);
        for (int i = 1; i < steps; i++) {
            double t = (double) i / steps;
            double s = 1 - t;
            double a = s * s * s;
            double b = 3 * s * s * t;
            double c = 3 * s * t * t;
            double d = t * t * t;
            corner(a * x0 + b * x1 + c * x2 + d * x3, a * y0 + b * y1 + c * y2 + d * y3);
        }
        node(x3, y3);
        arrives(x3 - x2, y3 - y2, x3 - x1, y3 - y1, x3 - x0, y3 - y0);
    }

    /** An ellipse is a circle under a linear map: its chord departs by at most the longest half axis times 1 - cos(step / 2). */
    private void arc(DrawnPath p, int n) {
        double ux = p.number(n + 2);
        double uy = p.number(n + 3);
        double vx = p.number(n + 4);
        double vy = p.number(n + 5);
        double start = p.number(n + 6);
        double turn = p.number(n + 7);
        double longest = Linear.largestStretch(new AffineTransform(
                toMm.getScaleX() * ux + toMm.getShearX() * uy, toMm.getShearY() * ux + toMm.getScaleY() * uy,
                toMm.getScaleX() * vx + toMm.getShearX() * vy, toMm.getShearY() * vx + toMm.getScaleY() * vy, 0, 0));
        double way = Math.signum(turn);
        leaves(way * (Math.cos(start) * vx - Math.sin(start) * ux), way * (Math.cos(start) * vy - Math.sin(start) * uy));
        int steps = arcSteps(longest, Math.abs(turn), chordErrorMm, budget);
        for (int i = 1; i < steps; i++) {
            double angle = start + turn * i / steps;
            double cos = Math.cos(angle);
            double sin = Math.sin(angle);
            corner(p.number(n) + cos * ux + sin * vx, p.number(n + 1) + cos * uy + sin * vy);
        }
        node(p.number(n + 8), p.number(n + 9));
        double end = start + turn;
        arrives(way * (Math.cos(end) * vx - Math.sin(end) * ux), way * (Math.cos(end) * vy - Math.sin(end) * uy));
    }

    /** Chords for an arc of a circle: sagitta R (1 - cos(step / 2)) within the chord error. */
    static int arcSteps(double radiusMm, double turn, double chordErrorMm, Budget budget) {
        double cos = 1 - chordErrorMm / radiusMm;
        // A circle smaller than the chord error still needs to be a ring: three chords in a full turn.
        double step = cos <= 0.5 ? 2 * Math.PI / 3 : 2 * Math.acos(cos);
        return budget.steps(Math.max(1, Math.ceil(turn / step - 1e-9)));
    }

    private int stepsFor(double secondDerivativeMm) {
        return budget.steps(Math.max(1, Math.ceil(Math.sqrt(secondDerivativeMm / (8 * chordErrorMm)))));
    }

    private double lengthMm(double dx, double dy) {
        return Math.hypot(toMm.getScaleX() * dx + toMm.getShearX() * dy, toMm.getShearY() * dx + toMm.getScaleY() * dy);
    }

    /** Directions in which a segment leaves its start; the first with a length counts. */
    private void leaves(double... directions) {
        double[] d = firstWithLength(directions);
        if (size == 1) {
            firstX = d[0];
            firstY = d[1];
        } else {
            corners[size - 1] = turns(lastX, lastY, d[0], d[1]);
        }
    }

    private void arrives(double... directions) {
        double[] d = firstWithLength(directions);
        lastX = d[0];
        lastY = d[1];
    }

    private static double[] firstWithLength(double[] directions) {
        for (int i = 0; i < directions.length; i += 2) {
            if (directions[i] != 0 || directions[i + 1] != 0) {
                return new double[] {directions[i], directions[i + 1]};
            }
        }
        return new double[2];
    }

    private static boolean turns(double ax, double ay, double bx, double by) {
        return Math.abs(Math.atan2(ax * by - ay * bx, ax * bx + ay * by)) > SMOOTH;
    }

    private void node(double x, double y) {
        if (nodeCount == nodes.length) {
            nodes = Arrays.copyOf(nodes, nodeCount * 2);
        }
        nodes[nodeCount++] = size;
        budget.steps(1);
        corner(x, y);
    }

    private void corner(double x, double y) {
        if (size == xs.length) {
            xs = Arrays.copyOf(xs, size * 2);
            ys = Arrays.copyOf(ys, size * 2);
            corners = Arrays.copyOf(corners, size * 2);
        }
        corners[size] = false;
        xs[size] = x;
        ys[size] = y;
        size++;
    }

    private void finish(boolean closed) {
        if (size == 0) {
            return;
        }
        boolean returns = size > 1 && xs[0] == xs[size - 1] && ys[0] == ys[size - 1];
        if (returns) {
            nodeCount--; // the same node as the first
        }
        if (returns && closed) {
            size--;
        }
        if (size > 1 && closed) {
            if (!returns) {
                double homeX = xs[0] - xs[size - 1];
                double homeY = ys[0] - ys[size - 1];
                corners[size - 1] = turns(lastX, lastY, homeX, homeY);
                arrives(homeX, homeY);
            }
            corners[0] = turns(lastX, lastY, firstX, firstY);
        }
        done.add(new Subpath(Arrays.copyOf(xs, size), Arrays.copyOf(ys, size), Arrays.copyOf(nodes, nodeCount),
                Arrays.copyOf(corners, size), closed));
        size = 0;
        nodeCount = 0;
    }
}
