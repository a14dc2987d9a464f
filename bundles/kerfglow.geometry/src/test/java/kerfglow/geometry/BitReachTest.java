// SPDX-License-Identifier: Apache-2.0
package kerfglow.geometry;

import static kerfglow.geometry.Shapes.CHORD_ERROR_MM;
import static kerfglow.geometry.Shapes.DUMBBELL;
import static kerfglow.geometry.Shapes.NO_PULSE;
import static kerfglow.geometry.Shapes.annulus;
import static kerfglow.geometry.Shapes.circle;
import static kerfglow.geometry.Shapes.notched;
import static kerfglow.geometry.Shapes.polygon;
import static kerfglow.geometry.Shapes.rectangle;
import static kerfglow.geometry.Shapes.stroke;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.util.AffineTransformation;

class BitReachTest {
    /** Share of an area by which the bit's arcs, drawn as chords within 0.002 mm, may enlarge a residue; see each use. */
    private static final double ARC_SHARE = 0.02;
    private static final String SLOTTED =
            "POLYGON ((0 0, 60 0, 60 40, 32 40, 32 20, 28 20, 28 40, 0 40, 0 0))";

    private static BitReach bit(double diameter) {
        return new BitReach(diameter, 0.01, 150, NO_PULSE);
    }

    private static List<Residue> around(Polygon part, double diameter) {
        return bit(diameter).aroundPart(part, ring -> true);
    }

    private static double area(List<Residue> residues) {
        return residues.stream().mapToDouble(residue -> residue.area().getArea()).sum();
    }

    private static Residue only(List<Residue> residues) {
        assertEquals(1, residues.size(), () -> "residues: " + residues);
        return residues.get(0);
    }

    /** derived: geometry. r (1 / sin(t / 2) - 1) deep, (cot(t / 2) - (pi - t) / 2) r² large. */
    @ParameterizedTest
    @ValueSource(doubles = {20, 29, 31, 45, 60, 90, 120, 150, 170})
    void a_straight_inside_corner_keeps_its_known_depth_and_area(double degrees) {
        double half = Math.toRadians(degrees / 2);
        double radius = 6;
        Residue corner = only(around(notched(degrees), 2 * radius));
        assertEquals(Residue.Kind.CORNER, corner.kind());
        assertEquals(radius * (1 / Math.sin(half) - 1), corner.depthMm(), 1e-6);
        double expected = (1 / Math.tan(half) - (Math.PI - 2 * half) / 2) * radius * radius;
        double chords = CHORD_ERROR_MM * radius * (Math.PI - 2 * half); // more than the segments between arc and chords
        assertEquals(expected, corner.area().getArea(), chords + 1e-6);
        assertTrue(corner.at().distance(new Coordinate(0, 0)) < 1e-9, () -> "deepest at " + corner.at());
    }

    @Test
    void an_outside_corner_leaves_nothing() {
        assertEquals(List.of(), around(rectangle(0, 0, 40, 30), 6));
        assertEquals(List.of(), around(polygon("POLYGON ((0 0, 40 0, 3 3, 0 40, 0 0))"), 0.01));
    }

    /** derived: geometry. Where diamonds touch in a point the bit cannot pass, and each keeps its four corners, 0.215 r² large: r² (1 - pi/4). */
    @Test
    void openings_that_touch_in_one_point_keep_their_corners() {
        Polygon plate = polygon("POLYGON ((0 0, 100 0, 100 50, 0 50, 0 0), (10 25, 20 15, 30 25, 20 35, 10 25), (30 25, 40 15, 50 25, 40 35, 30 25),"
                + " (50 25, 60 15, 70 25, 60 35, 50 25))");
        double radius = 2;
        assertEquals(12 * radius * radius * (1 - Math.PI / 4), area(around(plate, 2 * radius)), 12 * CHORD_ERROR_MM * radius * Math.PI);
    }

    /** derived: geometry. A slot of width 4 in a block: 2 (1 - pi/4) r² while the bit enters, then all but a segment of it. */
    @ParameterizedTest
    @CsvSource({"1, 0.429204", "1.9, 1.549425"})
    void a_slot_that_the_bit_enters_keeps_its_two_corners(double radius, double filled) {
        List<Residue> left = around(polygon(SLOTTED), 2 * radius);
        assertEquals(2, left.size());
        assertTrue(left.stream().allMatch(residue -> residue.kind() == Residue.Kind.CORNER));
        assertEquals(filled, area(left), filled * ARC_SHARE);
    }

    @ParameterizedTest
    @CsvSource({"2.1, 75.719828", "3, 77.904587", "6, 79.079580"})
    void a_slot_narrower_than_the_bit_is_a_gap_as_narrow_as_the_slot(double radius, double filled) {
        Residue gap = only(around(polygon(SLOTTED), 2 * radius));
        assertEquals(Residue.Kind.GAP, gap.kind());
        assertEquals(4, gap.widthMm(), 1e-9);
        assertTrue(gap.at().x > 28 && gap.at().x < 32 && gap.isEntered());
        assertEquals(filled, gap.area().getArea(), 2 * radius * CHORD_ERROR_MM);
    }

