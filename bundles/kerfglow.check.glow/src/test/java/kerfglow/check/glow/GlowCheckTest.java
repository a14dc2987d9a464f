// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.glow;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CancellationException;
import kerfglow.api.ColourScale;
import kerfglow.api.Finding;
import kerfglow.api.Outcome;
import kerfglow.api.OverlayLayer;
import kerfglow.api.PlacedModule;
import kerfglow.api.Quantity;
import kerfglow.api.Rule;
import kerfglow.api.Setting;
import kerfglow.api.SharedSettings;
import kerfglow.api.Table;
import kerfglow.api.TableInfo;
import kerfglow.api.TableInfo.Column;
import kerfglow.api.proof.Role;
import kerfglow.light.Grid;
import kerfglow.testkit.CheckTester;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Point;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.util.AffineTransformation;

class GlowCheckTest {
    private static final double DEPTH_MM = 60;

    private static CheckTester tester() {
        return CheckTester.of(new GlowCheck()).build("face-lit letters").with(SharedSettings.RETURN_DEPTH, DEPTH_MM).with(SharedSettings.BACK_ALLOWANCE, 0.0);
    }

    /** Surfaces that send nothing on, a clear face, small modules at the very back with one Lambertian emitter of 100 lm. */
    private static CheckTester bare() {
        return tester().with(GlowSettings.BACK, 0.0).with(GlowSettings.WALLS, 0.0).with(GlowSettings.FACE_REFLECTANCE, 0.0).with(GlowSettings.TRANSMITTANCE, 1.0)
                .with(GlowSettings.SPREAD, 0.0).with(GlowSettings.VIEWING_DISTANCE, 1.0).stock(GlowSettings.MODULES, Map.of(GlowSettings.STOCK_FLUX, 100.0,
                        GlowSettings.STOCK_BEAM, 120.0, GlowSettings.STOCK_LENGTH, 10.0, GlowSettings.STOCK_WIDTH, 10.0, GlowSettings.STOCK_HEIGHT, 0.0));
    }

    private static String box(double x, double y, double width, double height) {
        return "POLYGON ((%s %s, %s %s, %s %s, %s %s, %s %s))".formatted(x, y, x + width, y, x + width, y + height, x, y + height, x, y);
    }

    private static CheckTester row(CheckTester tester, double fromX, double y, double pitch, int count) {
        for (int i = 0; i < count; i++) {
            tester.module(new PlacedModule(fromX + i * pitch, y, 0));
        }
        return tester;
    }

    private static List<Finding> of(Outcome outcome, Rule rule) {
        return outcome.findings().stream().filter(finding -> finding.rule().equals(rule)).toList();
    }

    private static Table table(Outcome outcome, String id) {
        return outcome.tables().stream().filter(table -> table.info().id().equals(id)).findFirst().orElseThrow();
    }

    private static Object cell(Outcome outcome, String table, int row, String column) {
        Table found = table(outcome, table);
        return found.rows().get(row).get(found.info().columns().stream().map(Column::id).toList().indexOf(column));
    }

    private static double number(Outcome outcome, String column) {
        return (Double) cell(outcome, "light", 0, column);
    }

    @Test
    void says_who_it_is_and_every_setting_of_its_own_is_on_its_page() {
        GlowCheck check = new GlowCheck();
        assertEquals("glow", check.info().id());
        assertEquals(List.of("trim"), check.reads());
        List<String> unsaid = check.info().settings().stream().map(Setting::key).filter(key -> key.startsWith("glow.") && !check.info().page().contains("`" + key + "`")).toList();
        assertEquals(List.of(), unsaid);
    }

    @Test
    void only_what_the_job_lights_is_measured() {
        assertFalse(CheckTester.of(new GlowCheck()).part("a", Role.FACE, box(0, 0, 100, 100)).run().measured(), "no build");
        assertFalse(tester().build("flat cut letters").part("a", Role.FACE, box(0, 0, 100, 100)).run().measured());
        assertTrue(row(tester().build("flat cut letters").with(GlowSettings.LIT, GlowSettings.FACE), 50, 50, 1, 1).part("a", Role.FACE, box(0, 0, 100, 100)).run().measured());
        Outcome flat = CheckTester.of(new GlowCheck()).build("face-lit letters").part("a", Role.FACE, box(0, 0, 100, 100)).run();
        assertFalse(flat.measured());
        assertTrue(flat.missing().get(0).contains("returns.depth"), flat.missing()::toString);
    }

