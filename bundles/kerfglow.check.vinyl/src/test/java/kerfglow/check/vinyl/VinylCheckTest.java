// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.vinyl;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.concurrent.CancellationException;
import kerfglow.api.Finding;
import kerfglow.api.Outcome;
import kerfglow.api.Setting;
import kerfglow.api.Table;
import kerfglow.api.UnitSystem;
import kerfglow.api.proof.Paint;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Role;
import kerfglow.testkit.CheckTester;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;

class VinylCheckTest {
    private static final int RED = 0xC03020;
    private static final int BLUE = 0x2040A0;
    private static final int GOLD = 0xD0A020;

    private static CheckTester tester() {
        return CheckTester.of(new VinylCheck()).stock(VinylCheck.ROLLS, Map.of(VinylCheck.ROLL_WIDTH, 620.0)).page(4000, 2000);
    }

    private static Part film(String id, int order, int rgb, String wkt) {
        return Part.builder(id, Role.VINYL, (Polygon) CheckTester.wkt(wkt)).paint(Paint.colour(rgb)).order(order).elements(List.of(id)).build();
    }

    private static String box(double left, double top, double right, double bottom) {
        return "POLYGON ((%1$s %2$s, %3$s %2$s, %3$s %4$s, %1$s %4$s, %1$s %2$s))".formatted(left, top, right, bottom);
    }

    private static Finding only(List<Finding> findings) {
        assertEquals(1, findings.size(), findings::toString);
        return findings.get(0);
    }

    private static Object cell(Outcome outcome, String tableId, int row, String column) {
        Table table = outcome.tables().stream().filter(each -> each.info().id().equals(tableId)).findFirst().orElseThrow();
        return table.rows().get(row).get(table.info().columns().stream().map(each -> each.id()).toList().indexOf(column));
    }

    private static double measured(Finding finding) {
        return finding.measured().orElseThrow().value();
    }

    @Test
    void says_who_it_is_and_every_setting_is_on_its_page() {
        VinylCheck check = new VinylCheck();
        assertEquals(List.of("vinyl.small-piece", "vinyl.thin", "vinyl.overlap", "vinyl.seam", "vinyl.use"), check.info().rules().stream().map(rule -> rule.id()).toList());
        for (Setting<?> setting : check.info().settings()) {
            assertTrue(check.info().page().contains("`" + setting.key() + "`"), setting.key());
        }
    }

    @Test
    void nothing_of_film_is_not_measured() {
        assertFalse(tester().part("f", Role.FACE, box(0, 0, 100, 100)).run().measured());
        assertTrue(tester().build("vinyl").part("f", Role.FACE, box(0, 0, 100, 100)).run().measured(), "of a sign of film alone plain shapes are film");
    }

    /** 2 mm square is the smallest part that two shops weed (trade values, section 8). */
    @ParameterizedTest
    @CsvSource({"1.9, 1", "2.0, 0", "2.1, 0"})
    void a_piece_smaller_than_a_square_of_two_millimetres_is_found(double side, int findings) {
        CheckTester tester = tester().part(film("dot", 0, RED, box(10, 10, 10 + side, 10 + side))).part(film("big", 0, RED, box(50, 50, 90, 90)));
        List<Finding> found = tester.findings(VinylRules.SMALL_PIECE);
        assertEquals(findings, found.size());
        found.forEach(finding -> assertEquals(side, measured(finding), 1e-9));
        assertEquals(List.of(), tester.findings(VinylRules.THIN), "told once, as a small piece");
    }

    @Test
    void a_small_counter_is_waste_that_is_hard_to_weed() {
        Finding finding = only(tester().part(film("a", 0, RED, "POLYGON ((0 0, 40 0, 40 40, 0 40, 0 0), (20 20, 20 21.5, 21.5 21.5, 21.5 20, 20 20))")).findings(VinylRules.SMALL_PIECE));
        assertEquals(1.5, measured(finding), 1e-9);
        assertEquals(List.of("a"), finding.parts());
        assertTrue(finding.message().contains("waste"), finding.message());
    }

    @ParameterizedTest
    @CsvSource({"1.5, 1", "1.99, 1", "2.0, 0"})
    void a_thin_stroke_of_film_is_found_with_its_width(double width, int findings) {
        List<Finding> found = tester().part(film("bar", 0, RED, box(0, 0, 200, width))).findings(VinylRules.THIN);
        assertEquals(findings, found.size());
        found.forEach(finding -> assertEquals(width, measured(finding), 1e-6));
    }

