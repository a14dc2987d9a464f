// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.legibility;

import static kerfglow.check.legibility.BlockSign.E;
import static kerfglow.check.legibility.BlockSign.H;
import static kerfglow.check.legibility.BlockSign.L;
import static kerfglow.check.legibility.BlockSign.T;
import static kerfglow.check.legibility.BlockSign.cell;
import static kerfglow.check.legibility.BlockSign.moved;
import static kerfglow.check.legibility.BlockSign.only;
import static kerfglow.check.legibility.BlockSign.plain;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.CancellationException;
import kerfglow.api.CheckInfo;
import kerfglow.api.Finding;
import kerfglow.api.Outcome;
import kerfglow.api.TableInfo;
import kerfglow.api.UnitSystem;
import kerfglow.api.proof.Element;
import kerfglow.api.proof.Paint;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Role;
import kerfglow.api.proof.TextRun;
import kerfglow.testkit.CheckTester;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.locationtech.jts.geom.Polygon;

/** What the check says of block letters of known measures. */
class LegibilityCheckTest {
    private static final double INCH = 25.4;
    private static final double FOOT = 304.8;
    private static final double TOLERANCE_MM = 0.02;
    @Test
    void says_who_it_is() {
        CheckInfo info = new LegibilityCheck().info();
        assertEquals("legibility", info.id());
        assertTrue(info.page().contains("planning value") && info.page().contains("governed by the code in force"));
        ReadingRules.shipped(1).forEach(rule -> assertTrue(info.page().contains(rule.id()), rule.id()));
    }

    @Test
    void without_a_reader_lines_are_measured_and_nothing_else_is_said() {
        Outcome outcome = plain().run();
        assertEquals(List.of("legibility.line"), outcome.findings().stream().map(finding -> finding.rule().id()).toList());
        Finding line = outcome.findings().get(0);
        assertEquals(100, line.measured().orElseThrow().value(), TOLERANCE_MM);
        assertEquals(List.of("p0", "p1", "p2", "p3"), line.parts());
        assertTrue(line.message().contains("layer \"Letters\"") && line.message().contains("4 letters") && line.message().contains("100 mm")
                && line.message().contains("from 36 m"), line.message());
        assertTrue(outcome.missing().stream().anyMatch(each -> each.contains("legibility.distance")));
        assertTrue(outcome.missing().stream().anyMatch(each -> each.contains("legibility.wall-colour")));
        assertTrue(outcome.missing().stream().anyMatch(each -> each.contains("by night")));
    }

    @Test
    void the_table_has_every_measure_of_the_line() {
        Outcome outcome = plain().with(LegibilitySettings.DISTANCE, 72_000.0).run();
        TableInfo lines = LegibilityTables.LINES;
        assertEquals(0.20, (Double) cell(outcome, lines, 0, "stroke"), 1e-9);
        assertEquals(0.15, (Double) cell(outcome, lines, 0, "spacing"), 1e-9);
        assertEquals(36_000, (Double) cell(outcome, lines, 0, "reads-from"), 1e-6);
        assertEquals(200, (Double) cell(outcome, lines, 0, "required"), 1e-6, "72 m / 360");
        assertEquals(2, (Double) cell(outcome, lines, 0, "scale"), 1e-6);
        assertEquals(4.0, cell(outcome, lines, 0, "letters"));
        assertEquals(null, cell(outcome, lines, 0, "x-height"));
        assertEquals(36_000, (Double) cell(outcome, LegibilityTables.CIRCLES, 0, "radius"), 1e-6);
        assertEquals(72_000, (Double) cell(outcome, LegibilityTables.CIRCLES, 0, "asked"), 1e-6);
        assertEquals(2, outcome.layers().get(0).items().size(), "base line and cap height; no x-height");
        assertEquals(500, outcome.layers().get(0).items().get(0).shape().getCoordinate().y, TOLERANCE_MM);
        assertEquals(400, outcome.layers().get(0).items().get(1).shape().getCoordinate().y, TOLERANCE_MM);
    }

