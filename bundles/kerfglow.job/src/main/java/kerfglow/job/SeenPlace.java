// SPDX-License-Identifier: Apache-2.0
package kerfglow.job;

import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.util.AffineTransformation;

/**
 * One place of a finding as a job file keeps it.
 *
 * @param at where its marker stands
 * @param shape the geometry, mm; not to be changed
 */
public record SeenPlace(PointMm at, Geometry shape) {
    /** The same after a motion or a change of scale. */
    SeenPlace moved(AffineTransformation motion) {
        return motion.isIdentity() ? this : new SeenPlace(PointMm.of(motion.transform(at.coordinate(), new Coordinate())), motion.transform(shape));
    }
}
