// SPDX-License-Identifier: Apache-2.0
package kerfglow.geometry;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.util.AffineTransformation;
import org.locationtech.jts.operation.distance.DistanceOp;

class EdgeDistanceTest {
    private static final double EXACT_MM = 1e-6;

    private static List<DistancePiece> pieces(Geometry outlines, LineString along) {
        List<DistancePiece> pieces = new ArrayList<>();
        new EdgeDistance(outlines).along(along, pieces::add, Shapes.NO_PULSE);
        return pieces;
    }

    private static double least(List<DistancePiece> pieces) {
        return pieces.stream().mapToDouble(DistancePiece::leastMm).min().orElseThrow();
    }

    private static double greatest(List<DistancePiece> pieces) {
        return pieces.stream().mapToDouble(DistancePiece::greatestMm).max().orElseThrow();
    }

    private static double mean(List<DistancePiece> pieces) {
        return pieces.stream().mapToDouble(DistancePiece::sumMm2).sum() / pieces.stream().mapToDouble(DistancePiece::lengthMm).sum();
    }

    @Test
    void a_square_in_a_square_keeps_one_distance() {
        List<DistancePiece> pieces = pieces(Shapes.rectangle(0, 0, 100, 100), Shapes.rectangle(3, 3, 94, 94).getExteriorRing());
        assertEquals(3, least(pieces), EXACT_MM);
        assertEquals(3, greatest(pieces), EXACT_MM);
        assertEquals(3, mean(pieces), EXACT_MM);
        assertTrue(pieces.stream().noneMatch(DistancePiece::isAtCorner));
    }

    @Test
    void past_a_corner_the_distance_is_a_hyperbola() {
        // derived: geometry. From (-30, 4) to (30, 4) past the corner at the origin of an edge that goes straight down from there
        LineString along = (LineString) Shapes.geometry("LINESTRING (-30 4, 30 4)");
        List<DistancePiece> pieces = pieces(Shapes.geometry("LINESTRING (0 0, 0 -50)"), along);
        assertEquals(1, pieces.size());
        assertEquals(4, least(pieces), EXACT_MM);
        assertEquals(Math.hypot(30, 4), greatest(pieces), EXACT_MM);
        double half = (30 * Math.hypot(30, 4) + 16 * Math.log((30 + Math.hypot(30, 4)) / 4)) / 2;
        assertEquals(half / 30, mean(pieces), EXACT_MM);
        assertArrayEquals(new double[] {27, 33}, pieces.get(0).crossings(5), EXACT_MM);
        assertArrayEquals(new double[0], pieces.get(0).crossings(3.9), EXACT_MM);
        assertEquals(Math.PI, pieces.get(0).turn(), EXACT_MM);
    }

    @Test
    void between_two_parallel_edges_the_greatest_lies_in_the_middle() {
        List<DistancePiece> pieces = pieces(Shapes.geometry("MULTILINESTRING ((0 -10, 0 10), (20 -10, 20 10))"),
                (LineString) Shapes.geometry("LINESTRING (1 0, 18 0)"));
        assertEquals(10, greatest(pieces), 1e-4);
        assertEquals(1, least(pieces), EXACT_MM);
        assertEquals((5.5 * 9 + 6 * 8) / 17, mean(pieces), 1e-4); // two trapezia: (1 + 10) / 2 over 9 and (10 + 2) / 2 over 8
    }

    @Test
    void crossing_an_edge_the_distance_falls_to_nothing() {
        List<DistancePiece> pieces = pieces(Shapes.geometry("LINESTRING (0 0, 100 0)"), (LineString) Shapes.geometry("LINESTRING (50 -6, 50 2)"));
        assertEquals(0, least(pieces), EXACT_MM);
        assertEquals(2, pieces.size());
        assertEquals((18.0 + 2) / 8, mean(pieces), EXACT_MM);
    }

    @ParameterizedTest
    @ValueSource(doubles = {20, 250})
    void a_circle_in_a_circle_keeps_the_difference_of_their_radii(double radius) {
        List<DistancePiece> pieces = pieces(Shapes.circle(radius, Shapes.CHORD_ERROR_MM), Shapes.circle(radius - 2.38125, Shapes.CHORD_ERROR_MM)
                .getExteriorRing());
        assertEquals(2.38125, least(pieces), 2 * Shapes.CHORD_ERROR_MM);
        assertEquals(2.38125, greatest(pieces), 2 * Shapes.CHORD_ERROR_MM);
        assertEquals(2.38125, mean(pieces), 2 * Shapes.CHORD_ERROR_MM);
    }