    // E = flux / (pi h²) (1 + r²/h²)^-2 of a Lambertian source, L = E / pi of a clear ideal diffuser
    @Test
    void one_module_gives_the_closed_form_with_its_places() {
        Outcome outcome = bare().part("a", Role.FACE, box(0, 0, 202, 82)).module(new PlacedModule(41, 41, 0, "A")).run();
        double peak = 100 / (Math.PI * DEPTH_MM * DEPTH_MM) * 1e6;
        double far = peak * Math.pow(1 + (160 * 160 + 40 * 40) / (DEPTH_MM * DEPTH_MM), -2);
        assertEquals(peak, number(outcome, "greatest-lux"), peak * 1e-6);
        assertEquals(far, number(outcome, "least-lux"), far * 1e-4);
        assertEquals(peak / Math.PI, number(outcome, "greatest-luminance"), peak * 1e-6);
        assertEquals(new Coordinate(41, 41), ((Point) cell(outcome, "light", 0, "greatest-at")).getCoordinate());
        Coordinate darkest = ((Point) cell(outcome, "light", 0, "least-at")).getCoordinate();
        assertEquals(201, darkest.x, 1e-9, "the last column");
        assertEquals(1, number(outcome, "direct"));
        assertEquals("placed", cell(outcome, "modules", 0, "how"));
        assertEquals("A", cell(outcome, "modules", 0, "string"));
        assertEquals("light-modules 1", cell(outcome, "modules", 0, "type"));
    }

    /** Peak over pass along a row of Lambertian points, at places that the map looks at too. */
    private static double strongest(int count, double pitch) {
        double strongest = 0;
        for (int i = 0; i + 1 < count; i++) {
            double pass = Double.POSITIVE_INFINITY;
            for (double x = i * pitch; x <= (i + 1) * pitch; x += 1) {
                pass = Math.min(pass, row(count, pitch, x));
            }
            double lower = Math.min(peak(count, pitch, i), peak(count, pitch, i + 1));
            strongest = Math.max(strongest, Math.max(lower, i == count / 2 - 1 ? peak(count, pitch, count / 2) : 0) / pass - 1);
        }
        return strongest;
    }

    private static double peak(int count, double pitch, int source) {
        double peak = 0;
        for (double x = (source - 0.3) * pitch; x <= (source + 0.3) * pitch; x += 1) {
            peak = Math.max(peak, row(count, pitch, x));
        }
        return peak;
    }

    private static double row(int count, double pitch, double x) {
        double sum = 0;
        for (int k = 0; k < count; k++) {
            double r = (x - k * pitch) / DEPTH_MM;
            sum += Math.pow(1 + r * r, -2);
        }
        return sum;
    }

    @Test
    void spots_of_a_row_are_as_strong_as_the_closed_form_says() {
        double pitch = 2 * DEPTH_MM;
        Outcome outcome = row(bare(), 401, 401, pitch, 9).part("a", Role.FACE, box(0, 0, 1762, 802)).run();
        List<Finding> spots = of(outcome, GlowRules.HOT_SPOT);
        assertEquals(1, spots.size());
        assertEquals(9, spots.get(0).place().orElseThrow().getNumGeometries(), spots.get(0).message());
        double measured = spots.get(0).measured().orElseThrow().value();
        assertEquals(strongest(9, pitch), measured, 0.02 * measured);
        // of the endless row at this pitch, least over greatest is 0.481393 (exact series)
        assertEquals(1 / 0.481393 - 1, measured, 0.2);
    }

