// SPDX-License-Identifier: Apache-2.0
package kerfglow.light.layout;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryComponentFilter;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Polygon;

/** The walls of a can as plain lines: how far the nearest is, and the first in a direction. For outlines of some hundred points. */
final class WallLines {
    /** A wall nearer than this, mm, is the one that a place lies on. */
    private static final double ON_MM = 1e-6;
    private final double[][] lines;

    WallLines(Polygon shape) {
        List<double[]> found = new ArrayList<>();
        shape.apply((GeometryComponentFilter) each -> {
            if (each instanceof LineString ring) {
                Coordinate[] points = ring.getCoordinates();
                for (int i = 1; i < points.length; i++) {
                    found.add(new double[] {points[i - 1].x, points[i - 1].y, points[i].x - points[i - 1].x, points[i].y - points[i - 1].y});
                }
            }
        });
        lines = found.toArray(new double[0][]);
    }

    /** The distance to the nearest wall, mm. */
    double distance(Coordinate at) {
        double least = Double.POSITIVE_INFINITY;
        for (double[] line : lines) {
            double px = at.x - line[0];
            double py = at.y - line[1];
            double length2 = line[2] * line[2] + line[3] * line[3];
            double share = length2 == 0 ? 0 : Math.max(0, Math.min(1, (px * line[2] + py * line[3]) / length2));
            double dx = px - share * line[2];
            double dy = py - share * line[3];
            least = Math.min(least, dx * dx + dy * dy);
        }
        return Math.sqrt(least);
    }

    /** How far a ray goes until it meets a wall, mm; without end where it meets none. */
    double along(double x, double y, double dx, double dy) {
        double least = Double.POSITIVE_INFINITY;
        for (double[] line : lines) {
            double cross = dx * line[3] - dy * line[2];
            double px = line[0] - x;
            double py = line[1] - y;
            double far = (px * line[3] - py * line[2]) / cross;
            double share = (px * dy - py * dx) / cross;
            if (cross != 0 && far > ON_MM && share >= 0 && share <= 1) {
                least = Math.min(least, far);
            }
        }
        return least;
    }
}
