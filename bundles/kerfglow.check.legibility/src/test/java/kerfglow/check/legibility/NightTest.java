// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.legibility;

import static kerfglow.check.legibility.BlockSign.cell;
import static kerfglow.check.legibility.BlockSign.only;
import static kerfglow.check.legibility.BlockSign.plain;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import kerfglow.api.Finding;
import kerfglow.api.Outcome;
import kerfglow.api.Quantity;
import kerfglow.api.Table;
import kerfglow.api.TableInfo;
import kerfglow.api.TableInfo.Column;
import kerfglow.api.proof.Paint;
import kerfglow.api.proof.Role;
import kerfglow.testkit.CheckTester;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.locationtech.jts.geom.Polygon;

/** Contrast by night, from luminances that another check gives. */
class NightTest {
    private static final String PANEL = "400 300, 1000 300, 1000 600, 400 600, 400 300";
    private static final TableInfo LIGHT = new TableInfo("light", "Light", List.of(Column.text("part", "Part"),
            Column.number("least-luminance", "Least", Quantity.LUMINANCE), Column.number("mean-luminance", "Mean", Quantity.LUMINANCE)));

    private static Table light(double luminance, String... parts) {
        List<List<Object>> rows = new ArrayList<>();
        for (String part : parts) {
            rows.add(Arrays.<Object>asList(part, luminance / 2, luminance));
        }
        rows.add(Arrays.<Object>asList("elsewhere", 1.0, null));
        return new Table(LIGHT, rows);
    }

    private static Object night(Outcome outcome, String column) {
        return cell(outcome, LegibilityTables.LINES, 0, column);
    }

    @Test
    void without_luminances_it_is_said_once_and_not_measured() {
        BlockSign sign = new BlockSign();
        sign.word(1, 0, 500, 300, 0);
        Outcome outcome = sign.word(1, 0, 500, 600, 0).run();
        assertEquals(2, outcome.tables().get(0).rows().size());
        assertEquals(1, outcome.missing().stream().filter(each -> each.contains("by night")).count());
        assertEquals(null, night(outcome, "night-contrast"));
    }

    /** Lit letters before a wall: the ratio of the two; letters dimmer than the wall are lit by what lights the wall. */
    @ParameterizedTest
    @CsvSource({"300, 1, 300, 0", "300, 60, 5, 0", "299, 60, 4.98333, 1", "20, 60, 1, 1"})
    void lit_letters_before_the_unlit_wall(double luminance, double wall, double ratio, int found) {
        CheckTester sign = plain().with(LegibilitySettings.NIGHT_WALL, wall).tables("glow", light(luminance, "p0", "p1", "p2", "p3"));
        assertEquals(Math.max(luminance, wall), (Double) night(sign.run(), "night-luminance"), 1e-9);
        assertEquals(wall, night(sign.run(), "night-luminance-behind"));
        assertEquals(ratio, (Double) night(sign.run(), "night-contrast"), 1e-5);
        List<Finding> findings = sign.findings(LegibilityRules.CONTRAST);
        assertEquals(found, findings.size(), findings::toString);
        findings.forEach(finding -> assertTrue(finding.message().contains("by night"), finding.message()));
    }

    @Test
    void the_dimmest_letter_counts() {
        CheckTester sign = plain().tables("glow", new Table(LIGHT, List.of(Arrays.<Object>asList("p0", 1.0, 300.0), Arrays.<Object>asList("p2", 1.0, 40.0))));
        assertEquals(40, (Double) night(sign.run(), "night-contrast"), 1e-9);
    }

    /** Film on a lit face of 200 cd/m2 lets through its relative luminance: red 0.2126, so 1 / 0.2126; black nothing, so 200 against the wall's 1. */
    @ParameterizedTest
    @CsvSource({"FF0000, 4.70367", "000000, 200", "FFFFFF, 1", "0000FF, 13.85042"})
    void film_on_a_lit_face(String colour, double ratio) {
        BlockSign sign = new BlockSign();
        sign.background(PANEL, Paint.colour(0xFFFFFF), 0);
        CheckTester film = sign.word(1, Paint.colour(Integer.parseInt(colour, 16)), null, 500, 500, 1, Role.VINYL).tables("glow", light(200, "b0"));
        assertEquals(ratio, (Double) night(film.run(), "night-contrast"), 1e-5);
        assertEquals(200.0, night(film.run(), "night-luminance-behind"));
        assertEquals(ratio < 5 ? 1 : 0, film.findings(LegibilityRules.CONTRAST).stream().filter(finding -> finding.cause().equals("night")).count());
    }