    @Test
    void modules_as_close_as_the_contrast_asks_show_no_spot() {
        // of the endless row at a pitch of 0.8 depths the series gives 1 + 2 (1 + q) exp(-q) about its mean, q = 2 pi / 0.8: 0.7 % over the trough
        Outcome close = row(bare(), 101, 101, 0.8 * DEPTH_MM, 12).part("a", Role.FACE, box(0, 0, 730, 202)).run();
        assertEquals(List.of(), of(close, GlowRules.HOT_SPOT));
        assertEquals(List.of(), of(close, GlowRules.SHALLOW));
        Outcome wide = row(bare(), 101, 101, 1.5 * DEPTH_MM, 7).part("a", Role.FACE, box(0, 0, 742, 202)).run();
        assertEquals(1, of(wide, GlowRules.HOT_SPOT).size());
        Finding shallow = of(wide, GlowRules.SHALLOW).get(0);
        assertEquals(DEPTH_MM, shallow.measured().orElseThrow().value());
        // trough 1 % below the mean: 2 (1 + q) exp(-q) = 0.01 at q = 7.4303, depth = q pitch / (2 pi)
        assertEquals(7.4303 * 1.5 * DEPTH_MM / (2 * Math.PI), shallow.required().orElseThrow().value(), 0.5);
    }

    @Test
    void a_wide_spread_hides_what_a_clear_face_shows() {
        Outcome spread = row(bare(), 101, 101, 1.5 * DEPTH_MM, 7).with(GlowSettings.SPREAD, 45.0).part("a", Role.FACE, box(0, 0, 742, 202)).run();
        assertEquals(List.of(), of(spread, GlowRules.HOT_SPOT));
    }

    @Test
    void an_end_without_a_module_is_a_dark_patch() {
        Outcome outcome = row(tester(), 40, 40, 60, 3).part("a", Role.FACE, box(0, 0, 500, 80)).run();
        List<Finding> dark = of(outcome, GlowRules.DARK_PATCH);
        assertEquals(1, dark.size(), dark::toString);
        Geometry place = dark.get(0).place().orElseThrow();
        assertTrue(place.getEnvelopeInternal().getMaxX() > 498 && place.getEnvelopeInternal().getMinX() > 200, place::toString);
        assertTrue(dark.get(0).measured().orElseThrow().value() < 0.6);
        Finding uneven = of(outcome, GlowRules.UNEVEN).get(0);
        assertEquals(number(outcome, "uniformity"), uneven.measured().orElseThrow().value(), 1e-12);
        assertEquals(0.6, uneven.required().orElseThrow().value());
        assertTrue(uneven.message().contains("cd/m²"), uneven.message());
    }

    @Test
    void white_surfaces_send_light_on_and_black_ones_do_not() {
        Outcome white = row(tester(), 40, 40, 60, 8).part("a", Role.FACE, box(0, 0, 500, 80)).run();
        assertTrue(number(white, "direct") < 0.6, "share " + number(white, "direct"));
        assertTrue(number(white, "through") > 0.3 && number(white, "through") < 0.6, "share " + number(white, "through"));
        assertEquals(0.5 / Math.PI, number(white, "mean-luminance") / number(white, "mean-lux"), 1e-3);
    }

    @Test
    void modules_across_edges_and_holes_are_named() {
        CheckTester tester = tester().part("a", Role.FACE, box(0, 0, 400, 80)).part("h", Role.HOLE, box(195, 35, 10, 10)).part("k", Role.KEEP_OUT, box(300, 0, 40, 80));
        assertEquals(List.of(), of(tester.module(new PlacedModule(100, 40, 0)).run(), GlowRules.MODULE_EDGE));
        List<Finding> edges = of(tester.module(new PlacedModule(30, 40, 0)).module(new PlacedModule(200, 40, 90)).module(new PlacedModule(330, 40, 0)).run(), GlowRules.MODULE_EDGE);
        assertEquals(3, edges.size(), edges::toString);
        // 70 mm long about x = 30: 5 mm beyond the return
        assertEquals(5, edges.get(0).measured().orElseThrow().value(), 1e-6);
        assertTrue(edges.get(1).message().contains("hole or keep-out"), edges.get(1).message());
    }

