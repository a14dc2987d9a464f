// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.mount;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CancellationException;
import kerfglow.api.Finding;
import kerfglow.api.Outcome;
import kerfglow.api.Setting;
import kerfglow.api.Settings;
import kerfglow.api.SharedSettings;
import kerfglow.api.Table;
import kerfglow.api.TableInfo;
import kerfglow.api.UnitSystem;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Role;
import kerfglow.testkit.CheckTester;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;

class MountCheckTest {
    private static final String SQUARE_METRE = "POLYGON ((0 0, 1000 0, 1000 1000, 0 1000, 0 0))";
    private static final Settings DEFAULTS = new Settings() {
        @Override
        public <T> T get(Setting<T> setting) {
            return setting.defaultValue();
        }

        @Override
        public <T> T get(Setting<T> setting, Part part) {
            return setting.defaultValue();
        }
    };

    private static CheckTester tester() {
        return CheckTester.of(new MountCheck());
    }

    private static Part sheet(String id, Role role, String wkt, String material, double thickness) {
        return Part.builder(id, role, (Polygon) CheckTester.wkt(wkt)).elements(List.of(id)).sheetMaterial(material).thicknessMm(thickness).build();
    }

    /** A table as another check would hand it over, its columns typed by the first row. */
    private static Table table(String id, String columns, Object... cells) {
        String[] names = columns.split(" ");
        List<TableInfo.Column> infos = new ArrayList<>();
        for (int i = 0; i < names.length; i++) {
            TableInfo.Type type = cells[i] instanceof Double ? TableInfo.Type.NUMBER : cells[i] instanceof Geometry ? TableInfo.Type.GEOMETRY : TableInfo.Type.TEXT;
            infos.add(new TableInfo.Column(names[i], names[i], type, null));
        }
        List<List<Object>> rows = new ArrayList<>();
        for (int i = 0; i < cells.length; i += names.length) {
            rows.add(Arrays.asList(cells).subList(i, i + names.length));
        }
        return new Table(new TableInfo(id, id, infos), rows);
    }

    private static Object cell(Outcome outcome, String tableId, int row, String column) {
        Table found = outcome.tables().stream().filter(each -> each.info().id().equals(tableId)).findFirst().orElseThrow();
        return found.rows().get(row).get(found.info().columns().stream().map(each -> each.id()).toList().indexOf(column));
    }

    private static Finding only(List<Finding> findings) {
        assertEquals(1, findings.size(), findings::toString);
        return findings.get(0);
    }

    @Test
    void says_who_it_is_and_every_setting_is_on_its_page() {
        MountCheck check = new MountCheck();
        assertEquals(List.of("mount.weight", "mount.wind"), check.info().rules().stream().map(rule -> rule.id()).toList());
        for (Setting<?> setting : check.info().settings()) {
            assertTrue(check.info().page().contains("`" + setting.key() + "`"), setting.key());
        }
    }

    /** kg/m² = mm x g/cm³: polycarbonate 3 mm 3.600, acrylic 4.5 mm 5.355, aluminium 1.6 mm 4.320, steel 1.5 mm 11.775 and so on, from published densities. */
    @ParameterizedTest
    @CsvSource({"polycarbonate, 3.0, 3.600", "acrylic, 4.5, 5.355", "aluminium, 1.6, 4.320", "steel, 1.5, 11.775", "expanded PVC, 13, 7.150", "aluminium composite, 3, 3.852",
        "ACM, 4, 4.782"})
    void a_square_metre_weighs_what_the_table_says(String material, double thickness, double kg) {
        assertEquals(kg, Density.kgPerM2(material, thickness, DEFAULTS).orElseThrow(), 1e-9);
        Outcome outcome = tester().part(sheet("p", Role.PANEL, SQUARE_METRE, material, thickness)).run();
        assertEquals(kg, (Double) cell(outcome, "weights", 0, "mass"), 1e-9);
        assertEquals(kg, (Double) cell(outcome, "sign", 0, "mass"), 1e-9);
    }

    /** Composite sheet: 3 mm with 0.21 mm skins 3.5334, 4 mm with 0.50 mm skins 5.490 kg/m². */
    @ParameterizedTest
    @CsvSource({"3, 0.21, 3.5334", "4, 0.50, 5.490"})
    void the_skins_of_composite_sheet_are_a_setting(double thickness, double skin, double kg) {
        Outcome outcome = tester().with(MountSettings.SKIN, skin).part(sheet("p", Role.PANEL, SQUARE_METRE, "composite", thickness)).run();
        assertEquals(kg, (Double) cell(outcome, "weights", 0, "mass"), 1e-9);
    }

