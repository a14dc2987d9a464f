// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.trim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.concurrent.CancellationException;
import kerfglow.api.CheckInfo;
import kerfglow.api.Finding;
import kerfglow.api.Outcome;
import kerfglow.api.Rule;
import kerfglow.api.Setting;
import kerfglow.api.Severity;
import kerfglow.api.UnitSystem;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Role;
import kerfglow.testkit.CheckTester;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.util.AffineTransformation;

class TrimCheckTest {
    private static final GeometryFactory FACTORY = new GeometryFactory();
    private static final double CHORD_ERROR_MM = 0.002;
    private static final double TOLERANCE_MM = 0.02;

    private static CheckTester tester() {
        return CheckTester.of(new TrimCheck());
    }

    private static Outcome run(Polygon face) {
        return tester().part(Part.builder("f", Role.FACE, face).elements(List.of("e")).build()).run();
    }

    private static Polygon polygon(String wkt) {
        return (Polygon) CheckTester.wkt(wkt);
    }

    private static Polygon box(double x, double y, double width, double height) {
        return polygon("POLYGON ((%s %s, %s %s, %s %s, %s %s, %s %s))".formatted(x, y, x + width, y, x + width, y + height, x, y + height, x, y));
    }

    /** A rectangle of the given half sides grown by a radius; vertices on the true curve, within the chord error. */
    private static Polygon rounded(double halfWidth, double halfHeight, double radius, double chordErrorMm) {
        int steps = (int) Math.ceil(Math.PI / 2 / (2 * Math.acos(1 - chordErrorMm / radius)));
        List<Coordinate> points = new ArrayList<>();
        for (int quarter = 0; quarter < 4; quarter++) {
            double x = quarter == 0 || quarter == 3 ? halfWidth : -halfWidth;
            double y = quarter < 2 ? halfHeight : -halfHeight;
            for (int i = 0; i <= steps; i++) {
                double angle = (quarter + (double) i / steps) * Math.PI / 2;
                Coordinate point = new Coordinate(x + radius * Math.cos(angle), y + radius * Math.sin(angle));
                if (points.isEmpty() || point.distance(points.get(points.size() - 1)) > 1e-6) {
                    points.add(point);
                }
            }
        }
        if (points.get(0).distance(points.get(points.size() - 1)) < 1e-6) {
            points.remove(points.size() - 1);
        }
        points.add(points.get(0).copy());
        return FACTORY.createPolygon(points.toArray(new Coordinate[0]));
    }

    private static Polygon frame(Polygon outside, Polygon hole) {
        return FACTORY.createPolygon(outside.getExteriorRing(), new LinearRing[] {hole.getExteriorRing()});
    }

    private static List<Finding> of(Outcome outcome, Rule rule) {
        return outcome.findings().stream().filter(finding -> finding.rule() == rule).toList();
    }

    private static Finding only(List<Finding> findings) {
        assertEquals(1, findings.size(), findings::toString);
        return findings.get(0);
    }

    private static double measured(Finding finding) {
        return finding.measured().orElseThrow().value();
    }

    @Test
    void says_who_it_is() {
        CheckInfo info = new TrimCheck().info();
        assertEquals(List.of("trim.little-lit", "trim.tight-curve", "trim.length"), info.rules().stream().map(Rule::id).toList());
        assertEquals(Severity.INFO, TrimRules.LENGTH.severity());
        assertEquals(List.of(), info.settings().stream().map(Setting::key).filter(key -> !info.page().contains("`" + key + "`")).toList());
    }

    @ParameterizedTest
    @CsvSource({"18, 5.3, 1", "19, 6.3, 1", "19.1, 6.4, 0", "12, 0, 1"})
    void a_bar_keeps_its_width_less_two_lips(double width, double lit, int findings) {
        Outcome outcome = run(box(0, 0, 300, width));
        List<Finding> dark = of(outcome, TrimRules.LITTLE_LIT);
        assertEquals(findings, dark.size());
        dark.forEach(finding -> assertEquals(lit, measured(finding), TOLERANCE_MM));
        // derived: erosion of a rectangle, (a - 2 r)(b - 2 r)
        assertEquals(Math.max(0, width - 12.7) * (300 - 12.7), (Double) outcome.tables().get(0).rows().get(0).get(7), 1e-6);
    }

    @Test
    void a_thin_place_in_a_ring_is_one_stretch() {
        Polygon ring = frame(rounded(0, 0, 150, CHORD_ERROR_MM), (Polygon) AffineTransformation.translationInstance(40, 0)
                .transform(rounded(0, 0, 95, CHORD_ERROR_MM)));
        Finding dark = only(of(run(ring), TrimRules.LITTLE_LIT));
        assertEquals(15 - 12.7, measured(dark), TOLERANCE_MM);
        assertTrue(dark.at().orElseThrow().x > 135, () -> "at " + dark.at());
        assertEquals(List.of("f"), dark.parts());
        assertTrue(dark.message().contains("15 mm wide two lips of 6.35 mm leave 2.3 mm lit"), dark.message());
    }