    @Test
    void drawn_modules_count_by_their_centre_and_long_side() {
        Polygon plate = (Polygon) CheckTester.wkt(box(-35, -7.5, 70, 15));
        Geometry turned = AffineTransformation.rotationInstance(Math.toRadians(30)).translate(150, 90).transform(plate);
        Outcome outcome = tester().part("a", Role.FACE, box(0, 0, 400, 200)).part("m", Role.MODULE, turned.toText()).run();
        assertEquals(1, table(outcome, "modules").rows().size());
        assertEquals("drawn", cell(outcome, "modules", 0, "how"));
        assertEquals(150, (Double) cell(outcome, "modules", 0, "x"), 1e-6);
        assertEquals(90, (Double) cell(outcome, "modules", 0, "y"), 1e-6);
        assertEquals(30, (Double) cell(outcome, "modules", 0, "turn"), 1e-6);
        assertEquals("1 module in 1 part, 80 lm in all.", of(outcome, GlowRules.LAYOUT).get(0).message());
    }

    @Test
    void a_module_that_lies_nowhere_is_said() {
        Outcome outcome = row(tester(), 50, 50, 1, 1).module(new PlacedModule(900, 900, 0)).part("a", Role.FACE, box(0, 0, 100, 100)).run();
        assertTrue(outcome.missing().stream().anyMatch(missing -> missing.contains("module 2 of the job sheet") && missing.contains("900 mm")), outcome.missing()::toString);
    }

    @Test
    void without_modules_they_are_laid_out_inside() {
        Outcome outcome = tester().part("a", Role.FACE, box(0, 0, 300, 80)).run();
        Table modules = table(outcome, "modules");
        assertTrue(modules.rows().size() >= 2, modules.rows()::toString);
        Geometry inside = CheckTester.wkt(box(0, 0, 300, 80));
        for (List<Object> row : modules.rows()) {
            assertEquals("laid out", row.get(5));
            assertTrue(inside.contains((Geometry) row.get(7)));
        }
        assertEquals(List.of(), of(outcome, GlowRules.MODULE_EDGE));
        assertEquals(modules.rows().size(), of(outcome, GlowRules.LAYOUT).get(0).measured().orElseThrow().value());
    }

    /** Each alone, and together: moved parts keep their own places, a part that differs is not taken for one of them. */
    @Test
    void the_same_part_in_several_places_has_the_layout_that_it_has_alone() {
        String other = "POLYGON ((700 10, 1000 10, 1000 70, 702 70, 700 10))";
        Outcome together = tester().part("a", Role.FACE, box(0, 0, 300, 60)).part("b", Role.FACE, box(350.5, 90.25, 300, 60)).part("c", Role.FACE, other).run();
        List<List<Object>> all = new ArrayList<>();
        for (String shape : List.of(box(0, 0, 300, 60), box(350.5, 90.25, 300, 60), other)) {
            all.addAll(table(tester().part(shape.equals(other) ? "c" : shape.equals(box(0, 0, 300, 60)) ? "a" : "b", Role.FACE, shape).run(), "modules").rows());
        }
        List<List<Object>> rows = table(together, "modules").rows();
        assertTrue(rows.size() > 5, rows::toString);
        assertEquals(all.size(), rows.size());
        for (int i = 0; i < rows.size(); i++) {
            for (int k = 0; k < rows.get(i).size(); k++) {
                Object value = rows.get(i).get(k);
                if (value instanceof Double number) {
                    assertEquals((Double) all.get(i).get(k), number, 1e-3, rows.get(i)::toString);
                } else if (!(value instanceof Geometry)) {
                    assertEquals(all.get(i).get(k), value);
                }
            }
        }
    }

    @Test
    void a_part_too_narrow_for_the_module_is_unlit() {
        Outcome outcome = tester().part("a", Role.FACE, box(0, 0, 300, 8)).run();
        assertEquals(1, of(outcome, GlowRules.UNLIT).size());
        assertEquals(0, table(outcome, "light").rows().size());
    }

    /** Two fields joined by a neck 10 mm wide, which a back 6 mm inside the face on each side does not pass. */
    private static final String DUMB_BELL = "POLYGON ((0 0, 200 0, 200 45, 240 45, 240 0, 440 0, 440 100, 240 100, 240 55, 200 55, 200 100, 0 100, 0 0))";

