// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashMap;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CancellationException;
import kerfglow.api.Finding;
import kerfglow.api.Outcome;
import kerfglow.api.Setting;
import kerfglow.api.Table;
import kerfglow.api.UnitSystem;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Role;
import kerfglow.testkit.CheckTester;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;

class SheetCheckTest {
    private static CheckTester tester() {
        return CheckTester.of(new SheetCheck()).with(SheetSettings.MARGIN, 0.0);
    }

    private static CheckTester metric() {
        return tester().stock(SheetCheck.SHEETS, sheet(1220, 2440));
    }

    private static Map<Setting<?>, ?> sheet(double width, double height) {
        return Map.of(SheetCheck.WIDTH, width, SheetCheck.HEIGHT, height);
    }

    private static String rectangle(double width, double height) {
        return "POLYGON ((0 0, %1$s 0, %1$s %2$s, 0 %2$s, 0 0))".formatted(width, height);
    }

    private static Finding only(List<Finding> findings) {
        assertEquals(1, findings.size(), findings::toString);
        return findings.get(0);
    }

    private static List<Finding> tooLarge(CheckTester tester) {
        return tester.findings(SheetRules.TOO_LARGE);
    }

    private static Object cell(Outcome outcome, String tableId, int row, String column) {
        Table table = outcome.tables().stream().filter(each -> each.info().id().equals(tableId)).findFirst().orElseThrow();
        return table.rows().get(row).get(table.info().columns().stream().map(each -> each.id()).toList().indexOf(column));
    }

    private static List<List<Object>> seams(Outcome outcome) {
        return outcome.tables().get(2).rows();
    }

    @Test
    void says_who_it_is_and_every_setting_is_on_its_page() {
        SheetCheck check = new SheetCheck();
        assertEquals(List.of("sheet.too-large", "sheet.count"), check.info().rules().stream().map(rule -> rule.id()).toList());
        for (Setting<?> setting : check.info().settings()) {
            assertTrue(check.info().page().contains("`" + setting.key() + "`"), setting.key());
        }
    }

    /** 1220 by 2440 mm is larger than 48 by 96 in (1219.2 by 2438.4 mm) by 0.8 and 1.6 mm; exact by the definition of the inch. */
    @ParameterizedTest
    @CsvSource({"1220, 2000, 0, 1", "1219.2, 2438.4, 0, 0", "1200, 2440, 0, 1", "1220.1, 2440, 1, 1"})
    void artwork_as_wide_as_a_metric_sheet_does_not_fit_the_inch_sheet(double width, double height, int metricFindings, int inchFindings) {
        assertEquals(metricFindings, tooLarge(metric().part("p", Role.PANEL, rectangle(width, height))).size());
        CheckTester inch = tester().stock(SheetCheck.SHEETS, sheet(48 * 25.4, 96 * 25.4)).part("p", Role.PANEL, rectangle(width, height));
        assertEquals(inchFindings, tooLarge(inch).size());
    }

    @Test
    void a_long_bar_fits_at_a_slant_only() {
        Outcome outcome = metric().part("bar", Role.FACE, rectangle(2600, 20)).run();
        assertEquals(List.of(), tooLarge(metric().part("bar", Role.FACE, rectangle(2600, 20))));
        double angle = Math.toRadians((Double) cell(outcome, "parts", 0, "angle"));
        assertTrue(2600 * Math.abs(Math.cos(angle)) + 20 * Math.sin(angle) <= 1220);
        assertTrue(2600 * Math.sin(angle) + 20 * Math.abs(Math.cos(angle)) <= 2440);
    }

    @Test
    void the_margin_is_taken_off_every_side() {
        CheckTester tester = metric().part("p", Role.FACE, rectangle(1200, 2420));
        assertEquals(List.of(), tooLarge(tester.with(SheetSettings.MARGIN, 10.0)));
        Finding finding = only(tooLarge(tester.with(SheetSettings.MARGIN, 10.1)));
        assertEquals(2420, finding.measured().orElseThrow().value(), 1e-9);
        assertEquals(2440 - 20.2, finding.required().orElseThrow().value(), 1e-9);
        assertEquals(1, tooLarge(tester.with(SheetSettings.MARGIN, 500.0)).size(), "nothing left of the sheet");
    }

