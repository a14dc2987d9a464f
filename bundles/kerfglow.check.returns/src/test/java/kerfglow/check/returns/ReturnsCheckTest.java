// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.returns;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.CancellationException;
import kerfglow.api.Finding;
import kerfglow.api.Outcome;
import kerfglow.api.Setting;
import kerfglow.api.SharedSettings;
import kerfglow.api.Table;
import kerfglow.api.UnitSystem;
import kerfglow.api.proof.Element;
import kerfglow.api.proof.Outline;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Role;
import kerfglow.testkit.CheckTester;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Point;
import org.locationtech.jts.geom.Polygon;

class ReturnsCheckTest {
    private static final double T = 1.5;
    private static final double K = 0.42;
    private static final double EXACT_MM = 0.002;

    private static CheckTester tester() {
        return CheckTester.of(new ReturnsCheck()).with(SharedSettings.RETURN_DEPTH, 100.0).with(ReturnsSettings.THICKNESS, T).with(ReturnsSettings.K_FACTOR, K);
    }

    private static CheckTester drawn(Polygon shape) {
        return tester().part(part("r", Role.RETURN, shape));
    }

    private static Part part(String id, Role role, Polygon shape) {
        return Part.builder(id, role, shape).elements(List.of("e-" + id)).layer("cans").build();
    }

    private static Table table(Outcome outcome, String id) {
        return outcome.tables().stream().filter(table -> table.info().id().equals(id)).findFirst().orElseThrow();
    }

    private static double number(Table table, int row, String column) {
        return (Double) cell(table, row, column);
    }

    private static Object cell(Table table, int row, String column) {
        List<String> ids = table.info().columns().stream().map(each -> each.id()).toList();
        return table.rows().get(row).get(ids.indexOf(column));
    }

    private static double length(Outcome outcome, int row) {
        return number(table(outcome, "strips"), row, "length");
    }

    private static List<String> rules(Outcome outcome) {
        return outcome.findings().stream().map(finding -> finding.rule().id()).toList();
    }

    private static Finding only(List<Finding> findings) {
        assertEquals(1, findings.size(), findings::toString);
        return findings.get(0);
    }

    private static Polygon polygon(String wkt) {
        return (Polygon) CheckTester.wkt(wkt);
    }

    @Test
    void says_who_it_is_and_every_setting_is_on_its_page() {
        ReturnsCheck check = new ReturnsCheck();
        assertEquals(List.of("returns.tight-radius", "returns.short-flange", "returns.sharp-bend", "returns.narrow-channel",
                "returns.small-counter", "returns.coil"), check.info().rules().stream().map(rule -> rule.id()).toList());
        for (Setting<?> setting : check.info().settings()) {
            assertTrue(check.info().page().contains("`" + setting.key() + "`"), setting.key());
        }
    }

    /** derived: geometry. The strip's inner or outer face lies on the circle; the neutral line K t from its inside. */
    @ParameterizedTest
    @CsvSource({"outside, 0", "inside, 1"})
    void a_circle_is_one_bend(String line, double thicknessesInside) {
        Outcome outcome = drawn(Outlines.circle(80)).with(ReturnsSettings.LINE, line).run();
        assertEquals(2 * Math.PI * (80 - thicknessesInside * T + K * T), length(outcome, 0), EXACT_MM);
        Table bends = table(outcome, "bends");
        assertEquals(1, bends.rows().size());
        assertEquals(360, number(bends, 0, "angle"), 1e-6);
        assertEquals(80 - thicknessesInside * T, number(bends, 0, "radius"), EXACT_MM);
        assertEquals("towards", cell(bends, 0, "direction"));
        assertEquals("curve", cell(table(outcome, "strips"), 0, "joint-on"));
        assertEquals(160, ((Point) cell(table(outcome, "strips"), 0, "joint")).getY(), 0.05, "the lowest point, y down");
        assertEquals(List.of(), rules(outcome));
    }

