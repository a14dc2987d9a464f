// SPDX-License-Identifier: Apache-2.0
package kerfglow.svg;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.BasicStroke;
import java.awt.Shape;
import java.awt.geom.Path2D;
import java.awt.geom.PathIterator;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import kerfglow.geometry.FillRule;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.algorithm.locate.IndexedPointInAreaLocator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Location;
import org.locationtech.jts.operation.distance.IndexedFacetDistance;

/** Strokes of random paths against their definition and against an independent program, the stroker of Java 2D. */
class RandomStrokeTest {
    private static final int PATHS = 12;
    private static final GeometryFactory FACTORY = new GeometryFactory();

    /** With round joins and caps a stroke is the set of points within half the width of the line. */
    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 5, 8, 13})
    void round_strokes_hold_what_lies_within_half_the_width(long seed) {
        Random random = new Random(seed);
        for (int i = 0; i < PATHS; i++) {
            StringBuilder d = new StringBuilder("M" + point(random));
            for (int k = 0; k < 1 + random.nextInt(5); k++) {
                d.append(random.nextBoolean() ? "L" + point(random) : "C" + point(random) + point(random) + point(random));
            }
            d.append(random.nextInt(3) == 0 ? "z" : "");
            double width = 0.5 + random.nextInt(40);
            var element = Svg.only("<path d='" + d + "' stroke='red' stroke-linejoin='round' stroke-linecap='round' stroke-width='" + width + "'/>");
            IndexedFacetDistance line = new IndexedFacetDistance(element.outlines().get(0).path());
            String where = d + " width " + width;
            Coordinate[] edge = element.strokeArea().getCoordinates();
            for (Coordinate corner : edge) {
                double distance = line.distance(FACTORY.createPoint(corner));
                assertTrue(distance < width / 2 + 1e-9 && distance > width / 2 - Svg.EXACT_MM, () -> where + ": edge at " + corner + ", " + distance);
            }
            IndexedPointInAreaLocator stroke = new IndexedPointInAreaLocator(element.strokeArea());
            for (int k = 0; k < 500; k++) {
                Coordinate point = new Coordinate(random.nextDouble() * 140 - 20, random.nextDouble() * 140 - 20);
                double distance = line.distance(FACTORY.createPoint(point));
                if (Math.abs(distance - width / 2) > Svg.EXACT_MM) {
                    assertEquals(distance < width / 2, stroke.locate(point) == Location.INTERIOR, () -> where + " at " + point);
                }
            }
        }
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 5, 8, 13})
    void miter_and_bevel_strokes_of_polygons_agree_with_java_2d(long seed) {
        Random random = new Random(seed);
        for (int i = 0; i < PATHS; i++) {
            Path2D path = new Path2D.Double();
            StringBuilder d = new StringBuilder();
            for (int k = 0; k < 3 + random.nextInt(4); k++) {
                int x = random.nextInt(100);
                int y = random.nextInt(100);
                d.append(k == 0 ? 'M' : 'L').append(x).append(' ').append(y);
                if (k == 0) {
                    path.moveTo(x, y);
                } else {
                    path.lineTo(x, y);
                }
            }
            boolean closed = random.nextBoolean();
            if (closed) {
                path.closePath();
                d.append('z');
            }
            int width = 1 + random.nextInt(30);
            boolean miter = random.nextBoolean();
            boolean dashed = random.nextInt(3) == 0 && !closed; // on closed ones Java joins no dash across the start
            Shape theirs = new BasicStroke(width, dashed ? BasicStroke.CAP_SQUARE : BasicStroke.CAP_BUTT,
                    miter ? BasicStroke.JOIN_MITER : BasicStroke.JOIN_BEVEL, 4, dashed ? new float[] {31, 47, 13} : null, 5).createStrokedShape(path);
            var element = Svg.only("<path d='" + d + "' fill='none' stroke='red' stroke-linejoin='" + (miter ? "miter" : "bevel") + "' stroke-width='"
                    + width + "'" + (dashed ? " stroke-linecap='square' stroke-dasharray='31 47 13' stroke-dashoffset='5'" : "") + "/>");
            assertEquals(area(theirs), element.strokeArea().getArea(), 0.01, () -> d + " width " + width + (dashed ? " dashed" : ""));
        }
    }

    /** The rings that Java 2D makes, filled nonzero; its own areas lose pieces where edges run there and back. */
    private static double area(Shape shape) {
        List<Coordinate[]> rings = new ArrayList<>();
        List<Coordinate> ring = new ArrayList<>();
        double[] p = new double[6];
        for (PathIterator it = shape.getPathIterator(null, 1e-4); !it.isDone(); it.next()) {
            int kind = it.currentSegment(p);
            if (kind == PathIterator.SEG_MOVETO) {
                rings.add(ring.toArray(Coordinate[]::new));
                ring.clear();
            }
            if (kind != PathIterator.SEG_CLOSE) {
                ring.add(new Coordinate(p[0], p[1]));
            }
        }
        rings.add(ring.toArray(Coordinate[]::new));
        return FillRule.NONZERO.area(rings, FACTORY).getArea();
    }

    private static String point(Random random) {
        return String.format(Locale.ROOT, "%d %d ", random.nextInt(100), random.nextInt(100));
    }
}
