// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.returns;

import java.awt.Font;
import java.awt.Shape;
import java.awt.font.FontRenderContext;
import java.awt.geom.AffineTransform;
import java.awt.geom.PathIterator;
import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import kerfglow.geometry.Opening;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.util.AffineTransformation;

/** Shapes of known measure, outlined letters, and an independent program to ask. */
final class Outlines {
    static final GeometryFactory FACTORY = new GeometryFactory();
    /** That of the tester's proof, mm. */
    static final double CHORD_ERROR_MM = 0.02;
    /** Debian's package fonts-dejavu-core. */
    private static final File SERIF = new File("/usr/share/fonts/truetype/dejavu/DejaVuSerif.ttf");

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
    static List<Polygon> letters(String text, double sizeMm) throws Exception {
        if (!SERIF.exists()) {
            throw new AssertionError("this test needs Debian's package fonts-dejavu-core");
        }
        Shape outline = Font.createFont(Font.TRUETYPE_FONT, SERIF).deriveFont(1000f).createGlyphVector(new FontRenderContext(null, true, true), text)
                .getOutline();
        double scale = sizeMm / 1000;
        PathIterator path = outline.getPathIterator(AffineTransform.getScaleInstance(scale, scale), CHORD_ERROR_MM);
        Geometry drawn = FACTORY.createPolygon();
        List<Coordinate> points = new ArrayList<>();
        double[] at = new double[6];
        for (; !path.isDone(); path.next()) {
            switch (path.currentSegment(at)) {
                case PathIterator.SEG_MOVETO -> {
                    points.clear();
                    points.add(new Coordinate(at[0], at[1]));
                }
                case PathIterator.SEG_LINETO -> points.add(new Coordinate(at[0], at[1]));
                default -> {
                    points.add(points.get(0).copy());
                    drawn = drawn.symDifference(FACTORY.createPolygon(points.toArray(new Coordinate[0])));
                }
            }
        }
        List<Polygon> pieces = new ArrayList<>();
        for (int i = 0; i < drawn.getNumGeometries(); i++) {
            pieces.add((Polygon) drawn.getGeometryN(i));
        }
        return pieces;
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