    @Test
    void a_piece_that_no_module_lies_in_is_unlit_though_the_part_has_some() {
        CheckTester tester = row(tester().with(SharedSettings.BACK_ALLOWANCE_KIND, SharedSettings.PER_SIDE).with(SharedSettings.BACK_ALLOWANCE, 6.0), 60, 50, 80, 2)
                .part("a", Role.FACE, DUMB_BELL);
        List<Finding> unlit = of(tester.run(), GlowRules.UNLIT);
        assertEquals(1, unlit.size(), unlit::toString);
        assertEquals(new Envelope(246, 434, 6, 94), unlit.get(0).place().orElseThrow().getEnvelopeInternal());
        assertTrue(unlit.get(0).message().contains("one of the 2 pieces") || unlit.get(0).message().startsWith("One of the 2 pieces"), unlit.get(0).message());
        assertEquals(List.of(), of(tester.module(new PlacedModule(340, 50, 0)).run(), GlowRules.UNLIT));
    }

    // straight over the module, and in the corner farthest from it, as one_module_gives_the_closed_form_with_its_places says; a spread moves neither
    @Test
    void least_and_greatest_lux_have_places_of_their_own() {
        Outcome outcome = bare().part("a", Role.FACE, box(0, 0, 202, 82)).module(new PlacedModule(41, 41, 0)).with(GlowSettings.SPREAD, 30.0).run();
        assertEquals(new Coordinate(41, 41), ((Point) cell(outcome, "light", 0, "greatest-lux-at")).getCoordinate());
        assertEquals(201, ((Point) cell(outcome, "light", 0, "least-lux-at")).getX(), 1e-9, "the last column");
    }

    @Test
    void what_the_lips_of_the_moulding_cover_is_not_lit() {
        TableInfo faces = new TableInfo("faces", "faces", List.of(Column.text("face", "face"), Column.number("lip", "lip", Quantity.LENGTH)));
        CheckTester tester = row(tester(), 50, 40, 60, 4).part("a", Role.FACE, box(0, 0, 280, 80));
        assertEquals(280 * 80, number(tester.run(), "lit-area"), 1);
        assertEquals(260 * 60, number(tester.tables("trim", new Table(faces, List.of(List.of("a", 10.0)))).run(), "lit-area"), 1);
    }

    // a point source over the wall: E = flux / (pi h²) (1 + r²/h²)^-2, measured on a strip from 0.4 to 0.6 stand-offs outside the back
    @Test
    void a_halo_is_the_light_on_the_wall_around_the_back() {
        Outcome outcome = bare().build("halo-lit letters").with(GlowSettings.STAND_OFF, 50.0).with(GlowSettings.OUTSIDE, 0.4).with(GlowSettings.CELL, 1.0)
                .part("a", Role.FACE, CheckTester.wkt("POINT (0 0)").buffer(40, 64).toText()).module(new PlacedModule(0, 0, 0)).run();
        assertEquals("halo", cell(outcome, "light", 0, "kind"));
        double peak = 100 / (Math.PI * 50 * 50) * 1e6;
        double inner = peak * Math.pow(1 + 60.0 * 60 / (50 * 50), -2);
        double outer = peak * Math.pow(1 + 70.0 * 70 / (50 * 50), -2);
        assertEquals(inner, number(outcome, "greatest-lux"), 0.02 * inner);
        assertEquals(outer, number(outcome, "least-lux"), 0.02 * outer);
        assertEquals(0.4 / Math.PI, number(outcome, "mean-luminance") / number(outcome, "mean-lux"), 1e-6);
    }

    private static CheckTester bareHalo() {
        return bare().build("halo-lit letters").with(GlowSettings.STAND_OFF, 50.0).with(GlowSettings.OUTSIDE, 0.4);
    }

    // straight behind the middle of a disc the module is equally far from all of the ring
    @Test
    void the_halo_of_a_disc_lit_from_its_middle_has_no_spot() {
        Outcome outcome = bareHalo().part("a", Role.FACE, CheckTester.wkt("POINT (3.3 1.7)").buffer(90, 64).toText()).module(new PlacedModule(3.3, 1.7, 0)).run();
        assertEquals(List.of(), of(outcome, GlowRules.HOT_SPOT));
    }

