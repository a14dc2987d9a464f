// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.router;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.CancellationException;
import java.util.concurrent.atomic.AtomicReference;
import kerfglow.api.Finding;
import kerfglow.api.Outcome;
import kerfglow.api.Rule;
import kerfglow.api.Setting;
import kerfglow.api.Severity;
import kerfglow.api.Table;
import kerfglow.api.UnitSystem;
import kerfglow.api.proof.Element;
import kerfglow.api.proof.Paint;
import kerfglow.api.SharedSettings;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Role;
import kerfglow.testkit.CheckTester;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Point;
import org.locationtech.jts.geom.Polygon;

class RouterCheckTest {
    private static final double TOLERANCE_MM = 0.02;
    /** Two squares of 40 joined by a bridge 6 wide and 30 long. */
    private static final String DUMBBELL =
            "POLYGON ((0 0, 40 0, 40 17, 70 17, 70 0, 110 0, 110 40, 70 40, 70 23, 40 23, 40 40, 0 40, 0 0))";
    /** A block with a slot 4 wide and 20 deep. */
    private static final String SLOTTED = "POLYGON ((0 0, 60 0, 60 40, 32 40, 32 20, 28 20, 28 40, 0 40, 0 0))";
    private static final String L = "POLYGON ((0 0, 60 0, 60 30, 30 30, 30 60, 0 60, 0 0))";
    private static final String SQUARE = "POLYGON ((0 0, 60 0, 60 60, 0 60, 0 0))";
    private static final String FRAME = "POLYGON ((-50 -50, 160 -50, 160 90, -50 90, -50 -50), "
            + "(0 0, 40 0, 40 17, 70 17, 70 0, 110 0, 110 40, 70 40, 70 23, 40 23, 40 40, 0 40, 0 0))";

    private static CheckTester tester() {
        return CheckTester.of(new RouterCheck());
    }

    private static CheckTester withBit(double diameter) {
        return tester().stock(RouterCheck.BITS, bit(diameter, 40));
    }

    private static Map<Setting<?>, ?> bit(double diameter, double flute) {
        return Map.of(RouterCheck.DIAMETER, diameter, RouterCheck.FLUTE_LENGTH, flute);
    }

    private static Part part(String id, Role role, String shape, String material, double thickness) {
        return Part.builder(id, role, (Polygon) CheckTester.wkt(shape)).elements(List.of("e-" + id)).layer("letters")
                .sheetMaterial(material).thicknessMm(thickness).build();
    }

    private static Finding only(List<Finding> findings) {
        assertEquals(1, findings.size(), () -> "findings: " + findings);
        return findings.get(0);
    }

    private static double measured(Finding finding) {
        return finding.measured().orElseThrow().value();
    }

    private static double required(Finding finding) {
        return finding.required().orElseThrow().value();
    }

    /** Rules but router.bit, which every measured sheet has. */
    private static List<String> rules(Outcome outcome) {
        return outcome.findings().stream().map(Finding::rule).filter(rule -> rule != RouterRules.BIT).map(Rule::id).toList();
    }

    @Test
    void says_who_it_is() {
        RouterCheck check = new RouterCheck();
        assertEquals("router", check.info().id());
        assertEquals(List.of("router.narrow-gap", "router.inside-corner", "router.thin-stroke", "router.small-part",
                "router.loose-island", "router.opening-off-panel", "router.too-deep", "router.bit"), check.info().rules().stream().map(Rule::id).toList());
        assertEquals(Severity.INFO, RouterRules.BIT.severity());
        assertEquals(check.info(), new RouterCheck().info());
    }

    @Test
    void every_setting_is_on_the_page() {
        String page = new RouterCheck().info().page();
        for (Setting<?> setting : RouterSettings.ALL) {
            assertTrue(page.contains("`" + setting.key() + "`"), setting.key());
        }
    }

    @ParameterizedTest
    @EnumSource(value = Role.class, names = {"FACE", "BACK", "PANEL", "PUSH_THROUGH"})
    void a_slot_narrower_than_the_bit_is_a_gap_of_a_part_cut_out(Role role) {
        CheckTester tester = withBit(4.2).part("p1", role, SLOTTED);
        Finding gap = only(tester.findings(RouterRules.NARROW_GAP));
        assertEquals(4, measured(gap), TOLERANCE_MM);
        assertEquals(4.2, required(gap));
        assertEquals(75.719828, gap.place().orElseThrow().getArea(), 0.02); // derived: geometry
        Coordinate at = gap.at().orElseThrow();
        assertTrue(at.x > 28 && at.x < 32 && at.y >= 20 && at.y <= 40, () -> "at " + at);
        assertEquals(List.of("p1"), gap.parts());
        assertEquals(List.of("p1"), gap.elements());
        assertEquals(List.of("router.narrow-gap"), rules(tester.run()));
    }