    @Test
    void a_long_tip_stays_dark() {
        // a blade of 10 degrees is narrower than 19.05 over 9.525 / sin 5 = 109.29 (derived: geometry); 57.15 is the most
        Finding tip = only(of(run(polygon("POLYGON ((0 0, 400 -34.995465, 400 34.995465, 0 0))")), TrimRules.LITTLE_LIT));
        assertEquals(9.525 / Math.sin(Math.toRadians(5)), measured(tip), 0.05);
        assertEquals(3 * 19.05, tip.required().orElseThrow().value(), 1e-9);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.002, 0.02, 0.1})
    void a_circle_tighter_than_the_moulding_follows_is_one_curve(double chordErrorMm) {
        Finding curve = only(of(run(rounded(0, 0, 12, chordErrorMm)), TrimRules.TIGHT_CURVE));
        assertEquals(12, measured(curve), Math.max(TOLERANCE_MM, chordErrorMm));
        assertEquals(12.7, curve.required().orElseThrow().value(), 1e-9);
        assertEquals(List.of(), of(run(rounded(0, 0, 13, chordErrorMm)), TrimRules.TIGHT_CURVE));
    }

    @ParameterizedTest
    @ValueSource(doubles = {2, 5, 10})
    void rounded_corners_are_curves_and_sharp_ones_are_notched(double radius) {
        Polygon face = rounded(150, 80, radius, 0.02);
        List<Finding> curves = of(run(face), TrimRules.TIGHT_CURVE);
        assertEquals(4, curves.size(), curves::toString);
        curves.forEach(curve -> assertEquals(radius, measured(curve), TOLERANCE_MM));
        // the marker stands in the middle of the corner
        assertEquals(0, curves.stream().mapToDouble(curve -> Math.abs(Math.abs(curve.at().orElseThrow().x) - 150 - radius / Math.sqrt(2))).max()
                .orElseThrow(), radius / 4);
        assertEquals(4, of(run(face.reverse()), TrimRules.TIGHT_CURVE).size());
        assertEquals(List.of(), of(run(box(0, 0, 300, 200)), TrimRules.TIGHT_CURVE));
        assertEquals(List.of(), of(run(rounded(150, 80, 1.2, 0.02)), TrimRules.TIGHT_CURVE), "rounded so little it is folded");
    }

    @Test
    void a_stadium_has_a_curve_at_each_end() {
        List<Finding> curves = of(run(rounded(200, 0, 12, 0.02)), TrimRules.TIGHT_CURVE);
        assertEquals(2, curves.size());
        // derived: half a circle, from the first node to the last
        curves.forEach(curve -> assertEquals(Math.PI * 12, curve.place().orElseThrow().getLength(), 0.1));
    }

    @Test
    void counters_are_hollow_and_have_their_own_radius() {
        Polygon face = frame(box(0, 0, 300, 300), (Polygon) AffineTransformation.translationInstance(150, 150).transform(rounded(60, 60, 10, 0.02)));
        List<Finding> curves = of(run(face), TrimRules.TIGHT_CURVE);
        assertEquals(4, curves.size());
        assertTrue(curves.get(0).message().contains("in a hollow"), curves.get(0).message());
        assertEquals(List.of(), of(tester().with(TrimSettings.INSIDE_RADIUS, 9.0).part(Part.builder("f", Role.FACE, face).build()).run(),
                TrimRules.TIGHT_CURVE));
        assertEquals(4, of(tester().with(TrimSettings.OUTSIDE_RADIUS, 9.0).part(Part.builder("f", Role.FACE, face).build()).run(),
                TrimRules.TIGHT_CURVE).size());
    }

    @Test
    void the_flat_end_of_an_ellipse_is_measured_where_it_is_tightest() {
        // derived: least radius of curvature b² / a
        double a = 100;
        double b = 30;
        Coordinate[] points = new Coordinate[1201];
        for (int i = 0; i < 1200; i++) {
            points[i] = new Coordinate(a * Math.cos(i * Math.PI / 600), b * Math.sin(i * Math.PI / 600));
        }
        points[1200] = points[0].copy();
        List<Finding> curves = of(run(FACTORY.createPolygon(points)), TrimRules.TIGHT_CURVE);
        assertEquals(2, curves.size());
        curves.forEach(curve -> assertEquals(b * b / a, measured(curve), TOLERANCE_MM));
        assertEquals(100, Math.abs(curves.get(0).at().orElseThrow().x), 0.5);
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void nodes_that_wander_are_no_curves(long seed) {
        // 0.3 mm apart and up to 0.06 mm off: single nodes turn by 15 degrees and more, and the next ones back again
        Random random = new Random(seed);
        int count = 4000;
        Coordinate[] points = new Coordinate[count + 1];
        for (int i = 0; i < count; i++) {
            double radius = 200 + 0.06 * random.nextDouble();
            points[i] = new Coordinate(radius * Math.cos(2 * i * Math.PI / count), radius * Math.sin(2 * i * Math.PI / count));
        }
        points[count] = points[0].copy();
        assertEquals(List.of(), of(run(FACTORY.createPolygon(points)), TrimRules.TIGHT_CURVE));
    }

    @Test
    void length_counts_every_edge_with_its_joint() {
        Outcome outcome = tester().units(UnitSystem.METRIC).with(TrimSettings.ROLL_LENGTH, 1500.0)
                .part(Part.builder("a", Role.FACE, frame(box(0, 0, 300, 300), box(100, 100, 100, 100))).build())
                .part(Part.builder("b", Role.FACE, box(1000, 0, 500, 500)).build()).run();
        Finding length = only(of(outcome, TrimRules.LENGTH));
        assertEquals(1200 + 400 + 2000, measured(length), 1e-9);
        // 2,000 takes two lengths of 1,500; 500 of the second is used, so that 400 come from its rest and 1,200 from a third
        assertTrue(length.message().endsWith("3600 mm round 3 edges of 2 faces, 4 joints, 3 rolls of 1500 mm."), length.message());
        assertEquals(2.0, outcome.tables().get(0).rows().get(0).get(5));
    }

    @Test
    void the_shop_sheet_s_moulding_is_used() {
        Part face = Part.builder("f", Role.FACE, box(0, 0, 300, 18)).build();
        CheckTester stocked = tester().stock(TrimSettings.MOULDINGS, Map.of(TrimSettings.STOCK_LIP, 4.0))
                .stock(TrimSettings.MOULDINGS, Map.of(TrimSettings.STOCK_LIP, 9.0)).part(face);
        Outcome first = stocked.run();
        assertEquals(List.of(), of(first, TrimRules.LITTLE_LIT));
        assertEquals(List.of(), first.missing());
        Outcome named = stocked.with(TrimSettings.MOULDING, "edge-mouldings 2").run();
        assertEquals(0, measured(only(of(named, TrimRules.LITTLE_LIT))), TOLERANCE_MM);
        assertTrue(stocked.with(TrimSettings.MOULDING, "gold").run().missing().get(0).contains("\"gold\""));
        assertTrue(run(box(0, 0, 300, 18)).missing().get(0).contains("lip of 6.35 mm"));
    }

    @Test
    void only_faces_that_are_meant_have_moulding() {
        Part unassigned = Part.builder("u", Role.FACE, box(0, 0, 100, 100)).assigned(false).build();
        assertFalse(tester().part(unassigned).run().measured());
        assertTrue(tester().with(TrimSettings.FACES, "all").part(unassigned).run().measured());
        assertFalse(tester().with(TrimSettings.FACES, "none").part(Part.builder("f", Role.FACE, box(0, 0, 9, 9)).build()).run().measured());
        assertFalse(tester().part(Part.builder("b", Role.BACK, box(0, 0, 100, 100)).build()).run().measured());
    }

    @ParameterizedTest
    @ValueSource(strings = {"trim.lip=-1 mm=0 mm to 200 mm", "trim.least-lit=0 mm=0.1 mm to 200 mm", "trim.corner-angle=0 deg=1° to 180°",
        "trim.roll-length=1 mm=100 mm to 1000 m", "trim.faces=some=assigned, all, none"})
    void bad_settings_are_refused_by_name_with_what_is_allowed(String given) {
        String[] words = given.split("=");
        Setting<?> setting = new TrimCheck().info().settings().stream().filter(each -> each.key().equals(words[0])).findFirst().orElseThrow();
        IllegalArgumentException refused = assertThrows(IllegalArgumentException.class, () -> setting.parse(words[1]));
        assertTrue(refused.getMessage().startsWith(words[0] + ":"), refused.getMessage());
        assertTrue(refused.getMessage().contains(words[2]), refused.getMessage());
    }

    @Test
    void turning_and_moving_changes_nothing_and_a_cancelled_run_ends() {
        Polygon face = frame(rounded(150, 80, 8, 0.02), rounded(135, 60, 5, 0.02));
        Outcome plain = run(face);
        Outcome turned = run((Polygon) AffineTransformation.rotationInstance(0.8).translate(4000, -300).transform(face));
        assertTrue(plain.findings().size() > 8, "the sample must break rules");
        assertEquals(plain.findings().size(), turned.findings().size());
        double before = plain.findings().stream().mapToDouble(TrimCheckTest::measured).sum();
        assertEquals(before, turned.findings().stream().mapToDouble(TrimCheckTest::measured).sum(), 1e-3);
        CheckTester cancelled = tester().part(Part.builder("f", Role.FACE, face).build()).onCheckpoint(fraction -> {
            throw new CancellationException();
        });
        assertThrows(CancellationException.class, cancelled::run);
    }
}