    /** Yellow letters on a blue film on a lit face: 0.9278 to 0.0722. */
    @Test
    void film_between_letters_and_face_darkens_what_lies_behind() {
        BlockSign sign = new BlockSign();
        sign.background(PANEL, Paint.colour(0xFFFFFF), 0);
        sign.add((Polygon) CheckTester.wkt("POLYGON ((" + PANEL + "))"), "Film", 0x0000FF, 1, Role.VINYL);
        sign.word(1, Paint.colour(0xFFFFFF), null, 500, 500, 2, Role.PUSH_THROUGH);
        CheckTester letters = sign.tester.tables("glow", light(200, "b0", "p2", "p3", "p4", "p5"));
        assertEquals(1 / 0.0722, (Double) night(letters.run(), "night-contrast"), 1e-9);
    }

    @Test
    void opaque_letters_before_a_lit_face_are_dark_on_light() {
        BlockSign sign = new BlockSign();
        sign.background(PANEL, Paint.colour(0xFFFFFF), 0);
        Outcome outcome = sign.word(1, 0xFFFFFF, 500, 500, 1).tables("glow", light(150, "b0")).run();
        assertEquals(List.of(1.0, 150.0), List.of(night(outcome, "night-luminance"), night(outcome, "night-luminance-behind")));
        // by day it is white on white, by night it stands out: reported apart
        Finding day = only(sign.tester, LegibilityRules.CONTRAST);
        assertEquals("day", day.cause());
        assertTrue(day.message().contains("by day"), day.message());
    }

    /** Halo-lit letters are dark before the wall that their halo lights. */
    @Test
    void a_halo_lights_the_wall_and_not_the_letter() {
        TableInfo light = new TableInfo("light", "Light", List.of(Column.text("part", "Part"), Column.text("kind", "Kind"), Column.number("mean-luminance", "Mean", Quantity.LUMINANCE)));
        List<List<Object>> rows = new ArrayList<>();
        List.of("p0", "p1", "p2", "p3").forEach(part -> rows.add(Arrays.<Object>asList(part, "halo", 30.0)));
        Outcome outcome = plain().with(LegibilitySettings.NIGHT_WALL, 0.5).tables("glow", new Table(light, rows)).run();
        assertEquals(List.of(0.5, 30.0, 60.0), List.of(night(outcome, "night-luminance"), night(outcome, "night-luminance-behind"), night(outcome, "night-contrast")));
        List<List<Object>> both = new ArrayList<>(rows);
        List.of("p0", "p1", "p2", "p3").forEach(part -> both.add(Arrays.<Object>asList(part, "face", 120.0)));
        assertEquals(4.0, night(plain().tables("glow", new Table(light, both)).run(), "night-contrast"), "lit face before its own halo");
    }

    @Test
    void day_and_night_are_two_findings() {
        BlockSign sign = new BlockSign();
        sign.background(PANEL, Paint.colour(0xFFFFFF), 0);
        List<Finding> findings = sign.word(1, Paint.colour(0xFFFFCC), null, 500, 500, 1, Role.VINYL).tables("glow", light(200, "b0")).findings(LegibilityRules.CONTRAST);
        assertEquals(List.of("day", "night"), findings.stream().map(Finding::cause).sorted().toList());
    }

    @Test
    void a_line_that_is_not_lit_is_said_to_have_none() {
        Outcome outcome = plain().tables("glow", light(200, "b7")).run();
        assertEquals(null, night(outcome, "night-contrast"));
        assertTrue(outcome.missing().contains(Night.NOT_LIT), outcome.missing()::toString);
    }

    @Test
    void what_a_pattern_lets_through_is_not_known() {
        BlockSign sign = new BlockSign();
        sign.background(PANEL, Paint.colour(0xFFFFFF), 0);
        Outcome outcome = sign.word(1, new Paint(Paint.Kind.PATTERN, 0), null, 500, 500, 1, Role.PRINT).tables("glow", light(200, "b0")).run();
        assertEquals(null, night(outcome, "night-contrast"));
        assertTrue(outcome.missing().contains(Night.UNKNOWN_FILM), outcome.missing()::toString);
    }
}