    @Test
    void a_slot_that_the_bit_enters_has_two_inside_corners() {
        CheckTester tester = withBit(3.8).part("p1", Role.FACE, SLOTTED);
        List<Finding> corners = tester.findings(RouterRules.INSIDE_CORNER);
        assertEquals(2, corners.size());
        assertEquals(new Coordinate(28, 20), corners.get(0).at().orElseThrow());
        assertEquals(new Coordinate(32, 20), corners.get(1).at().orElseThrow());
        for (Finding corner : corners) {
            assertEquals(1.9 * (Math.sqrt(2) - 1), measured(corner), TOLERANCE_MM); // derived: geometry
        }
        assertEquals(List.of("router.inside-corner", "router.inside-corner"), rules(tester.run()));
    }

    @Test
    void outside_corners_are_cut_and_corners_within_the_tolerance_are_nothing() {
        assertEquals(List.of(), rules(withBit(6).part("p1", Role.FACE, SQUARE).run()));
        double depth = 3 * (Math.sqrt(2) - 1);
        assertEquals(1, withBit(6).with(RouterSettings.LEFT_DEPTH, depth - 0.01).part("p1", Role.FACE, L).findings(RouterRules.INSIDE_CORNER)
                .size());
        assertEquals(0, withBit(6).with(RouterSettings.LEFT_DEPTH, depth + 0.01).part("p1", Role.FACE, L).findings(RouterRules.INSIDE_CORNER)
                .size());
    }

    @Test
    void in_an_opening_the_waste_is_the_opening() {
        CheckTester tester = withBit(6.2).part("o1", Role.OPENING, DUMBBELL);
        assertEquals(6, measured(only(tester.findings(RouterRules.NARROW_GAP))), TOLERANCE_MM);
        assertEquals(8, tester.findings(RouterRules.INSIDE_CORNER).size());
        Finding thin = only(tester.findings(RouterRules.THIN_STROKE));
        assertEquals(6, measured(thin), TOLERANCE_MM);
        assertEquals(6.2, required(thin));
        CheckTester smaller = withBit(5.8).part("o1", Role.OPENING, DUMBBELL);
        assertEquals(List.of(), smaller.findings(RouterRules.NARROW_GAP));
        assertEquals(List.of(), smaller.findings(RouterRules.THIN_STROKE));
    }

    @Test
    void the_same_shape_as_a_face_has_no_gap_but_a_thin_stroke() {
        CheckTester tester = withBit(6.2).with(RouterSettings.LEAST_STROKE, 6.5).part("p1", Role.FACE, DUMBBELL);
        assertEquals(List.of(), tester.findings(RouterRules.NARROW_GAP));
        Finding neck = only(tester.findings(RouterRules.THIN_STROKE));
        assertEquals(6, measured(neck), TOLERANCE_MM);
        assertEquals(6.5, required(neck));
        assertEquals(1, neck.place().orElseThrow().getDimension());
        assertEquals(List.of(), withBit(6.2).with(RouterSettings.LEAST_STROKE, 5.5).part("p1", Role.FACE, DUMBBELL)
                .findings(RouterRules.THIN_STROKE));
    }

    @Test
    void a_panel_is_cut_round_and_each_opening_once() {
        // the panel's hole and the opening are one edge: its gap and corners must not be found twice
        CheckTester both = withBit(6.2).part("panel", Role.PANEL, FRAME).part("o1", Role.OPENING, DUMBBELL);
        assertEquals(List.of("o1"), only(both.findings(RouterRules.NARROW_GAP)).parts());
        assertEquals(8, both.findings(RouterRules.INSIDE_CORNER).size());
        CheckTester panelAlone = withBit(6.2).part("panel", Role.PANEL, FRAME);
        assertEquals(List.of("panel"), only(panelAlone.findings(RouterRules.NARROW_GAP)).parts());
    }

    @Test
    void the_bridge_between_two_openings_is_a_stroke_of_the_panel() {
        CheckTester tester = withBit(3).part("panel", Role.PANEL, "POLYGON ((0 0, 100 0, 100 50, 0 50, 0 0),"
                + " (10 10, 49 10, 49 40, 10 40, 10 10), (51 10, 90 10, 90 40, 51 40, 51 10))")
                .part("left", Role.OPENING, "POLYGON ((10 10, 49 10, 49 40, 10 40, 10 10))")
                .part("right", Role.OPENING, "POLYGON ((51 10, 90 10, 90 40, 51 40, 51 10))");
        Finding bridge = only(tester.findings(RouterRules.THIN_STROKE));
        assertEquals(List.of("panel"), bridge.parts());
        assertEquals(2, measured(bridge), TOLERANCE_MM);
        assertEquals(List.of(), tester.findings(RouterRules.NARROW_GAP));
    }