    @Test
    void a_ring_has_an_outline_and_a_counter() {
        Outcome outcome = drawn(Outlines.ring(40, 70)).run();
        // derived: geometry. In the counter the strip stands inside the circle: its inside radius is 40 less the thickness
        assertEquals(2 * Math.PI * (70 + K * T), length(outcome, 0), EXACT_MM);
        assertEquals(2 * Math.PI * (40 - T + K * T), length(outcome, 1), EXACT_MM);
        assertEquals("counter", cell(table(outcome, "strips"), 1, "kind"));
        assertEquals("away", cell(table(outcome, "bends"), 1, "direction"));
        assertEquals(40 - T, number(table(outcome, "bends"), 1, "radius"), EXACT_MM);
        Table coil = table(outcome, "coils");
        assertEquals(length(outcome, 0) + length(outcome, 1), number(coil, 0, "length"), 1e-9);
        assertEquals(2, number(coil, 0, "strips"));
    }

    /** Pages about bending: allowance and deduction of a right angle; flat = legs to the outside mould lines less the deduction. */
    @ParameterizedTest
    @CsvSource({"3.175, 3.175, 0.44, 7.181676, 5.518324", "3, 3, 0.44, 6.785840, 5.214160", "2, 2, 0.333333333, 4.188790, 3.811210",
        "1.5, 1.5, 0.42, 3.345796, 2.654204"}) // first row: 0.282743 in and 0.217257 in
    void folds_follow_the_published_allowances_and_deductions(double t, double r, double k, double allowance, double deduction) {
        CheckTester tester = drawn(Outlines.rectangle(200, 200)).with(ReturnsSettings.THICKNESS, t).with(ReturnsSettings.FOLD_RADIUS, r)
                .with(ReturnsSettings.FOLD_K, k).with(ReturnsSettings.LINE, "inside");
        Outcome outcome = tester.run();
        assertEquals(800 - 4 * deduction, length(outcome, 0), 1e-4);
        Table bends = table(outcome, "bends");
        assertEquals(4, bends.rows().size());
        for (int i = 0; i < 4; i++) {
            assertEquals("fold", cell(bends, i, "kind"));
            assertEquals(90, number(bends, i, "angle"), 1e-9);
            assertEquals(r, number(bends, i, "radius"));
            assertEquals(allowance, number(bends, i, "allowance"), 1e-5);
            // the joint lies in the middle of a side: half a side less the setback r + t, then a side less two each time
            assertEquals(100 - (r + t) + i * (200 - 2 * (r + t) + allowance), number(bends, i, "position"), 1e-4);
        }
        // the same with the inner face on the line: the setback is r
        assertEquals(800 - 8 * r + 4 * allowance, length(tester.with(ReturnsSettings.LINE, "outside").run(), 0), 1e-4);
        assertEquals(List.of(), rules(outcome));
    }

    @Test
    void a_stadium_has_two_half_turns_and_its_joint_in_the_lower_straight() {
        Outcome outcome = drawn(Outlines.rounded(200, 60, 30)).run();
        assertEquals(2 * 140 + 2 * Math.PI * (30 + K * T), length(outcome, 0), EXACT_MM);
        Table bends = table(outcome, "bends");
        assertEquals(2, bends.rows().size());
        assertEquals(180, number(bends, 0, "angle"), 1e-6);
        assertEquals(70, number(bends, 0, "position"), 1e-6);
        assertEquals(70 + Math.PI * (30 + K * T) + 140, number(bends, 1, "position"), EXACT_MM);
        assertTrue(((Point) cell(table(outcome, "strips"), 0, "joint")).equalsExact(Outlines.FACTORY.createPoint(new Coordinate(100, 60)), 1e-9));
        Outcome high = drawn(Outlines.rounded(200, 60, 30)).with(ReturnsSettings.JOINT, "high").run();
        assertEquals(0, ((Point) cell(table(high, "strips"), 0, "joint")).getY(), 1e-9);
    }

    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void both_drawing_directions_of_a_rounded_rectangle_are_one(boolean reversed) {
        Polygon shape = Outlines.rounded(200, 120, 15);
        Outcome outcome = drawn(reversed ? shape.reverse() : shape).run();
        // derived: geometry
        assertEquals(2 * (170 + 90) + 2 * Math.PI * (15 + K * T), length(outcome, 0), EXACT_MM);
        Table bends = table(outcome, "bends");
        assertEquals(4, bends.rows().size());
        assertEquals(85, number(bends, 0, "position"), 1e-6);
        for (int i = 0; i < 4; i++) {
            assertEquals(90, number(bends, i, "angle"), 1e-6);
            assertEquals(15, number(bends, i, "radius"), 1e-6);
            assertTrue(number(bends, i, "residual") < 1e-6);
        }
    }

