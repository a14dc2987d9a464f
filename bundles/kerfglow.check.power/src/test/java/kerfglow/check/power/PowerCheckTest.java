// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.power;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.concurrent.CancellationException;
import kerfglow.api.Finding;
import kerfglow.api.Outcome;
import kerfglow.api.Quantity;
import kerfglow.api.Rule;
import kerfglow.api.Setting;
import kerfglow.api.Table;
import kerfglow.api.TableInfo;
import kerfglow.api.TableInfo.Column;
import kerfglow.api.UnitSystem;
import kerfglow.testkit.CheckTester;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Coordinate;

class PowerCheckTest {
    private static final TableInfo MODULES = new TableInfo("modules", "Modules", List.of(Column.text("part", "Part"), Column.number("x", "x", Quantity.LENGTH),
            Column.number("y", "y", Quantity.LENGTH), Column.number("turn", "Turn", Quantity.ANGLE), Column.text("string", "String"), Column.text("type", "Type")));
    /** What {@link CheckTester} calls the first item of the list. */
    private static final String TYPE = "light-modules 1";

    private static final double TURN_DEGREES = 30;

    private static List<Object> module(String part, double x, double y, String string) {
        return Arrays.<Object>asList(part, x, y, TURN_DEGREES, string, TYPE);
    }