    @Test
    void in_a_panel_with_many_openings_each_is_cut_once() {
        List<String> openings = new ArrayList<>();
        for (int i = 0; i < 144; i++) {
            openings.add(box(10 + i % 12 * 20, 10 + i / 12 * 20, 20 + i % 12 * 20, 20 + i / 12 * 20));
        }
        List<Finding> corners = openedPanel(box(0, 0, 250, 250), true, openings.toArray(new String[0])).findings(RouterRules.INSIDE_CORNER);
        assertEquals(4 * openings.size(), corners.size());
        assertTrue(corners.stream().noneMatch(corner -> corner.parts().contains("panel0")));
    }

    @Test
    void letters_that_stand_close_together_have_no_gap() {
        assertEquals(List.of(), rules(withBit(6).part("a", Role.FACE, SQUARE)
                .part("b", Role.FACE, "POLYGON ((61 0, 121 0, 121 60, 61 60, 61 0))").run()));
    }

    @Test
    void drilled_holes_are_not_routed() {
        Part drilled = Part.builder("p1", Role.BACK, (Polygon) CheckTester.wkt(SQUARE))
                .drilled(CheckTester.wkt("POINT (30 30)").buffer(1)).build();
        assertEquals(List.of(), rules(withBit(6).part(drilled).run()));
    }

    @Test
    void a_counter_that_the_bit_does_not_enter_is_a_gap() {
        Finding gap = only(withBit(3).part("p1", Role.FACE,
                "POLYGON ((0 0, 60 0, 60 60, 0 60, 0 0), (30 30, 32 30, 32 32, 30 32, 30 30))").findings(RouterRules.NARROW_GAP));
        assertEquals(2, measured(gap), TOLERANCE_MM);
        assertEquals(4, gap.place().orElseThrow().getArea(), 1e-9);
        assertTrue(gap.message().contains("does not fit at all"), gap.message());
    }

    @Test
    void a_taper_is_measured_by_its_length_below_the_limit() {
        // a blade of 10 degrees: narrower than 3 over 1.5 / sin 5 = 17.21 (derived: geometry)
        CheckTester tester = withBit(3).part("p1", Role.FACE, "POLYGON ((0 0, 300 -26.246599, 300 26.246599, 0 0))");
        Finding taper = only(tester.findings(RouterRules.THIN_STROKE));
        assertEquals(1.5 / Math.sin(Math.toRadians(5)), measured(taper), TOLERANCE_MM);
        assertEquals(3, required(taper));
        assertEquals(List.of(), tester.with(RouterSettings.TAPER_LENGTH, 17.3).findings(RouterRules.THIN_STROKE));
        assertEquals(1, tester.with(RouterSettings.TAPER_LENGTH, 17.1).findings(RouterRules.THIN_STROKE).size());
    }

    @ParameterizedTest
    @ValueSource(doubles = {2, 10})
    void a_prong_is_a_finding_when_it_is_longer_than_a_bump(double length) {
        List<Finding> found = withBit(3).part("p1", Role.FACE,
                "POLYGON ((0 0, 50 0, 50 24, %s 24, %s 26, 50 26, 50 50, 0 50, 0 0))".formatted(50 + length, 50 + length))
                .findings(RouterRules.THIN_STROKE);
        assertEquals(length > 3 ? 1 : 0, found.size());
        found.forEach(finding -> assertEquals(2, measured(finding), TOLERANCE_MM));
    }

    @ParameterizedTest
    @ValueSource(doubles = {1490, 1510})
    void a_part_below_the_least_area_is_small(double area) {
        CheckTester tester = withBit(3).part("p1", Role.FACE, "POLYGON ((0 0, 50 0, 50 %s, 0 %s, 0 0))".formatted(area / 50, area / 50));
        List<Finding> small = tester.findings(RouterRules.SMALL_PART);
        assertEquals(area < 1500 ? 1 : 0, small.size());
        small.forEach(finding -> assertEquals(area, measured(finding), 1e-6));
        assertEquals(List.of(), withBit(3).part("o", Role.OPENING, "POLYGON ((0 0, 9 0, 9 9, 0 9, 0 0))").findings(RouterRules.SMALL_PART));
    }

