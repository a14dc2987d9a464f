// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.returns;

import java.util.Arrays;
import org.locationtech.jts.geom.Coordinate;

/**
 * One step along the line of a strip.
 *
 * @param kind what the bender does there
 * @param points the line, at least one point, mm
 * @param turn radians, positive for convex
 * @param lineRadiusMm radius of the line; 0 for folds, infinite for straights
 * @param residualMm how far the outline lies from the arc that stands for it, mm
 * @param lineMm length along the line; for a fold that of both legs up to the sharp corner
 * @param stripMm length of flat strip that it takes, mm; can be below 0 for a fold, whose legs are counted to the sharp corner
 */
record Step(Kind kind, Coordinate[] points, double turn, double lineRadiusMm, double residualMm, double lineMm, double stripMm) {
    /** What the bender does. */
    enum Kind {
        STRAIGHT, CURVE,
        /** A corner, folded on a notch or over a blade. */
        FOLD,
        /** A corner too sharp to fold: two ends meet. */
        MEETING;

        boolean isCorner() {
            return this == FOLD || this == MEETING;
        }
    }

    boolean convex() {
        return turn > 0;
    }

    double degrees() {
        return Math.toDegrees(Math.abs(turn));
    }

    /** Halfway along the line. */
    Coordinate middle() {
        double half = length(points) / 2;
        for (int i = 1; i < points.length; i++) {
            double edge = points[i].distance(points[i - 1]);
            if (half <= edge && edge > 0) {
                double share = half / edge;
                return new Coordinate(points[i - 1].x + share * (points[i].x - points[i - 1].x),
                        points[i - 1].y + share * (points[i].y - points[i - 1].y));
            }
            half -= edge;
        }
        return points[points.length / 2];
    }

    private static double length(Coordinate[] points) {
        double sum = 0;
        for (int i = 1; i < points.length; i++) {
            sum += points[i].distance(points[i - 1]);
        }
        return sum;
    }

    /** The two parts of a straight or a curve on either side of a point that lies on the segment before vertex {@code at}. */
    Step[] split(Coordinate point, int at) {
        Coordinate[] first = Arrays.copyOf(points, at + 1);
        first[at] = point;
        Coordinate[] second = Arrays.copyOfRange(points, at - 1, points.length);
        second[0] = point;
        double share = length(first) / length(points);
        return new Step[] {part(first, share), part(second, 1 - share)};
    }

    private Step part(Coordinate[] own, double share) {
        return new Step(kind, own, turn * share, lineRadiusMm, residualMm, lineMm * share, stripMm * share);
    }
}