    @Test
    void without_a_back_the_line_is_the_face_inset_by_the_allowance() {
        Outcome outcome = tester().part(part("f", Role.FACE, Outlines.ring(40, 80))).run();
        double side = 25.4 * 3 / 32; // 3/16 in overall
        assertEquals(2 * Math.PI * (80 - side + K * T), length(outcome, 0), 2 * Math.PI * Outlines.CHORD_ERROR_MM);
        assertEquals(2 * Math.PI * (40 + side - T + K * T), length(outcome, 1), 2 * Math.PI * Outlines.CHORD_ERROR_MM);
    }

    @Test
    void a_back_within_the_face_and_a_drawn_return_go_before_the_inset() {
        Polygon back = polygon("POLYGON ((5 5, 195 5, 195 95, 5 95, 5 5))");
        CheckTester backed = tester().with(ReturnsSettings.FOLD_RADIUS, 0.0).with(ReturnsSettings.FOLD_K, K)
                .part(part("f", Role.FACE, Outlines.rectangle(200, 100))).part(part("b", Role.BACK, back));
        double folds = 2 * Math.PI * K * T;
        assertEquals(2 * (190 + 90) + folds, length(backed.run(), 0), 1e-6);
        Polygon line = polygon("POLYGON ((10 10, 190 10, 190 90, 10 90, 10 10))");
        Outcome outcome = backed.part(part("r", Role.RETURN, line)).run();
        assertEquals(1, table(outcome, "strips").rows().size());
        assertEquals("r", cell(table(outcome, "strips"), 0, "part"));
        assertEquals(2 * (180 + 80) + folds, length(outcome, 0), 1e-6);
    }

    @Test
    void a_return_drawn_with_a_pen_is_its_line_and_not_the_band() {
        Polygon line = Outlines.ring(40, 80);
        Element.Builder element = Element.builder("e").outlines(List.of(outline(line.getExteriorRing()), outline(line.getInteriorRingN(0))));
        CheckTester tester = tester().element(element.build());
        for (Polygon band : List.of((Polygon) line.getExteriorRing().buffer(1), (Polygon) line.getInteriorRingN(0).buffer(1))) {
            tester.part(Part.builder("r" + band.getNumPoints(), Role.RETURN, band).elements(List.of("e")).sources(Set.of(Part.Source.STROKE)).build());
        }
        Outcome outcome = tester.run();
        assertEquals(2, table(outcome, "strips").rows().size());
        assertEquals(2 * Math.PI * (80 + K * T), length(outcome, 0), EXACT_MM);
        assertEquals(2 * Math.PI * (40 - T + K * T), length(outcome, 1), EXACT_MM);
    }

    @Test
    void a_return_drawn_as_an_open_line_is_said_to_be_missing() {
        LineString line = (LineString) CheckTester.wkt("LINESTRING (0 0, 100 0, 100 100)");
        Element.Builder element = Element.builder("e").outlines(List.of(new Outline(line, false, line.getFactory().createMultiPointFromCoords(line.getCoordinates()))));
        Outcome outcome = tester().element(element.build())
                .part(Part.builder("r", Role.RETURN, (Polygon) line.buffer(1)).elements(List.of("e")).sources(Set.of(Part.Source.STROKE)).build()).run();
        assertEquals(List.of("The return r is drawn as an open line, so its strip was not measured."), outcome.missing().subList(0, 1));
        assertEquals(0, table(outcome, "strips").rows().size());
    }

    private static Outline outline(LineString line) {
        return new Outline(line, true, line.getFactory().createMultiPointFromCoords(line.getCoordinates()));
    }

