// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.power;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import kerfglow.api.Inspection;
import kerfglow.api.OverlayLayer;
import kerfglow.api.Settings;
import kerfglow.api.Table;
import org.locationtech.jts.geom.GeometryFactory;

/** Names strings and supplies and writes them into rows. */
final class PowerRows {
    private final Inspection inspection;
    private final GeometryFactory factory;
    private final List<List<Object>> strings = new ArrayList<>();
    private final List<List<Object>> supplies = new ArrayList<>();
    private final List<List<Object>> places = new ArrayList<>();
    private final List<OverlayLayer.Item> ways = new ArrayList<>();
    private final Map<String, Double> cablesMm = new TreeMap<>();

    PowerRows(Inspection inspection, GeometryFactory factory) {
        this.inspection = inspection;
        this.factory = factory;
    }

    /** Adds a plan; gives its strings by name. */
    Map<String, LightString> add(Plan plan) {
        Map<String, LightString> named = new LinkedHashMap<>();
        int each = plan.supply().circuits();
        double circuitRating = plan.supply().circuitWatts(inspection.settings().get(PowerSettings.CLASS_TWO));
        for (int first = 0; first < plan.circuits().size(); first += each) {
            List<List<LightString>> circuits = plan.circuits().subList(first, Math.min(plan.circuits().size(), first + each));
            String supply = "P" + (supplies.size() + 1);
            for (int i = 0; i < circuits.size(); i++) {
                for (LightString string : circuits.get(i)) {
                    String name = string.given().isEmpty() ? "S" + (strings.size() + 1) : string.given();
                    named.put(name, string);
                    add(name, string, supply, i + 1);
                }
            }
            double fullest = circuits.stream().mapToDouble(Plan::load).max().orElse(0);
            supplies.add(Arrays.<Object>asList(supply, plan.supply().name(), plan.supply().volts(), plan.supply().watts(), (double) circuits.size(),
                    (double) circuits.stream().mapToInt(List::size).sum(), circuits.stream().mapToDouble(Plan::load).sum(), fullest / circuitRating));
        }
        return named;
    }

    private void add(String name, LightString string, String supply, int circuit) {
        strings.add(Arrays.<Object>asList(name, string.type().name(), String.join(", ", string.parts()), (double) string.lamps().size(), string.watts(),
                string.amperes(), string.feedMm(), string.cableMm(), (double) string.extended(), string.conductor().name(),
                string.supplyVolts() - string.dropVolts(), string.dropShare(), supply, (double) circuit, string.way(factory)));
        ways.add(new OverlayLayer.Item(string.way(factory), Double.NaN, name));
        cablesMm.merge(string.conductor().name(), string.feedMm() + string.extendedMm(), Double::sum);
        if (string.ownMm() > 0) {
            cablesMm.merge("own cable of " + string.type().name(), string.ownMm(), Double::sum);
        }
        for (int i = 0; i < string.lamps().size(); i++) {
            Lamp lamp = string.lamps().get(i);
            places.add(Arrays.<Object>asList(lamp.part(), lamp.at().x, lamp.at().y, Double.isNaN(lamp.turnDegrees()) ? null : lamp.turnDegrees(), lamp.type(), name, i + 1.0));
        }
    }

    List<OverlayLayer.Item> ways() {
        return ways;
    }

    List<Table> tables(Totals all, Settings settings) {
        List<List<Object>> totals = new ArrayList<>();
        all.plans().forEach(plan -> totals.add(row(plan.type().name(), plan.type().volts(), Totals.of(List.of(plan), settings))));
        if (totals.size() > 1) {
            totals.add(row("all", null, all));
        }
        List<List<Object>> cables = new ArrayList<>();
        cablesMm.forEach((conductor, lengthMm) -> cables.add(List.of(conductor, lengthMm)));
        return List.of(new Table(PowerTables.STRINGS, strings), new Table(PowerTables.SUPPLIES, supplies), new Table(PowerTables.TOTALS, totals),
                new Table(PowerTables.CABLES, cables), new Table(PowerTables.PLACES, places));
    }

    private static List<Object> row(String name, Double volts, Totals totals) {
        return Arrays.<Object>asList(name, (double) totals.modules(), volts, totals.watts(), volts == null ? null : totals.watts() / volts, (double) totals.strings(),
                (double) totals.supplies(), totals.mainsWatts(), totals.energyKwh(), totals.price() == 0 ? null : totals.energyKwh() * totals.price());
    }
}
