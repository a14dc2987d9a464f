// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.fit;

import static kerfglow.check.fit.Drawings.box;
import static kerfglow.check.fit.Drawings.circle;
import static kerfglow.check.fit.Drawings.frame;
import static kerfglow.check.fit.Drawings.measured;
import static kerfglow.check.fit.Drawings.number;
import static kerfglow.check.fit.Drawings.of;
import static kerfglow.check.fit.Drawings.part;
import static kerfglow.check.fit.Drawings.polygon;
import static kerfglow.check.fit.Drawings.required;
import static kerfglow.check.fit.Drawings.rounded;
import static kerfglow.check.fit.Drawings.rules;
import static kerfglow.check.fit.Drawings.tester;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.stream.Stream;
import kerfglow.api.CheckInfo;
import kerfglow.api.Finding;
import kerfglow.api.Outcome;
import kerfglow.api.Setting;
import kerfglow.api.SharedSettings;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Role;
import kerfglow.testkit.CheckTester;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;

class MadeBacksTest {
    private static final double SIDE_MM = 25.4 * 3 / 32;
    /** Two squares of 100 joined by a bridge 4 wide and 30 long. */
    private static final Polygon DUMBBELL = polygon("POLYGON ((0 0, 100 0, 100 48, 130 48, 130 0, 230 0, 230 100, 130 100, 130 52, 100 52,"
            + " 100 100, 0 100, 0 0))");

    private static Outcome run(Polygon face) {
        return tester().part(part("f", Role.FACE, face)).run();
    }

    private static Finding only(Outcome outcome) {
        assertEquals(1, outcome.findings().size(), outcome.findings()::toString);
        return outcome.findings().get(0);
    }

