// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.fit;

import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.LineString;

/**
 * A stretch of the inner part's edge along which the clearance departs from the allowance beyond its tolerance.
 *
 * @param kind which way
 * @param place the stretch
 * @param extremeMm the clearance where it departs most, mm; below 0 where the edge sticks out
 * @param at where that is
 * @param counter true on the edge of a counter of the inner part
 */
record Departure(Kind kind, LineString place, double extremeMm, Coordinate at, boolean counter) {
    enum Kind { TIGHT, LOOSE }
}
