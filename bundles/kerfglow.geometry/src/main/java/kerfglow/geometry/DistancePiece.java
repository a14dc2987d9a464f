// SPDX-License-Identifier: Apache-2.0
package kerfglow.geometry;

import java.util.stream.DoubleStream;
import org.locationtech.jts.geom.Coordinate;

/**
 * A straight piece of an outline along which the distance to other outlines follows one formula; see {@link EdgeDistance}.
 *
 * @param from where it starts
 * @param to where it ends
 * @param lengthMm its length, mm, above 0
 * @param fromMm the distance at its start, mm
 * @param toMm the distance at its end, mm
 * @param footMm when the nearest point is a corner: how far along the piece its foot lies, mm, also outside of the piece;
 *     NaN when the nearest points are those of the inside of an edge, so that the distance changes evenly
 * @param turn the turn of the outline at that corner, radians from 0 (straight on) to pi; 0 where there is no corner
 */
public record DistancePiece(Coordinate from, Coordinate to, double lengthMm, double fromMm, double toMm, double footMm, double turn) {
    /** True when the nearest point is a corner all along. */
    public boolean isAtCorner() {
        return !Double.isNaN(footMm);
    }

    /** The distance of the corner from the line that the piece lies on, squared. */
    private double heightSquared() {
        return Math.max(0, fromMm * fromMm - footMm * footMm);
    }

    /** The distance at a place along the piece, mm. */
    public double at(double alongMm) {
        return isAtCorner() ? Math.sqrt(heightSquared() + (alongMm - footMm) * (alongMm - footMm))
                : fromMm + (toMm - fromMm) * alongMm / lengthMm;
    }

    /** Where along the piece the distance is least, mm. */
    public double leastAtMm() {
        if (isAtCorner()) {
            return Math.max(0, Math.min(lengthMm, footMm));
        }
        return fromMm <= toMm ? 0 : lengthMm;
    }

    /** The least distance, mm. */
    public double leastMm() {
        return at(leastAtMm());
    }

    /** The greatest distance, mm; at one of the ends. */
    public double greatestMm() {
        return Math.max(fromMm, toMm);
    }

    /** Distance summed along the piece, mm²: divided by the length it is the mean. */
    public double sumMm2() {
        if (!isAtCorner()) {
            return (fromMm + toMm) / 2 * lengthMm;
        }
        return antiderivative(lengthMm - footMm) - antiderivative(-footMm);
    }

    private double antiderivative(double x) {
        double h2 = heightSquared();
        double h = Math.sqrt(h2);
        double root = Math.hypot(x, h);
        // asinh(x / h) written so that it is odd and exact near 0
        double asinh = h == 0 ? 0 : Math.copySign(Math.log1p((Math.abs(x) + x * x / (h + root)) / h), x);
        return (x * root + h2 * asinh) / 2;
    }

    /** The point at a place along the piece. */
    public Coordinate point(double alongMm) {
        double share = alongMm / lengthMm;
        return new Coordinate(from.x + (to.x - from.x) * share, from.y + (to.y - from.y) * share);
    }

    /** The places inside the piece where the distance passes a limit, in order; up to two. */
    public double[] crossings(double limitMm) {
        if (!isAtCorner()) {
            double place = (limitMm - fromMm) / (toMm - fromMm) * lengthMm;
            return place > 0 && place < lengthMm ? new double[] {place} : new double[0];
        }
        double square = limitMm * limitMm - heightSquared();
        if (square <= 0 || limitMm <= 0) {
            return new double[0];
        }
        double half = Math.sqrt(square);
        return DoubleStream.of(footMm - half, footMm + half).filter(place -> place > 0 && place < lengthMm).toArray();
    }
}
