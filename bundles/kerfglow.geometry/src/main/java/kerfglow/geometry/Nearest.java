// SPDX-License-Identifier: Apache-2.0
package kerfglow.geometry;

import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.operation.distance.IndexedFacetDistance;

/** The nearest point on the lines and points of one geometry, for many questions. */
final class Nearest {
    private final IndexedFacetDistance index;
    private final GeometryFactory factory;

    Nearest(Geometry geometry) {
        index = new IndexedFacetDistance(geometry);
        factory = geometry.getFactory();
    }

    Coordinate to(Coordinate point) {
        return index.nearestPoints(factory.createPoint(point))[0];
    }
}