    @Test
    void a_sliver_of_waste_between_pieces_is_found() {
        CheckTester tester = tester().part(film("a", 0, RED, box(0, 0, 50, 50))).part(film("b", 0, RED, box(50.3, 0, 100, 50)));
        Finding finding = only(tester.findings(VinylRules.THIN));
        assertEquals(0.3, measured(finding), 1e-6);
        assertEquals(List.of("a", "b"), finding.parts());
        assertEquals(List.of(), tester.with(VinylSettings.LEAST_WASTE, 0.3).findings(VinylRules.THIN), "just within");
        assertEquals(List.of(), tester().part(film("a", 0, RED, box(0, 0, 50, 50))).part(film("b", 1, BLUE, box(50.3, 0, 100, 50))).findings(VinylRules.THIN),
                "another colour comes off another roll");
    }

    @Test
    void a_long_tip_is_found_by_its_length() {
        // a wedge of base 4 and length 60: narrower than 2 from its tip over about half of it, 2 / (2 tan(atan(2/60))) less what the disc reaches
        Finding finding = only(tester().part(film("wedge", 0, RED, "POLYGON ((0 0, 60 2, 0 4, 0 0))")).findings(VinylRules.THIN));
        double half = Math.atan(2 / 60.0);
        assertEquals(1 / Math.sin(half), measured(finding), 0.05, "the axis up to the disc of 2 mm: radius over the sine of half the angle");
        assertEquals(6, finding.required().orElseThrow().value(), 1e-9);
    }

    @ParameterizedTest
    @CsvSource({"-0.8, gap", "-0.0005, short overlap", "0, short overlap", "0.4, short overlap", "1.4, short overlap"})
    void colours_that_meet_without_overlap_are_found_with_it(double overlap, String cause) {
        Finding finding = only(tester().part(film("left", 0, RED, box(0, 0, 50, 80))).part(film("right", 1, BLUE, box(50 - overlap, -20, 100, 60))).findings(VinylRules.OVERLAP));
        assertEquals(overlap, measured(finding), 0.001);
        assertEquals(60, finding.place().orElseThrow().getLength(), 1.001, "from 0 to 60, in steps of half a millimetre");
        assertEquals(1.5, finding.required().orElseThrow().value());
        assertEquals(List.of("left", "right"), finding.parts());
        assertEquals(cause, finding.cause());
    }

    @ParameterizedTest
    @CsvSource({"1.5", "4", "-1.1", "-20"})
    void enough_overlap_and_a_gap_that_is_meant_pass(double overlap) {
        assertEquals(List.of(), tester().part(film("left", 0, RED, box(0, 0, 50, 80))).part(film("right", 1, BLUE, box(50 - overlap, -20, 100, 60))).findings(VinylRules.OVERLAP));
    }

    @Test
    void film_that_lies_within_another_needs_no_overlap_and_bars_that_cross_do_not_meet() {
        assertEquals(List.of(), tester().part(film("ground", 0, RED, box(0, 0, 200, 100))).part(film("letter", 1, BLUE, box(20, 20, 60, 60))).findings(VinylRules.OVERLAP));
        assertEquals(List.of(), tester().part(film("level", 0, RED, box(0, 40, 200, 60))).part(film("upright", 1, BLUE, box(90, 0, 110, 100))).findings(VinylRules.OVERLAP));
    }

    /** A line of film 2.5 mm wide over the edge of another colour: laid a little off it crosses elsewhere, and nothing opens, unless it nearly runs along. */
    @ParameterizedTest
    @CsvSource({"80, false", "26, false", "16, false", "10, true", "4, true"})
    void a_line_that_crosses_an_edge_does_not_meet_it(double degrees, boolean meets) {
        double c = Math.cos(Math.toRadians(degrees));
        double s = Math.sin(Math.toRadians(degrees));
        StringBuilder wkt = new StringBuilder("POLYGON ((");
        for (double[] corner : new double[][] {{-80, -1.25}, {80, -1.25}, {80, 1.25}, {-80, 1.25}, {-80, -1.25}}) {
            wkt.append(wkt.charAt(wkt.length() - 1) == '(' ? "" : ", ").append(100 + corner[0] * c - corner[1] * s).append(' ').append(100 + corner[0] * s + corner[1] * c);
        }
        List<Finding> found = tester().part(film("star", 0, RED, box(0, 0, 200, 100))).part(film("line", 1, BLUE, wkt.append("))").toString())).findings(VinylRules.OVERLAP);
        assertEquals(!meets, found.isEmpty(), found::toString);
    }

