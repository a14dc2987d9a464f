// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.fit;

import org.locationtech.jts.algorithm.locate.IndexedPointInAreaLocator;
import org.locationtech.jts.algorithm.locate.PointOnGeometryLocator;
import org.locationtech.jts.algorithm.locate.SimplePointInAreaLocator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Location;

/** Tells on which side of an area's edge points lie: few are asked for on most pairs, very many where two edges weave. */
final class Sides {
    /** An index costs about as much as this many questions without. */
    private static final int FEW = 16;

    private final Geometry area;
    private PointOnGeometryLocator locator;
    private int asked;

    Sides(Geometry area) {
        this.area = area;
        locator = new SimplePointInAreaLocator(area);
    }

    /** True inside and on the edge. */
    boolean isInside(Coordinate point) {
        if (asked++ == FEW) {
            locator = new IndexedPointInAreaLocator(area);
        }
        return locator.locate(point) != Location.EXTERIOR;
    }
}