    @Test
    void a_counter_of_an_opening_falls_out() {
        String island = "POLYGON ((40 40, 60 40, 60 60, 40 60, 40 40))";
        CheckTester tester = withBit(3)
                .part("panel", Role.PANEL, "POLYGON ((0 0, 100 0, 100 100, 0 100, 0 0), (20 20, 80 20, 80 80, 20 80, 20 20))")
                .part("piece", Role.PANEL, island)
                .part("o1", Role.OPENING, "POLYGON ((20 20, 80 20, 80 80, 20 80, 20 20), (40 40, 60 40, 60 60, 40 60, 40 40))");
        Finding loose = only(tester.findings(RouterRules.LOOSE_ISLAND));
        assertEquals(400, measured(loose), 1e-9);
        assertEquals(List.of("o1", "piece"), loose.parts());
        assertTrue(loose.place().orElseThrow().equalsTopo(CheckTester.wkt(island)));
        assertEquals(List.of(), tester.findings(RouterRules.SMALL_PART), "one fault, told once");
        // the same without the opening: a piece of a panel in a hole of another
        CheckTester without = withBit(3)
                .part("panel", Role.PANEL, "POLYGON ((0 0, 100 0, 100 100, 0 100, 0 0), (20 20, 80 20, 80 80, 20 80, 20 20))")
                .part("piece", Role.PANEL, island);
        assertEquals(List.of("panel", "piece"), only(without.findings(RouterRules.LOOSE_ISLAND)).parts());
        assertEquals(List.of(), without.findings(RouterRules.SMALL_PART));
        // beside the panel it is held by nothing but vacuum
        assertEquals(400, measured(only(withBit(3).part("piece", Role.PANEL, island).findings(RouterRules.SMALL_PART))), 1e-9);
        // a counter that is an opening itself is no island
        assertEquals(List.of(), withBit(3).part("o1", Role.OPENING,
                "POLYGON ((20 20, 80 20, 80 80, 20 80, 20 20), (40 40, 60 40, 60 60, 40 60, 40 40))")
                .part("o2", Role.OPENING, island).findings(RouterRules.LOOSE_ISLAND));
    }

    /** A panel as the host makes it: drawn whole, openings taken out, so that it may be several parts. */
    private static CheckTester openedPanel(String drawn, boolean isElementKnown, String... openings) {
        CheckTester tester = withBit(3);
        if (isElementKnown) {
            tester.element(Element.builder("e").fill(Paint.colour(0)).fillArea(CheckTester.wkt(drawn)).build());
        }
        Geometry left = CheckTester.wkt(drawn);
        for (String opening : openings) {
            left = left.difference(CheckTester.wkt(opening));
        }
        for (int i = 0; i < left.getNumGeometries(); i++) {
            tester.part(Part.builder("panel" + i, Role.PANEL, (Polygon) left.getGeometryN(i)).elements(List.of("e")).build());
        }
        for (int i = 0; i < openings.length; i++) {
            tester.part("o" + i, Role.OPENING, openings[i]);
        }
        return tester;
    }

    private static String box(double x, double y, double toX, double toY) {
        return "POLYGON ((%1$s %2$s, %3$s %2$s, %3$s %4$s, %1$s %4$s, %1$s %2$s))".formatted(x, y, toX, toY);
    }

    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void an_opening_beside_or_over_the_edge_of_its_panel_is_told_and_only_what_is_cut_is_measured(boolean isElementKnown) {
        CheckTester tester = openedPanel(box(0, 0, 900, 300), isElementKnown, box(-50, 100, 50, 200), box(920, 100, 970, 200),
                box(400, 100, 500, 200));
        List<Finding> off = tester.findings(RouterRules.OPENING_OFF_PANEL);
        assertEquals(List.of(List.of("o0"), List.of("o1")), off.stream().map(Finding::parts).toList());
        assertEquals(50, measured(off.get(0)), 1e-9);
        assertTrue(off.get(0).place().orElseThrow().equalsTopo(CheckTester.wkt(box(-50, 100, 0, 200))));
        assertTrue(off.get(1).measured().isEmpty());
        assertTrue(off.get(1).place().orElseThrow().equalsTopo(CheckTester.wkt(box(920, 100, 970, 200))));
        // the notch is open to the outside: two corners at its bottom, beside the four of the opening that lies inside
        assertEquals(List.of("50.0 100.0", "400.0 100.0", "500.0 100.0", "50.0 200.0", "400.0 200.0", "500.0 200.0"),
                tester.findings(RouterRules.INSIDE_CORNER).stream().map(RouterCheckTest::at).toList());
        assertEquals(List.of(), tester.findings(RouterRules.LOOSE_ISLAND));
    }

    private static String at(Finding finding) {
        Coordinate at = finding.at().orElseThrow();
        return at.x + " " + at.y;
    }

