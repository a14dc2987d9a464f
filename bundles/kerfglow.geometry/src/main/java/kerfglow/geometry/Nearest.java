// SPDX-License-Identifier: Apache-2.0
package kerfglow.geometry;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryComponentFilter;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Point;

/** The nearest point on the lines and points of one geometry, for many questions. Not for empty geometries. */
final class Nearest {
    /** Start and direction to the end of each. */
    private final double[] segments;
    private final EdgeBoxes boxes;

    Nearest(Geometry geometry) {
        List<double[]> found = new ArrayList<>();
        geometry.apply((GeometryComponentFilter) component -> {
            if (component instanceof Point point && !point.isEmpty()) {
                found.add(segment(point.getCoordinate(), point.getCoordinate()));
            } else if (component instanceof LineString line) {
                for (int i = 1; i < line.getNumPoints(); i++) {
                    found.add(segment(line.getCoordinateN(i - 1), line.getCoordinateN(i)));
                }
            }
        });
        segments = new double[4 * found.size()];
        double[] around = new double[4 * found.size()];
        for (int i = 0; i < found.size(); i++) {
            double[] segment = found.get(i);
            System.arraycopy(segment, 0, segments, 4 * i, 4);
            around[4 * i] = segment[0] + Math.min(0, segment[2]);
            around[4 * i + 1] = segment[1] + Math.min(0, segment[3]);
            around[4 * i + 2] = segment[0] + Math.max(0, segment[2]);
            around[4 * i + 3] = segment[1] + Math.max(0, segment[3]);
        }
        boxes = new EdgeBoxes(around);
    }

    private static double[] segment(Coordinate from, Coordinate to) {
        return new double[] {from.x, from.y, to.x - from.x, to.y - from.y};
    }

    Coordinate to(Coordinate point) {
        int nearest = boxes.nearest(point.x, point.y, i -> square(i, point));
        double share = share(nearest, point);
        return new Coordinate(segments[4 * nearest] + share * segments[4 * nearest + 2], segments[4 * nearest + 1] + share * segments[4 * nearest + 3]);
    }

    /** Where along a segment its nearest point lies, 0 to 1. */
    private double share(int i, Coordinate point) {
        double dx = segments[4 * i + 2];
        double dy = segments[4 * i + 3];
        double length = dx * dx + dy * dy;
        double along = (point.x - segments[4 * i]) * dx + (point.y - segments[4 * i + 1]) * dy;
        return length == 0 ? 0 : Math.max(0, Math.min(1, along / length));
    }

    private double square(int i, Coordinate point) {
        double share = share(i, point);
        double dx = segments[4 * i] + share * segments[4 * i + 2] - point.x;
        double dy = segments[4 * i + 1] + share * segments[4 * i + 3] - point.y;
        return dx * dx + dy * dy;
    }
}