    // along the line 25 mm outside, E is proportional to the sum of (1 + r²/h²)^-2; two peaks on each long side, and the middle of each end is
    // nearer to a module than what lies beside it
    @Test
    void spots_of_a_halo_are_as_strong_as_the_closed_form_says() {
        Outcome outcome = bareHalo().part("a", Role.FACE, box(0, 0, 500, 40)).module(new PlacedModule(130, 20, 0)).module(new PlacedModule(370, 20, 0)).run();
        Finding spots = of(outcome, GlowRules.HOT_SPOT).get(0);
        assertEquals(6, spots.place().orElseThrow().getNumGeometries(), spots.message());
        double aside = 0.5 * 50;
        double peak = onTheWall(20 + aside, 0) + onTheWall(20 + aside, 240);
        // the darkest place is where the arc about a corner of the bar is farthest from the module: straight behind the corner
        double stretch = 1 + aside / Math.hypot(130, 20);
        double pass = onTheWall(20 * stretch, 130 * stretch) + onTheWall(20 * stretch, 130 * stretch + 240);
        assertEquals(peak / pass - 1, spots.measured().orElseThrow().value(), 0.02 * peak / pass);
    }

    private static double onTheWall(double across, double along) {
        return Math.pow(1 + (across * across + along * along) / (50 * 50), -2);
    }

    @Test
    void halos_of_neighbours_add_up_in_the_picture_and_leave_all_letters_out() {
        CheckTester tester = bareHalo().part("a", Role.FACE, box(0, 0, 40, 40)).part("b", Role.FACE, box(90, 0, 40, 40)).module(new PlacedModule(20, 20, 0))
                .module(new PlacedModule(110, 20, 0));
        OverlayLayer light = tester.run().layers().get(0);
        double top = Double.parseDouble(light.legend().get(4).label().replace(" cd/m²", ""));
        double one = 100 / (Math.PI * 50 * 50) * 1e6 * 0.4 / Math.PI;
        double between = 2 * one * onTheWall(0, 45);
        assertTrue(top >= between, "the legend reaches " + top);
        assertEquals(0, at(light, 20, 20), "behind a letter nothing shows");
        assertEquals(0, at(light, 110, 20), "nor behind the other");
        assertTrue(difference(ColourScale.rgb(between / top), at(light, 65, 20)) < 8, "between them");
    }

    private static int at(OverlayLayer layer, double xMm, double yMm) {
        OverlayLayer.Raster raster = layer.raster().orElseThrow();
        int column = (int) ((xMm - raster.leftMm()) / raster.cellMm());
        int row = (int) ((yMm - raster.topMm()) / raster.cellMm());
        return raster.argb()[row * raster.columns() + column];
    }

    /** Greatest difference of a channel. */
    private static int difference(int rgb, int other) {
        return Math.max(Math.abs((rgb >> 16 & 255) - (other >> 16 & 255)), Math.max(Math.abs((rgb >> 8 & 255) - (other >> 8 & 255)), Math.abs((rgb & 255) - (other & 255))));
    }

    @Test
    void the_map_is_given_on_request_alone() {
        CheckTester tester = row(tester(), 50, 40, 60, 2).part("a", Role.FACE, box(0, 0, 160, 80));
        assertEquals(List.of("light", "modules"), tester.run().tables().stream().map(table -> table.info().id()).toList());
        Outcome outcome = tester.with(GlowSettings.GRID, true).run();
        Table grid = table(outcome, "grid");
        assertEquals(80 * 40, grid.rows().size());
        double mean = grid.rows().stream().mapToDouble(row -> (Double) row.get(3)).average().orElseThrow();
        assertEquals(number(outcome, "mean-lux"), mean, 1e-6 * mean);
    }

