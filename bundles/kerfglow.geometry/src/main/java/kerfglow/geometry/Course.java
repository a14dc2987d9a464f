// SPDX-License-Identifier: Apache-2.0
package kerfglow.geometry;

import java.util.function.Consumer;
import org.locationtech.jts.geom.Coordinate;

/** The square of the distance to one edge along a measured line: up to three parabolas, one after the other. */
final class Course {
    /** How much nearer (mm²) another edge must be to take over: above the rounding of squares of 10 m, below 0.0004 mm at any distance. */
    private static final double NEARER_MM2 = 1e-7;
    /** A slope below this is level: an edge square to the measured one, or equal squares. */
    private static final double LEVEL = 1e-12;

    int edge;
    private Coordinate start;
    private double dirX;
    private double dirY;
    private double length;
    /** Ends of the parabolas along the line; the last is the line's end. */
    private final double[] ends = new double[3];
    private final double[] square = new double[3];
    private final double[] linear = new double[3];
    private final double[] constant = new double[3];
    /** For parabolas of a corner its place along the line, otherwise NaN. */
    private final double[] foot = new double[3];
    private final double[] turn = new double[3];
    private int count;

    /**
     * Makes this the course of an edge, given in the axes of the measured line: along it from its start, and beside it.
     */
    void set(int edgeIndex, Coordinate lineStart, double lineDirX, double lineDirY, double lineLength, double fromAlong, double fromBeside,
            double toAlong, double toBeside, double turnAtFrom, double turnAtTo) {
        edge = edgeIndex;
        start = lineStart;
        dirX = lineDirX;
        dirY = lineDirY;
        length = lineLength;
        count = 0;
        double along = toAlong - fromAlong;
        double beside = toBeside - fromBeside;
        double size = Math.sqrt(along * along + beside * beside); // Math.hypot takes ten times as long
        along /= size;
        beside /= size;
        if (Math.abs(along) < LEVEL) {
            double foot0 = -fromBeside * beside;
            if (foot0 <= 0) {
                corner(length, fromAlong, fromBeside, turnAtFrom);
            } else if (foot0 >= size) {
                corner(length, toAlong, toBeside, turnAtTo);
            } else {
                inside(length, fromAlong, fromBeside, along, beside);
            }
            return;
        }
        double entersAt = fromAlong + fromBeside * beside / along;
        double leavesAt = entersAt + size / along;
        if (along > 0) {
            corner(entersAt, fromAlong, fromBeside, turnAtFrom);
            inside(leavesAt, fromAlong, fromBeside, along, beside);
            corner(length, toAlong, toBeside, turnAtTo);
        } else {
            corner(leavesAt, toAlong, toBeside, turnAtTo);
            inside(entersAt, fromAlong, fromBeside, along, beside);
            corner(length, fromAlong, fromBeside, turnAtFrom);
        }
    }

    private void corner(double end, double along, double beside, double turnThere) {
        put(end, 1, -2 * along, along * along + beside * beside, along, turnThere);
    }

    private void inside(double end, double fromAlong, double fromBeside, double along, double beside) {
        double offset = along * fromBeside - beside * fromAlong;
        put(end, beside * beside, 2 * beside * offset, offset * offset, Double.NaN, 0);
    }

    private void put(double end, double c2, double c1, double c0, double footAt, double turnThere) {
        double before = count == 0 ? 0 : ends[count - 1];
        if (end <= before || before >= length) {
            return;
        }
        ends[count] = Math.min(end, length);
        square[count] = c2;
        linear[count] = c1;
        constant[count] = c0;
        foot[count] = footAt;
        turn[count] = turnThere;
        count++;
    }

    double squareAt(double s) {
        int i = at(s);
        return value(i, s);
    }

    private double value(int i, double s) {
        return Math.max(0, (square[i] * s + linear[i]) * s + constant[i]);
    }

    private int at(double s) {
        int i = 0;
        while (i < count - 1 && s >= ends[i]) {
            i++;
        }
        return i;
    }

    /** The first place from {@code from} on where this is nearer than another, or {@code until}. */
    double passesBelow(Course other, double from, double until) {
        double at = from;
        int i = at(from);
        int j = other.at(from);
        while (true) {
            double end = Math.min(until, Math.min(ends[i], other.ends[j]));
            double crossing = firstBelow(square[i] - other.square[j], linear[i] - other.linear[j],
                    constant[i] - other.constant[j] + NEARER_MM2, at, end);
            if (crossing < end) {
                return crossing;
            }
            if (end >= until) {
                return until;
            }
            at = end;
            i = ends[i] <= at && i < count - 1 ? i + 1 : i;
            j = other.ends[j] <= at && j < other.count - 1 ? j + 1 : j;
        }
    }

    private static double firstBelow(double c2, double c1, double c0, double from, double to) {
        if ((c2 * from + c1) * from + c0 < 0) {
            return from;
        }
        if (Math.abs(c2) < LEVEL) {
            double root = -c0 / c1;
            return c1 < -LEVEL && root > from && root < to ? root : to;
        }
        double discriminant = c1 * c1 - 4 * c2 * c0;
        if (discriminant <= 0) {
            return to;
        }
        double q = -0.5 * (c1 + Math.copySign(Math.sqrt(discriminant), c1));
        double one = q / c2;
        double two = c0 / q;
        double low = Math.min(one, two);
        double high = Math.max(one, two);
        // a parabola open upwards dips below between its roots, one open downwards outside of them
        double root = c2 > 0 ? low : high;
        return root > from && root < to ? root : to;
    }

    void emit(double from, double to, Consumer<DistancePiece> each) {
        double at = from;
        for (int i = at(from); i < count && at < to; i++) {
            double end = i == count - 1 ? to : Math.min(to, ends[i]);
            if (end <= at) {
                continue;
            }
            if (Double.isNaN(foot[i])) {
                double zero = square[i] > LEVEL ? -linear[i] / (2 * square[i]) : Double.NaN;
                if (zero > at && zero < end) {
                    each.accept(piece(i, at, zero));
                    at = zero;
                }
            }
            each.accept(piece(i, at, end));
            at = end;
        }
    }

    private DistancePiece piece(int i, double from, double to) {
        Coordinate a = new Coordinate(start.x + dirX * from, start.y + dirY * from);
        Coordinate b = new Coordinate(start.x + dirX * to, start.y + dirY * to);
        return new DistancePiece(a, b, to - from, Math.sqrt(value(i, from)), Math.sqrt(value(i, to)), foot[i] - from, turn[i]);
    }
}
