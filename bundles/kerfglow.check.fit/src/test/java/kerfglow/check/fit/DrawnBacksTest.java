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
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import kerfglow.api.Finding;
import kerfglow.api.Outcome;
import kerfglow.api.SharedSettings;
import kerfglow.api.UnitSystem;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Role;
import kerfglow.geometry.Inset;
import kerfglow.testkit.CheckTester;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.util.AffineTransformation;

class DrawnBacksTest {
    /** Half of 3/16 in, the common practice. */
    private static final double SIDE_MM = 25.4 * 3 / 32;
    private static final double TOLERANCE_MM = 0.01;

    private static Outcome run(Polygon face, Polygon back) {
        return tester().part(part("f", Role.FACE, face)).part(part("b", Role.BACK, back)).run();
    }

    private static Finding only(List<Finding> findings) {
        assertEquals(1, findings.size(), findings::toString);
        return findings.get(0);
    }

    static Stream<Arguments> exactPairs() {
        double c = SIDE_MM;
        return Stream.of(Arguments.of("square", box(0, 0, 300, 300), box(c, c, 300 - 2 * c, 300 - 2 * c)),
                Arguments.of("circle", circle(150, 150, 120), circle(150, 150, 120 - c)),
                Arguments.of("ring", frame(circle(0, 0, 150), circle(0, 0, 90)), frame(circle(0, 0, 150 - c), circle(0, 0, 90 + c))),
                Arguments.of("stadium", rounded(0, 0, 200, 0, 60), rounded(0, 0, 200, 0, 60 - c)),
                Arguments.of("rounded rectangle", rounded(0, 0, 200, 90, 25), rounded(0, 0, 200, 90, 25 - c)));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("exactPairs")
    void a_back_offset_by_the_allowance_keeps_it_everywhere(String name, Polygon face, Polygon back) {
        Outcome outcome = run(face, back);
        assertEquals(List.of(), rules(outcome));
        for (String column : List.of("least", "greatest", "mean")) {
            assertEquals(SIDE_MM, number(outcome, "pairs", 0, column), TOLERANCE_MM, column);
        }
        assertEquals(back.getLength(), number(outcome, "pairs", 0, "edge"), 1e-6);
        Outcome turned = run(face.reverse(), back.reverse());
        assertEquals(number(outcome, "pairs", 0, "mean"), number(turned, "pairs", 0, "mean"), 1e-6);
        assertEquals(List.of(), rules(turned));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("exactPairs")
    void a_back_drawn_without_any_allowance_lies_on_the_edge(String name, Polygon face, Polygon back) {
        Outcome outcome = run(face, face);
        assertEquals(face.getNumInteriorRing() > 0 ? List.of("fit.clearance", "fit.counter") : List.of("fit.clearance"), rules(outcome));
        assertEquals(0, number(outcome, "pairs", 0, "least"), 1e-6);
        assertEquals(0, number(outcome, "pairs", 0, "greatest"), 1e-3);
    }

    @Test
    void a_back_moved_aside_is_tight_on_one_side_and_loose_on_the_other() {
        double c = SIDE_MM;
        Outcome outcome = run(box(0, 0, 300, 300), box(c + 1, c, 300 - 2 * c, 300 - 2 * c));
        List<Finding> found = of(outcome, FitRules.CLEARANCE);
        assertEquals(2, found.size(), found::toString);
        Finding tight = found.stream().filter(finding -> measured(finding) < c).findFirst().orElseThrow();
        Finding loose = found.stream().filter(finding -> measured(finding) > c).findFirst().orElseThrow();
        assertEquals(c - 1, measured(tight), TOLERANCE_MM);
        assertEquals(c + 1, measured(loose), TOLERANCE_MM);
        assertEquals(c, required(tight), 1e-9);
        assertEquals(301 - c, tight.at().orElseThrow().x, TOLERANCE_MM);
        // derived: geometry. The whole side, and of the two sides beside it the part that is nearer than c - 0.5
        assertEquals(300 - 2 * c + 2 * 0.5, tight.place().orElseThrow().getLength(), 0.01);
        assertEquals(c, number(outcome, "pairs", 0, "mean"), 0.01);
        assertTrue(tight.message().contains("4.76 mm in total (2.38 mm a side)"), tight.message());
        assertEquals(List.of("b", "f"), tight.parts());
        assertEquals(List.of("e-b", "e-f"), tight.elements());
    }

    @Test
    void the_allowance_can_be_stated_per_side_and_every_message_says_which() {
        Polygon face = box(0, 0, 300, 300);
        Polygon back = box(3, 3, 294, 294);
        assertEquals(List.of(), rules(tester().with(SharedSettings.BACK_ALLOWANCE, 3.0).with(SharedSettings.BACK_ALLOWANCE_KIND, "per side")
                .part(part("f", Role.FACE, face)).part(part("b", Role.BACK, back)).run()));
        Outcome total = tester().units(UnitSystem.INCH).with(SharedSettings.BACK_ALLOWANCE, 3.0).part(part("f", Role.FACE, face))
                .part(part("b", Role.BACK, back)).run();
        Finding found = only(of(total, FitRules.CLEARANCE));
        assertEquals(3, measured(found), TOLERANCE_MM);
        assertEquals(1.5, required(found), 1e-9);
        assertTrue(found.message().contains("0.118 in in total (0.059 in a side)"), found.message());
    }

    @Test
    void a_back_that_sticks_out_has_a_clearance_below_nothing() {
        // 20 wide tongue that reaches 7 mm past the face
        Outcome outcome = run(box(0, 0, 200, 200), polygon("POLYGON ((2.4 2.4, 197.6 2.4, 197.6 90, 207 90, 207 110, 197.6 110, 197.6 197.6,"
                + " 2.4 197.6, 2.4 2.4))"));
        Finding out = only(of(outcome, FitRules.CLEARANCE));
        assertEquals(-7, measured(out), TOLERANCE_MM);
        assertTrue(out.message().contains("sticks out of face f by 7 mm"), out.message());
        assertEquals(-7, number(outcome, "pairs", 0, "least"), TOLERANCE_MM);
    }

    @ParameterizedTest
    @ValueSource(doubles = {1, 2, 4, 20})
    void stretches_within_one_clearance_of_each_other_are_one_finding(double apart) {
        // two steps of the lower edge towards the face, 1.2 mm high, so much apart; the edge between them keeps its clearance
        double c = SIDE_MM;
        double low = c - 1.2;
        double second = 60 + apart;
        Polygon back = polygon(("POLYGON ((%1$s %1$s, 40 %1$s, 40 %2$s, 60 %2$s, 60 %1$s, %3$s %1$s, %3$s %2$s, %4$s %2$s, %4$s %1$s, %5$s %1$s, %5$s %5$s,"
                + " %1$s %5$s, %1$s %1$s))").formatted(c, low, second, second + 20, 200 - c));
        List<Finding> found = of(run(box(0, 0, 200, 200), back), FitRules.CLEARANCE);
        // the edges of the steps depart but for their first half millimetre
        assertEquals(apart + 2 * 0.5 > c ? 2 : 1, found.size(), found::toString);
        found.forEach(finding -> assertEquals(low, measured(finding), TOLERANCE_MM));
    }

    @Test
    void a_mitre_may_come_nearer_to_another_edge_than_to_its_own_corner() {
        // a narrow notch of 30 degrees whose mitre, 3.86 clearances long, ends nearer to the far edge than to the notch
        double c = SIDE_MM;
        double half = 60 * Math.tan(Math.toRadians(15));
        Polygon face = polygon("POLYGON ((-150 0, %s 0, 0 60, %s 0, 150 0, 150 75, -150 75, -150 0))".formatted(-half, half));
        Polygon back = (Polygon) Inset.of(face, c, Inset.Join.MITRE, 4, 0.002);
        assertEquals(List.of(), rules(run(face, back)));
        assertTrue(number(run(face, back), "pairs", 0, "greatest") > 2 * c, "the mitre must stand off");
    }

    @Test
    void inward_corners_may_be_mitred_or_round() {
        double c = SIDE_MM;
        Polygon face = polygon("POLYGON ((0 0, 300 0, 300 120, 120 120, 120 300, 0 300, 0 0))");
        Polygon mitred = polygon("POLYGON ((%1$s %1$s, %2$s %1$s, %2$s %3$s, %3$s %3$s, %3$s %2$s, %1$s %2$s, %1$s %1$s))"
                .formatted(c, 300 - c, 120 - c));
        Outcome outcome = run(face, mitred);
        assertEquals(List.of(), rules(outcome));
        assertEquals(c * Math.sqrt(2), number(outcome, "pairs", 0, "greatest"), TOLERANCE_MM);
        Polygon round = (Polygon) Inset.of(face, c, Inset.Join.ROUND, 1, 0.002);
        Outcome rounded = run(face, round);
        assertEquals(List.of(), rules(rounded));
        assertEquals(c, number(rounded, "pairs", 0, "greatest"), TOLERANCE_MM);
    }

    @Test
    void a_forgotten_stroke_is_found_from_the_face() {
        // an L whose back has the upright alone
        Outcome outcome = run(polygon("POLYGON ((0 0, 60 0, 60 240, 200 240, 200 300, 0 300, 0 0))"), box(2.4, 2.4, 55.2, 295.2));
        Finding missed = only(of(outcome, FitRules.MISSED_STROKE));
        // farthest: the two corners of the forgotten foot, 142.4 to the right of the back and level with it, or 200 - 57.6 and 2.4 below
        assertEquals(Math.hypot(200 - 57.6, 2.4), measured(missed), TOLERANCE_MM);
        // derived: geometry. The foot's end and its two sides, from where the back is farther than the square root of 2 times 2.88
        assertTrue(missed.place().orElseThrow().getLength() > 300 && missed.place().orElseThrow().getLength() < 340,
                () -> "" + missed.place().orElseThrow().getLength());
        assertEquals(List.of("fit.clearance", "fit.missed-stroke"), rules(outcome));
    }

    @Test
    void sharp_corners_are_no_forgotten_strokes() {
        double c = SIDE_MM;
        // a wedge of 24 degrees, and its exact inset
        Polygon face = polygon("POLYGON ((0 0, 400 -85.0226, 400 85.0226, 0 0))");
        Polygon back = (Polygon) Inset.of(face, c, Inset.Join.MITRE, 4, 0.002);
        assertEquals(List.of(), rules(run(face, back)));
    }

    @Test
    void a_face_too_narrow_for_its_back_is_found_too() {
        // 100 x 100 with a bar 4 wide and 150 long: no back can follow it
        Outcome outcome = run(polygon("POLYGON ((0 0, 100 0, 100 48, 250 48, 250 52, 100 52, 100 100, 0 100, 0 0))"), box(2.4, 2.4, 95.2, 95.2));
        assertEquals(1, of(outcome, FitRules.MISSED_STROKE).size(), outcome.findings()::toString);
    }

    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void pairs_are_found_whatever_the_order(boolean reversed) {
        CheckTester tester = tester();
        int count = 40;
        for (int i = 0; i < count; i++) {
            int k = reversed ? count - 1 - i : i;
            tester.part(part("f" + k, Role.FACE, box(k * 120, 0, 100, 100)));
        }
        for (int i = 0; i < count; i++) {
            int k = reversed ? i : i * 7 % count;
            tester.part(part("b" + k, Role.BACK, box(k * 120 + SIDE_MM, SIDE_MM, 100 - 2 * SIDE_MM, 100 - 2 * SIDE_MM)));
        }
        Outcome outcome = tester.run();
        assertEquals(List.of(), rules(outcome));
        assertEquals(count, outcome.tables().get(0).rows().size());
        for (List<Object> row : outcome.tables().get(0).rows()) {
            assertEquals(((String) row.get(0)).substring(1), ((String) row.get(1)).substring(1), "back and face of one letter");
        }
    }

    @Test
    void missing_and_left_over_partners_are_named() {
        double c = SIDE_MM;
        Outcome outcome = tester().part(part("f1", Role.FACE, box(0, 0, 100, 100))).part(part("f2", Role.FACE, box(200, 0, 100, 100)))
                .part(Part.builder("loose", Role.FACE, box(400, 0, 100, 100)).assigned(false).build())
                .part(part("b1", Role.BACK, box(c, c, 100 - 2 * c, 100 - 2 * c))).part(part("b3", Role.BACK, box(0, 500, 90, 90)))
                .part(part("b1-again", Role.BACK, box(c + 1, c + 1, 98 - 2 * c, 98 - 2 * c))).run();
        assertEquals(Set.of("f2", "b1-again", "b3"), of(outcome, FitRules.UNPAIRED).stream().map(finding -> finding.parts().get(0))
                .collect(Collectors.toSet()));
        assertEquals(List.of("fit.unpaired"), rules(outcome));
    }

    @Test
    void a_missing_back_and_a_left_over_one_of_the_same_size_are_not_one_finding() {
        List<Finding> lonely = of(tester().part(part("f", Role.FACE, box(0, 0, 100, 100))).part(part("b", Role.BACK, box(0, 500, 100, 100))).run(),
                FitRules.UNPAIRED);
        assertEquals(2, lonely.stream().map(Finding::cause).distinct().count(), lonely::toString);
    }

    @Test
    void a_corner_that_sticks_out_farther_than_its_edges_does_not_say_how_far_to_move_them() {
        Outcome outcome = tester().part(part("f", Role.FACE, box(0, 0, 100, 100))).part(part("b", Role.BACK, box(-2, -2, 104, 104))).run();
        Finding out = of(outcome, FitRules.CLEARANCE).get(0);
        assertEquals(-2 * Math.sqrt(2), measured(out), 1e-6);
        assertTrue(out.fix().orElseThrow().contains("until it keeps 2.38 mm"), out.fix()::toString);
    }

    @Test
    void letters_in_pieces_have_a_back_for_each_or_one_for_all() {
        double c = SIDE_MM;
        Part dot = part("dot", Role.FACE, circle(50, 30, 28));
        Part stem = part("stem", Role.FACE, box(25, 80, 50, 200));
        Outcome each = tester().part(dot).part(stem).part(part("b1", Role.BACK, box(25 + c, 80 + c, 50 - 2 * c, 200 - 2 * c)))
                .part(part("b2", Role.BACK, circle(50, 30, 28 - c))).run();
        assertEquals(List.of(), rules(each));
        assertEquals(2, each.tables().get(0).rows().size());
        Outcome one = tester().part(dot).part(stem).part(part("b1", Role.BACK, box(25 + c, 4, 50 - 2 * c, 276 - c))).run();
        assertEquals(1, one.tables().get(0).rows().size());
        assertEquals("dot stem", one.tables().get(0).rows().get(0).get(1));
        assertEquals(List.of(), of(one, FitRules.UNPAIRED));
        assertTrue(of(one, FitRules.CLEARANCE).stream().anyMatch(finding -> measured(finding) < 0), "the back shows between dot and stem");
    }

    @Test
    void counters_that_shrink_or_stay_away_are_found() {
        double c = SIDE_MM;
        Polygon face = frame(box(0, 0, 300, 400), box(60, 60, 180, 100), box(60, 240, 180, 100));
        Polygon right = frame(box(c, c, 300 - 2 * c, 400 - 2 * c), box(60 - c, 60 - c, 180 + 2 * c, 100 + 2 * c),
                box(60 - c, 240 - c, 180 + 2 * c, 100 + 2 * c));
        assertEquals(List.of(), rules(run(face, right)));
        Polygon shrunk = frame(box(c, c, 300 - 2 * c, 400 - 2 * c), box(60 - c, 60 - c, 180 + 2 * c, 100 + 2 * c),
                box(60 + c, 240 + c, 180 - 2 * c, 100 - 2 * c));
        Outcome outcome = run(face, shrunk);
        assertEquals(List.of("fit.counter"), rules(outcome));
        Finding counter = only(of(outcome, FitRules.COUNTER));
        assertEquals(-c, measured(counter), TOLERANCE_MM);
        assertEquals(c, required(counter), 1e-9);
        assertTrue(counter.place().orElseThrow().getEnvelopeInternal().getMinY() > 200, "the lower counter");
        Polygon closed = frame(box(c, c, 300 - 2 * c, 400 - 2 * c), box(60 - c, 60 - c, 180 + 2 * c, 100 + 2 * c));
        Finding missing = only(of(run(face, closed), FitRules.COUNTER));
        assertTrue(missing.message().contains("goes on behind a counter"), missing.message());
        assertEquals(18000, missing.place().orElseThrow().getArea(), 1e-6);
    }

    @Test
    void a_counter_that_did_not_grow_is_found_and_one_that_need_not_grow_is_not() {
        double c = SIDE_MM;
        Polygon face = frame(box(0, 0, 300, 400), box(60, 60, 180, 280));
        Polygon same = frame(box(c, c, 300 - 2 * c, 400 - 2 * c), box(60, 60, 180, 280));
        Finding counter = only(run(face, same).findings());
        assertEquals(FitRules.COUNTER, counter.rule());
        assertEquals(0, measured(counter), 1e-6);
        assertTrue(counter.message().contains("is no larger than that of face f"), counter.message());
        assertEquals(List.of(), rules(tester().with(SharedSettings.BACK_ALLOWANCE, 0.0).part(part("f", Role.FACE, face)).part(part("b", Role.BACK, face)).run()));
    }

    @Test
    void a_back_that_weaves_about_the_edge_is_tight_all_round_and_quickly_measured() {
        // 4,000 nodes in turns inside and outside of the face's edge; on the face 0.4 wide in and out, on the back 0.2 the other way
        Coordinate[] face = new Coordinate[4001];
        Coordinate[] back = new Coordinate[4001];
        for (int i = 0; i < 4000; i++) {
            double angle = i * Math.PI / 2000;
            double way = i % 2 == 0 ? 1 : -1;
            face[i] = new Coordinate((300 + 0.4 * way) * Math.cos(angle), (300 + 0.4 * way) * Math.sin(angle));
            back[i] = new Coordinate((300 - 0.2 * way) * Math.cos(angle), (300 - 0.2 * way) * Math.sin(angle));
        }
        face[4000] = face[0].copy();
        back[4000] = back[0].copy();
        long start = System.nanoTime();
        Outcome outcome = run(Drawings.FACTORY.createPolygon(face), Drawings.FACTORY.createPolygon(back));
        Finding tight = only(of(outcome, FitRules.CLEARANCE));
        assertTrue(measured(tight) < 0 && measured(tight) > -0.6, tight.message());
        assertTrue((System.nanoTime() - start) / 1e9 < 10, "a few times what a busy machine needs");
    }

    @Test
    void wire_holes_are_no_counters() {
        double c = SIDE_MM;
        Polygon face = box(0, 0, 200, 200);
        Polygon back = box(c, c, 200 - 2 * c, 200 - 2 * c);
        assertEquals(List.of(), rules(run(face, frame(back, circle(100, 100, 12)))));
        Finding extra = only(run(face, frame(back, circle(100, 100, 14))).findings());
        assertEquals(FitRules.COUNTER, extra.rule());
        assertEquals(28, measured(extra), 0.01);
        assertEquals(25.4, required(extra), 1e-9);
    }

    @Test
    void push_throughs_are_held_against_their_openings_with_their_own_allowance() {
        Polygon opening = frame(box(0, 0, 200, 200), box(60, 60, 80, 80));
        double c = 25.4 / 32;
        Part letter = part("pt", Role.PUSH_THROUGH, frame(box(c, c, 200 - 2 * c, 200 - 2 * c), box(60 - c, 60 - c, 80 + 2 * c, 80 + 2 * c)));
        Outcome outcome = tester().part(part("o", Role.OPENING, opening)).part(letter).part(part("o2", Role.OPENING, box(400, 0, 50, 50))).run();
        assertEquals(List.of("o2"), only(outcome.findings()).parts());
        assertEquals(c, number(outcome, "pairs", 0, "least"), TOLERANCE_MM);
        assertEquals(c * Math.sqrt(2), number(outcome, "pairs", 0, "greatest"), TOLERANCE_MM, "at the corners of the counter");
        Outcome tight = tester().with(FitSettings.PUSH_THROUGH_ALLOWANCE, 4.0).part(part("o", Role.OPENING, opening)).part(letter).run();
        assertEquals(2, of(tight, FitRules.CLEARANCE).size(), tight.findings()::toString);
    }

    @Test
    void a_back_drawn_by_hand_with_other_nodes_passes_within_the_tolerance() {
        // a circle traced with 60 nodes that wander 0.3 mm in and out
        Coordinate[] nodes = new org.locationtech.jts.geom.Coordinate[61];
        for (int i = 0; i < 60; i++) {
            double radius = 150 - SIDE_MM + (i % 2 == 0 ? 0.3 : -0.1);
            nodes[i] = new Coordinate(radius * Math.cos(i * Math.PI / 30), radius * Math.sin(i * Math.PI / 30));
        }
        nodes[60] = nodes[0].copy();
        Outcome outcome = run(circle(0, 0, 150), Drawings.FACTORY.createPolygon(nodes));
        assertEquals(List.of(), rules(outcome));
        assertEquals(SIDE_MM - 0.3, number(outcome, "pairs", 0, "least"), TOLERANCE_MM);
    }

    @Test
    void turning_the_proof_changes_no_measure() {
        Polygon face = polygon("POLYGON ((0 0, 300 0, 300 120, 120 120, 120 300, 0 300, 0 0))");
        Polygon back = polygon("POLYGON ((1 3, 297 2, 298 116, 115 118, 117 297, 3 298, 1 3))");
        AffineTransformation turn = AffineTransformation.rotationInstance(0.7).translate(900, -40);
        Outcome plain = run(face, back);
        Outcome turned = run((Polygon) turn.transform(face), (Polygon) turn.transform(back));
        assertTrue(plain.findings().size() > 2, "the sample must depart");
        assertEquals(plain.findings().size(), turned.findings().size());
        for (String column : List.of("least", "greatest", "mean", "departs")) {
            assertEquals(number(plain, "pairs", 0, column), number(turned, "pairs", 0, column), 1e-3, column);
        }
    }
}