    /** 100 mm at 1 : 360 read from 36 m. */
    @ParameterizedTest
    @CsvSource({"35999, 0", "36000, 0", "36001, 1"})
    void a_line_on_just_inside_and_just_outside_its_distance(double distance, int found) {
        List<Finding> findings = plain().with(LegibilitySettings.DISTANCE, distance).findings(LegibilityRules.TOO_SMALL);
        assertEquals(found, findings.size(), findings::toString);
        findings.forEach(finding -> assertEquals(distance / 360, finding.required().orElseThrow().value(), 1e-9));
    }

    @Test
    void messages_are_in_the_units_of_the_job() {
        Finding finding = only(plain().with(LegibilitySettings.DISTANCE, 72 * 1000.0).units(UnitSystem.INCH), LegibilityRules.TOO_SMALL);
        assertTrue(finding.message().contains("3.937 in") && finding.message().contains("7.874 in"), finding.message());
        assertTrue(finding.fix().orElseThrow().contains("2.00 times"));
    }

    /** Speed times reaction time divided by the index, "Determining Sign Size" (2007); it takes 1.47 ft/s for 1 mph, 0.23 % more. */
    @ParameterizedTest
    @CsvSource({"8, 30, index-30, 11.760", "8, 45, index-30, 17.640", "10, 45, index-30, 22.050", "8, 55, index-29, 22.303", "12, 55, index-30, 32.340"})
    void a_driver_towards_the_sign(double seconds, double mph, String rule, double inches) {
        Finding finding = only(plain().with(LegibilitySettings.READER, "driving").with(LegibilitySettings.SPEED, mph + " mph")
                .with(LegibilitySettings.REACTION_TIME, seconds).with(LegibilitySettings.RULE, rule), LegibilityRules.TOO_SMALL);
        assertEquals(inches * INCH, finding.required().orElseThrow().value(), 0.003 * inches * INCH);
    }

    /** Without a reaction time the lanes tell it: 8 s on two lanes, 10 s on more; 20 m/s. */
    @ParameterizedTest
    @CsvSource({"1, 160", "2, 160", "3, 200", "6, 200"})
    void lanes_tell_the_reaction_time(int lanes, double metres) {
        Outcome outcome = plain().with(LegibilitySettings.READER, "driving").with(LegibilitySettings.SPEED, "72 km/h").with(LegibilitySettings.LANES, lanes).run();
        assertEquals(metres * 1000, (Double) cell(outcome, LegibilityTables.LINES, 0, "asked-from"), 1e-6);
    }

    /** "Traffic Signs for Motorways" (1962), 19 to 21: 50 ft aside at 15 degrees, 4 s at 70 mph; 186.60 + 410.67 ft, "600 ft", x-height 12 in. */
    @Test
    void the_motorway_sign() {
        CheckTester driver = plain().with(LegibilitySettings.READER, "driving").with(LegibilitySettings.SPEED, "70 mph")
                .with(LegibilitySettings.REACTION_TIME, 4.0).with(LegibilitySettings.OFFSET, 50 * FOOT).with(LegibilitySettings.RULE, "motorway-x-50");
        assertEquals((186.60 + 410.67) * FOOT, (Double) cell(driver.run(), LegibilityTables.LINES, 0, "asked-from"), 0.01 * FOOT);
        assertEquals(12 * INCH, only(driver, LegibilityRules.TOO_SMALL).required().orElseThrow().value(), 0.005 * 12 * INCH);
    }

    @Test
    void a_driver_past_a_sign_alongside_is_told_how_short_it_is_in_view() {
        Outcome outcome = plain().with(LegibilitySettings.READER, "driving").with(LegibilitySettings.SPEED, "50 km/h")
                .with(LegibilitySettings.FACES, "alongside").with(LegibilitySettings.OFFSET, 10_000.0).run();
        assertEquals(10_000 / Math.sin(Math.toRadians(20)), (Double) cell(outcome, LegibilityTables.LINES, 0, "asked-from"), 1e-6);
        // 10 m / tan 20 degrees at 13.89 m/s
        assertTrue(outcome.missing().stream().anyMatch(each -> each.contains("in view for 2.0 s")), outcome.missing()::toString);
    }

    @Test
    void a_walker_reads_while_walking() {
        Outcome outcome = plain().with(LegibilitySettings.READER, "walking").with(LegibilitySettings.DISTANCE, 10_000.0).run();
        assertEquals(10_000 + 1.4 * 5 * 1000, (Double) cell(outcome, LegibilityTables.LINES, 0, "asked-from"), 1e-6);
    }

