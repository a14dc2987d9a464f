// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.power;

import java.util.List;
import kerfglow.api.Quantity;
import kerfglow.api.TableInfo;
import kerfglow.api.TableInfo.Column;

/** The numbers that the check of power measures beyond its findings. */
final class PowerTables {
    private static final String ESTIMATE = " (estimate for planning; NEC Article 600 or the local equivalent governs, a licensed electrician decides)";

    static final TableInfo STRINGS = new TableInfo("strings", "Strings" + ESTIMATE, List.of(
            Column.text("string", "String"),
            Column.text("type", "Module"),
            Column.text("parts", "Parts"),
            Column.number("modules", "Modules", Quantity.COUNT),
            Column.number("load", "Load", Quantity.POWER),
            Column.number("current", "Current at the feed", Quantity.CURRENT),
            Column.number("feed", "Cable from the supply to the first module", Quantity.LENGTH),
            Column.number("cable", "Cable in all", Quantity.LENGTH),
            Column.number("extended", "Steps longer than the module's own cable", Quantity.COUNT),
            Column.text("conductor", "Conductor of the feed"),
            Column.number("volts", "Voltage at the last module", Quantity.VOLTAGE),
            Column.number("drop", "Drop, of the supply's voltage", Quantity.RATIO),
            Column.text("supply", "Supply"),
            Column.number("circuit", "Circuit of the supply", Quantity.COUNT),
            Column.geometry("way", "Way of the cable")));
    static final TableInfo SUPPLIES = new TableInfo("supplies", "Supplies" + ESTIMATE, List.of(
            Column.text("supply", "Supply"),
            Column.text("kind", "Kind"),
            Column.number("volts", "Output", Quantity.VOLTAGE),
            Column.number("rating", "Rating", Quantity.POWER),
            Column.number("circuits", "Circuits in use", Quantity.COUNT),
            Column.number("strings", "Strings", Quantity.COUNT),
            Column.number("load", "Load", Quantity.POWER),
            Column.number("loading", "Load of the fullest circuit, of its rating", Quantity.RATIO)));
    static final TableInfo TOTALS = new TableInfo("totals", "Totals" + ESTIMATE, List.of(
            Column.text("type", "Module"),
            Column.number("modules", "Modules", Quantity.COUNT),
            Column.number("volts", "Voltage", Quantity.VOLTAGE),
            Column.number("load", "Load", Quantity.POWER),
            Column.number("current", "Current", Quantity.CURRENT),
            Column.number("strings", "Strings", Quantity.COUNT),
            Column.number("supplies", "Supplies", Quantity.COUNT),
            Column.number("mains", "Taken from the mains", Quantity.POWER),
            Column.number("energy", "Energy a year", Quantity.ENERGY),
            Column.number("cost", "Cost a year, in the currency of power.price", Quantity.RATIO)));
    static final TableInfo CABLES = new TableInfo("cables", "Cable to cut" + ESTIMATE, List.of(
            Column.text("conductor", "Two conductors of"),
            Column.number("length", "Length", Quantity.LENGTH)));
    static final TableInfo PLACES = new TableInfo("places", "Which string each module is on", List.of(
            Column.text("part", "Part"),
            Column.number("x", "Centre from the left", Quantity.LENGTH),
            Column.number("y", "Centre from the top", Quantity.LENGTH),
            Column.number("turn", "Turn of the long side", Quantity.ANGLE),
            Column.text("type", "Module"),
            Column.text("string", "String"),
            Column.number("order", "Place in the string", Quantity.COUNT)));
    static final List<TableInfo> ALL = List.of(STRINGS, SUPPLIES, TOTALS, CABLES, PLACES);

    private PowerTables() {
    }
}
