// SPDX-License-Identifier: Apache-2.0
package kerfglow.geometry;

import static kerfglow.geometry.Shapes.CHORD_ERROR_MM;
import static kerfglow.geometry.Shapes.DUMBBELL;
import static kerfglow.geometry.Shapes.NO_PULSE;
import static kerfglow.geometry.Shapes.annulus;
import static kerfglow.geometry.Shapes.circle;
import static kerfglow.geometry.Shapes.ellipse;
import static kerfglow.geometry.Shapes.pointed;
import static kerfglow.geometry.Shapes.polygon;
import static kerfglow.geometry.Shapes.rectangle;
import static kerfglow.geometry.Shapes.stroke;
import static kerfglow.geometry.Shapes.wedge;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.MultiLineString;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.util.AffineTransformation;
import org.locationtech.jts.operation.union.UnaryUnionOp;

class LocalWidthTest {
    private static final double WIDTH_TOLERANCE_MM = 0.02;
    private static final double FACING = 150;

    private static List<Stretch> narrower(Geometry area, double limit) {
        return LocalWidth.narrowerThan(area, limit, FACING, NO_PULSE);
    }

    private static Stretch only(Geometry area, double limit) {
        List<Stretch> found = narrower(area, limit);
        assertEquals(1, found.size(), () -> "stretches: " + found);
        return found.get(0);
    }

    private static void assertNeck(double width, Stretch stretch) {
        assertEquals(Stretch.Kind.NECK, stretch.kind());
        assertEquals(width, stretch.widthMm(), WIDTH_TOLERANCE_MM);
    }

    /** All of a wedge below the limit is its tip, so that its width is near 0; where the tip ends rounding must not say otherwise. */
    @Test
    void a_wedge_has_one_width_however_it_is_turned() {
        for (int degrees = 0; degrees < 360; degrees += 7) {
            Polygon wedge = (Polygon) AffineTransformation.rotationInstance(Math.toRadians(degrees), 300, 200).transform(polygon("POLYGON ((0 0, 100 -12, 100 12, 0 0))"));
            List<Stretch> found = LocalWidth.narrowerThan(wedge, 6, 150, NO_PULSE);
            assertEquals(1, found.size(), degrees + " degrees");
            assertEquals(Stretch.Kind.TAPER, found.get(0).kind(), degrees + " degrees");
            assertEquals(0, found.get(0).widthMm(), 1e-3, degrees + " degrees");
        }
    }