    @Test
    void an_opening_in_a_recess_of_its_panel_lies_in_no_panel() {
        Finding off = only(openedPanel(L, true, box(40, 40, 55, 55), box(10, 10, 20, 20)).findings(RouterRules.OPENING_OFF_PANEL));
        assertEquals(List.of("o0"), off.parts());
        assertTrue(off.message().endsWith("lies in no panel."), off.message());
    }

    @Test
    void an_opening_that_splits_a_panel_or_takes_a_corner_off_is_measured_against_the_panel_as_drawn() {
        CheckTester split = openedPanel(box(0, 0, 900, 300), true, box(400, -5, 500, 305), box(-20, -20, 30, 30));
        List<Finding> off = split.findings(RouterRules.OPENING_OFF_PANEL);
        assertEquals(2, off.size());
        // the corner of the square that sticks out lies farthest from the panel's own corner
        assertEquals(Math.hypot(20, 20), measured(off.get(0)), 1e-9);
        assertEquals(5, measured(off.get(1)), 1e-9);
        assertEquals(List.of("30.0 30.0"), split.findings(RouterRules.INSIDE_CORNER).stream().map(RouterCheckTest::at).toList());
    }

    @Test
    void an_opening_that_just_reaches_the_edge_is_a_notch_and_one_near_it_is_inside() {
        CheckTester notch = openedPanel(box(0, 0, 900, 300), true, box(0, 100, 50, 200));
        assertEquals(List.of("router.inside-corner", "router.inside-corner"), rules(notch.run()));
        CheckTester near = openedPanel(box(0, 0, 900, 300), true, box(0.1, 100, 50, 200));
        assertEquals(4, near.findings(RouterRules.INSIDE_CORNER).size());
        assertEquals(List.of(), near.findings(RouterRules.OPENING_OFF_PANEL));
        assertEquals(0.1, measured(only(near.findings(RouterRules.THIN_STROKE))), TOLERANCE_MM);
    }

    @Test
    void without_a_panel_it_is_said_once_that_openings_may_lie_in_none() {
        Outcome outcome = withBit(3).part(part("a", Role.OPENING, SQUARE, "acrylic", 3)).part(part("b", Role.OPENING, L, "acrylic", 3)).run();
        assertEquals(List.of("The proof has no panel, so whether its openings lie in one was not measured."), outcome.missing());
        assertFalse(rules(outcome).contains("router.opening-off-panel"));
    }

    @Test
    void stock_thicker_than_every_flute_is_too_deep() {
        CheckTester tester = tester().stock(RouterCheck.BITS, bit(3, 12)).stock(RouterCheck.BITS, bit(6, 25));
        Finding deep = only(tester.part(part("p1", Role.FACE, SQUARE, "plywood", 30)).findings(RouterRules.TOO_DEEP));
        assertEquals(30, measured(deep));
        assertEquals(25, required(deep));
        assertTrue(deep.message().contains("on layer \"letters\""), deep.message());
        assertEquals(List.of(), tester().stock(RouterCheck.BITS, bit(3, 12)).stock(RouterCheck.BITS, bit(6, 25))
                .part(part("p1", Role.FACE, SQUARE, "plywood", 25)).findings(RouterRules.TOO_DEEP));
    }

    @Test
    void stock_thicker_than_every_bit_that_fits_is_too_deep() {
        CheckTester tester = tester().stock(RouterCheck.BITS, bit(3, 12)).stock(RouterCheck.BITS, bit(6, 25))
                .part(part("p1", Role.FACE, SLOTTED, "plywood", 20));
        Finding deep = only(tester.findings(RouterRules.TOO_DEEP));
        assertEquals(20, measured(deep));
        assertEquals(12, required(deep));
        Finding gap = only(tester.findings(RouterRules.NARROW_GAP));
        assertEquals(6, required(gap), "the bit that reaches through does not pass");
        assertTrue(gap.fix().orElseThrow().contains("12 mm deep only"), gap.fix().orElseThrow());
    }

    private static Part line(String id, Role role, double widthMm, Part.Source... sources) {
        return Part.builder(id, role, (Polygon) CheckTester.wkt(L).getBoundary().buffer(widthMm / 2)).elements(List.of("e-" + id))
                .sources(Set.of(sources)).sheetMaterial("acrylic").thicknessMm(3).build();
    }