    /** derived: geometry. What an opening by r keeps of two squares of 40 and a bridge of 6 by 30, 3380 mm² in all. */
    @ParameterizedTest
    @CsvSource({"2, 3373.132741, 0", "2.9, 3365.561588, 0", "3.1, 3204.110862, 1", "4, 3183.794444, 1", "6, 3144.716868, 1",
        "10, 3032.020709, 1"})
    void an_opening_cut_by_a_bit_keeps_what_the_closed_form_says(double radius, double opened, int gaps) {
        List<Residue> left = bit(2 * radius).inOpening(polygon(DUMBBELL));
        assertEquals(3380 - opened, area(left), 8 * Math.PI / 2 * radius * CHORD_ERROR_MM);
        assertEquals(8 + gaps, left.size());
        assertEquals(gaps, left.stream().filter(residue -> residue.kind() == Residue.Kind.GAP).count());
        left.stream().filter(residue -> residue.kind() == Residue.Kind.GAP).forEach(gap -> assertEquals(6, gap.widthMm(), 1e-9));
    }

    /** derived: geometry. A opened square, triangle and pentagon lose (S - pi) r², S the sum of cot(angle / 2). */
    @Test
    void convex_openings_lose_their_corners_alone() {
        assertEquals(100 - 96.56637061, area(bit(4).inOpening(rectangle(0, 0, 10, 10))), 4 * Math.PI * CHORD_ERROR_MM);
        Polygon triangle = polygon("POLYGON ((0 0, 10 0, 5 8.660254037844386, 0 0))");
        assertEquals(triangle.getArea() - 41.2467104, area(bit(2).inOpening(triangle)), 2 * Math.PI * CHORD_ERROR_MM);
        Polygon pentagon = polygon("POLYGON ((0 0, 30 0, 40 15, 25 30, 5 22, 0 0))");
        assertEquals(pentagon.getArea() - 831.6453763411, area(bit(6).inOpening(pentagon)), 6 * Math.PI * CHORD_ERROR_MM);
    }

    /** derived: geometry. An L of two bars 20 by 8 closes by (1 - pi/4) r² at its one inside corner. */
    @ParameterizedTest
    @CsvSource({"1, 0.2146018", "3, 1.9314165"})
    void the_inside_corner_of_an_l_is_filled_as_known(double radius, double filled) {
        Residue corner = only(around(polygon("POLYGON ((0 0, 20 0, 20 8, 8 8, 8 20, 0 20, 0 0))"), 2 * radius));
        assertEquals(filled, corner.area().getArea(), radius * Math.PI / 2 * CHORD_ERROR_MM);
        assertTrue(corner.at().distance(new Coordinate(8, 8)) < 1e-9);
    }

    @Test
    void a_stadium_and_an_annulus_are_cut_whole_by_a_bit_that_fits() {
        assertEquals(List.of(), bit(9.9).inOpening(stroke("LINESTRING (0 0, 20 0)", 10, true)));
        assertEquals(List.of(), bit(3.9).inOpening(annulus(6, 10, CHORD_ERROR_MM)));
        assertEquals(List.of(), around(annulus(6, 10, CHORD_ERROR_MM), 11.9));
    }

    @Test
    void an_opening_that_the_bit_does_not_enter_is_one_gap() {
        Residue ring = only(bit(4.2).inOpening(annulus(6, 10, CHORD_ERROR_MM)));
        assertEquals(Residue.Kind.GAP, ring.kind());
        assertFalse(ring.isEntered());
        assertEquals(4, ring.widthMm(), 0.02);
        assertEquals(annulus(6, 10, CHORD_ERROR_MM).getArea(), ring.area().getArea(), 1e-9);
        Residue dot = only(bit(3).inOpening(circle(1, CHORD_ERROR_MM)));
        assertEquals(2, dot.widthMm(), 0.02);
    }

    @Test
    void a_hole_without_opposite_walls_is_as_wide_as_its_largest_disc() {
        Polygon plate = polygon("POLYGON ((-20 -20, 20 -20, 20 20, -20 20, -20 -20), (0 0, 1.5 2.598076211353316, 3 0, 0 0))");
        Residue hole = only(around(plate, 3));
        assertEquals(Math.sqrt(3), hole.widthMm(), 0.02); // derived: geometry, the inscribed circle of a triangle of 3
        assertFalse(hole.isEntered());
    }

    @Test
    void a_hole_is_cut_like_an_opening_of_its_shape() {
        Polygon frame = Shapes.FACTORY.createPolygon(rectangle(-20, -20, 150, 80).getExteriorRing(),
                new LinearRing[] {polygon(DUMBBELL).getExteriorRing()});
        assertEquals(3380 - 3183.794444, area(around(frame, 8)), 8 * Math.PI / 2 * 4 * CHORD_ERROR_MM);
        assertEquals(List.of(), bit(8).aroundPart(frame, ring -> ring == frame.getExteriorRing()));
    }

