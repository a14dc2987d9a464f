// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.returns;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import kerfglow.geometry.FontLetters;
import kerfglow.geometry.Opening;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.util.AffineTransformation;

/** Shapes of known measure, outlined letters, and an independent program to ask. */
final class Outlines {
    static final GeometryFactory FACTORY = new GeometryFactory();
    /** That of the tester's proof, mm. */
    static final double CHORD_ERROR_MM = 0.02;

    private Outlines() {
    }

    static Polygon rectangle(double width, double height) {
        return FACTORY.createPolygon(new Coordinate[] {new Coordinate(0, 0), new Coordinate(width, 0), new Coordinate(width, height),
            new Coordinate(0, height), new Coordinate(0, 0)});
    }

    static Polygon circle(double radius) {
        return rounded(2 * radius, 2 * radius, radius);
    }

    static Polygon ring(double inner, double outer) {
        Polygon hole = (Polygon) AffineTransformation.translationInstance(outer - inner, outer - inner).transform(circle(inner));
        return FACTORY.createPolygon(circle(outer).getExteriorRing(), new LinearRing[] {hole.getExteriorRing()});
    }

    /** A rectangle with quarter circles at its corners, vertices on them. */
    static Polygon rounded(double width, double height, double r) {
        int steps = Opening.quadrantSegments(r, CHORD_ERROR_MM);
        List<Coordinate> points = new ArrayList<>();
        double[][] centres = {{width - r, height - r}, {r, height - r}, {r, r}, {width - r, r}};
        for (int corner = 0; corner < 4; corner++) {
            for (int i = 0; i <= steps; i++) {
                double angle = Math.PI / 2 * (corner + (double) i / steps);
                points.add(new Coordinate(centres[corner][0] + r * Math.cos(angle), centres[corner][1] + r * Math.sin(angle)));
            }
        }
        points.add(points.get(0).copy());
        return FACTORY.createPolygon(points.toArray(new Coordinate[0]));
    }

    /** The pieces of outlined lettering of a given height of capitals, mm. */
    static List<Polygon> letters(String text, double sizeMm) {
        return FontLetters.of(FontLetters.SERIF, text, sizeMm);
    }

    /** What a program for shapely (Debian's package python3-shapely) prints, as numbers. */
    static double[] shapely(String program) throws IOException, InterruptedException {
        Process python;
        try {
            python = new ProcessBuilder("/usr/bin/python3", "-").redirectError(ProcessBuilder.Redirect.INHERIT).start();
        } catch (IOException missing) {
            throw new AssertionError("this test needs Debian's packages python3 and python3-shapely", missing);
        }
        python.getOutputStream().write(program.getBytes(StandardCharsets.UTF_8));
        python.getOutputStream().close();
        String out = new String(python.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        if (python.waitFor() != 0) {
            throw new AssertionError("this test needs Debian's package python3-shapely");
        }
        return out.strip().lines().mapToDouble(Double::parseDouble).toArray();
    }
}