    @Test
    void a_drawn_cut_line_is_not_measured_and_that_is_said_once() {
        Outcome outcome = withBit(3).part(part("p1", Role.FACE, SQUARE, "acrylic", 3)).part(line("a", Role.FACE, 0.25, Part.Source.STROKE))
                .part(line("b", Role.BACK, 0.35, Part.Source.STROKE)).run();
        assertEquals(List.of(), rules(outcome));
        assertEquals(List.of("2 parts are lines no wider than a hairline: drawn cut lines, not strips of material, and not measured."),
                outcome.missing());
        assertEquals(List.of("p1"), outcome.tables().get(1).rows().stream().map(row -> row.get(0)).toList());
        // wider, or filled as well, it is material
        for (Part strip : List.of(line("a", Role.FACE, 0.6, Part.Source.STROKE), line("a", Role.FACE, 0.25, Part.Source.STROKE, Part.Source.SHAPE))) {
            Outcome material = withBit(3).part(strip).run();
            assertTrue(rules(material).contains("router.thin-stroke"), () -> rules(material).toString());
            assertEquals(List.of(), material.missing());
        }
        assertTrue(rules(withBit(3).with(SharedSettings.HAIRLINE, 0.2).part(line("a", Role.FACE, 0.25, Part.Source.STROKE)).run())
                .contains("router.thin-stroke"));
    }

    @Test
    void a_line_is_as_wide_as_its_widest_stroke() {
        // a hairline joined with a short wide stroke: the mean of both is thin
        Part line = line("a", Role.FACE, 0.25, Part.Source.STROKE);
        Element thin = Element.builder("e-a").stroke(Paint.colour(0), 0.25).build();
        Element wide = Element.builder("e-wide").stroke(Paint.colour(0), 2).build();
        Polygon both = (Polygon) line.shape().union(CheckTester.wkt("LINESTRING (0 0, 4 0)").buffer(1));
        assertTrue(2 * both.getArea() / both.getLength() < SharedSettings.HAIRLINE.defaultValue(), "the mean must be thin");
        Part joined = Part.builder("a", Role.FACE, both).sources(line.sources()).elements(List.of("e-a", "e-wide")).build();
        assertTrue(withBit(3).element(thin).element(wide).part(joined).run().measured());
        assertFalse(withBit(3).element(thin).part(line).run().measured(), "nothing but a cut line");
    }

    @Test
    void stock_too_deep_is_told_once_for_each_sheet_and_reach() {
        CheckTester tester = tester().stock(RouterCheck.BITS, bit(3, 12)).stock(RouterCheck.BITS, bit(6, 15))
                .part(part("a", Role.FACE, SQUARE, "plywood", 20)).part(part("b", Role.FACE, SLOTTED, "plywood", 20))
                .part(part("c", Role.BACK, L, "plywood", 20)).part(part("d", Role.FACE, L, "plywood", 22))
                .part(part("e", Role.FACE, DUMBBELL, "plywood", 20));
        List<Finding> deep = tester.run().findings().stream().filter(finding -> finding.rule() == RouterRules.TOO_DEEP).toList();
        // the bit of 6 does not pass the slot of 4, so that there the shorter one decides
        assertEquals(List.of(List.of("a", "c", "e"), List.of("b"), List.of("d")), deep.stream().map(Finding::parts).toList());
        assertEquals(List.of(15.0, 12.0, 15.0), deep.stream().map(RouterCheckTest::required).toList());
        assertEquals(List.of("e-a", "e-c", "e-e"), deep.get(0).elements());
        assertTrue(deep.get(0).message().contains("face a on layer \"letters\" and 2 more parts is 20 mm thick"), deep.get(0).message());
        List<String> shapes = List.of(SQUARE, L, DUMBBELL);
        assertEquals(shapes.size(), deep.get(0).place().orElseThrow().getNumGeometries());
        for (int i = 0; i < shapes.size(); i++) {
            assertTrue(CheckTester.wkt(shapes.get(i)).contains(deep.get(0).place().orElseThrow().getGeometryN(i)), shapes.get(i));
        }
    }

    @Test
    void a_bit_that_the_job_asks_for_must_reach_through_itself() {
        CheckTester tester = tester().stock(RouterCheck.BITS, bit(3, 12)).stock(RouterCheck.BITS, bit(6, 25))
                .part(part("p1", Role.FACE, SQUARE, "plywood", 20));
        assertEquals(List.of(), tester.findings(RouterRules.TOO_DEEP));
        assertEquals(12, required(only(tester.with(RouterSettings.BIT_DIAMETER, 3.0).findings(RouterRules.TOO_DEEP))));
        assertEquals(List.of(), tester.with(RouterSettings.BIT_DIAMETER, 6.0).findings(RouterRules.TOO_DEEP));
    }