    @Test
    void drilled_holes_weigh_nothing_and_are_counted_by_kind() {
        Polygon hole = (Polygon) CheckTester.wkt("POLYGON ((100 100, 200 100, 200 200, 100 200, 100 100))");
        Polygon drain = (Polygon) CheckTester.wkt("POLYGON ((500 980, 510 980, 510 990, 500 990, 500 980))");
        Part panel = Part.builder("p", Role.PANEL, (Polygon) CheckTester.wkt(SQUARE_METRE)).drilled(hole.union(drain)).sheetMaterial("aluminium").thicknessMm(1).build();
        Outcome outcome = tester().part(panel).part(Part.builder("h", Role.HOLE, hole).layer("Stud holes").build())
                .part(Part.builder("d", Role.HOLE, drain).layer("Drain holes").build()).run();
        assertEquals(2.70 * (1 - 0.01 - 0.0001), (Double) cell(outcome, "weights", 0, "mass"), 1e-12);
        assertEquals(1.0, cell(outcome, "sign", 0, "studs"));
        assertEquals(1.0, cell(outcome, "sign", 0, "drains"));
        assertEquals("p", cell(outcome, "holes", 0, "part"));
        assertEquals(2 * Math.sqrt(10_000 / Math.PI), (Double) cell(outcome, "holes", 0, "diameter"), 1e-9);
    }

    /** Two plates of 1 kg and 3 kg: the centre lies a quarter of the way from the heavy one. */
    @Test
    void the_centre_of_mass_is_weighed() {
        Outcome outcome = tester().with(MountSettings.DENSITY, 1.0).part(sheet("a", Role.FACE, SQUARE_METRE, "x", 1))
                .part(sheet("b", Role.FACE, "POLYGON ((2000 0, 3000 0, 3000 1000, 2000 1000, 2000 0))", "x", 3)).run();
        assertEquals(4.0, (Double) cell(outcome, "sign", 0, "mass"), 1e-9);
        assertEquals(500 + 2000 * 0.75, (Double) cell(outcome, "sign", 0, "x"), 1e-9);
        assertEquals(500, (Double) cell(outcome, "sign", 0, "y"), 1e-9);
        assertEquals(2e6, (Double) cell(outcome, "sign", 0, "area-outline"), 1e-6);
        assertEquals(3e6, (Double) cell(outcome, "sign", 0, "area-rectangle"), 1e-6);
    }

    @Test
    void backs_strips_and_modules_come_from_the_checks_that_measured_them() {
        Geometry back = CheckTester.wkt("POLYGON ((2 2, 998 2, 998 998, 2 998, 2 2))");
        Outcome outcome = tester().part(sheet("f", Role.FACE, SQUARE_METRE, "acrylic", 4.5))
                .tables("fit", table("made-backs", "face shape", "f", back))
                .tables("returns", table("strips", "part length depth thickness joint", "f", 4000.0, 100.0, 1.0, CheckTester.wkt("POINT (500 998)")),
                        table("coils", "material thickness depth", "aluminium", 1.0, 100.0))
                .tables("glow", table("modules", "part x y type", "f", 250.0, 500.0, "twin", "f", 750.0, 500.0, "twin")).run();
        assertEquals(5.355, (Double) cell(outcome, "weights", 0, "mass"), 1e-9);
        assertEquals(0.996 * 0.996 * 2 * 2.70, (Double) cell(outcome, "weights", 1, "mass"), 1e-9);
        assertEquals(4.0 * 0.1 * 1 * 2.70, (Double) cell(outcome, "weights", 2, "mass"), 1e-9);
        assertTrue(outcome.missing().stream().anyMatch(each -> each.contains("no mass for light module \"twin\"")), outcome.missing()::toString);
        assertEquals(List.of("fit", "returns", "glow"), new MountCheck().reads());
    }

    @Test
    void modules_have_the_mass_that_the_shop_sheet_gives() {
        Outcome outcome = tester().part(sheet("f", Role.FACE, SQUARE_METRE, "acrylic", 4.5)).stock(MountSettings.MODULES, Map.of(MountSettings.MODULE_MASS, 0.02))
                .tables("glow", table("modules", "part x y type", "f", 250.0, 400.0, "light-modules 1", "f", 750.0, 500.0, "light-modules 1")).run();
        assertEquals(0.04, (Double) cell(outcome, "weights", 1, "mass"), 1e-12);
        assertEquals(500.0, cell(outcome, "weights", 1, "x"));
        assertEquals(450.0, cell(outcome, "weights", 1, "y"));
    }

    @Test
    void what_is_not_known_is_said_and_not_guessed() {
        Outcome outcome = tester().part(sheet("a", Role.FACE, SQUARE_METRE, "unobtainium", 3)).part("b", Role.FACE, SQUARE_METRE).run();
        assertEquals(List.of(), outcome.findings());
        assertTrue(outcome.missing().stream().anyMatch(each -> each.contains("\"unobtainium\"")), outcome.missing()::toString);
        assertTrue(outcome.missing().stream().anyMatch(each -> each.contains("no material and thickness")), outcome.missing()::toString);
        assertTrue(outcome.missing().stream().anyMatch(each -> each.contains("mount.wind-speed")), outcome.missing()::toString);
        assertFalse(tester().part("v", Role.VINYL, SQUARE_METRE).run().measured());
    }