    /** derived: geometry. A convex corner's inside radius is the line's, a concave one's is less by the thickness. */
    @Test
    void curves_are_judged_by_their_inside_radius_and_equal_passes() {
        Polygon convex = Outlines.rounded(200, 120, 10);
        assertEquals(List.of(), rules(drawn(convex).with(ReturnsSettings.LEAST_RADIUS, 10.0).run()));
        List<Finding> tight = drawn(convex).with(ReturnsSettings.LEAST_RADIUS, 10.01).findings(ReturnsRules.TIGHT_RADIUS);
        assertEquals(4, tight.size());
        assertEquals(10, tight.get(0).measured().orElseThrow().value(), EXACT_MM);
        assertTrue(tight.get(0).message().contains("return r on layer \"cans\""), tight.get(0).message());
        Polygon frame = Outlines.FACTORY.createPolygon(polygon("POLYGON ((-50 -50, 300 -50, 300 200, -50 200, -50 -50))").getExteriorRing(),
                new LinearRing[] {convex.getExteriorRing()});
        assertEquals(List.of(), rules(drawn(frame).with(ReturnsSettings.LEAST_RADIUS, 10 - T).run()));
        assertEquals(10 - T, drawn(frame).with(ReturnsSettings.LEAST_RADIUS, 9.0).findings(ReturnsRules.TIGHT_RADIUS).get(3).measured().orElseThrow().value(),
                EXACT_MM);
    }

    @Test
    void corners_and_roundings_no_larger_than_the_setting_are_folds_and_never_tight() {
        assertEquals(List.of(), rules(drawn(Outlines.rectangle(200, 100)).with(ReturnsSettings.LEAST_RADIUS, 50.0).run()));
        CheckTester rounded = drawn(Outlines.rounded(200, 100, 2)).with(ReturnsSettings.FOLD_RADIUS, 2.0).with(ReturnsSettings.FOLD_K, K);
        Outcome folded = rounded.with(ReturnsSettings.CORNER_RADIUS, 2.0).run();
        assertEquals("fold", cell(table(folded, "bends"), 0, "kind"));
        assertEquals(List.of(), rules(folded));
        Outcome rolled = rounded.with(ReturnsSettings.CORNER_RADIUS, 1.5).run();
        assertEquals(4, rules(rolled).size());
        // a fold of the radius that is drawn takes as much strip as the curve
        assertEquals(length(rolled, 0), length(folded, 0), 0.02);
    }

    @Test
    void the_rounding_that_an_inset_makes_is_still_a_corner() {
        Outcome outcome = tester().part(part("f", Role.FACE, polygon("POLYGON ((0 0, 200 0, 200 80, 80 80, 80 200, 0 200, 0 0))"))).run();
        assertEquals(List.of(), rules(outcome));
        Table bends = table(outcome, "bends");
        assertEquals(6, bends.rows().size());
        assertEquals(1, bends.rows().stream().filter(row -> row.contains("away")).count());
    }

    @Test
    void a_sharp_notch_is_a_corner_after_the_inset_too_and_no_tight_curve() {
        // 20 degrees at the bottom of the notch, which the inset rounds; derived: geometry
        double half = 100 * Math.tan(Math.toRadians(10));
        Polygon notched = polygon("POLYGON ((0 0, 300 0, 300 200, %s 200, 150 100, %s 200, 0 200, 0 0))".formatted(150 + half, 150 - half));
        Outcome outcome = tester().part(part("f", Role.FACE, notched)).run();
        Finding sharp = only(outcome.findings().stream().filter(each -> each.rule() == ReturnsRules.SHARP_BEND).toList());
        assertEquals(20, sharp.measured().orElseThrow().value(), 0.5);
        assertFalse(rules(outcome).contains("returns.tight-radius"));
    }

    @Test
    void a_chamfer_is_one_fold() {
        Polygon chamfered = polygon("POLYGON ((0 0, 200 0, 200 99, 199 100, 0 100, 0 0))");
        Table bends = table(drawn(chamfered).run(), "bends");
        assertEquals(4, bends.rows().size());
        bends.rows().forEach(row -> assertEquals(90.0, (Double) row.get(6), 1e-9));
    }

