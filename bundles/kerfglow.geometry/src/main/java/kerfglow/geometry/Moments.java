// SPDX-License-Identifier: Apache-2.0
package kerfglow.geometry;

import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryCollection;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Polygon;

/**
 * Second moments of a shape about its centre: of its area, of its lines when it has no area, of its points when it has neither.
 *
 * @param xx integral of x²
 * @param yy integral of y²
 * @param xy integral of x·y
 */
record Moments(double xx, double yy, double xy) {
    static Moments of(Geometry geometry, Coordinate centre) {
        double[] sums = new double[3];
        int dimension = geometry.getDimension();
        for (int i = 0; i < geometry.getNumGeometries(); i++) {
            add(geometry.getGeometryN(i), dimension, centre, sums);
        }
        return new Moments(sums[0], sums[1], sums[2]);
    }

    /** Integral of the squared distance from the centre: the same however the shape is turned. */
    double polar() {
        return xx + yy;
    }

    /** 0 for a shape without a main direction, 1 for a straight line. */
    double elongation() {
        double sum = xx + yy;
        return sum == 0 ? 0 : Math.hypot(xx - yy, 2 * xy) / sum;
    }

    /** The main direction, radians. */
    double axis() {
        return Math.atan2(2 * xy, xx - yy) / 2;
    }

    private static void add(Geometry geometry, int dimension, Coordinate centre, double[] sums) {
        if (geometry.isEmpty()) {
            return;
        }
        if (geometry instanceof GeometryCollection) {
            for (int i = 0; i < geometry.getNumGeometries(); i++) {
                add(geometry.getGeometryN(i), dimension, centre, sums);
            }
        } else if (dimension == 2 && geometry instanceof Polygon polygon) {
            addRing(polygon.getExteriorRing(), centre, 1, sums);
            for (int i = 0; i < polygon.getNumInteriorRing(); i++) {
                addRing(polygon.getInteriorRingN(i), centre, -1, sums);
            }
        } else if (dimension == 1 && geometry instanceof LineString line) {
            addLine(line, centre, sums);
        } else if (dimension == 0) {
            Coordinate point = geometry.getCoordinate();
            double x = point.x - centre.x;
            double y = point.y - centre.y;
            sums[0] += x * x;
            sums[1] += y * y;
            sums[2] += x * y;
        }
    }

    /** Green's theorem, triangle by triangle from the centre, whichever way the ring runs. */
    private static void addRing(LineString ring, Coordinate centre, double sign, double[] sums) {
        double area = 0;
        double xx = 0;
        double yy = 0;
        double xy = 0;
        for (int i = 1; i < ring.getNumPoints(); i++) {
            double x0 = ring.getCoordinateN(i - 1).x - centre.x;
            double y0 = ring.getCoordinateN(i - 1).y - centre.y;
            double x1 = ring.getCoordinateN(i).x - centre.x;
            double y1 = ring.getCoordinateN(i).y - centre.y;
            double cross = x0 * y1 - x1 * y0;
            area += cross;
            xx += cross * (x0 * x0 + x0 * x1 + x1 * x1) / 12;
            yy += cross * (y0 * y0 + y0 * y1 + y1 * y1) / 12;
            xy += cross * (2 * x0 * y0 + x0 * y1 + x1 * y0 + 2 * x1 * y1) / 24;
        }
        double factor = Math.signum(area) * sign;
        sums[0] += factor * xx;
        sums[1] += factor * yy;
        sums[2] += factor * xy;
    }

    private static void addLine(LineString line, Coordinate centre, double[] sums) {
        for (int i = 1; i < line.getNumPoints(); i++) {
            Coordinate from = line.getCoordinateN(i - 1);
            Coordinate to = line.getCoordinateN(i);
            double x0 = from.x - centre.x;
            double y0 = from.y - centre.y;
            double x1 = to.x - centre.x;
            double y1 = to.y - centre.y;
            double length = from.distance(to);
            sums[0] += length * (x0 * x0 + x0 * x1 + x1 * x1) / 3;
            sums[1] += length * (y0 * y0 + y0 * y1 + y1 * y1) / 3;
            sums[2] += length * (2 * x0 * y0 + x0 * y1 + x1 * y0 + 2 * x1 * y1) / 6;
        }
    }
}
