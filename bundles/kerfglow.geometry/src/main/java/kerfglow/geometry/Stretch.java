// SPDX-License-Identifier: Apache-2.0
package kerfglow.geometry;

import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;

/**
 * A connected stretch of the medial axis along which a shape is narrower than a limit.
 *
 * @param kind what lies at its ends
 * @param widthMm the least width between opposite walls, mm; for a taper the least width of what is not its tip, or near 0
 * @param lengthMm length of the axis below the limit, corners of wide parts left out, mm
 * @param at where it is narrowest; the tip of a taper
 * @param axis the stretch itself, lines; a point for a dot, which has no walls that lie opposite along any length
 */
public record Stretch(Kind kind, double widthMm, double lengthMm, Coordinate at, Geometry axis) {
    /** What lies at the ends of a stretch. */
    public enum Kind {
        /** Wider at both ends, or thin throughout. */
        NECK,
        /** Wide at one end at most; runs out to a tip. */
        TAPER,
        /** Wide at one end; stops in a square or round end. */
        STUB
    }
}
