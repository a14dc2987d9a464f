// SPDX-License-Identifier: Apache-2.0
package kerfglow.geometry;

import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.io.ParseException;
import org.locationtech.jts.io.WKTReader;
import org.locationtech.jts.operation.buffer.BufferOp;
import org.locationtech.jts.operation.buffer.BufferParameters;

/** Shapes whose measures are known in closed form. Curves are flattened with their vertices on the true curve. */
final class Shapes {
    static final GeometryFactory FACTORY = new GeometryFactory();
    static final Runnable NO_PULSE = () -> { };
    /** Of exact oracles, mm. */
    static final double CHORD_ERROR_MM = 0.002;
    /** Two squares of 40 joined by a bridge 6 wide and 30 long. */
    static final String DUMBBELL =
            "POLYGON ((0 0, 40 0, 40 17, 70 17, 70 0, 110 0, 110 40, 70 40, 70 23, 40 23, 40 40, 0 40, 0 0))";

    private Shapes() {
    }

    static Polygon polygon(String wkt) {
        return (Polygon) geometry(wkt);
    }

    static Geometry geometry(String wkt) {
        try {
            return new WKTReader(FACTORY).read(wkt);
        } catch (ParseException wrong) {
            throw new IllegalArgumentException(wkt, wrong);
        }
    }

    static Polygon rectangle(double x, double y, double width, double height) {
        return polygon("POLYGON ((%s %s, %s %s, %s %s, %s %s, %s %s))".formatted(x, y, x + width, y, x + width, y + height, x, y + height,
                x, y));
    }

    static Polygon ellipse(double a, double b, double chordErrorMm) {
        int steps = 4 * (int) Math.ceil(Math.PI / Math.acos(1 - chordErrorMm / (a * a / b)) * a / b / 4);
        Coordinate[] points = new Coordinate[steps + 1];
        for (int i = 0; i < steps; i++) {
            double t = 2 * Math.PI * i / steps;
            points[i] = new Coordinate(a * Math.cos(t), b * Math.sin(t));
        }
        points[steps] = points[0].copy();
        return FACTORY.createPolygon(points);
    }

    static Polygon circle(double radius, double chordErrorMm) {
        return ellipse(radius, radius, chordErrorMm);
    }

    static Polygon annulus(double inner, double outer, double chordErrorMm) {
        return FACTORY.createPolygon(circle(outer, chordErrorMm).getExteriorRing(),
                new LinearRing[] {circle(inner, chordErrorMm).getExteriorRing()});
    }

    /** Point at the origin, opening to the right; full angle in degrees. */
    static Polygon wedge(double degrees, double length) {
        double half = length * Math.tan(Math.toRadians(degrees / 2));
        return polygon("POLYGON ((0 0, %s %s, %s %s, 0 0))".formatted(length, -half, length, half));
    }

    /** A bar 60 wide with one end sharpened to the given full angle; every other corner is blunt. */
    static Polygon pointed(double degrees) {
        double start = 30 / Math.tan(Math.toRadians(degrees / 2));
        return polygon("POLYGON ((0 0, %s -30, %s -30, %s 30, %s 30, 0 0))".formatted(start, start + 60, start + 60, start));
    }

    /** A square block with a notch whose bottom is a corner of the given inside angle at the origin. */
    static Polygon notched(double degrees) {
        double depth = 40;
        double half = depth * Math.tan(Math.toRadians(degrees / 2));
        double side = half + 30;
        return polygon("POLYGON ((%s -30, %s -30, %s %s, %s %s, 0 0, %s %s, %s %s, %s -30))".formatted(-side, side, side, depth, half, depth,
                -half, depth, -side, depth, -side));
    }

    /** A line drawn with a pen of a given width; ends and bends round, or flat and mitred. */
    static Polygon stroke(String lineWkt, double width, boolean round) {
        int segments = Opening.quadrantSegments(width / 2, CHORD_ERROR_MM);
        BufferParameters parameters = new BufferParameters(segments,
                round ? BufferParameters.CAP_ROUND
                        : BufferParameters.CAP_FLAT,
                round ? BufferParameters.JOIN_ROUND
                        : BufferParameters.JOIN_MITRE, 10);
        parameters.setSimplifyFactor(0);
        return (Polygon) BufferOp.bufferOp(geometry(lineWkt), width / 2, parameters);
    }
}