    @ParameterizedTest
    @CsvSource({"driving, '', legibility.speed", "driving, fast, cannot be read", "standing, '', legibility.distance"})
    void what_is_missing_is_named(String reader, String speed, String word) {
        Outcome outcome = plain().with(LegibilitySettings.READER, reader).with(LegibilitySettings.SPEED, speed).run();
        assertTrue(outcome.missing().stream().anyMatch(each -> each.contains(word)), outcome.missing()::toString);
        assertEquals(1, outcome.findings().size());
    }

    @Test
    void an_unknown_rule_is_named_with_those_there_are() {
        Outcome outcome = plain().with(LegibilitySettings.DISTANCE, 1e5).with(LegibilitySettings.RULE, "index-99").run();
        assertTrue(outcome.missing().stream().anyMatch(each -> each.contains("index-99") && each.contains("accessibility")));
        assertEquals(1, outcome.findings().size());
    }

    /** Row 70 to 120 in: 2 in up to 15 ft. The page is 1000 mm high and the base line lies at 500 mm, so 500 mm above its lower edge. */
    @Test
    void the_accessibility_rule_takes_the_base_line_above_the_floor() {
        double edge = 80 * INCH - 500;
        CheckTester sign = new BlockSign().word(2 * INCH / 100, 0, 500, 500, 0).with(LegibilitySettings.RULE, "accessibility")
                .with(LegibilitySettings.ABOVE_FLOOR, edge);
        assertEquals(List.of(), sign.with(LegibilitySettings.DISTANCE, 180 * INCH).findings(LegibilityRules.TOO_SMALL));
        Finding finding = only(sign.with(LegibilitySettings.DISTANCE, 192 * INCH), LegibilityRules.TOO_SMALL);
        assertEquals(2.125 * INCH, finding.required().orElseThrow().value(), 1e-6);
        assertTrue(sign.with(LegibilitySettings.ABOVE_FLOOR, 0.0).run().missing().stream().anyMatch(each -> each.contains("says nothing of base lines")));
        assertTrue(sign.with(LegibilitySettings.ABOVE_FLOOR, -1.0).run().missing().stream().anyMatch(each -> each.contains("legibility.above-floor")));
    }

    /** 703.5.7: stroke 10 to 30 % of the height; a shop's own rule narrows it so that 20 % is too heavy, and spacing so that 15 % is too little. */
    @Test
    void a_shop_adds_a_rule_with_shares_of_stroke_and_spacing() {
        CheckTester sign = plain().with(LegibilitySettings.RULE, "lobby").with(LegibilitySettings.DISTANCE, 5_000.0)
                .stock(LegibilityCheck.RULES, Map.of(LegibilitySettings.RULE_NAME, "lobby", LegibilitySettings.RULE_RATIO, 40.0,
                        LegibilitySettings.RULE_STROKE_MOST, 0.19, LegibilitySettings.RULE_SPACING_LEAST, 0.16, LegibilitySettings.RULE_SOURCE, "house style"));
        assertEquals(125, only(sign, LegibilityRules.TOO_SMALL).required().orElseThrow().value(), 1e-9);
        assertTrue(only(sign, LegibilityRules.TOO_SMALL).fix().orElseThrow().contains("house style"));
        assertEquals(0.20, only(sign, LegibilityRules.STROKE).measured().orElseThrow().value(), 1e-9);
        assertEquals(0.19, only(sign, LegibilityRules.STROKE).required().orElseThrow().value(), 1e-9);
        assertEquals(0.15, only(sign, LegibilityRules.SPACING).measured().orElseThrow().value(), 1e-9);
    }

    @Test
    void the_safety_rule_goes_by_the_field_behind_the_line() {
        BlockSign sign = new BlockSign();
        sign.background("400 300, 1000 300, 1000 600, 400 600, 400 300", Paint.colour(0xFFFFFF), 0);
        CheckTester lit = sign.word(1, 0x008000, 500, 500, 1).with(LegibilitySettings.RULE, "safety-lit-inside");
        assertEquals(List.of(), lit.with(LegibilitySettings.DISTANCE, 60_000.0).findings(LegibilityRules.TOO_SMALL), "300 mm by 200 is 60 m");
        assertEquals(1, lit.with(LegibilitySettings.DISTANCE, 60_001.0).findings(LegibilityRules.TOO_SMALL).size());
        assertTrue(plain().with(LegibilitySettings.RULE, "safety-lit-inside").run().missing().stream().anyMatch(each -> each.contains("field")));
    }