    @Test
    void folds_closer_than_the_flange_are_found_between_them() {
        // a step 6 mm high: 4 t + r = 7
        Polygon step = polygon("POLYGON ((0 0, 200 0, 200 94, 100 94, 100 100, 0 100, 0 0))");
        Finding flange = only(drawn(step).findings(ReturnsRules.SHORT_FLANGE));
        assertEquals(6, flange.measured().orElseThrow().value(), 1e-9);
        assertEquals(4 * T + 1, flange.required().orElseThrow().value(), 1e-9);
        assertEquals(new Coordinate(100, 97), flange.place().orElseThrow().getCentroid().getCoordinate());
        assertEquals(List.of(), rules(drawn(step).with(ReturnsSettings.LEAST_FLANGE, 6.0).run()));
        assertEquals(1, drawn(step).with(ReturnsSettings.LEAST_FLANGE, 6.01).findings(ReturnsRules.SHORT_FLANGE).size());
    }

    /** derived: geometry. Between roundings of radius 1 the sharp corners stand 8 apart, not 6. */
    @Test
    void flanges_are_measured_between_sharp_corners() {
        CheckTester tester = drawn(Outlines.rounded(200, 8, 1));
        assertEquals(List.of(), tester.with(ReturnsSettings.LEAST_FLANGE, 8.0).findings(ReturnsRules.SHORT_FLANGE));
        List<Finding> found = tester.with(ReturnsSettings.LEAST_FLANGE, 8.1).findings(ReturnsRules.SHORT_FLANGE);
        assertEquals(2, found.size());
        assertEquals(8, found.get(0).measured().orElseThrow().value(), 1e-6);
    }

    @Test
    void sharp_corners_are_found_and_two_strips_meet_there() {
        // tan(13) = 100 / 433: 26 degrees at the tip; derived: geometry
        Polygon wedge = polygon("POLYGON ((0 0, 433.1476 -100, 433.1476 100, 0 0))");
        Outcome outcome = drawn(wedge).run();
        Finding sharp = only(outcome.findings().stream().filter(each -> each.rule() == ReturnsRules.SHARP_BEND).toList());
        assertEquals(26, sharp.measured().orElseThrow().value(), 0.001);
        assertEquals(new Coordinate(0, 0), sharp.at().orElseThrow());
        assertEquals(List.of(), drawn(wedge).with(ReturnsSettings.LEAST_ANGLE, 25.9).findings(ReturnsRules.SHARP_BEND));
        double fold = Math.toRadians(103) * (1 + 0.4 * T) - 2 * Math.tan(Math.toRadians(103) / 2);
        assertEquals(wedge.getLength() + 2 * fold, length(outcome, 0), 0.001);
    }

    @Test
    void channels_within_and_outside_the_contour_are_found() {
        Polygon dumbbell = polygon("POLYGON ((0 0, 100 0, 100 45, 150 45, 150 0, 250 0, 250 100, 150 100, 150 55, 100 55, 100 100, 0 100, 0 0))");
        Finding within = only(drawn(dumbbell).findings(ReturnsRules.NARROW_CHANNEL));
        assertEquals(10, within.measured().orElseThrow().value(), 0.01);
        assertTrue(within.message().startsWith("Within "), within.message());
        Polygon slotted = polygon("POLYGON ((0 0, 200 0, 200 100, 105 100, 105 40, 95 40, 95 100, 0 100, 0 0))");
        Finding outside = only(drawn(slotted).findings(ReturnsRules.NARROW_CHANNEL));
        assertEquals(10, outside.measured().orElseThrow().value(), 0.01);
        assertTrue(outside.message().startsWith("Outside "), outside.message());
        assertEquals(List.of(), drawn(slotted).with(ReturnsSettings.ARM_WIDTH, 9.9).findings(ReturnsRules.NARROW_CHANNEL));
        assertEquals(List.of(), drawn(Outlines.ring(70, 76)).findings(ReturnsRules.NARROW_CHANNEL), "outline and counter are two strips");
    }