    @Test
    void grain_forbids_turning() {
        Map<Setting<?>, Object> grained = new HashMap<>(sheet(1220, 2440));
        grained.put(SheetSettings.SHEET_GRAIN, "along"); // up the sheet
        CheckTester wide = tester().stock(SheetCheck.SHEETS, grained).part("p", Role.FACE, rectangle(2000, 300));
        assertEquals(List.of(), tooLarge(wide), "its grain runs sideways on the sign, so the part lies a quarter turned");
        assertEquals(90.0, cell(wide.run(), "parts", 0, "angle"));
        Finding upright = only(tooLarge(wide.with(SheetSettings.GRAIN, "vertical")));
        assertTrue(upright.message().contains("with the grain the way the job wants it"), upright.message());
        assertEquals(2000, upright.measured().orElseThrow().value(), 1e-9, "the side that is too large as it must lie");
        assertEquals(1220, upright.required().orElseThrow().value(), 1e-9);
        Finding sideways = only(tooLarge(tester().stock(SheetCheck.SHEETS, grained).part("p", Role.FACE, rectangle(500, 1300))));
        assertEquals(1300, sideways.measured().orElseThrow().value(), 1e-9, "its 500 mm lie along the 2440 mm, its 1300 mm across");
        assertEquals(1220, sideways.required().orElseThrow().value(), 1e-9);
        assertTrue(sideways.message().contains("is 1300 mm by 500 mm") && sideways.message().contains("leaves 1220 mm by 2440 mm"), sideways.message());
        assertEquals(List.of(), tooLarge(wide.with(SheetSettings.GRAIN, "any")));
        Map<Setting<?>, Object> across = new HashMap<>(grained);
        across.put(SheetSettings.SHEET_GRAIN, "across");
        assertEquals(1, tooLarge(tester().stock(SheetCheck.SHEETS, across).part("p", Role.FACE, rectangle(2000, 300))).size());
        assertEquals(1, tooLarge(tester().stock(SheetCheck.SHEETS, grained).part("bar", Role.FACE, rectangle(2600, 20))).size(), "no slant either");
    }

    @Test
    void sheets_are_those_of_the_part_s_material_and_thickness() {
        Map<Setting<?>, Object> acrylic = new HashMap<>(sheet(1500, 3050));
        acrylic.put(SheetSettings.MATERIAL, "Acrylic");
        acrylic.put(SheetSettings.THICKNESS, 4.5);
        Map<Setting<?>, Object> metal = new HashMap<>(sheet(1000, 2000));
        metal.put(SheetSettings.MATERIAL, "aluminium");
        CheckTester tester = tester().stock(SheetCheck.SHEETS, acrylic).stock(SheetCheck.SHEETS, metal)
                .part(made("a", "acrylic", 4.5)).part(made("m", "aluminium", 2)).part(made("x", "acrylic", 3));
        assertEquals(List.of("m"), only(tooLarge(tester)).parts());
        Outcome outcome = tester.run();
        assertEquals("sheets 1", cell(outcome, "parts", 0, "sheet"));
        assertEquals(1, outcome.missing().size());
        assertTrue(outcome.missing().get(0).contains("no sheet of acrylic, 3 mm"), () -> outcome.missing().toString());
    }

    private static Part made(String id, String material, double thickness) {
        return Part.builder(id, Role.FACE, (Polygon) CheckTester.wkt(rectangle(2500, 800))).layer("letters").sheetMaterial(material).thicknessMm(thickness).build();
    }

    @Test
    void a_board_is_split_across_its_length_into_pieces_that_fit() {
        CheckTester tester = metric().part("p", Role.PANEL, rectangle(5000, 600));
        Outcome outcome = tester.run();
        assertEquals(2, seams(outcome).size());
        for (List<Object> seam : seams(outcome)) {
            assertEquals(600, (Double) seam.get(1), 1e-6);
            assertEquals(0.0, seam.get(2));
            assertEquals("", seam.get(3));
        }
        Finding finding = only(tooLarge(tester));
        assertEquals(5000, finding.measured().orElseThrow().value(), 1e-6);
        assertEquals(2440, finding.required().orElseThrow().value());
        assertTrue(finding.fix().orElseThrow().startsWith("Split it into 3 pieces: upright through "), finding.fix().orElseThrow());
        assertEquals(2, outcome.layers().get(0).items().size());
        // 5000 by 600: no two sheets do, and the pieces lie two on a sheet
        assertEquals(3.0, cell(outcome, "sheets", 0, "pieces"));
        assertEquals(2.0, cell(outcome, "sheets", 0, "sheets"));
    }

