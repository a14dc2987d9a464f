// SPDX-License-Identifier: Apache-2.0
package kerfglow.geometry;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.util.AffineTransformation;

class OutlinePiecesTest {
    private static final double CHORD_ERROR_MM = 0.02;
    private static final double FIT_MM = 0.1;

    private static List<OutlinePiece> of(Polygon shape) {
        return OutlinePieces.of(shape.getExteriorRing(), CHORD_ERROR_MM, FIT_MM);
    }

    private static List<OutlinePiece> of(List<OutlinePiece> pieces, OutlinePiece.Kind kind) {
        return pieces.stream().filter(piece -> piece.kind() == kind).toList();
    }

    private static double length(List<OutlinePiece> pieces) {
        return pieces.stream().mapToDouble(OutlinePiece::lengthMm).sum();
    }

    private static double turn(List<OutlinePiece> pieces) {
        return pieces.stream().mapToDouble(OutlinePiece::turn).sum();
    }

    /** A rectangle with arcs of radius r at its corners, vertices on the arcs. */
    private static Polygon rounded(double width, double height, double r) {
        int steps = Opening.quadrantSegments(r, CHORD_ERROR_MM);
        Coordinate[] points = new Coordinate[4 * (steps + 1) + 1];
        double[][] centres = {{width - r, height - r}, {r, height - r}, {r, r}, {width - r, r}};
        int n = 0;
        for (int corner = 0; corner < 4; corner++) {
            for (int i = 0; i <= steps; i++) {
                double angle = Math.PI / 2 * (corner + (double) i / steps);
                points[n++] = new Coordinate(centres[corner][0] + r * Math.cos(angle), centres[corner][1] + r * Math.sin(angle));
            }
        }
        points[n] = points[0].copy();
        return Shapes.FACTORY.createPolygon(points);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.5, 5, 60, 1000})
    void a_circle_is_one_arc(double radius) {
        List<OutlinePiece> pieces = of(Shapes.circle(radius, CHORD_ERROR_MM));
        assertEquals(1, pieces.size(), pieces::toString);
        assertEquals(radius, pieces.get(0).radiusMm(), 1e-6 * radius);
        assertEquals(2 * Math.PI * radius, pieces.get(0).lengthMm(), 1e-6 * radius);
        assertEquals(360, pieces.get(0).degrees(), 1e-9);
        assertTrue(pieces.get(0).residualMm() < 1e-6);
    }

    @Test
    void a_square_is_four_corners_and_four_straights_however_many_nodes_lie_on_its_sides() {
        Polygon square = Shapes.polygon("POLYGON ((0 0, 3 0, 10 0, 40 0, 40 0.01, 40 40, 39.9 40, 0 40, 0 0))");
        List<OutlinePiece> pieces = of(square);
        assertEquals(8, pieces.size(), pieces::toString);
        assertEquals(4, of(pieces, OutlinePiece.Kind.CORNER).size());
        of(pieces, OutlinePiece.Kind.CORNER).forEach(corner -> assertEquals(90, corner.degrees(), 0.1));
        assertEquals(160, length(pieces), 0.02);
    }

    @Test
    void turning_the_other_way_turns_the_signs() {
        List<OutlinePiece> left = of(rounded(80, 50, 7));
        List<OutlinePiece> right = OutlinePieces.of(rounded(80, 50, 7).getExteriorRing().reverse(), CHORD_ERROR_MM, FIT_MM);
        assertEquals(2 * Math.PI, turn(left), 1e-9);
        assertEquals(-2 * Math.PI, turn(right), 1e-9);
        assertEquals(left.size(), right.size());
        assertEquals(length(left), length(right), 1e-9);
    }

    @ParameterizedTest
    @CsvSource({"80, 50, 7", "300, 40, 20", "500, 500, 1", "200, 60, 29.99"})
    void a_rounded_rectangle_is_four_arcs_and_four_straights(double width, double height, double r) {
        List<OutlinePiece> pieces = of(rounded(width, height, r));
        List<OutlinePiece> arcs = of(pieces, OutlinePiece.Kind.ARC);
        if (height > 2 * r + 1) {
            assertEquals(4, arcs.size(), pieces::toString);
            for (OutlinePiece arc : arcs) {
                assertEquals(r, arc.radiusMm(), 1e-6);
                assertEquals(90, arc.degrees(), 1e-6);
            }
        } else { // what is left of the short sides is shorter than the tolerance: each end is one arc
            assertEquals(2, arcs.size(), pieces::toString);
            arcs.forEach(arc -> assertEquals(180, arc.degrees(), 1e-6));
        }
        // derived: geometry
        assertEquals(2 * (width + height) - 8 * r + 2 * Math.PI * r, length(pieces), 0.005);
    }

    @Test
    void a_corner_where_an_arc_ends_is_measured_against_the_arc_and_not_its_last_chord() {
        // a half disc of radius 10: two right angles and half a turn
        int steps = 30;
        Coordinate[] points = new Coordinate[steps + 2];
        for (int i = 0; i <= steps; i++) {
            points[i] = new Coordinate(10 * Math.cos(Math.PI * i / steps), 10 * Math.sin(Math.PI * i / steps));
        }
        points[steps + 1] = points[0].copy();
        List<OutlinePiece> pieces = OutlinePieces.of(Shapes.FACTORY.createLinearRing(points), CHORD_ERROR_MM, FIT_MM);
        List<OutlinePiece> corners = of(pieces, OutlinePiece.Kind.CORNER);
        assertEquals(2, corners.size(), pieces::toString);
        corners.forEach(corner -> assertEquals(90, corner.degrees(), 1e-6));
        OutlinePiece arc = of(pieces, OutlinePiece.Kind.ARC).get(0);
        assertEquals(180, arc.degrees(), 1e-6);
        assertEquals(10, arc.radiusMm(), 1e-6);
    }

    @ParameterizedTest
    @CsvSource({"100, 25", "60, 40", "300, 290"})
    void arcs_describe_an_ellipse_within_the_tolerance(double a, double b) {
        List<OutlinePiece> pieces = of(Shapes.ellipse(a, b, CHORD_ERROR_MM));
        assertTrue(pieces.size() <= 24, () -> pieces.size() + " pieces");
        pieces.forEach(piece -> assertTrue(piece.residualMm() <= 2 * FIT_MM, piece::toString));
        double flattest = a * a / b;
        double tightest = b * b / a; // derived: geometry
        for (OutlinePiece arc : of(pieces, OutlinePiece.Kind.ARC)) {
            assertTrue(arc.radiusMm() > tightest * 0.95 && arc.radiusMm() < flattest * 1.1, arc::toString);
        }
        assertEquals(2 * Math.PI, turn(pieces), 1e-9);
    }

    /** An arc has one radius for a stretch of changing curvature, so the least is met as closely as the tolerance asks. */
    @Test
    void the_least_radius_of_an_ellipse_is_met_as_the_tolerance_falls() {
        double tightest = 25.0 * 25 / 100; // derived: geometry
        double[][] fitAndError = {{0.1, 0.25}, {0.03, 0.15}, {0.01, 0.08}, {0.003, 0.05}};
        for (double[] each : fitAndError) {
            double least = of(OutlinePieces.of(Shapes.ellipse(100, 25, 0.0005).getExteriorRing(), 0.0005, each[0]), OutlinePiece.Kind.ARC).stream()
                    .mapToDouble(OutlinePiece::radiusMm).min().orElseThrow();
            assertTrue(least >= tightest, "at " + each[0] + ": " + least);
            assertEquals(tightest, least, each[1] * tightest);
        }
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 5, 8})
    void turning_and_moving_a_shape_changes_nothing(long seed) {
        Random random = new Random(seed);
        Polygon shape = rounded(60 + 100 * random.nextDouble(), 70 + 50 * random.nextDouble(), 2 + 20 * random.nextDouble());
        AffineTransformation motion = AffineTransformation.rotationInstance(random.nextDouble() * 6).translate(3000, -200);
        List<OutlinePiece> before = of(shape);
        List<OutlinePiece> after = of((Polygon) motion.transform(shape));
        assertEquals(before.size(), after.size());
        assertEquals(length(before), length(after), 1e-6);
        for (int i = 0; i < before.size(); i++) {
            assertEquals(before.get(i).degrees(), after.get(i).degrees(), 1e-6);
        }
    }

    @Test
    void refuses_tolerances_that_are_none() {
        LinearRing ring = Shapes.rectangle(0, 0, 1, 1).getExteriorRing();
        assertThrows(IllegalArgumentException.class, () -> OutlinePieces.of(ring, 0, FIT_MM));
        assertThrows(IllegalArgumentException.class, () -> OutlinePieces.of(ring, CHORD_ERROR_MM, Double.NaN));
    }

    /** Two discs joined: each outline is cut in the middle of a chord, and what is left of that chord leans unlike the others. */
    @Test
    void arcs_that_an_overlay_cut_keep_their_radius_and_reach_to_the_corner() {
        Polygon large = Shapes.circle(50, CHORD_ERROR_MM);
        Polygon small = (Polygon) AffineTransformation.translationInstance(60, 7).transform(Shapes.circle(30, CHORD_ERROR_MM));
        List<OutlinePiece> pieces = of((Polygon) large.union(small));
        List<OutlinePiece> arcs = of(pieces, OutlinePiece.Kind.ARC);
        // geometry: what the chord between the two crossings takes of each circle
        double apart = Math.hypot(60, 7);
        double toChord = (apart * apart + 50 * 50 - 30 * 30) / (2 * apart);
        double ofLarge = 2 * Math.PI - 2 * Math.acos(toChord / 50);
        double ofSmall = 2 * Math.PI - 2 * Math.acos((apart - toChord) / 30);
        assertEquals(2, of(pieces, OutlinePiece.Kind.CORNER).size(), pieces::toString);
        assertEquals(pieces.size(), 2 + arcs.size(), "nothing is left over as a straight: " + pieces);
        for (OutlinePiece arc : arcs) {
            double radius = arc.radiusMm() > 40 ? 50 : 30;
            assertEquals(radius, arc.radiusMm(), FIT_MM / 2, pieces::toString);
            assertTrue(arc.residualMm() <= FIT_MM, pieces::toString);
        }
        assertEquals(50 * ofLarge + 30 * ofSmall, length(arcs), 0.1);
        assertEquals(2 * Math.PI, Math.abs(turn(pieces)), 1e-9);
    }

    /** The end of a serif, 12 mm wide, whose other corner begins a curve that was flattened into a very short first chord. */
    @Test
    void a_corner_beside_a_corner_stays_one_when_the_curve_beyond_it_begins_with_a_short_chord() {
        Polygon serif = Shapes.polygon("POLYGON ((0 0, 60 0, 60 30, 48 30, 47.996 29.954, 47.701 27.746, 47.318 25.634, 46.845 23.6, 20 20, 0 20, 0 0))");
        List<OutlinePiece> corners = of(of(serif), OutlinePiece.Kind.CORNER).stream().filter(corner -> corner.degrees() > 60).toList();
        assertTrue(corners.stream().anyMatch(corner -> corner.line().getCoordinate().distance(new Coordinate(48, 30)) < CHORD_ERROR_MM), corners::toString);
    }

    @Test
    void a_jog_no_wider_than_the_chord_error_is_no_bend() {
        Polygon jog = Shapes.polygon("POLYGON ((0 0, 100 0, 100 40, 50 40, 50 40.012, 0 40.012, 0 0))");
        List<OutlinePiece> pieces = of(jog);
        assertEquals(4, of(pieces, OutlinePiece.Kind.CORNER).size(), pieces::toString);
    }

    /** Where two strokes of a script overlap: 0.08 mm of a step, too short a chord for either of its corners to show by itself. */
    @Test
    void two_corners_that_turn_against_each_other_on_a_short_step_are_no_curve() {
        Polygon spur = Shapes.polygon("POLYGON ((0 0, 60 0, 60 20, 30.08 20, 30.08 20.081, 0 20.081, 0 0))");
        List<OutlinePiece> pieces = of(spur);
        assertEquals(6, of(pieces, OutlinePiece.Kind.CORNER).size(), pieces::toString);
    }

    /** A hollow of a face, radius 8 mm, inset: chords of the face in turn with joins about its vertices, each turning alike. */
    @Test
    void an_arc_whose_chords_come_long_and_short_in_turn_is_one_arc_of_its_radius() {
        Polygon face = (Polygon) Shapes.polygon("POLYGON ((0 0, 100 0, 100 40, 60 40, 60 100, 0 100, 0 0))")
                .buffer(8, 64).buffer(-8, 64).buffer(0);
        Polygon hollow = (Polygon) org.locationtech.jts.simplify.DouglasPeuckerSimplifier.simplify(face, CHORD_ERROR_MM);
        List<OutlinePiece> arcs = of(of((Polygon) Opening.erosion(hollow, 2.38125, CHORD_ERROR_MM)), OutlinePiece.Kind.ARC);
        assertEquals(1, arcs.size(), arcs::toString);
        assertEquals(8 + 2.38125, arcs.get(0).radiusMm(), 0.15, arcs::toString);
        assertEquals(90, arcs.get(0).degrees(), 1, arcs::toString);
    }
}