    @Test
    void a_counter_smaller_than_the_least_disc_is_found_once() {
        Outcome outcome = drawn(Outlines.ring(12, 80)).with(ReturnsSettings.LEAST_RADIUS, 5.0).run();
        assertEquals(List.of("returns.small-counter"), rules(outcome));
        assertEquals(24, outcome.findings().get(0).measured().orElseThrow().value(), 0.05);
        assertEquals(List.of(), rules(drawn(Outlines.ring(12, 80)).with(ReturnsSettings.LEAST_RADIUS, 5.0).with(ReturnsSettings.LEAST_COUNTER, 24.0).run()));
    }

    @Test
    void strips_are_held_against_the_coils() {
        CheckTester tester = drawn(Outlines.rectangle(1000, 500)).with(ReturnsSettings.FOLD_RADIUS, 0.0);
        double length = 3000 + 4 * Math.PI / 2 * 0.4 * T;
        CheckTester shortCoil = tester.stock(ReturnsCheck.COILS, coil(120, 2000));
        Finding coil = only(shortCoil.findings(ReturnsRules.COIL));
        assertEquals(length, coil.measured().orElseThrow().value(), 1e-6);
        assertEquals(2000, coil.required().orElseThrow().value());
        assertTrue(coil.fix().orElseThrow().startsWith("Make it in 2 pieces"), coil.fix().orElseThrow());
        assertEquals(2, number(table(shortCoil.run(), "coils"), 0, "coils"));
        assertEquals(List.of(), rules(shortCoil.stock(ReturnsCheck.COILS, coil(150, 50_000)).run()));
        Finding narrow = only(drawn(Outlines.rectangle(1000, 500)).with(SharedSettings.RETURN_DEPTH, 130.0).stock(ReturnsCheck.COILS, coil(120, 50_000))
                .findings(ReturnsRules.COIL));
        assertEquals(130, narrow.measured().orElseThrow().value());
        assertEquals(120, narrow.required().orElseThrow().value());
    }

    @Test
    void coils_of_another_material_or_thickness_are_left_alone() {
        CheckTester tester = drawn(Outlines.rectangle(1000, 500));
        for (Map<Setting<?>, ?> other : List.<Map<Setting<?>, ?>>of(
                Map.of(ReturnsCheck.COIL_WIDTH, 120.0, ReturnsCheck.COIL_LENGTH, 500.0, ReturnsSettings.COIL_MATERIAL, "steel"),
                Map.of(ReturnsCheck.COIL_WIDTH, 120.0, ReturnsCheck.COIL_LENGTH, 500.0, ReturnsSettings.COIL_THICKNESS, 1.0))) {
            Outcome outcome = tester.stock(ReturnsCheck.COILS, other).run();
            assertEquals(List.of(), rules(outcome));
            assertEquals(null, cell(table(outcome, "coils"), 0, "coil"));
            assertTrue(outcome.missing().get(0).contains("no coil of aluminium"), () -> outcome.missing().toString());
        }
    }

    private static Map<Setting<?>, ?> coil(double width, double length) {
        return Map.of(ReturnsCheck.COIL_WIDTH, width, ReturnsCheck.COIL_LENGTH, length);
    }

    @Test
    void coils_are_filled_longest_strip_first() {
        Coil coil = new Coil("c", 100, 1000, 0, "");
        assertEquals(1, coil.count(List.of(400.0, 600.0)));
        assertEquals(2, coil.count(List.of(600.0, 600.0, 400.0, 400.0)));
        assertEquals(3, coil.count(List.of(2500.0)));
        assertEquals(0, coil.count(List.of()));
    }

    @Test
    void without_a_depth_or_an_assigned_part_nothing_is_measured() {
        CheckTester none = CheckTester.of(new ReturnsCheck()).part(part("f", Role.FACE, Outlines.rectangle(200, 100)));
        assertFalse(none.run().measured());
        assertTrue(none.run().missing().get(0).contains("No depth is given"), () -> none.run().missing().toString());
        Outcome unassigned = tester().part(Part.builder("f", Role.FACE, Outlines.rectangle(200, 100)).assigned(false).build()).run();
        assertFalse(unassigned.measured());
        assertTrue(unassigned.missing().get(0).contains("role of a face"), () -> unassigned.missing().toString());
    }

