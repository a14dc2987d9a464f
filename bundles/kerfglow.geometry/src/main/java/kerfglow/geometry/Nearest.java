// SPDX-License-Identifier: Apache-2.0
package kerfglow.geometry;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryComponentFilter;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineSegment;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Point;
import org.locationtech.jts.operation.distance.IndexedFacetDistance;

/** The nearest point on the lines and points of one geometry, for many questions. */
final class Nearest {
    /** Up to this many segments trying them all is faster than an index. */
    private static final int FEW = 100;

    private final List<LineSegment> segments = new ArrayList<>();
    private final IndexedFacetDistance index;
    private final GeometryFactory factory;

    Nearest(Geometry geometry) {
        factory = geometry.getFactory();
        boolean few = geometry.getNumPoints() <= FEW;
        index = few ? null : new IndexedFacetDistance(geometry);
        if (few) {
            geometry.apply((GeometryComponentFilter) this::addSegments);
        }
    }

    private void addSegments(Geometry component) {
        if (component instanceof Point point && !point.isEmpty()) {
            segments.add(new LineSegment(point.getCoordinate(), point.getCoordinate()));
        } else if (component instanceof LineString line) {
            for (int i = 1; i < line.getNumPoints(); i++) {
                segments.add(new LineSegment(line.getCoordinateN(i - 1), line.getCoordinateN(i)));
            }
        }
    }

    Coordinate to(Coordinate point) {
        if (index != null) {
            return index.nearestPoints(factory.createPoint(point))[0];
        }
        Coordinate nearest = null;
        double least = Double.POSITIVE_INFINITY;
        for (LineSegment segment : segments) {
            double distance = segment.distance(point);
            if (distance < least) {
                least = distance;
                nearest = segment.closestPoint(point);
            }
        }
        return nearest;
    }
}