    @Test
    void graphics_are_silent_and_listed() {
        List<String> shapes = List.of("0 0, 300 0, 300 200, 0 200, 0 0", "320 0, 520 0, 520 200, 320 200, 320 0",
                "0 400, 40 300, 80 400, 0 400", "600 600, 900 600, 900 610, 600 610, 600 600");
        CheckTester signs = CheckTester.of(new LegibilityCheck());
        shapes.forEach(shape -> signs.part("g" + shapes.indexOf(shape), Role.FACE, "POLYGON ((" + shape + "))"));
        Outcome outcome = signs.run();
        assertFalse(outcome.measured());
        assertEquals(4, outcome.tables().get(2).rows().size());
    }

    @Test
    void a_row_of_equal_ornaments_is_no_lettering_unless_the_job_says_so() {
        BlockSign sign = new BlockSign();
        for (int i = 0; i < 6; i++) {
            sign.add(moved("0 0, 10 40, 50 50, 10 60, 0 100, -10 60, -50 50, -10 40, 0 0", 110.0 * (i + 1)), "Stars", 0, 0, Role.FACE);
        }
        assertFalse(sign.tester.run().measured());
        assertTrue(sign.tester.with(LegibilitySettings.LETTERING, "yes").run().measured());
        assertFalse(plain().with(LegibilitySettings.LETTERING, "no").run().measured());
    }

    @Test
    void a_single_letter_is_measured_when_the_job_says_that_it_is_one() {
        BlockSign sign = new BlockSign();
        sign.add(moved(H, 100), "Mark", 0, 0, Role.FACE);
        assertFalse(sign.tester.run().measured());
        assertEquals(100, only(sign.tester.with(LegibilitySettings.LETTERING, "yes"), LegibilityRules.LINE).measured().orElseThrow().value(), TOLERANCE_MM);
    }

    @Test
    void a_push_through_letter_and_its_opening_are_one_line() {
        BlockSign sign = new BlockSign();
        double x = 100;
        for (String letter : List.of(H, L, E)) {
            sign.add(moved(letter, x), "Openings", 0x444444, 0, Role.OPENING);
            sign.add((Polygon) moved(letter, x).buffer(-0.5), "Push", 0xFFFFFF, 1, Role.PUSH_THROUGH);
            x += 90;
        }
        Finding line = only(sign.tester, LegibilityRules.LINE);
        assertTrue(line.message().contains("layer \"Push\""), line.message());
        assertEquals(99, line.measured().orElseThrow().value(), TOLERANCE_MM);
    }

    @Test
    void letters_of_two_colours_in_turn_are_one_line() {
        BlockSign sign = new BlockSign();
        double x = 100;
        int turn = 0;
        for (String letter : List.of(H, L, E, T, H, E, L, T)) {
            sign.add(moved(letter, x), "Letters", turn++ % 2 == 0 ? 0xAA0000 : 0x0000AA, 0, Role.FACE);
            x += 85;
        }
        assertEquals(8, only(sign.tester, LegibilityRules.LINE).parts().size());
    }

    @Test
    void live_text_is_quoted() {
        CheckTester sign = CheckTester.of(new LegibilityCheck());
        List<String> ids = new ArrayList<>();
        double x = 100;
        for (String letter : List.of(H, L, E)) {
            String id = "t" + ids.size();
            ids.add(id);
            sign.part(Part.builder(id, Role.VINYL, moved(letter, x)).elements(List.of("text")).sources(Set.of(Part.Source.TEXT)).build());
            x += 90;
        }
        sign.element(Element.builder("text").origin(Element.Origin.TEXT).text(new TextRun("HLE", "Any", "Any", false, 140)).build());
        assertTrue(only(sign, LegibilityRules.LINE).message().contains("\"HLE\""));
        assertEquals(1.0, cell(sign.run(), LegibilityTables.LINES, 0, "confidence"));
    }

    @Test
    void a_cancelled_run_ends() {
        CheckTester sign = plain().onCheckpoint(fraction -> {
            throw new CancellationException();
        });
        assertThrows(CancellationException.class, sign::run);
    }
}