    private static Polygon star(Random random, double size) {
        int points = 5 + random.nextInt(40);
        Coordinate[] star = new Coordinate[points + 1];
        for (int i = 0; i < points; i++) {
            double angle = 2 * Math.PI * i / points;
            double r = size * (0.3 + 0.7 * random.nextDouble());
            star[i] = new Coordinate(5000 + r * Math.cos(angle), 3000 + r * Math.sin(angle));
        }
        star[points] = star[0].copy();
        return Shapes.FACTORY.createPolygon(star);
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 5, 8, 13, 21, 34})
    void agrees_everywhere_with_the_distance_that_jts_finds(long seed) {
        Random random = new Random(seed);
        Polygon outline = star(random, 400);
        LineString along = star(random, 400).getExteriorRing();
        List<DistancePiece> pieces = pieces(outline, along);
        assertTrue(pieces.size() > along.getNumPoints(), "the sample must change its nearest edge");
        Coordinate at = along.getCoordinateN(0);
        double length = 0;
        for (DistancePiece piece : pieces) {
            assertEquals(0, piece.from().distance(at), EXACT_MM, "pieces follow one another");
            at = piece.to();
            length += piece.lengthMm();
            double sum = 0;
            for (int i = 0; i <= 10; i++) {
                double place = piece.lengthMm() * i / 10;
                double jts = DistanceOp.distance(outline.getExteriorRing(), Shapes.FACTORY.createPoint(piece.point(place)));
                assertEquals(jts, piece.at(place), 0.0004);
                assertTrue(jts >= piece.leastMm() - 0.0004 && jts <= piece.greatestMm() + 0.0004);
                sum += jts * (i % 10 == 0 ? 1 : i % 2 == 1 ? 4 : 2);
            }
            // Simpson's rule; a hyperbola with its corner near at hand is the only thing that it misses by more
            assertEquals(sum / 30, piece.sumMm2() / piece.lengthMm(), 0.05);
        }
        assertEquals(along.getLength(), length, EXACT_MM);
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 5})
    void tells_whether_an_outline_stays_within_a_limit(long seed) {
        Random random = new Random(seed);
        Polygon outline = star(random, 400);
        LineString along = star(random, 400).getExteriorRing();
        double greatest = greatest(pieces(outline, along));
        EdgeDistance distance = new EdgeDistance(outline);
        assertTrue(distance.isWithin(along, greatest + 0.001, Shapes.NO_PULSE));
        assertFalse(distance.isWithin(along, greatest - 0.001, Shapes.NO_PULSE));
        assertTrue(distance.isWithin(outline.getExteriorRing(), 0.001, Shapes.NO_PULSE));
        for (int i = 0; i < 50; i++) {
            Coordinate point = new Coordinate(4500 + 1000 * random.nextDouble(), 2500 + 1000 * random.nextDouble());
            assertEquals(DistanceOp.distance(outline.getExteriorRing(), Shapes.FACTORY.createPoint(point)), distance.of(point), EXACT_MM);
        }
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {4, 7, 11})
    void turning_and_moving_both_and_walking_backwards_changes_nothing(long seed) {
        Random random = new Random(seed);
        Polygon outline = star(random, 400);
        LineString along = star(random, 400).getExteriorRing();
        AffineTransformation turn = AffineTransformation.rotationInstance(1.1, 5000, 3000).translate(40, -900);
        List<DistancePiece> moved = pieces(turn.transform(outline), (LineString) turn.transform(along).reverse());
        List<DistancePiece> plain = pieces(outline, along);
        assertEquals(least(plain), least(moved), 1e-4);
        assertEquals(greatest(plain), greatest(moved), 1e-4);
        assertEquals(mean(plain), mean(moved), 1e-4);
    }

    @Test
    void degenerate_input() {
        assertThrows(IllegalArgumentException.class, () -> new EdgeDistance(Shapes.geometry("POINT (0 0)")));
        assertThrows(IllegalArgumentException.class, () -> new EdgeDistance(Shapes.geometry("LINESTRING (0 0, 0 0)")));
        assertEquals(List.of(), pieces(Shapes.rectangle(0, 0, 5, 5), (LineString) Shapes.geometry("LINESTRING (1 1, 1 1)")));
        assertEquals(List.of(), pieces(Shapes.rectangle(0, 0, 5, 5), (LineString) Shapes.geometry("LINESTRING EMPTY")));
        assertEquals(2, new EdgeDistance(Shapes.rectangle(0, 0, 10, 10)).of(new Coordinate(5, 2)), EXACT_MM);
    }

    @Test
    void an_inset_has_the_area_that_steiner_s_formula_gives() {
        // J. Steiner, Ueber parallele Flaechen (1840), for a convex shape inwards: A - P r + S r^2, S = sum cot(inside angle / 2)
        Polygon square = Shapes.rectangle(0, 0, 100, 60);
        assertEquals((100 - 2 * 2.5) * (60 - 2 * 2.5), Inset.of(square, 2.5, Inset.Join.ROUND, 4, 0.002).getArea(), EXACT_MM);
        Polygon ring = Shapes.annulus(60, 100, Shapes.CHORD_ERROR_MM);
        double exact = Math.PI * (Math.pow(100 - 2.38125, 2) - Math.pow(60 + 2.38125, 2));
        for (Inset.Join join : Inset.Join.values()) {
            // both outlines are chords, off by the chord error at most
            assertEquals(exact, Inset.of(ring, 2.38125, join, 4, 0.002).getArea(), 2 * Math.PI * 165 * 2 * Shapes.CHORD_ERROR_MM, join.toString());
        }
    }

    @Test
    void joins_differ_at_the_corners_of_a_counter() {
        Polygon frame = Shapes.polygon("POLYGON ((0 0, 100 0, 100 100, 0 100, 0 0), (30 30, 70 30, 70 70, 30 70, 30 30))");
        double sharp = 90 * 90 - 50 * 50;
        assertEquals(sharp, Inset.of(frame, 5, Inset.Join.MITRE, 4, 0.002).getArea(), EXACT_MM);
        assertEquals(sharp + (4 - Math.PI) * 25, Inset.of(frame, 5, Inset.Join.ROUND, 4, 0.002).getArea(), 0.07);
        assertEquals(sharp + 4 * 25 / 2.0, Inset.of(frame, 5, Inset.Join.BEVEL, 4, 0.002).getArea(), EXACT_MM);
        assertTrue(Inset.of(frame, 16, Inset.Join.MITRE, 4, 0.002).isEmpty());
        assertEquals(frame, Inset.of(frame, 0, Inset.Join.ROUND, 4, 0.002));
        assertThrows(IllegalArgumentException.class, () -> Inset.of(frame, -1, Inset.Join.ROUND, 4, 0.002));
    }
}
