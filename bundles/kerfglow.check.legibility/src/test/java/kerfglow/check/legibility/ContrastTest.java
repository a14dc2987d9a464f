// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.legibility;

import static kerfglow.check.legibility.BlockSign.cell;
import static kerfglow.check.legibility.BlockSign.only;
import static kerfglow.check.legibility.BlockSign.plain;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import kerfglow.api.Finding;
import kerfglow.api.Outcome;
import kerfglow.api.proof.Gradient;
import kerfglow.api.proof.Paint;
import kerfglow.api.proof.Role;
import kerfglow.testkit.CheckTester;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Contrast with what lies behind, by day. */
class ContrastTest {
    /** WCAG: #777777 on white is 4.478, #767676 is 4.542; compared unrounded. */
    @ParameterizedTest
    @CsvSource({"777777, 4.5, 1", "767676, 4.5, 0", "949494, 3, 0", "959595, 3, 1"})
    void contrast_with_the_panel_behind(String colour, double least, int found) {
        BlockSign sign = new BlockSign();
        sign.background("400 300, 1000 300, 1000 600, 400 600, 400 300", Paint.colour(0xFFFFFF), 0);
        List<Finding> findings = sign.word(1, Integer.parseInt(colour, 16), 500, 500, 1).with(LegibilitySettings.LEAST_CONTRAST, least)
                .findings(LegibilityRules.CONTRAST);
        assertEquals(found, findings.size(), findings::toString);
        findings.forEach(finding -> assertEquals(Colours.ratio(0xFFFFFF, Integer.parseInt(colour, 16)), finding.measured().orElseThrow().value(), 1e-9));
    }

    @Test
    void what_is_painted_over_the_letters_or_does_not_reach_them_is_not_behind_them() {
        BlockSign sign = new BlockSign();
        sign.background("400 300, 1000 300, 1000 600, 400 600, 400 300", Paint.colour(0xFFFFFF), 0);
        sign.background("400 300, 1000 300, 1000 600, 400 600, 400 300", Paint.colour(0x111111), 5);
        sign.background("0 0, 100 0, 100 100, 0 100, 0 0", Paint.colour(0x000000), 1);
        Outcome outcome = sign.word(1, 0, 500, 500, 3).run();
        assertEquals(21, (Double) cell(outcome, LegibilityTables.LINES, 0, "contrast"), 1e-9);
        assertEquals("#ffffff", cell(outcome, LegibilityTables.LINES, 0, "behind"));
        assertFalse(outcome.missing().stream().anyMatch(each -> each.contains("wall-colour")));
    }

    @Test
    void the_worse_of_two_backgrounds_counts() {
        BlockSign sign = new BlockSign();
        sign.background("400 300, 1000 300, 1000 600, 400 600, 400 300", Paint.colour(0xFFFFFF), 0);
        sign.background("400 450, 1000 450, 1000 600, 400 600, 400 450", Paint.colour(0x222222), 1);
        Finding finding = only(sign.word(1, 0, 500, 500, 2), LegibilityRules.CONTRAST);
        assertEquals(Colours.ratio(0, 0x222222), finding.measured().orElseThrow().value(), 1e-9);
    }

    @Test
    void the_wall_counts_when_its_colour_is_given_and_reflectance_contrast_when_it_is_asked_for() {
        Finding wall = only(plain().with(LegibilitySettings.WALL_COLOUR, "#1a1a1a"), LegibilityRules.CONTRAST);
        assertTrue(wall.message().contains("the wall's #1a1a1a"), wall.message());
        CheckTester sign = new BlockSign().word(1, 0xFFD700, 500, 500, 0).with(LegibilitySettings.WALL_COLOUR, "#806000")
                .with(LegibilitySettings.LEAST_CONTRAST, 1.0);
        assertEquals(List.of(), sign.findings(LegibilityRules.CONTRAST));
        double measured = 1 - Colours.luminance(0x806000) / Colours.luminance(0xFFD700);
        assertEquals(measured, only(sign.with(LegibilitySettings.LEAST_REFLECTANCE, 0.95), LegibilityRules.CONTRAST).measured().orElseThrow().value(), 1e-9);
    }

    private static final String PANEL = "400 300, 1000 300, 1000 600, 400 600, 400 300";
    /** Places lie 2 % of the letters' height outside them, and 8 % apart. */
    private static final double OUTSIDE_MM = 2;

    private static Paint gradient(int... colours) {
        return new Paint(Paint.Kind.GRADIENT, colours[0], Arrays.stream(colours).boxed().toList());
    }

    /** From the first colour at one level to the last at another, evenly. */
    private static Gradient down(double fromMm, double toMm, double opacity, int... colours) {
        return course(new Gradient.Scale(0, 1 / (toMm - fromMm), -fromMm / (toMm - fromMm)), opacity, colours);
    }

    private static Gradient course(Gradient.Scale scale, double opacity, int... colours) {
        List<Gradient.Stop> stops = new ArrayList<>();
        for (int i = 0; i < colours.length; i++) {
            stops.add(new Gradient.Stop((double) i / (colours.length - 1), new Gradient.Shade(colours[i], opacity)));
        }
        return new Gradient(Gradient.Kind.LINEAR, Gradient.Spread.PAD, scale, scale, 0, 0, 0, stops);
    }

    private static double contrast(Outcome outcome) {
        return (Double) cell(outcome, LegibilityTables.LINES, 0, "contrast");
    }