    @Test
    void the_seam_takes_the_shortest_way_clear_of_corners() {
        // two wide fields joined by a waist 300 wide, from 1000 to 2000
        String waist = "POLYGON ((0 0, 1000 0, 1000 350, 2000 350, 2000 0, 3000 0, 3000 1000, 2000 1000, 2000 650, 1000 650, 1000 1000, 0 1000, 0 0))";
        List<Object> seam = seams(metric().part("p", Role.PANEL, waist).run()).get(0);
        assertEquals(300, (Double) seam.get(1), 1e-6);
        double x = ((Geometry) seam.get(4)).getCentroid().getX();
        assertTrue(x >= 1020 && x <= 1980, "at " + x);
        assertEquals("", seam.get(3));
    }

    @Test
    void the_seam_keeps_out_of_necks_counters_and_keep_outs() {
        // a neck 25 wide between 1200 and 1300, a counter from 1500 to 2000; both within reach of one seam
        String shape = "POLYGON ((0 0, 1200 0, 1200 290, 1300 290, 1300 0, 3000 0, 3000 600, 1300 600, 1300 315, 1200 315, 1200 600, 0 600, 0 0), "
                + "(1500 200, 2000 200, 2000 400, 1500 400, 1500 200))";
        CheckTester tester = metric().part("p", Role.PANEL, shape);
        List<Object> seam = seams(tester.run()).get(0);
        double x = ((Geometry) seam.get(4)).getCentroid().getX();
        assertEquals("", seam.get(3));
        assertEquals(600, (Double) seam.get(1), 1e-6);
        assertTrue(x >= 600 && x <= 1180 || x >= 1320 && x <= 1480 || x >= 2020 && x <= 2400, "at " + x);
        tester.part("k", Role.KEEP_OUT, "POLYGON ((500 -10, 1250 -10, 1250 610, 500 610, 500 -10))")
                .part("l", Role.KEEP_OUT, "POLYGON ((1950 -10, 2500 -10, 2500 610, 1950 610, 1950 -10))");
        double moved = ((Geometry) seams(tester.run()).get(0).get(4)).getCentroid().getX();
        assertTrue(moved >= 1320 && moved <= 1480, "at " + moved);
    }

    @Test
    void a_window_hardly_wider_than_twice_the_clearance_is_found() {
        String waist = "POLYGON ((0 0, 1500 0, 1500 350, 1541 350, 1541 0, 3000 0, 3000 1000, 1541 1000, 1541 650, 1500 650, 1500 1000, 0 1000, 0 0))";
        List<Object> seam = seams(metric().part("p", Role.PANEL, waist).run()).get(0);
        assertEquals(300, (Double) seam.get(1), 1e-6);
        assertEquals("", seam.get(3));
    }

    @Test
    void a_worse_obstacle_weighs_more_than_all_lesser_ones_together() {
        double[] chords = {0, 1};
        int keepOut = new Sweep.Seam(0, chords, List.of(Sweep.Obstacle.KEEP_OUT)).penalty();
        int neck = new Sweep.Seam(0, chords, List.of(Sweep.Obstacle.NECK)).penalty();
        int lesser = new Sweep.Seam(0, chords, List.of(Sweep.Obstacle.COUNTER, Sweep.Obstacle.CORNER)).penalty();
        assertTrue(keepOut > neck + lesser && neck > lesser, keepOut + ", " + neck + ", " + lesser);
    }

    @Test
    void what_no_seam_keeps_clear_of_is_named() {
        // a ring: every seam that leaves two pieces of a fitting size runs through its counter
        String ring = "POLYGON ((0 0, 2600 0, 2600 2600, 0 2600, 0 0), (200 200, 2400 200, 2400 2400, 200 2400, 200 200))";
        Finding finding = only(tooLarge(metric().part("o", Role.FACE, ring)));
        assertTrue(finding.fix().orElseThrow().contains("keeps clear of a counter"), finding.fix().orElseThrow());
    }

    @Test
    void a_board_too_large_both_ways_is_cut_into_bands_and_these_again() {
        Outcome outcome = metric().part("p", Role.PANEL, rectangle(5000, 5000)).run();
        Double pieces = (Double) cell(outcome, "parts", 0, "pieces");
        // by area no fewer than 9 of 1220 by 2440; 5 bands of 1000 in 3 pieces each, or 3 bands of 1667 in 5
        assertTrue(pieces >= 9 && pieces <= 15, "pieces " + pieces);
        assertEquals(15.0, cell(outcome, "sheets", 0, "sheets"));
        assertEquals(9.0, cell(outcome, "sheets", 0, "at-least"));
    }

    /** A drawing at the wrong scale: a disc of 10 km with as many corners as its chord error asks for; a hundred thousand sheets would not do. */
    @Test
    void a_part_that_no_64_sheets_could_make_up_is_refused_at_once() {
        Geometry disc = new GeometryFactory().createPoint(new Coordinate(5e6, 5e6)).buffer(5e6, 2000);
        Finding finding = assertTimeoutPreemptively(Duration.ofSeconds(10), () -> only(tooLarge(metric().part("p", Role.FACE, disc.toText()))));
        assertTrue(finding.message().contains("10000 m") || finding.message().contains("10 km"), finding.message());
    }

