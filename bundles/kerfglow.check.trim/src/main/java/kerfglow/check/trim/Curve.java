// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.trim;

import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.LineString;

/**
 * A bend of an outline that is tighter than a limit.
 *
 * @param place the bend
 * @param radiusMm its least radius, mm
 * @param at where that is
 * @param outside true where the part bulges, false in a hollow or counter
 */
record Curve(LineString place, double radiusMm, Coordinate at, boolean outside) {
}