    /** Black letters from 400 to 500 mm on a panel that goes from black at 300 to white at 600: darkest behind their tops, 98 of 300 mm down. */
    @Test
    void a_gradient_behind_counts_where_it_is_worst_along_the_letters_and_not_beyond_them() {
        BlockSign sign = new BlockSign();
        sign.background(PANEL, gradient(0, 0xFFFFFF), down(300, 600, 1, 0, 0xFFFFFF), 0);
        Outcome outcome = sign.word(1, 0, 500, 500, 1).run();
        int grey = (int) Math.round(255 * (100 - OUTSIDE_MM) / 300);
        assertEquals(Colours.ratio(0, 0x010101 * grey), contrast(outcome), 0.02);
        Finding finding = only(sign.tester, LegibilityRules.CONTRAST);
        assertEquals(400 - OUTSIDE_MM, finding.at().orElseThrow().y, 0.1);
        assertTrue(finding.message().contains("where it is worst"), finding.message());
    }

    /** Letters from white at their tops to black at their feet, on white. */
    @Test
    void a_gradient_on_the_letters_counts_where_it_is_worst() {
        BlockSign sign = new BlockSign();
        sign.background(PANEL, Paint.colour(0xFFFFFF), 0);
        sign.word(1, gradient(0xFFFFFF, 0), down(400, 500, 1, 0xFFFFFF, 0), 500, 500, 1, Role.FACE);
        assertEquals(1, contrast(sign.tester.run()), 1e-9);
        assertEquals(400, only(sign.tester, LegibilityRules.CONTRAST).at().orElseThrow().y, OUTSIDE_MM + 0.1);
    }

    /** From red to blue the darkest is a purple between: looked for in a thousand steps along the way. */
    @Test
    void the_worst_place_may_lie_between_two_stops() {
        BlockSign sign = new BlockSign();
        sign.background(PANEL, gradient(0xFF0000, 0x0000FF), course(new Gradient.Scale(1.0 / 600, 0, -400.0 / 600), 1, 0xFF0000, 0x0000FF), 0);
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i <= 1000; i++) {
            int red = (int) Math.round(255 * (1 - i / 1000.0));
            least = Math.min(least, Colours.ratio(0, red << 16 | 255 - red));
        }
        assertTrue(least < Math.min(Colours.ratio(0, 0xFF0000), Colours.ratio(0, 0x0000FF)) - 0.3);
        assertEquals(least, contrast(sign.word(1, 0, 500, 500, 1).run()), 0.02);
    }

    /** Half clear white over black is #808080. */
    @Test
    void what_lies_below_shines_through_a_clear_gradient() {
        BlockSign sign = new BlockSign();
        sign.background(PANEL, Paint.colour(0), 0);
        sign.background(PANEL, gradient(0xFFFFFF, 0xFFFFFF), down(300, 600, 0.5, 0xFFFFFF, 0xFFFFFF), 1);
        assertEquals(Colours.ratio(0xFFFFFF, 0x808080), contrast(sign.word(1, 0xFFFFFF, 500, 500, 2).run()), 1e-9);
    }

    @Test
    void of_a_gradient_without_a_course_the_worst_stop_counts() {
        BlockSign sign = new BlockSign();
        sign.background(PANEL, gradient(0xFFFFFF, 0x777777), 0);
        assertEquals(Colours.ratio(0, 0x777777), contrast(sign.word(1, 0, 500, 500, 1).run()), 1e-9);
    }

    @Test
    void the_contrast_of_two_gradients_is_that_of_one_place_and_not_of_their_worst_colours() {
        BlockSign sign = new BlockSign();
        sign.background(PANEL, gradient(0xFFFFFF, 0), down(400, 500, 1, 0xFFFFFF, 0), 0);
        sign.word(1, gradient(0, 0xFFFFFF), down(400, 500, 1, 0, 0xFFFFFF), 500, 500, 1, Role.FACE);
        assertEquals(1, contrast(sign.tester.run()), 0.15, "they cross half way");
        BlockSign alike = new BlockSign();
        alike.background(PANEL, gradient(0xFFFFFF, 0xBBBBBB), down(400, 500, 1, 0xFFFFFF, 0xBBBBBB), 0);
        alike.word(1, gradient(0x444444, 0), down(400, 500, 1, 0x444444, 0), 500, 500, 1, Role.FACE);
        assertEquals(Math.min(Colours.ratio(0xFFFFFF, 0x444444), Colours.ratio(0xBBBBBB, 0)), contrast(alike.tester.run()), 0.25);
        assertTrue(contrast(alike.tester.run()) > Colours.ratio(0xBBBBBB, 0x444444) + 1);
    }

    @Test
    void patterns_and_gradients_of_unknown_colours_are_said_to_be_not_measured() {
        for (Paint paint : List.of(new Paint(Paint.Kind.GRADIENT, 0xFFFFFF), new Paint(Paint.Kind.PATTERN, 0))) {
            BlockSign sign = new BlockSign();
            sign.background(PANEL, paint, 0);
            Outcome outcome = sign.word(1, 0, 500, 500, 1).run();
            assertTrue(outcome.missing().stream().anyMatch(each -> each.contains("was not measured") && each.contains("Behind")), outcome.missing()::toString);
            assertEquals(null, cell(outcome, LegibilityTables.LINES, 0, "contrast"));
            BlockSign letters = new BlockSign();
            letters.background(PANEL, Paint.colour(0), 0);
            letters.word(1, paint, null, 500, 500, 1, Role.FACE);
            assertTrue(letters.tester.run().missing().stream().anyMatch(each -> each.contains("no one colour")));
        }
    }
}