    static Stream<Arguments> closedForms() {
        double r = SIDE_MM;
        // J. Steiner, Ueber parallele Flaechen (1840): A - P r + pi r^2 for smooth convex shapes; with corners, r^2 sum cot(angle / 2)
        return Stream.of(Arguments.of("square", box(0, 0, 300, 300), 300 * 300 - 1200 * r + 4 * r * r, 1200 - 8 * r),
                Arguments.of("circle", circle(0, 0, 120), Math.PI * (120 - r) * (120 - r), 2 * Math.PI * (120 - r)),
                Arguments.of("ring", frame(circle(0, 0, 150), circle(0, 0, 90)),
                        Math.PI * ((150 - r) * (150 - r) - (90 + r) * (90 + r)), 2 * Math.PI * (150 + 90)),
                Arguments.of("stadium", rounded(0, 0, 200, 0, 60), 800 * (60 - r) + Math.PI * (60 - r) * (60 - r), 800 + 2 * Math.PI * (60 - r)),
                Arguments.of("rounded rectangle", rounded(0, 0, 200, 90, 25),
                        400 * 180 + 2 * (400 + 180) * (25 - r) + Math.PI * (25 - r) * (25 - r), 1160 + 2 * Math.PI * (25 - r)));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("closedForms")
    void a_made_back_has_area_and_edge_of_the_closed_form(String name, Polygon face, double area, double edge) {
        for (Polygon drawn : List.of(face, face.reverse())) {
            Outcome outcome = run(drawn);
            assertEquals(List.of(), rules(outcome));
            // both outlines are chords, off by the chord error at most
            assertEquals(area, number(outcome, "made-backs", 0, "area"), 2 * Drawings.CHORD_ERROR_MM * edge);
            assertEquals(edge, number(outcome, "made-backs", 0, "edge"), 0.1);
            assertEquals("total", Drawings.cell(outcome, "made-backs", 0, "stated"));
            Geometry shape = (Geometry) Drawings.cell(outcome, "made-backs", 0, "shape");
            assertTrue(shape.isValid() && drawn.covers(shape));
            assertEquals(shape, outcome.layers().get(1).items().get(0).shape());
        }
    }

    @Test
    void a_made_back_passes_the_check_of_a_drawn_one() {
        for (String join : List.of("mitre", "round")) {
            Polygon face = frame(polygon("POLYGON ((0 0, 300 0, 300 120, 120 120, 120 300, 0 300, 0 0))"), box(30, 30, 50, 50));
            Outcome made = tester().with(SharedSettings.BACK_JOINS, join).part(part("f", Role.FACE, face)).run();
            Polygon back = (Polygon) Drawings.cell(made, "made-backs", 0, "shape");
            Outcome drawn = tester().part(part("f", Role.FACE, face)).part(part("b", Role.BACK, back)).run();
            assertEquals(List.of(), rules(drawn), join);
            assertEquals(SIDE_MM, number(drawn, "pairs", 0, "least"), 0.021, join); // chords of round joins lie inside the arc by 0.02
        }
    }

    @Test
    void a_neck_narrower_than_the_allowance_splits_the_back() {
        Outcome outcome = run(DUMBBELL);
        Finding split = only(outcome);
        assertEquals(FitRules.BACK_SPLITS, split.rule());
        assertEquals(4, measured(split), 0.01);
        assertEquals(2 * SIDE_MM, required(split), 1e-9);
        assertTrue(split.at().orElseThrow().x > 95 && split.at().orElseThrow().x < 135, () -> "at " + split.at());
        assertEquals(2, number(outcome, "made-backs", 0, "pieces"));
        assertTrue(split.message().contains("4.76 mm in total (2.38 mm a side)"), split.message());
        assertEquals(List.of(), rules(tester().with(SharedSettings.BACK_ALLOWANCE, 3.9).part(part("f", Role.FACE, DUMBBELL)).run()));
        assertEquals(List.of("fit.back-splits"), rules(tester().with(SharedSettings.BACK_ALLOWANCE, 2.1).with(SharedSettings.BACK_ALLOWANCE_KIND, "per side")
                .part(part("f", Role.FACE, DUMBBELL)).run()));
    }

    @Test
    void a_bar_thinner_than_the_allowance_vanishes() {
        Finding lost = only(run(box(0, 0, 300, 4.5)));
        assertEquals(FitRules.BACK_LOST, lost.rule());
        assertEquals(4.5, measured(lost), 0.01);
        assertTrue(lost.message().contains("vanishes"), lost.message());
        assertEquals(0, number(run(box(0, 0, 300, 4.5)), "made-backs", 0, "pieces"));
    }

    @Test
    void a_thin_arm_is_a_lost_stroke() {
        Finding lost = only(run(polygon("POLYGON ((0 0, 100 0, 100 48, 250 48, 250 52, 100 52, 100 100, 0 100, 0 0))")));
        assertEquals(FitRules.BACK_LOST, lost.rule());
        assertEquals(4, measured(lost), 0.01);
        assertTrue(lost.message().contains("loses a stroke"), lost.message());
    }

    @Test
    void a_long_tip_is_lost_and_a_short_one_is_a_corner() {
        // a blade of 10 degrees: narrower than 4.7625 over 2.38125 / sin 5 = 27.3 (derived: geometry), three allowances are 14.3
        Polygon blade = polygon("POLYGON ((0 0, 400 -34.995465, 400 34.995465, 0 0))");
        Finding tip = only(run(blade));
        assertEquals(FitRules.BACK_LOST, tip.rule());
        assertEquals(SIDE_MM / Math.sin(Math.toRadians(5)), measured(tip), 0.05);
        assertEquals(6 * SIDE_MM, required(tip), 1e-9);
        assertEquals(List.of(), rules(tester().with(FitSettings.TIP_LENGTH, 28.0).part(part("f", Role.FACE, blade)).run()));
    }

    @Test
    void a_thin_side_opens_the_counter() {
        // a frame 30 wide, one side 3 thin: the inset is a C
        Finding opened = only(run(frame(box(0, 0, 200, 200), box(30, 30, 167, 140))));
        assertEquals(FitRules.COUNTER, opened.rule());
        assertEquals(3, measured(opened), 0.01);
        assertTrue(opened.at().orElseThrow().x > 196, () -> "at " + opened.at());
        // two counters merge across a thin bar
        Outcome merged = run(frame(box(0, 0, 300, 200), box(30, 30, 118, 140), box(152, 30, 118, 140)));
        assertEquals(FitRules.COUNTER, only(merged).rule());
        assertEquals(4, measured(only(merged)), 0.01);
        assertEquals(1, ((Polygon) Drawings.cell(merged, "made-backs", 0, "shape")).getNumInteriorRing());
    }

    @Test
    void joins_are_a_setting() {
        Polygon face = frame(box(0, 0, 200, 200), box(60, 60, 80, 80));
        double sharp = Math.pow(200 - 2 * SIDE_MM, 2) - Math.pow(80 + 2 * SIDE_MM, 2);
        assertEquals(sharp, number(run(face), "made-backs", 0, "area"), 1e-6);
        Outcome round = tester().with(SharedSettings.BACK_JOINS, "round").part(part("f", Role.FACE, face)).run();
        assertEquals(sharp + (4 - Math.PI) * SIDE_MM * SIDE_MM, number(round, "made-backs", 0, "area"), 0.3); // chords of 0.02 mm
        Outcome bevel = tester().with(SharedSettings.BACK_JOINS, "bevel").part(part("f", Role.FACE, face)).run();
        assertEquals(sharp + 2 * SIDE_MM * SIDE_MM, number(bevel, "made-backs", 0, "area"), 1e-6);
    }

    @Test
    void backs_are_made_only_where_a_can_is_meant() {
        Part unassigned = Part.builder("u", Role.FACE, box(0, 0, 100, 100)).assigned(false).build();
        assertFalse(tester().part(unassigned).run().measured());
        assertEquals(1, tester().with(FitSettings.MAKE_BACKS, "all").part(unassigned).run().tables().get(1).rows().size());
        assertFalse(tester().with(FitSettings.MAKE_BACKS, "none").part(part("f", Role.FACE, box(0, 0, 100, 100))).run().measured());
        assertFalse(tester().part(part("v", Role.VINYL, box(0, 0, 100, 100))).run().measured());
        Outcome drawn = tester().part(part("f", Role.FACE, box(0, 0, 100, 100))).part(part("f2", Role.FACE, box(200, 0, 100, 100)))
                .part(part("b", Role.BACK, box(SIDE_MM, SIDE_MM, 100 - 2 * SIDE_MM, 100 - 2 * SIDE_MM))).run();
        assertEquals(0, drawn.tables().get(1).rows().size(), "where backs are drawn none is made");
    }

    @Test
    void without_any_allowance_the_back_is_the_face() {
        Outcome outcome = tester().with(SharedSettings.BACK_ALLOWANCE, 0.0).part(part("f", Role.FACE, DUMBBELL)).run();
        assertEquals(DUMBBELL, Drawings.cell(outcome, "made-backs", 0, "shape"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"back.allowance=-1 mm=0 mm to 200 mm", "back.allowance-kind=overall=total, per side", "back.joins=sharp=mitre, round, bevel",
        "fit.tolerance=-0.1 mm=0 mm to 50 mm", "back.mitre-limit=0.5=1 to 20", "fit.wall-thickness=21 mm=0 mm to 20 mm",
        "fit.coldest=-200 C=-90 °C to 150 °C", "fit.expansion=-5=0 to 500"})
    void bad_settings_are_refused_by_name_with_what_is_allowed(String given) {
        String[] words = given.split("=");
        Setting<?> setting = new FitCheck().info().settings().stream().filter(each -> each.key().equals(words[0])).findFirst().orElseThrow();
        IllegalArgumentException refused = assertThrows(IllegalArgumentException.class, () -> setting.parse(words[1]));
        assertTrue(refused.getMessage().startsWith(words[0] + ":"), refused.getMessage());
        assertTrue(refused.getMessage().contains(words[2]), refused.getMessage());
    }

    @Test
    void every_setting_is_on_the_page_and_the_practice_is_marked() {
        CheckInfo info = new FitCheck().info();
        assertEquals(List.of(), info.settings().stream().map(Setting::key).filter(key -> !info.page().contains("`" + key + "`")).toList());
        assertEquals(3 * 25.4 / 16, SharedSettings.BACK_ALLOWANCE.defaultValue(), 1e-12);
        assertEquals("common practice, no source", SharedSettings.BACK_ALLOWANCE.source());
        assertTrue(info.page().contains("3/16 in overall in many shops (common\npractice)"));
        assertEquals(List.of("fit.clearance", "fit.missed-stroke", "fit.unpaired", "fit.counter", "fit.back-splits", "fit.back-lost",
                "fit.thermal"), info.rules().stream().map(rule -> rule.id()).toList());
    }

    @Test
    void a_cancelled_run_ends_and_progress_never_goes_back() {
        double[] last = {-1};
        CheckTester tester = tester();
        for (int i = 0; i < 100; i++) {
            tester.part(part("f" + i, Role.FACE, circle(i * 300, 0, 100)));
        }
        tester.onCheckpoint(fraction -> {
            assertTrue(fraction >= last[0] && fraction <= 1);
            last[0] = fraction;
        }).run();
        assertEquals(1, last[0]);
        assertThrows(CancellationException.class, () -> tester.onCheckpoint(fraction -> {
            if (fraction > 0.5) {
                throw new CancellationException();
            }
        }).run());
    }
}