    @Test
    void the_smallest_bit_that_reaches_through_is_used_unless_the_job_names_one() {
        CheckTester thin = tester().stock(RouterCheck.BITS, bit(3, 12)).stock(RouterCheck.BITS, bit(6, 25))
                .part(part("p1", Role.FACE, L, "acrylic", 6));
        assertEquals(1.5 * (Math.sqrt(2) - 1), measured(only(thin.findings(RouterRules.INSIDE_CORNER))), TOLERANCE_MM);
        CheckTester thick = tester().stock(RouterCheck.BITS, bit(3, 12)).stock(RouterCheck.BITS, bit(6, 25))
                .part(part("p1", Role.FACE, L, "acrylic", 20));
        assertEquals(3 * (Math.sqrt(2) - 1), measured(only(thick.findings(RouterRules.INSIDE_CORNER))), TOLERANCE_MM);
        Finding given = only(thin.with(RouterSettings.BIT_DIAMETER, 8.0).findings(RouterRules.INSIDE_CORNER));
        assertEquals(4 * (Math.sqrt(2) - 1), measured(given), TOLERANCE_MM);
        assertTrue(given.fix().orElseThrow().contains("1.24 mm"), given.fix().orElseThrow()); // what the 6 mm bit would leave
    }

    @Test
    void bits_kept_for_other_materials_are_left_alone() {
        CheckTester tester = tester()
                .stock(RouterCheck.BITS, Map.of(RouterCheck.DIAMETER, 2.0, RouterCheck.FLUTE_LENGTH, 40.0, RouterSettings.MATERIALS, "aluminium"))
                .stock(RouterCheck.BITS, Map.of(RouterCheck.DIAMETER, 6.0, RouterCheck.FLUTE_LENGTH, 40.0, RouterSettings.MATERIALS, "Acrylic, PVC"))
                .part(part("p1", Role.FACE, SLOTTED, "acrylic", 5));
        assertEquals(6, required(only(tester.findings(RouterRules.NARROW_GAP))));
        Outcome none = tester().stock(RouterCheck.BITS, Map.of(RouterCheck.DIAMETER, 2.0, RouterCheck.FLUTE_LENGTH, 40.0,
                RouterSettings.MATERIALS, "aluminium")).part(part("p1", Role.FACE, SLOTTED, "acrylic", 5)).run();
        assertTrue(none.missing().stream().anyMatch(text -> text.contains("no bit for face of acrylic")), () -> none.missing().toString());
        assertEquals(List.of(), rules(none));
    }

    @Test
    void the_largest_bit_that_cuts_everything_is_named_for_each_sheet() {
        Outcome outcome = tester().stock(RouterCheck.BITS, bit(2, 30)).stock(RouterCheck.BITS, bit(3, 30)).stock(RouterCheck.BITS, bit(5, 30))
                .part(part("p1", Role.FACE, SLOTTED, "acrylic", 5)).part(part("p2", Role.BACK, SQUARE, "ACM", 3)).run();
        List<Finding> notes = outcome.findings().stream().filter(finding -> finding.rule() == RouterRules.BIT).toList();
        assertEquals(2, notes.size());
        assertEquals(3, measured(notes.get(0)));
        assertEquals(List.of("p1"), notes.get(0).parts());
        // derived: geometry. Two square corners each: 2 (1 - pi / 4) (1.5² - 1²)
        assertTrue(notes.get(0).message().contains("(2 mm) would gain 0.5 mm²"), notes.get(0).message());
        assertEquals(5, measured(notes.get(1)));
        assertTrue(notes.get(1).message().endsWith("it leaves nothing."), notes.get(1).message()); // so smaller bits gain nothing
        Table bits = outcome.tables().get(0);
        assertEquals(6, bits.rows().size());
        assertEquals(List.of("acrylic, 5 mm", "router-bits 3", 5.0, true, false, 1.0, 0.0), bits.rows().get(2).subList(0, 7));
        assertEquals(List.of(true, true, 0.0, 0.0, 0.0, 0.0), bits.rows().get(5).subList(3, 9));
        assertEquals(2, outcome.tables().get(1).rows().size());
    }

    @Test
    void no_bit_is_named_where_none_cuts_everything() {
        Outcome outcome = withBit(6).part("p1", Role.FACE, SLOTTED).run();
        Finding note = outcome.findings().get(outcome.findings().size() - 1);
        assertEquals(RouterRules.BIT, note.rule());
        assertTrue(note.measured().isEmpty());
        assertTrue(note.message().contains("no stocked bit cuts everything"), note.message());
    }

    @Test
    void usual_bits_stand_in_for_an_empty_shop_sheet_and_it_is_said() {
        Outcome outcome = tester().units(UnitSystem.INCH).part("p1", Role.FACE, SLOTTED).run();
        assertTrue(outcome.missing().get(0).contains("1/8 in (flute 1/2 in) and 1/4 in (flute 1 in)"), () -> outcome.missing().toString());
        assertEquals(List.of("router.inside-corner", "router.inside-corner"), rules(outcome));
        assertEquals(25.4 / 16 * (Math.sqrt(2) - 1), measured(outcome.findings().get(0)), TOLERANCE_MM);
    }