    @Test
    void what_cannot_be_is_refused_by_name_with_what_can() {
        Outcome bright = tester().with(GlowSettings.FACE_REFLECTANCE, 0.6).with(GlowSettings.TRANSMITTANCE, 0.5).part("a", Role.FACE, box(0, 0, 100, 100)).run();
        assertFalse(bright.measured());
        assertTrue(bright.missing().stream().anyMatch(missing -> missing.contains("glow.face-reflectance 0.6 and glow.face-transmittance 0.5")
                && missing.contains("at most 1")), bright.missing()::toString);
        Outcome shallow = tester().with(SharedSettings.RETURN_DEPTH, 5.0).part("a", Role.FACE, box(0, 0, 100, 100)).run();
        assertTrue(shallow.missing().stream().anyMatch(missing -> missing.contains("glow.emitter-height")), shallow.missing()::toString);
        refused(GlowSettings.FLUX, 0.0, "0.01 lm to");
        refused(GlowSettings.BEAM, 0.0, "2° to 178°");
        refused(GlowSettings.BEAM, 360.0, "2° to 178°");
        refused(GlowSettings.BACK, 1.0, "0 to 0.99");
        refused(GlowSettings.WALLS, 1.0, "0 to 0.99");
        refused(GlowSettings.FACE_REFLECTANCE, 1.0, "0 to 0.99");
        refused(SharedSettings.RETURN_DEPTH, 0.0, "1 mm to 2");
    }

    private static void refused(Setting<Double> setting, double value, String range) {
        String said = assertThrows(IllegalArgumentException.class, () -> setting.requireAllowed(value)).getMessage();
        assertTrue(said.startsWith(setting.key()) && said.contains(range), said);
    }

    @Test
    void the_picture_shows_light_with_its_legend_and_the_modules() {
        Outcome outcome = row(tester(), 50, 40, 60, 2).part("a", Role.FACE, box(0, 0, 160, 80)).run();
        OverlayLayer light = outcome.layers().get(0);
        OverlayLayer.Raster raster = light.raster().orElseThrow();
        assertEquals(5, light.legend().size());
        double top = Double.parseDouble(light.legend().get(4).label().replace(" cd/m²", ""));
        assertTrue(top >= number(outcome, "greatest-luminance") && top < 1.6 * number(outcome, "greatest-luminance"), light.legend()::toString);
        Coordinate at = ((Point) cell(outcome, "light", 0, "greatest-at")).getCoordinate();
        int column = (int) ((at.x - raster.leftMm()) / raster.cellMm());
        int row = (int) ((at.y - raster.topMm()) / raster.cellMm());
        assertEquals(0xFF000000 | ColourScale.rgb(number(outcome, "greatest-luminance") / top), raster.argb()[row * raster.columns() + column]);
        assertTrue(light.items().size() > 0, "lines of equal luminance");
        assertEquals(2, outcome.layers().get(1).items().size());
    }

    // the contour of a hump (1 + r²/h²)^-2 at half its height is a circle of radius h sqrt(sqrt 2 - 1)
    @Test
    void lines_of_equal_luminance_lie_where_the_level_is() {
        Grid grid = new Grid(-100, -100, 2, 100, 100);
        double[] hump = new double[grid.size()];
        boolean[] lit = new boolean[grid.size()];
        for (int i = 0; i < hump.length; i++) {
            Coordinate at = grid.at(i);
            hump[i] = Math.pow(1 + (at.x * at.x + at.y * at.y) / 2500, -2);
            lit[i] = true;
        }
        Geometry line = Contours.of(grid, lit, hump, 0.5, CheckTester.wkt("POINT (0 0)").getFactory());
        assertEquals(1, line.getNumGeometries());
        double radius = 50 * Math.sqrt(Math.sqrt(2) - 1);
        for (Coordinate at : line.getCoordinates()) {
            assertEquals(radius, Math.hypot(at.x, at.y), 0.1);
        }
        assertEquals(2 * Math.PI * radius, line.getLength(), 1);
    }

    @Test
    void a_cancelled_run_ends_and_progress_rises() {
        CheckTester tester = row(tester(), 50, 40, 60, 2).part("a", Role.FACE, box(0, 0, 160, 80)).part("b", Role.FACE, box(0, 100, 160, 80)).module(new PlacedModule(80, 140, 0));
        List<Double> told = new ArrayList<>();
        tester.onCheckpoint(told::add).run();
        assertEquals(1, told.get(told.size() - 1), 1e-9);
        for (int i = 1; i < told.size(); i++) {
            assertTrue(told.get(i) >= told.get(i - 1));
        }
        assertThrows(CancellationException.class, () -> tester.onCheckpoint(fraction -> {
            throw new CancellationException();
        }).run());
    }
}