    @Test
    void a_rounded_inside_corner_wider_than_the_bit_leaves_nothing() {
        Polygon plate = (Polygon) Opening.closing(polygon("POLYGON ((0 0, 60 0, 60 20, 20 20, 20 60, 0 60, 0 0))"), 4, CHORD_ERROR_MM);
        assertEquals(List.of(), around(plate, 7.9));
        // derived: geometry. Radius 4 in a square corner, bit of radius 6: (6 - 4) (sqrt 2 - 1) deep
        assertEquals(2 * (Math.sqrt(2) - 1), only(around(plate, 12)).depthMm(), 0.01);
    }

    @Test
    void a_slot_with_a_pointed_end_is_a_gap_and_no_corner() {
        Residue gap = only(around(polygon("POLYGON ((0 0, 60 0, 60 60, 31 60, 31 20, 30 15, 29 20, 29 60, 0 60, 0 0))"), 3));
        assertEquals(Residue.Kind.GAP, gap.kind());
        assertEquals(2, gap.widthMm(), 1e-9);
    }

    /** derived: geometry. Both lobes are reached; between the two positions where the bit is stuck some of the bridge stays. */
    @Test
    void a_short_bridge_of_waste_is_one_gap_and_a_sharp_one_none() {
        Polygon bridge = polygon("POLYGON ((0 0, 40 0, 40 17, 41 17, 41 0, 81 0, 81 40, 41 40, 41 23, 40 23, 40 40, 0 40, 0 0))");
        List<Residue> gaps = bit(7).inOpening(bridge).stream().filter(residue -> residue.kind() == Residue.Kind.GAP).toList();
        assertEquals(6, only(gaps).widthMm(), 1e-9);
        Polygon sharp = polygon("POLYGON ((0 0, 20 9, 40 0, 40 20, 20 11, 0 20, 0 0))");
        assertTrue(bit(2.2).inOpening(sharp).stream().noneMatch(residue -> residue.kind() == Residue.Kind.GAP));
    }

    /** A slot drawn as wide as the bit, off the axes so that coordinates round, lets the bit through. */
    @ParameterizedTest
    @ValueSource(doubles = {0, 0.3, 1.1})
    void a_slot_exactly_as_wide_as_the_bit_is_no_gap(double turn) {
        Polygon part = (Polygon) AffineTransformation.rotationInstance(turn).transform(polygon(SLOTTED));
        List<Residue> left = around(part, 4);
        assertTrue(left.stream().allMatch(residue -> residue.kind() == Residue.Kind.CORNER), () -> "left: " + left);
        assertEquals(2 * (1 - Math.PI / 4) * 4, area(left), 0.02);
        assertEquals(Residue.Kind.GAP, only(around(part, 4.01)).kind());
    }

    @Test
    void pieces_no_deeper_than_the_tolerance_are_nothing() {
        double depth = 3 * (Math.sqrt(2) - 1);
        Polygon part = polygon("POLYGON ((0 0, 20 0, 20 8, 8 8, 8 20, 0 20, 0 0))");
        assertEquals(1, new BitReach(6, depth - 0.001, 150, NO_PULSE).aroundPart(part, ring -> true).size());
        assertEquals(0, new BitReach(6, depth + 0.001, 150, NO_PULSE).aroundPart(part, ring -> true).size());
    }

    /** Opening by two buffers leaves a sliver at every corner of a flattened curve; the reach of a bit must not. */
    @Test
    void a_flattened_curve_leaves_no_slivers() {
        assertEquals(List.of(), around(annulus(30, 60, 0.02), 12.7));
        assertEquals(List.of(), bit(12.7).inOpening(circle(50, 0.02)));
    }

    @Test
    void values_out_of_range_are_refused() {
        assertThrows(IllegalArgumentException.class, () -> new BitReach(0, 0.1, 150, NO_PULSE));
        assertThrows(IllegalArgumentException.class, () -> new BitReach(3, -1, 150, NO_PULSE));
        assertThrows(IllegalArgumentException.class, () -> new BitReach(3, 0.1, 0, NO_PULSE));
    }

    @Test
    void the_deepest_point_between_two_bits_is_found_between_corners_too() {
        // two squares joined by a slot 4 wide and 60 long, its walls broken at a third; the bit is stuck 0.64 before each mouth and the
        // deepest points lie half way (derived: geometry), found to a quarter of the bit
        Polygon opening = polygon("POLYGON ((0 0, 40 0, 40 18, 60 18, 100 18, 100 0, 140 0, 140 40, 100 40, 100 22, 60 22, 40 22, 40 40, 0 40, 0 0))");
        Residue gap = bit(4.2).inOpening(opening).stream()
                .filter(residue -> residue.kind() == Residue.Kind.GAP).findFirst().orElseThrow();
        double stuck = Math.sqrt(2.1 * 2.1 - 2 * 2);
        assertEquals(Math.hypot(30 + stuck, 2) - 2.1, gap.depthMm(), 4.2 / 4);
        assertEquals(4, gap.widthMm(), 1e-6);
    }
}