    /** Modules in a row from the left, in steps of a length. */
    private static List<List<Object>> row(String part, int count, double fromX, double stepMm) {
        List<List<Object>> rows = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            rows.add(module(part, fromX + i * stepMm, 100, null));
        }
        return rows;
    }

    private static CheckTester tester(List<List<Object>> modules) {
        return CheckTester.of(new PowerCheck()).tables("glow", new Table(MODULES, modules)).units(UnitSystem.INCH);
    }

    private static CheckTester tester(List<List<Object>> modules, Map<Setting<?>, ?> type) {
        return tester(modules).stock(PowerCheck.MODULES, type).stock(PowerCheck.POWER_SUPPLIES, supply(12, 60, 1));
    }

    private static Map<Setting<?>, ?> supply(double volts, double watts, int circuits) {
        return Map.of(PowerSettings.SUPPLY_VOLTS, volts, PowerSettings.SUPPLY_WATTS, watts, PowerSettings.CIRCUITS, circuits);
    }

    private static List<String> rules(Outcome outcome) {
        return outcome.findings().stream().map(finding -> finding.rule().id()).toList();
    }

    private static Object cell(Outcome outcome, String tableId, int row, String column) {
        Table table = outcome.tables().stream().filter(each -> each.info().id().equals(tableId)).findFirst().orElseThrow();
        return table.rows().get(row).get(table.info().columns().stream().map(Column::id).toList().indexOf(column));
    }

    private static List<List<Object>> rows(Outcome outcome, String tableId) {
        return outcome.tables().stream().filter(each -> each.info().id().equals(tableId)).findFirst().orElseThrow().rows();
    }

    @Test
    void says_who_it_is_and_every_setting_is_on_its_page() {
        PowerCheck check = new PowerCheck();
        assertEquals(List.of("power.overload", "power.voltage-drop", "power.plan"), check.info().rules().stream().map(rule -> rule.id()).toList());
        for (Setting<?> setting : check.info().settings()) {
            assertTrue(check.info().page().contains("`" + setting.key() + "`"), setting.key());
        }
        assertEquals(List.of("glow"), check.reads());
    }

    @Test
    void the_cautions_stand_beside_the_figures() {
        for (Rule rule : PowerRules.ALL) {
            assertTrue(rule.fix().contains("NEC Article 600 or the local equivalent") && rule.fix().contains("licensed electrician"), rule.id());
        }
        for (TableInfo table : List.of(PowerTables.STRINGS, PowerTables.SUPPLIES, PowerTables.TOTALS, PowerTables.CABLES)) {
            assertTrue(table.title().contains("NEC Article 600 or the local equivalent") && table.title().contains("estimate"), table.id());
        }
        Outcome outcome = tester(row("a", 3, 0, 50), Map.of(PowerSettings.WATTS, 1.0)).run();
        assertTrue(outcome.findings().get(0).message().contains("licensed electrician"), outcome.findings()::toString);
    }

    @Test
    void without_modules_or_their_watts_nothing_is_measured() {
        assertFalse(CheckTester.of(new PowerCheck()).run().measured());
        Outcome noWatts = tester(row("a", 3, 0, 50), Map.of()).run();
        assertFalse(noWatts.measured());
        assertTrue(noWatts.missing().get(0).contains("3 modules"), noWatts.missing()::toString);
        Outcome otherVolts = tester(row("a", 3, 0, 50), Map.of(PowerSettings.WATTS, 1.0, PowerSettings.VOLTS, 24.0)).run();
        assertFalse(otherVolts.measured());
        assertTrue(otherVolts.missing().get(0).contains("24 V"), otherVolts.missing()::toString);
    }

    @Test
    void modules_that_are_none_of_the_list_are_told_without_a_name() {
        Outcome outcome = tester(List.of(Arrays.<Object>asList("a", 0.0, 0.0, 0.0, null, ""))).run();
        assertFalse(outcome.measured());
        assertTrue(outcome.missing().stream().anyMatch(missing -> missing.contains("none of the shop sheet's list light-modules")), outcome.missing()::toString);
        assertTrue(outcome.missing().stream().noneMatch(missing -> missing.contains("\"\"") || missing.contains("common sizes")), outcome.missing()::toString);
    }

    @Test
    void without_stocked_supplies_the_common_sizes_stand_in_and_it_says_so() {
        Outcome outcome = tester(row("a", 3, 0, 50)).stock(PowerCheck.MODULES, Map.of(PowerSettings.WATTS, 1.0)).run();
        assertEquals(List.of("power.plan"), rules(outcome));
        assertEquals("60 W, 12 V", cell(outcome, "supplies", 0, "kind"));
        assertTrue(outcome.missing().get(0).contains("common sizes"));
    }

    /** 80 % of a Class 2 circuit at 12 V is 48 W: 48 modules of 1 W are one string, 49 are two, and two supplies. */
    @ParameterizedTest
    @CsvSource({"48, 1, 1", "49, 2, 2", "96, 2, 2", "97, 3, 3"})
    void a_string_carries_four_fifths_of_a_class_2_circuit(int modules, int strings, int supplies) {
        Outcome outcome = tester(row("a", modules, 0, 10), Map.of(PowerSettings.WATTS, 1.0, PowerSettings.CABLE, "18 AWG")).with(PowerSettings.LEAD_IN, 0.0).run();
        assertEquals(List.of("power.plan"), rules(outcome));
        assertEquals(strings, rows(outcome, "strings").size());
        assertEquals(supplies, rows(outcome, "supplies").size());
    }

    @Test
    void a_larger_supply_carries_more_only_where_class_2_is_not_asked_for() {
        List<List<Object>> modules = row("a", 100, 0, 10);
        CheckTester large = tester(modules).stock(PowerCheck.MODULES, Map.of(PowerSettings.WATTS, 1.0, PowerSettings.CABLE, "14 AWG")).with(PowerSettings.LEAD_IN, 0.0)
                .stock(PowerCheck.POWER_SUPPLIES, supply(12, 150, 1));
        assertEquals(3, rows(large.run(), "strings").size()); // 48 W each
        Outcome free = large.with(PowerSettings.CLASS_TWO, false).run();
        assertEquals(1, rows(free, "strings").size()); // 120 W
        assertEquals(100.0 / 150, (Double) cell(free, "supplies", 0, "loading"), 1e-12);
    }

    @Test
    void circuits_of_one_supply_are_filled_before_the_next() {
        Outcome outcome = tester(row("a", 100, 0, 10)).stock(PowerCheck.MODULES, Map.of(PowerSettings.WATTS, 1.0, PowerSettings.CABLE, "14 AWG"))
                .with(PowerSettings.LEAD_IN, 0.0).stock(PowerCheck.POWER_SUPPLIES, supply(12, 60, 1)).stock(PowerCheck.POWER_SUPPLIES, supply(12, 180, 3)).run();
        assertEquals(1, rows(outcome, "supplies").size());
        assertEquals("power-supplies 2", cell(outcome, "supplies", 0, "kind"));
        assertEquals(3.0, cell(outcome, "supplies", 0, "circuits"));
    }

    @Test
    void strings_keep_the_longest_run_and_cut_as_few_parts_as_can_be() {
        List<List<Object>> modules = new ArrayList<>();
        for (int letter = 0; letter < 4; letter++) {
            modules.addAll(row("p" + letter, 6, letter * 300, 40));
        }
        Outcome outcome = tester(modules, Map.of(PowerSettings.WATTS, 0.5, PowerSettings.LONGEST_RUN, 14)).run();
        List<String> parts = rows(outcome, "strings").stream().map(row -> (String) row.get(2)).toList();
        assertEquals(List.of("p0, p1", "p2, p3"), parts);
    }

    /** Worked by hand: 2 modules of 6 W at 12 V (0.5 A each), 14 AWG at 75 °C (3.14 ohm per 1000 ft), feed 2 m, step 1 m: 2·1·2·r + 2·0.5·1·r = 5 r. */
    @Test
    void cable_and_drop_are_those_of_the_way() {
        double r = 3.14 / 304.8;
        Outcome outcome = tester(List.of(module("a", 1000, 100, null), module("a", 2000, 100, null)), Map.of(PowerSettings.WATTS, 6.0, PowerSettings.CABLE_PITCH, 500.0))
                .with(PowerSettings.SUPPLY_PLACE, PowerSettings.GIVEN_POINT).with(PowerSettings.SUPPLY_X, 0.0).with(PowerSettings.SUPPLY_Y, 100.0)
                .with(PowerSettings.LEAD_IN, 1000.0).with(PowerSettings.SLACK, 1.0).with(PowerSettings.CONDUCTOR, "14 AWG").run();
        assertEquals(2000, (Double) cell(outcome, "strings", 0, "feed"), 1e-9);
        assertEquals(3000, (Double) cell(outcome, "strings", 0, "cable"), 1e-9);
        assertEquals(1.0, cell(outcome, "strings", 0, "extended")); // 1 m is more than the module's own 500 mm
        assertEquals(12 - 5 * r, (Double) cell(outcome, "strings", 0, "volts"), 1e-12);
        assertEquals(List.of("14 AWG", 3000.0), rows(outcome, "cables").get(0));
        assertEquals(1.0, (Double) cell(outcome, "strings", 0, "current"), 1e-12);
    }

    @Test
    void slack_and_passages_into_the_next_part_are_added() {
        Outcome outcome = tester(List.of(module("a", 0, 100, null), module("b", 200, 100, null)), Map.of(PowerSettings.WATTS, 1.0))
                .with(PowerSettings.SUPPLY_PLACE, PowerSettings.GIVEN_POINT).with(PowerSettings.SUPPLY_Y, 100.0).with(PowerSettings.LEAD_IN, 0.0)
                .with(PowerSettings.SLACK, 1.2).with(PowerSettings.PASSAGE, 70.0).run();
        assertEquals(200 * 1.2 + 70, (Double) cell(outcome, "strings", 0, "cable"), 1e-9);
    }

    /** 5 A at 12 V, 18 AWG stranded: 10 % at 15.094 ft, so 15 ft are within 10 % and 15.2 ft are not; with the smallest that does, 16 AWG. */
    @Test
    void the_conductor_is_the_thinnest_that_keeps_the_drop() {
        for (double feet : new double[] {15.0, 15.2}) {
            CheckTester tester = tester(List.of(module("a", 0, 0, null)), Map.of(PowerSettings.WATTS, 60.0)).with(PowerSettings.LOADING, 1.0)
                    .with(PowerSettings.ALLOWED_DROP, 0.1).with(PowerSettings.LEAD_IN, feet * 304.8);
            assertEquals(feet < 15.1 ? "18 AWG" : "16 AWG", cell(tester.run(), "strings", 0, "conductor"));
            List<String> fixed = rules(tester.with(PowerSettings.CONDUCTOR, "18 AWG").run());
            assertEquals(feet < 15.1 ? List.of("power.plan") : List.of("power.voltage-drop", "power.plan"), fixed);
        }
    }

    @Test
    void a_drop_says_what_is_lost_where_and_how_much_may_be() {
        Finding finding = tester(List.of(module("a", 40, 30, null)), Map.of(PowerSettings.WATTS, 60.0)).with(PowerSettings.LOADING, 1.0)
                .with(PowerSettings.LEAD_IN, 25 * 304.8).with(PowerSettings.CONDUCTOR, "18 AWG").findings(PowerRules.VOLTAGE_DROP).get(0);
        assertEquals(1.9875, finding.measured().orElseThrow().value(), 1e-9);
        assertEquals(0.6, finding.required().orElseThrow().value(), 1e-12);
        assertEquals(40, finding.at().orElseThrow().x, 1e-12);
        assertTrue(finding.message().contains("16.6 %"), finding.message());
    }

    @Test
    void a_string_that_loses_too_much_on_its_own_cable_is_halved() {
        Outcome outcome = tester(row("a", 40, 0, 250), Map.of(PowerSettings.WATTS, 1.2, PowerSettings.CABLE, "22 AWG")).run();
        assertEquals(List.of("power.plan"), rules(outcome));
        assertTrue(rows(outcome, "strings").size() > 1);
        for (List<Object> string : rows(outcome, "strings")) {
            assertTrue((Double) string.get(11) <= 0.05 + 1e-9, string::toString);
        }
    }

    @Test
    void strings_that_a_person_gave_are_kept_and_measured() {
        List<List<Object>> modules = new ArrayList<>();
        for (int i = 0; i < 50; i++) {
            modules.add(module("a", i * 5, 0, "left"));
        }
        modules.add(module("a", 255, 0, "right"));
        CheckTester tester = tester(modules, Map.of(PowerSettings.WATTS, 1.0, PowerSettings.LONGEST_RUN, 40, PowerSettings.CABLE, "14 AWG"));
        List<Finding> overloads = tester.findings(PowerRules.OVERLOAD);
        assertEquals(2, overloads.size());
        assertEquals(Set.of("load", "run"), new HashSet<>(overloads.stream().map(Finding::cause).toList()));
        Finding load = overloads.stream().filter(each -> each.cause().equals("load")).findFirst().orElseThrow();
        assertEquals(50, load.measured().orElseThrow().value(), 1e-9);
        assertEquals(48, load.required().orElseThrow().value(), 1e-9);
        assertEquals(List.of("left", "right"), rows(tester.run(), "strings").stream().map(row -> row.get(0)).toList());
    }

    @Test
    void one_module_that_is_too_much_for_every_circuit_is_an_overload() {
        assertEquals(2, tester(row("a", 2, 0, 50), Map.of(PowerSettings.WATTS, 48.5)).findings(PowerRules.OVERLOAD).size());
        assertEquals(0, tester(row("a", 2, 0, 50), Map.of(PowerSettings.WATTS, 48.0)).with(PowerSettings.LEAD_IN, 100.0).findings(PowerRules.OVERLOAD).size());
    }

    @Test
    void fewer_supplies_than_needed_are_an_overload() {
        CheckTester tester = tester(row("a", 97, 0, 10), Map.of(PowerSettings.WATTS, 1.0, PowerSettings.CABLE, "18 AWG"));
        assertEquals(0, tester.with(PowerSettings.SUPPLIES, 3).findings(PowerRules.OVERLOAD).size());
        Finding finding = tester.with(PowerSettings.SUPPLIES, 2).findings(PowerRules.OVERLOAD).get(0);
        assertEquals(3, finding.measured().orElseThrow().value());
        assertEquals(2, finding.required().orElseThrow().value());
    }

    /** 100 W of modules at 0.8 efficiency are 125 W; 10 h on 365 days: 456.25 kWh; at 0.2 each 91.25. */
    @Test
    void energy_and_cost_follow_from_hours_and_efficiency() {
        Outcome outcome = tester(row("a", 100, 0, 10), Map.of(PowerSettings.WATTS, 1.0)).with(PowerSettings.EFFICIENCY, 0.8).with(PowerSettings.HOURS_PER_DAY, 10.0)
                .with(PowerSettings.PRICE, 0.2).run();
        assertEquals(100, (Double) cell(outcome, "totals", 0, "load"), 1e-9);
        assertEquals(100.0 / 12, (Double) cell(outcome, "totals", 0, "current"), 1e-9);
        assertEquals(125, (Double) cell(outcome, "totals", 0, "mains"), 1e-9);
        assertEquals(456.25, (Double) cell(outcome, "totals", 0, "energy"), 1e-9);
        assertEquals(91.25, (Double) cell(outcome, "totals", 0, "cost"), 1e-9);
    }

    @Test
    void every_module_has_its_place_in_one_string() {
        List<List<Object>> modules = new ArrayList<>(row("a", 60, 0, 20));
        modules.addAll(row("b", 17, 2000, 20));
        Outcome outcome = tester(modules, Map.of(PowerSettings.WATTS, 1.0)).run();
        List<List<Object>> places = rows(outcome, "places");
        assertEquals(77, places.size());
        places.forEach(place -> assertEquals(TURN_DEGREES, place.get(3)));
        assertEquals(77, new HashSet<>(places.stream().map(place -> List.of(place.get(1), place.get(2))).toList()).size());
        for (List<Object> string : rows(outcome, "strings")) {
            List<Object> orders = places.stream().filter(place -> place.get(5).equals(string.get(0))).map(place -> place.get(6)).toList();
            assertEquals(((Double) string.get(3)).intValue(), orders.size());
            assertEquals(orders.size(), new HashSet<>(orders).size());
        }
    }

    /** The shortest way through few modules is known by trying all of them. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 5, 8, 13, 21, 34})
    void the_way_is_near_the_shortest(long seed) {
        Random random = new Random(seed);
        List<Lamp> lamps = new ArrayList<>();
        for (int i = 0; i < 7; i++) {
            lamps.add(new Lamp("a", new Coordinate(random.nextInt(500), random.nextInt(500)), 0, TYPE, ""));
        }
        double best = shortest(new ArrayList<>(lamps), 0);
        double found = length(new Route(() -> { }).of(lamps)); // its start is bound to where the cable comes from
        assertTrue(found <= 1.35 * best, () -> found + " against " + best);
    }

    private static double length(List<Lamp> order) {
        double sum = 0;
        for (int i = 1; i < order.size(); i++) {
            sum += order.get(i).distanceTo(order.get(i - 1));
        }
        return sum;
    }

    private static double shortest(List<Lamp> order, int fixed) {
        if (fixed == order.size()) {
            return length(order);
        }
        double best = Double.POSITIVE_INFINITY;
        for (int i = fixed; i < order.size(); i++) {
            Collections.swap(order, fixed, i);
            best = Math.min(best, shortest(order, fixed + 1));
            Collections.swap(order, fixed, i);
        }
        return best;
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void the_order_of_the_modules_and_a_move_change_nothing(long seed) {
        List<List<Object>> modules = new ArrayList<>(row("a", 30, 0, 25));
        modules.addAll(row("b", 25, 1000, 31));
        Outcome before = tester(modules, Map.of(PowerSettings.WATTS, 1.0)).run();
        Collections.shuffle(modules, new Random(seed));
        modules.replaceAll(row -> module((String) row.get(0), (Double) row.get(1) + 512, (Double) row.get(2) - 64, null));
        Outcome after = tester(modules, Map.of(PowerSettings.WATTS, 1.0)).run();
        assertTrue(rows(before, "strings").size() > 1);
        for (int i = 0; i < rows(before, "strings").size(); i++) {
            assertEquals(rows(before, "strings").get(i).subList(0, 14), rows(after, "strings").get(i).subList(0, 14));
        }
    }

    @Test
    void a_cancelled_run_ends_at_once() {
        CheckTester tester = tester(row("a", 400, 0, 20), Map.of(PowerSettings.WATTS, 1.0)).onCheckpoint(fraction -> {
            throw new CancellationException();
        });
        assertThrows(CancellationException.class, tester::run);
    }

    @Test
    void thousands_of_modules_are_planned_in_seconds() {
        List<List<Object>> modules = new ArrayList<>();
        for (int i = 0; i < 2500; i++) {
            modules.add(module("panel", i % 50 * 80, i / 50 * 80, null));
        }
        long start = System.nanoTime();
        Outcome outcome = tester(modules, Map.of(PowerSettings.WATTS, 0.7)).run();
        assertTrue((System.nanoTime() - start) / 1e9 < 20, "planned in " + (System.nanoTime() - start) / 1e9 + " s");
        assertEquals(2500, rows(outcome, "places").size());
    }
}