    @Test
    void a_face_that_the_inset_swallows_is_said_to_be_missing() {
        Outcome outcome = tester().part(part("f", Role.FACE, Outlines.rectangle(200, 4))).run();
        assertTrue(outcome.missing().get(0).startsWith("Nothing is left of face f"), () -> outcome.missing().toString());
        assertTrue(outcome.missing().get(1).contains("lists no coils"), () -> outcome.missing().toString());
    }

    @ParameterizedTest
    @CsvSource({"returns.k-factor, 0.6, 0.01 to 0.5", "returns.k-factor, 1, 0.01 to 0.5", "returns.k-factor, 0, 0.01 to 0.5",
        "returns.fold-k-factor, 0.51, 0.01 to 0.5", "returns.depth, 0 mm, 1 mm to 2000 mm", "returns.depth, -5 mm, 1 mm to 2000 mm",
        "returns.thickness, 0 mm, 0.1 mm to 10 mm", "returns.least-radius, -1 mm, 0 mm to 1000 mm"})
    void values_out_of_range_are_refused_by_name_with_the_range(String key, String value, String range) {
        Setting<?> setting = new ReturnsCheck().info().settings().stream().filter(each -> each.key().equals(key)).findFirst().orElseThrow();
        String message = assertThrows(IllegalArgumentException.class, () -> setting.parse(value)).getMessage();
        assertTrue(message.startsWith(key + ":") && message.contains(range), message);
    }

    @Test
    void messages_use_the_units_of_the_job() {
        Finding tight = drawn(Outlines.rounded(200, 120, 6.35)).units(UnitSystem.INCH).findings(ReturnsRules.TIGHT_RADIUS).get(0);
        assertTrue(tight.message().contains("1/4 in inside"), tight.message());
    }

    @Test
    void a_run_can_be_cancelled_and_is_told_its_progress_on_its_own_thread() {
        Thread own = Thread.currentThread();
        CheckTester tester = drawn(Outlines.ring(40, 80)).onCheckpoint(fraction -> assertEquals(own, Thread.currentThread()));
        assertTrue(tester.run().measured());
        CheckTester cancelled = tester.onCheckpoint(fraction -> {
            throw new CancellationException();
        });
        assertThrows(CancellationException.class, cancelled::run);
    }

    @Test
    void shows_lines_bends_and_joints() {
        Outcome outcome = drawn(Outlines.rectangle(200, 100)).run();
        assertEquals(List.of("strips", "bends", "joints"), outcome.layers().stream().map(layer -> layer.id()).toList());
        assertEquals(List.of(1, 4, 1), outcome.layers().stream().map(layer -> layer.items().size()).toList());
    }

    @Test
    void a_back_drawn_as_a_round_offset_gets_the_folds_of_the_made_one() {
        Polygon face = (Polygon) Outlines.rectangle(200, 160).difference(Outlines.rectangle(120, 100));
        Polygon back = (Polygon) face.buffer(-SharedSettings.BACK_ALLOWANCE.defaultValue() / 2, 64);
        Outcome made = tester().part(part("f", Role.FACE, face)).run();
        Outcome drawn = tester().part(part("f", Role.FACE, face)).part(part("b", Role.BACK, back)).run();
        assertEquals(length(made, 0), length(drawn, 0), 0.01);
        assertEquals(List.of(), drawn.findings().stream().filter(finding -> finding.rule().equals(ReturnsRules.TIGHT_RADIUS)).toList());
        assertEquals(6, table(drawn, "bends").rows().size(), "an L has six corners");
    }

    @Test
    void a_tip_is_told_by_its_length_and_not_as_nought_apart() {
        // walls that lean 15 degrees towards each other: closer than the arm over arm / (2 sin 7.5 degrees) of the centre line
        Polygon wedge = (Polygon) CheckTester.wkt("POLYGON ((0 0, 0 79, 300 39.5, 0 0))");
        List<Finding> channels = tester().part(part("f", Role.FACE, wedge)).run().findings().stream().filter(finding -> finding.rule().equals(ReturnsRules.NARROW_CHANNEL)).toList();
        assertEquals(1, channels.size());
        assertTrue(channels.get(0).message().contains("run together into a tip over "), channels.get(0).message());
    }
}