    @Test
    void a_dumbbell_has_one_neck_as_wide_as_its_bridge() {
        Stretch neck = only(polygon(DUMBBELL), 6.5);
        assertNeck(6, neck);
        assertEquals(20, neck.at().y, 1e-9);
        assertTrue(neck.at().x >= 40 && neck.at().x <= 70, () -> "narrowest at " + neck.at());
        // derived: geometry. The axis is the bridge and, at each end, as far as discs on its two corners stay opposite: 3 tan 15
        assertEquals(30 + 2 * 3 * Math.tan(Math.toRadians(15)), neck.lengthMm(), 0.01);
        assertTrue(neck.axis() instanceof LineString);
        assertEquals(20, neck.axis().getEnvelopeInternal().getMinY(), 1e-6);
        assertEquals(20, neck.axis().getEnvelopeInternal().getMaxY(), 1e-6);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.5, 5.5, 6.0})
    void a_width_at_the_limit_or_above_is_wide_enough(double limit) {
        assertEquals(List.of(), narrower(polygon(DUMBBELL), limit));
    }

    @ParameterizedTest
    @CsvSource({"true, 0", "false, 0", "true, 0.7", "false, 2.2"})
    void a_hairline_bar_is_one_neck_whatever_its_ends_and_direction(boolean round, double turn) {
        Geometry bar = AffineTransformation.rotationInstance(turn).transform(stroke("LINESTRING (0 0, 80 0)", 2, round));
        Stretch neck = only(bar, 3);
        assertNeck(2, neck);
        // derived: geometry. The axis of a rectangle ends half its width before the end; that of a stadium is its core
        assertEquals(round ? 80 : 78, neck.lengthMm(), 0.05);
    }

    @Test
    void an_annulus_thin_throughout_is_one_neck_along_its_middle_circle() {
        Stretch neck = only(annulus(8, 10, CHORD_ERROR_MM), 3);
        assertNeck(2, neck);
        assertEquals(2 * Math.PI * 9, neck.lengthMm(), 0.1);
        for (Coordinate centre : neck.axis().getCoordinates()) {
            assertEquals(9, Math.hypot(centre.x, centre.y), WIDTH_TOLERANCE_MM);
        }
    }

    @Test
    void an_hourglass_has_one_neck_at_its_waist() {
        Stretch neck = only(polygon("POLYGON ((0 0, 10 9, 20 0, 20 20, 10 11.5, 0 20, 0 0))"), 3);
        assertNeck(2.5, neck);
        assertTrue(neck.at().distance(new Coordinate(10, 10.25)) < WIDTH_TOLERANCE_MM, () -> "at " + neck.at());
    }

    @Test
    void two_necks_of_one_shape_are_two() {
        Polygon beads = polygon("POLYGON ((0 0, 20 0, 20 9, 30 9, 30 0, 50 0, 50 8.8, 60 8.8, 60 0, 80 0, 80 20, 60 20, 60 11.2, 50 11.2,"
                + " 50 20, 30 20, 30 11, 20 11, 20 20, 0 20, 0 0))");
        List<Double> widths = narrower(beads, 3).stream().map(Stretch::widthMm).sorted().toList();
        assertEquals(2, widths.size());
        assertEquals(2, widths.get(0), 1e-9);
        assertEquals(2.4, widths.get(1), 1e-9);
        assertEquals(1, narrower(beads, 2.2).size());
    }

    /** derived: geometry. A wedge of full angle t is narrower than w over w / (2 sin(t / 2)) from its tip. */
    @ParameterizedTest
    @ValueSource(doubles = {5, 10, 20, 29})
    void a_sharp_wedge_is_a_taper_as_long_as_it_stays_below_the_limit(double degrees) {
        Stretch taper = only(wedge(degrees, 100), 3);
        assertEquals(Stretch.Kind.TAPER, taper.kind());
        assertEquals(1.5 / Math.sin(Math.toRadians(degrees / 2)), taper.lengthMm(), WIDTH_TOLERANCE_MM);
        assertEquals(new Coordinate(0, 0), taper.at());
    }

    /** A slip of the decimal point in a drawing: 1,000 km long. As a wedge of its angle; by similar triangles, like above. */
    @Test
    void a_wedge_of_any_length_is_measured_without_filling_the_memory() {
        double lengthMm = 1e9;
        Stretch taper = only(polygon("POLYGON ((0 0, 1e9 -2.5, 1e9 2.5, 0 0))"), 3);
        assertEquals(Stretch.Kind.TAPER, taper.kind());
        assertEquals(1.5 / Math.sin(Math.atan(2.5 / lengthMm)), taper.lengthMm(), 3 * lengthMm / 10_000); // three of the steps that such a length is measured in
    }

    @ParameterizedTest
    @ValueSource(doubles = {31, 45, 60, 90, 120, 170})
    void a_corner_of_a_wide_part_is_neither_neck_nor_taper(double degrees) {
        assertEquals(List.of(), narrower(pointed(degrees), 3));
    }

    @Test
    void a_rounded_corner_of_a_wide_part_is_nothing() {
        Geometry plate = Opening.opening(rectangle(0, 0, 60, 40), 1, CHORD_ERROR_MM);
        assertEquals(List.of(), narrower(plate, 3));
        assertEquals(List.of(), narrower(rectangle(0, 0, 60, 40), 3));
    }

    @Test
    void a_lens_between_two_tips_is_one_taper() {
        Geometry lens = AffineTransformation.translationInstance(0, -49).transform(circle(50, CHORD_ERROR_MM))
                .intersection(AffineTransformation.translationInstance(0, 49).transform(circle(50, CHORD_ERROR_MM)));
        Stretch taper = only(lens, 3);
        assertEquals(Stretch.Kind.TAPER, taper.kind());
        // derived: geometry. The circles meet at x = +-sqrt(50^2 - 49^2)
        assertEquals(2 * Math.sqrt(99), taper.lengthMm(), 0.1);
    }

    @Test
    void a_thin_prong_on_a_block_is_a_stub_of_its_own_width() {
        Stretch stub = only(polygon("POLYGON ((0 0, 50 0, 50 24, 80 24, 80 26, 50 26, 50 50, 0 50, 0 0))"), 3);
        assertEquals(Stretch.Kind.STUB, stub.kind());
        assertEquals(2, stub.widthMm(), WIDTH_TOLERANCE_MM);
        assertEquals(29 + Math.tan(Math.toRadians(15)), stub.lengthMm(), 0.01);
    }

    @Test
    void an_s_curve_keeps_its_width_all_along() {
        Stretch neck = only(stroke("LINESTRING (0 0, 10 2, 16 9, 24 16, 34 17, 44 14)", 2, true), 3);
        assertNeck(2, neck);
        assertTrue(neck.axis() instanceof LineString, () -> neck.axis().toText());
    }

    @Test
    void a_bent_bar_is_one_stretch_round_its_bend() {
        Stretch neck = only(polygon("POLYGON ((0 0, 50 0, 50 2, 2 2, 2 50, 0 50, 0 0))"), 3);
        assertNeck(2, neck);
        assertTrue(neck.axis() instanceof LineString, () -> neck.axis().toText());
    }

    @Test
    void thin_strokes_that_meet_are_one_stretch() {
        Geometry y = Shapes.geometry("MULTILINESTRING ((0 0, 0 30), (0 0, 26 -15), (0 0, -26 -15))").buffer(1, 16);
        Stretch neck = only(y, 3);
        assertNeck(2, neck);
        assertTrue(neck.axis() instanceof MultiLineString);
        assertEquals(90, neck.lengthMm(), 0.2);
        Geometry withHeads = y.union(Shapes.geometry("MULTIPOINT ((0 36), (31 -18), (-31 -18))").buffer(8, 16));
        assertNeck(2, only(withHeads, 3));
    }

    @Test
    void the_bridge_between_two_openings_is_a_stroke_of_the_panel() {
        Stretch neck = only(polygon("POLYGON ((0 0, 100 0, 100 50, 0 50, 0 0), (10 10, 49 10, 49 40, 10 40, 10 10),"
                + " (51 10, 90 10, 90 40, 51 40, 51 10))"), 3);
        assertNeck(2, neck);
        assertEquals(50, neck.at().x, 1e-9);
    }

    @Test
    void a_counter_near_the_edge_leaves_a_neck_between_hole_and_outline() {
        Polygon plate = Shapes.FACTORY.createPolygon(rectangle(-50, -50, 100, 100).getExteriorRing(), new LinearRing[] {
            ((Polygon) AffineTransformation.translationInstance(0, 38).transform(circle(10, CHORD_ERROR_MM))).getExteriorRing()});
        assertNeck(2, only(plate, 3));
    }

    @Test
    void a_dot_is_as_wide_as_its_largest_disc() {
        assertNeck(2, only(circle(1, CHORD_ERROR_MM), 3));
        // derived: geometry. The inscribed circle of a triangle with sides 3: 3 / sqrt 3 across
        Stretch triangle = only(polygon("POLYGON ((0 0, 3 0, 1.5 2.598076211353316, 0 0))"), 3);
        assertNeck(Math.sqrt(3), triangle);
    }

    /**
     * derived: geometry. The axis of an ellipse a &gt; b is |x| &lt;= (a² - b²) / a, with radius b sqrt(1 - x² / (a² - b²));
     * for (100, 25) at 0, 30, 60, 90 and 93.75: 25, 23.76972865, 19.61941687, 9.21954446, 6.25.
     */
    @Test
    void an_ellipse_has_its_known_medial_radii() {
        double[] at = {0, 30, 60, 90, 93.75};
        double[] radii = {25, 23.76972865, 19.61941687, 9.21954446, 6.25};
        double[] nearest = new double[at.length];
        Arrays.fill(nearest, Double.POSITIVE_INFINITY);
        int seen = 0;
        Walls walls = Walls.inside(ellipse(100, 25, CHORD_ERROR_MM));
        for (ThinPiece piece : ThinPiece.of(walls, 60, Math.toRadians(FACING), NO_PULSE)) {
            for (Run run : piece.runs) {
                for (Span span : run.spans) {
                    for (Disc disc : span.discs) {
                        if (Math.abs(disc.centreY()) > 1e-3 || disc.separation() < Math.toRadians(10)) {
                            continue; // in one of the corners that flattening made
                        }
                        seen++;
                        double x = Math.abs(disc.centreX());
                        assertEquals(25 * Math.sqrt(1 - x * x / (100 * 100 - 25 * 25)), disc.radiusMm(), 0.01);
                        for (int i = 0; i < at.length; i++) {
                            if (Math.abs(x - at[i]) < nearest[i]) {
                                nearest[i] = Math.abs(x - at[i]);
                                assertTrue(nearest[i] > 1 || Math.abs(disc.radiusMm() - radii[i]) < 1.2 * Math.sqrt(nearest[i]) + 0.01);
                            }
                        }
                    }
                }
            }
        }
        assertTrue(seen > 500, "discs seen: " + seen);
        for (int i = 0; i < at.length; i++) {
            assertTrue(nearest[i] < 0.5, "no disc near x = " + at[i]);
        }
    }

    @Test
    void an_empty_shape_has_no_strokes() {
        assertEquals(List.of(), narrower(Shapes.FACTORY.createPolygon(), 3));
    }

    @Test
    void limits_out_of_range_are_refused() {
        assertThrows(IllegalArgumentException.class, () -> LocalWidth.narrowerThan(rectangle(0, 0, 1, 1), 0, FACING, NO_PULSE));
        assertThrows(IllegalArgumentException.class, () -> LocalWidth.narrowerThan(rectangle(0, 0, 1, 1), 3, 181, NO_PULSE));
    }

    @Test
    void the_pulse_can_stop_the_work() {
        assertThrows(CancellationException.class, () -> LocalWidth.narrowerThan(circle(100, CHORD_ERROR_MM), 3, FACING, () -> {
            throw new CancellationException();
        }));
    }

    private static Geometry box(double x, double y, double toX, double toY) {
        return new GeometryFactory().toGeometry(new Envelope(x, toX, y, toY));
    }

    @Test
    void a_lattice_of_strokes_is_one_neck_with_their_centre_lines() {
        // 12 strokes of 1 each way, 8 apart, 4 over: the axis ends half a width before each blunt end (derived: geometry)
        int strokes = 12;
        double length = 4 + (strokes - 1) * 8 + 1 + 4;
        List<Geometry> bars = new ArrayList<>();
        for (int i = 0; i < strokes; i++) {
            bars.add(box(-4, i * 8, length - 4, i * 8 + 1));
            bars.add(box(i * 8, -4, i * 8 + 1, length - 4));
        }
        AtomicInteger pulses = new AtomicInteger();
        List<Stretch> found = LocalWidth.narrowerThan(UnaryUnionOp.union(bars), 3, FACING, pulses::incrementAndGet);
        assertEquals(1, found.size());
        assertEquals(1, found.get(0).widthMm(), 1e-6);
        assertEquals(2 * strokes * (length - 1), found.get(0).lengthMm(), 1e-3);
        // while lines are joined, too: at least once for each piece of a stroke between two crossings
        assertTrue(pulses.get() > 2 * strokes * (strokes - 1), () -> "pulses: " + pulses);
    }

    @Test
    void the_axis_between_parallel_walls_needs_no_more_points_however_long_they_are() {
        Stretch bar = only(box(0, 0, 10_000, 1), 3);
        assertEquals(9999, bar.lengthMm(), 1e-6);
        assertEquals(only(box(0, 0, 10, 1), 3).axis().getNumPoints(), bar.axis().getNumPoints());
        assertEquals(5000, bar.at().x, 1e-6);
    }
}
