// SPDX-License-Identifier: Apache-2.0
package kerfglow.job;

import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.util.AffineTransformation;

/**
 * A point on the proof at the real size of the sign, y down.
 *
 * @param xMm from the left of the proof's viewport, mm
 * @param yMm from its top, mm
 */
public record PointMm(double xMm, double yMm) {
    public PointMm {
        if (!Double.isFinite(xMm) || !Double.isFinite(yMm)) {
            throw new IllegalArgumentException("a point must be finite: " + xMm + ", " + yMm);
        }
    }

    /** A new coordinate each time, since coordinates can be changed. */
    public Coordinate coordinate() {
        return new Coordinate(xMm, yMm);
    }

    static PointMm of(Coordinate at) {
        return new PointMm(at.x, at.y);
    }

    PointMm moved(AffineTransformation motion) {
        return of(motion.transform(coordinate(), new Coordinate()));
    }
}