    @Test
    void a_thickness_that_is_not_given_is_said_once_for_each_role_and_material() {
        Outcome outcome = withBit(3).part("p1", Role.FACE, SQUARE).part("p2", Role.FACE, SQUARE).part("p3", Role.BACK, SQUARE).run();
        assertEquals(2, outcome.missing().size());
        assertTrue(outcome.missing().get(0).contains("thickness of face"), () -> outcome.missing().toString());
        assertTrue(outcome.measured());
    }

    @Test
    void a_proof_without_routed_parts_is_not_measured() {
        Outcome outcome = withBit(3).part("v", Role.VINYL, SQUARE).run();
        assertFalse(outcome.measured());
    }

    @Test
    void shows_what_is_left_and_where_it_is_thin() {
        Outcome outcome = withBit(5).with(RouterSettings.LEAST_STROKE, 6.5).part("a", Role.FACE, SLOTTED).part("b", Role.FACE, DUMBBELL).run();
        assertEquals(List.of("uncut", "thin"), outcome.layers().stream().map(layer -> layer.id()).toList());
        // the slot; the four inside corners beside the bridge
        assertEquals(5, outcome.layers().get(0).items().size());
        assertEquals(1, outcome.layers().get(1).items().size());
    }

    @Test
    void a_run_can_be_cancelled_and_is_told_its_progress_on_its_own_thread() {
        Thread own = Thread.currentThread();
        AtomicReference<Double> last = new AtomicReference<>(-1.0);
        withBit(3).part("a", Role.FACE, SLOTTED).part("b", Role.FACE, DUMBBELL).onCheckpoint(fraction -> {
            assertEquals(own, Thread.currentThread());
            assertTrue(fraction >= last.get() && fraction <= 1);
            last.set(fraction);
        }).run();
        assertEquals(1.0, last.get());
        // also while findings are written
        int[] written = {0};
        Outcome outcome = withBit(3).part("a", Role.OPENING, DUMBBELL).onCheckpoint(fraction -> written[0] += fraction == 1 ? 1 : 0).run();
        assertTrue(written[0] >= outcome.findings().size(), () -> written[0] + " checkpoints");
        CheckTester cancelled = withBit(3).part("a", Role.FACE, SLOTTED).onCheckpoint(fraction -> {
            throw new CancellationException();
        });
        assertThrows(CancellationException.class, cancelled::run);
    }

    @Test
    void markers_lie_in_the_part_s_own_place_and_messages_use_the_units_of_the_job() {
        Finding gap = only(tester().units(UnitSystem.INCH).stock(RouterCheck.BITS, bit(6.35, 25.4)).part("p1", Role.FACE, SLOTTED)
                .findings(RouterRules.NARROW_GAP));
        assertTrue(gap.message().contains("1/4 in"), gap.message());
        Point at = gap.place().orElseThrow().getFactory().createPoint(gap.at().orElseThrow());
        assertTrue(gap.place().orElseThrow().isWithinDistance(at, 0.1));
    }

    @Test
    void two_runs_agree_part_order_decides_nothing_and_the_parts_stay_as_they_are() {
        Polygon slotted = (Polygon) CheckTester.wkt(SLOTTED);
        Polygon dumbbell = (Polygon) CheckTester.wkt(DUMBBELL);
        Part one = Part.builder("a", Role.FACE, slotted).build();
        Part two = Part.builder("b", Role.OPENING, dumbbell).build();
        CheckTester forward = withBit(6.2).part(one).part(two);
        List<String> first = forward.run().findings().stream().map(RouterCheckTest::line).toList();
        assertEquals(1 + 10 + 1, first.size(), first::toString); // a gap; eight corners, gap and neck; the bit
        assertEquals(first, forward.run().findings().stream().map(RouterCheckTest::line).toList());
        assertEquals(first.stream().sorted().toList(),
                withBit(6.2).part(two).part(one).run().findings().stream().map(RouterCheckTest::line).sorted().toList());
        assertTrue(slotted.equalsExact(CheckTester.wkt(SLOTTED)) && dumbbell.equalsExact(CheckTester.wkt(DUMBBELL)));
    }

    private static String line(Finding finding) {
        return finding.rule().id() + finding.measured() + finding.at() + finding.place()
                + (finding.rule() == RouterRules.BIT ? "" : finding.message() + finding.parts());
    }
}
