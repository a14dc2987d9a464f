// SPDX-License-Identifier: Apache-2.0
package kerfglow.geometry;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryComponentFilter;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Point;
import org.locationtech.jts.operation.distance.IndexedFacetDistance;

/** The nearest point on the lines and points of one geometry, for many questions. */
final class Nearest {
    /** Up to this many segments trying them all is faster than an index. */
    private static final int FEW = 100;

    /** Start, direction to the end, and square of the length of each. */
    private final List<double[]> segments = new ArrayList<>();
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
            add(point.getCoordinate(), point.getCoordinate());
        } else if (component instanceof LineString line) {
            for (int i = 1; i < line.getNumPoints(); i++) {
                add(line.getCoordinateN(i - 1), line.getCoordinateN(i));
            }
        }
    }

    private void add(Coordinate from, Coordinate to) {
        double dx = to.x - from.x;
        double dy = to.y - from.y;
        segments.add(new double[] {from.x, from.y, dx, dy, dx * dx + dy * dy});
    }

    Coordinate to(Coordinate point) {
        if (index != null) {
            return index.nearestPoints(factory.createPoint(point))[0];
        }
        double x = point.x;
        double y = point.y;
        double nearestX = Double.NaN;
        double nearestY = Double.NaN;
        double least = Double.POSITIVE_INFINITY;
        for (double[] segment : segments) {
            // squares only: this runs some hundred times for each comparison of two shapes
            double along = (x - segment[0]) * segment[2] + (y - segment[1]) * segment[3];
            double share = segment[4] == 0 ? 0 : Math.max(0, Math.min(1, along / segment[4]));
            double footX = segment[0] + share * segment[2];
            double footY = segment[1] + share * segment[3];
            double square = (x - footX) * (x - footX) + (y - footY) * (y - footY);
            if (square < least) {
                least = square;
                nearestX = footX;
                nearestY = footY;
            }
        }
        return new Coordinate(nearestX, nearestY);
    }
}