    /** 1000 Pa by 1.8 by 1 m² is 1.8 kN. */
    @Test
    void a_pressure_that_is_given_is_used_and_the_caution_stands_beside_every_number() {
        CheckTester tester = tester().part(sheet("p", Role.PANEL, SQUARE_METRE, "acrylic", 4.5)).with(WindSettings.PRESSURE, 1000.0);
        Finding wind = only(tester.findings(MountRules.WIND));
        assertEquals(1800, wind.measured().orElseThrow().value(), 1e-9);
        assertEquals(2, tester.run().findings().size());
        for (Finding finding : tester.run().findings()) {
            assertTrue(finding.message().contains(MountRules.CAUTION), finding.message());
        }
        assertEquals(250.0, cell(tester.run(), "wind", 0, "eccentricity"));
    }

    /** Suburb, 8 m, 26 m/s: 661.82 Pa (worked example of EN 1991-1-4). */
    @Test
    void a_speed_becomes_a_pressure_by_the_code_that_is_named() {
        CheckTester tester = tester().part(sheet("p", Role.PANEL, SQUARE_METRE, "acrylic", 4.5)).with(WindSettings.SPEED, 26.0).with(WindSettings.HEIGHT, 8000.0)
                .with(WindSettings.ROUGHNESS, 300.0);
        assertEquals(661.82 * 1.8, only(tester.findings(MountRules.WIND)).measured().orElseThrow().value(), 0.02);
        double american = only(tester.with(WindSettings.CODE, WindSettings.AMERICAN).findings(MountRules.WIND)).measured().orElseThrow().value();
        assertEquals(0.613 * 2.01 * Math.pow(8000 / 274_320.0, 2 / 9.5) * 0.85 * 26 * 26 * 0.85 * 1.8, american, 1e-6);
        double newer = only(tester.with(WindSettings.EDITION, WindSettings.FROM_7_22).findings(MountRules.WIND)).measured().orElseThrow().value();
        assertEquals(american, newer, 1e-9);
    }

    @Test
    void the_wind_takes_the_outline_when_told() {
        String halves = "POLYGON ((0 0, 1000 0, 1000 1000, 500 1000, 500 500, 0 500, 0 0))";
        CheckTester tester = tester().part(sheet("p", Role.PANEL, halves, "acrylic", 4.5)).with(WindSettings.PRESSURE, 1000.0);
        assertEquals(1800, only(tester.findings(MountRules.WIND)).measured().orElseThrow().value(), 1e-9);
        assertEquals(1350, only(tester.with(WindSettings.AREA, WindSettings.OUTLINE).findings(MountRules.WIND)).measured().orElseThrow().value(), 1e-9);
    }

    @Test
    void an_opening_counts_where_it_lies_in_a_sheet() {
        String frame = "POLYGON ((0 0, 1000 0, 1000 1000, 0 1000, 0 0), (400 400, 400 600, 600 600, 600 400, 400 400))";
        Outcome outcome = tester().part(sheet("p", Role.PANEL, frame, "acrylic", 4.5)).part("in", Role.OPENING, "POLYGON ((400 400, 600 400, 600 600, 400 600, 400 400))")
                .part("astray", Role.OPENING, "POLYGON ((3000 0, 3100 0, 3100 100, 3000 100, 3000 0))").run();
        assertEquals(1e6, (Double) cell(outcome, "sign", 0, "area-outline"), 1e-6);
        assertEquals(1e6, (Double) cell(outcome, "sign", 0, "area-rectangle"), 1e-6);
    }

    @Test
    void an_inch_job_reads_pounds() {
        Finding finding = only(tester().units(UnitSystem.INCH).with(MountSettings.DENSITY, 1.0).with(MountSettings.EXTRA_MASS, 9.0).part(sheet("a", Role.FACE, SQUARE_METRE, "x", 1)).findings(MountRules.WEIGHT));
        assertTrue(finding.message().contains("22.05 lb"), finding.message());
        assertEquals(10, finding.measured().orElseThrow().value(), 1e-9);
    }

    @Test
    void cans_without_a_drain_are_noted() {
        Outcome outcome = tester().part(sheet("a", Role.FACE, SQUARE_METRE, "acrylic", 3)).with(SharedSettings.RETURN_DEPTH, 100.0).run();
        assertTrue(outcome.missing().stream().anyMatch(each -> each.contains("no drain hole")), outcome.missing()::toString);
    }

    @Test
    void a_cancelled_run_ends() {
        CheckTester tester = tester().part(sheet("a", Role.FACE, SQUARE_METRE, "acrylic", 3)).onCheckpoint(fraction -> {
            throw new CancellationException();
        });
        assertThrows(CancellationException.class, tester::run);
    }
}