    @Test
    void a_part_of_several_counters_lies_with_its_pieces_whole() {
        Outcome outcome = metric().part("p", Role.PANEL, "POLYGON ((0 0, 4000 0, 4000 800, 0 800, 0 0), (300 200, 900 200, 900 600, 300 600, 300 200), "
                + "(1100 200, 1700 200, 1700 600, 1100 600, 1100 200), (2300 200, 2900 200, 2900 600, 2300 600, 2300 200))").run();
        List<Object> seam = seams(outcome).get(0);
        assertEquals("", seam.get(3));
        double x = ((Geometry) seam.get(4)).getCentroid().getX();
        assertTrue(x >= 1720 && x <= 2280, "at " + x);
        assertEquals(2.0, cell(outcome, "parts", 0, "pieces"));
    }

    @Test
    void counts_sheets_for_each_material_and_says_the_bound() {
        CheckTester tester = metric().with(SheetSettings.SPACING, 0.0);
        for (int i = 0; i < 12; i++) {
            tester.part("p" + i, Role.FACE, rectangle(610, 1220));
        }
        // 4 to a sheet, without a gap; derived: geometry
        Finding count = only(tester.findings(SheetRules.COUNT));
        assertEquals(3, count.measured().orElseThrow().value());
        assertTrue(count.message().contains("3 sheets \"sheets 1\" for 12 parts, by area at least 3"), count.message());
        Outcome spaced = tester.with(SheetSettings.SPACING, 5.0).run();
        assertEquals(4.0, cell(spaced, "sheets", 0, "sheets"), "three lie one above the other and no fourth with a gap");
    }

    @Test
    void of_several_sizes_the_one_with_least_area_in_all_is_named() {
        CheckTester tester = tester().stock(SheetCheck.SHEETS, sheet(1000, 1000)).stock(SheetCheck.SHEETS, sheet(2000, 2000)).with(SheetSettings.SPACING, 0.0);
        for (int i = 0; i < 5; i++) {
            tester.part("p" + i, Role.FACE, rectangle(900, 900));
        }
        assertEquals("sheets 1", cell(tester.run(), "sheets", 0, "sheet"), "5 m² against 8 m²");
        Outcome mixed = tester.part("q", Role.FACE, rectangle(1900, 1900)).run();
        assertEquals("sheets 2", cell(mixed, "sheets", 0, "sheet"), "one size takes all");
    }

    @Test
    void common_sizes_stand_in_for_an_empty_shop_sheet_and_it_is_said() {
        Outcome outcome = tester().part("p", Role.FACE, rectangle(1220, 2440)).run();
        assertTrue(outcome.missing().get(0).contains("1220 by 2440 mm, 1500 by 3050 mm, 2050 by 3050 mm"), () -> outcome.missing().toString());
        assertEquals("1220 by 2440 mm", cell(outcome, "parts", 0, "sheet"));
        Outcome inch = tester().units(UnitSystem.INCH).part("p", Role.FACE, rectangle(1220, 2440)).run();
        assertEquals("60 by 120 in", cell(inch, "parts", 0, "sheet"));
    }

    @Test
    void openings_and_film_are_not_cut_from_sheet() {
        assertFalse(metric().part("o", Role.OPENING, rectangle(10, 10)).part("v", Role.VINYL, rectangle(10, 10)).run().measured());
    }

    @ParameterizedTest
    @CsvSource({"sheet.margin, -1 mm, 0 mm to 500 mm", "sheet.spacing, -0.1 mm, 0 mm to 500 mm", "sheet.neck-width, 0 mm, 0.1 mm to 500 mm"})
    void values_out_of_range_are_refused_by_name_with_the_range(String key, String value, String range) {
        Setting<?> setting = new SheetCheck().info().settings().stream().filter(each -> each.key().equals(key)).findFirst().orElseThrow();
        String message = assertThrows(IllegalArgumentException.class, () -> setting.parse(value)).getMessage();
        assertTrue(message.startsWith(key + ":") && message.contains(range), message);
    }

    @Test
    void a_run_can_be_cancelled() {
        CheckTester cancelled = metric().part("p", Role.PANEL, rectangle(5000, 600)).onCheckpoint(fraction -> {
            throw new CancellationException();
        });
        assertThrows(CancellationException.class, cancelled::run);
    }
}