    @Test
    void a_gap_that_a_third_film_covers_does_not_show() {
        CheckTester two = tester().part(film("left", 1, RED, box(10, 10, 50, 80))).part(film("right", 2, BLUE, box(50.5, 10, 90, 80)));
        assertEquals(1, two.findings(VinylRules.OVERLAP).size());
        assertEquals(List.of(), two.part(film("ground", 0, GOLD, box(0, 0, 100, 100))).findings(VinylRules.OVERLAP));
    }

    @ParameterizedTest
    @CsvSource({"0, 1", "0.4, 1", "-0.4, 1", "1.0, 0", "-1.0, 0", "3, 0"})
    void a_repeated_edge_is_found_and_one_that_stands_back_passes(double back, int findings) {
        List<Finding> found = tester().part(film("ground", 0, RED, box(0, 0, 100, 100))).part(film("over", 1, BLUE, box(back, 30, 60, 70))).findings(VinylRules.OVERLAP);
        assertEquals(findings, found.size(), found::toString);
        for (Finding finding : found) {
            assertEquals(Math.abs(back), measured(finding), 0.001);
            assertEquals(40, finding.place().orElseThrow().getLength(), 2.001);
            assertEquals("repeated edge", finding.cause());
        }
    }

    /** The lower edge leans from x 50 to 52 over 80 mm, the upper begins at 49: from 1 mm of overlap to 3, and below 1.5 over the first 20 mm. */
    @Test
    void the_least_overlap_along_an_edge_that_leans_is_told() {
        Finding finding = only(tester().part(film("a", 0, RED, "POLYGON ((0 0, 50 0, 52 80, 0 80, 0 0))")).part(film("b", 1, BLUE, box(49, 0, 100, 80))).with(VinylSettings.REGISTRATION, 0.0)
                .findings(VinylRules.OVERLAP));
        assertEquals(1, measured(finding), 0.02);
        assertEquals(20, finding.place().orElseThrow().getLength(), 0.6);
    }

    @Test
    void a_repeated_edge_shows_on_a_ground_and_not_below_a_third_film() {
        CheckTester pair = tester().part(film("lower", 1, RED, box(10, 10, 100, 100))).part(film("upper", 2, BLUE, box(10, 30, 60, 70)));
        assertEquals(1, pair.part(film("ground", 0, GOLD, box(-50, -50, 200, 200))).findings(VinylRules.OVERLAP).size(), "the lower colour shows beside the upper on any ground");
        assertEquals(List.of(), tester().part(film("lower", 1, RED, box(10, 10, 100, 100))).part(film("upper", 2, BLUE, box(10, 30, 60, 70)))
                .part(film("lid", 3, GOLD, box(-50, 0, 20, 200))).findings(VinylRules.OVERLAP).stream().filter(finding -> finding.parts().equals(List.of("lower", "upper"))).toList());
    }

    @Test
    void a_repeated_outline_is_one_closed_stretch() {
        Finding finding = only(tester().part(film("a", 0, RED, box(0, 0, 100, 100))).part(film("b", 1, BLUE, box(0, 0, 100, 100))).findings(VinylRules.OVERLAP));
        assertEquals(400, finding.place().orElseThrow().getLength(), 1e-9);
    }

    @Test
    void a_piece_wider_than_the_roll_gets_panels_that_cover_it_and_fit() {
        // 620 less two margins of 10 leaves 600; 1500 by 900: two level panels of 450 and half the overlap
        CheckTester tester = tester().part(film("ground", 0, RED, box(0, 0, 1500, 900)));
        Finding finding = only(tester.findings(VinylRules.SEAM));
        assertEquals(900, measured(finding), 1e-6);
        assertEquals(600, finding.required().orElseThrow().value(), 1e-9);
        Outcome outcome = tester.run();
        assertEquals(2.0, cell(outcome, "pieces", 0, "panels"));
        Geometry first = (Geometry) cell(outcome, "panels", 0, "shape");
        Geometry second = (Geometry) cell(outcome, "panels", 1, "shape");
        assertEquals(1500 * 900, first.union(second).getArea(), 1e-3);
        assertEquals(1500 * 10, first.intersection(second).getArea(), 1e-3, "the overlap of 10 mm");
        for (Geometry panel : List.of(first, second)) {
            Envelope box = panel.getEnvelopeInternal();
            assertTrue(Math.min(box.getWidth(), box.getHeight()) <= 600, box::toString);
        }
    }

