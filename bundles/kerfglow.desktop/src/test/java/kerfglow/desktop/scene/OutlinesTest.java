// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.scene;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.algorithm.distance.DiscreteHausdorffDistance;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.io.ParseException;
import org.locationtech.jts.io.WKTReader;

class OutlinesTest {
    private static final GeometryFactory FACTORY = new GeometryFactory();

    @ParameterizedTest(name = "{0} px/mm")
    @ValueSource(doubles = {50, 5, 1, 0.3, 0.05, 0.01})
    void what_is_left_out_is_not_seen(double pixelsPerMm) {
        Geometry ring = FACTORY.createPoint(new Coordinate(0, 0)).buffer(150, 200).symDifference(FACTORY.createPoint(new Coordinate(30, 0)).buffer(70, 200));
        Outlines outlines = Outlines.of(ring);
        double offMm = DiscreteHausdorffDistance.distance(ring.getBoundary(), lines(outlines, pixelsPerMm)); // an independent measure
        assertTrue(offMm * pixelsPerMm <= Outlines.UNSEEN_PX, offMm * pixelsPerMm + " px off");
        assertTrue(points(outlines, pixelsPerMm) <= outlines.size());
    }

    private static Geometry lines(Outlines outlines, double pixelsPerMm) {
        return FACTORY.buildGeometry(outlines.at(pixelsPerMm).stream().map(line -> {
            Coordinate[] points = new Coordinate[line.size()];
            for (int i = 0; i < points.length; i++) {
                points[i] = new Coordinate(line.xy()[2 * i], line.xy()[2 * i + 1]);
            }
            return (Geometry) FACTORY.createLineString(points);
        }).toList());
    }

    private static int points(Outlines outlines, double pixelsPerMm) {
        return outlines.at(pixelsPerMm).stream().mapToInt(Outlines.Line::size).sum();
    }

    @Test
    void a_circle_of_many_points_needs_few_when_it_is_small() {
        Outlines circle = Outlines.of(FACTORY.createPoint(new Coordinate(0, 0)).buffer(150, 500));
        assertTrue(points(circle, 0.05) < circle.size() / 50, "15 px across");
        assertTrue(points(circle, 0.05) >= 4, "still an area");
    }

    @Test
    void near_enough_everything_is_there() {
        Outlines circle = Outlines.of(FACTORY.createPoint(new Coordinate(0, 0)).buffer(150, 50));
        assertEquals(circle.size(), points(circle, View.MOST_PIXELS_PER_MM));
    }

    @Test
    void points_and_empty_shapes_have_no_lines() throws ParseException {
        assertTrue(Outlines.of(new WKTReader().read("MULTIPOINT ((1 1), (2 2))")).at(1).isEmpty());
        assertTrue(Outlines.of(new WKTReader().read("POLYGON EMPTY")).at(1).isEmpty());
        assertTrue(Outlines.of(new WKTReader().read("GEOMETRYCOLLECTION EMPTY")).at(1).isEmpty());
    }
}