    @Test
    void seams_keep_out_of_counters_and_corners_where_they_can() {
        String frame = "POLYGON ((0 0, 1100 0, 1100 1000, 0 1000, 0 0), (540 300, 540 700, 560 700, 560 300, 540 300), (100 460, 100 520, 160 520, 160 460, 100 460))";
        Outcome outcome = tester().part(film("f", 0, RED, frame)).run();
        Geometry seams = (Geometry) outcome.layers().get(0).items().get(0).shape();
        double x = seams.getEnvelopeInternal().getMinX();
        assertEquals(0, seams.getEnvelopeInternal().getWidth(), 1e-9, "upright: level seams near the middle run through a counter");
        assertTrue(x < 530 || x > 570, "clear of the counters by 10 mm: " + x);
        assertTrue(x + 5 <= 600 && 1100 - x + 5 <= 600, "both panels fit: " + x);
    }

    @Test
    void the_fewest_panels_are_taken() {
        // usable 600, overlap 10: n panels cover 600 n - 10 (n - 1) mm; 3 cover 1780, 4 cover 2370
        assertEquals(3.0, cell(tester().part(film("g", 0, RED, box(0, 0, 3000, 1770))).run(), "pieces", 0, "panels"));
        assertEquals(4.0, cell(tester().part(film("g", 0, RED, box(0, 0, 3000, 1790))).run(), "pieces", 0, "panels"));
    }

    @Test
    void a_piece_that_fits_turned_needs_no_seam() {
        assertEquals(List.of(), tester().part(film("bar", 0, RED, box(0, 0, 3000, 600))).findings(VinylRules.SEAM));
        assertEquals(1, tester().part(film("bar", 0, RED, box(0, 0, 3000, 600.1))).findings(VinylRules.SEAM).size());
    }

    /** Four squares of 100 on a roll that leaves 600: one shelf, 100 long, and the leader of 150. */
    @Test
    void use_is_that_of_shelves_and_its_waste_is_what_is_not_film() {
        CheckTester tester = tester();
        for (int i = 0; i < 4; i++) {
            tester.part(film("s" + i, 0, RED, box(200 * i, 0, 200 * i + 100, 100)));
        }
        Outcome outcome = tester.run();
        assertEquals(250.0, (Double) cell(outcome, "colours", 0, "roll-length"), 1e-9);
        assertEquals(150 + 40_000 / 600.0, (Double) cell(outcome, "colours", 0, "at-least"), 1e-9);
        assertEquals(40_000.0, (Double) cell(outcome, "colours", 0, "area"), 1e-9);
        assertEquals(250 * 620 - 40_000.0, (Double) cell(outcome, "colours", 0, "waste"), 1e-9);
        assertEquals(1600.0, (Double) cell(outcome, "colours", 0, "cut"), 1e-9);
        assertEquals(5 * 2 + 1.6 * 15, (Double) cell(outcome, "colours", 0, "weeding"), 1e-9, "4 pieces and the waste around them, 2 s each; 1.6 m at 15 s");
        Finding finding = only(tester.findings(VinylRules.USE));
        assertEquals(250, measured(finding), 1e-9);
        assertTrue(finding.message().contains("5 pieces of film and waste at 2 s"), finding.message());
    }

    @Test
    void each_colour_has_its_own_roll() {
        CheckTester tester = CheckTester.of(new VinylCheck()).stock(VinylCheck.ROLLS, Map.of(VinylCheck.ROLL_WIDTH, 620.0, VinylSettings.COLOUR, "#c03020"))
                .part(film("a", 0, RED, box(0, 0, 100, 100))).part(film("b", 1, BLUE, box(200, 0, 300, 100)));
        Outcome outcome = tester.run();
        assertEquals("#c03020", cell(outcome, "colours", 0, "colour"));
        assertEquals("rolls 1", cell(outcome, "colours", 0, "roll"));
        assertEquals(null, cell(outcome, "colours", 1, "roll"));
        assertTrue(outcome.missing().get(0).contains("#2040a0"), outcome.missing()::toString);
    }

    @Test
    void without_rolls_common_widths_stand_in_and_are_said() {
        CheckTester tester = CheckTester.of(new VinylCheck()).part(film("a", 0, RED, box(0, 0, 100, 100)));
        assertTrue(tester.run().missing().get(0).contains("610 mm and 1220 mm"));
        assertTrue(tester.units(UnitSystem.INCH).run().missing().get(0).contains("24 in and 48 in"));
    }

    @Test
    void a_cancelled_run_ends() {
        CheckTester tester = tester().part(film("a", 0, RED, box(0, 0, 100, 100))).onCheckpoint(fraction -> {
            throw new CancellationException();
        });
        assertThrows(CancellationException.class, tester::run);
    }
}
