// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.power;

import java.util.ArrayList;
import java.util.List;
import kerfglow.api.Quantity;
import kerfglow.api.Setting;
import kerfglow.api.StockKind;

/** What the check of power can be told. */
final class PowerSettings {
    static final String AUTO = "smallest that does";
    static final String NEAREST_EDGE = "nearest edge";
    static final String GIVEN_POINT = "given point";
    private static final String PRACTICE = "common practice, no source";
    private static final String JOB = "the job sheet";
    private static final String SHOP = "the shop sheet";
    private static final String ASSUMED = "Assumed: a planning value, no source";
    private static final int HOURS = 24;
    private static final int DAYS = 366;
    private static final double FARTHEST_MM = 1e6;
    private static final double MOST_VOLTS = 60;
    private static final double MOST_WATTS = 5000;

    static final Setting<Double> LOADING = Setting.number("power.loading", "how far a supply or circuit may be loaded", Quantity.RATIO, 0.8, 0.1, 1,
            "80 % is 1/1.25: a sign is a continuous load. NEC Article 600 asks it of branch circuits (2017 edition 600.5(B), 2020 edition 600.5(C); check the edition in force); taking it for supplies is habit",
            PRACTICE);
    static final Setting<Double> ALLOWED_DROP = Setting.number("power.allowed-drop", "voltage that may be lost at the last module, of the supply's", Quantity.RATIO,
            0.05, 0.005, 0.5, "makers of modules permit 3 to 10 %; the module's data sheet decides", PRACTICE);
    static final Setting<String> CONDUCTOR = Setting.choice("power.conductor", "conductor of feeds and of steps longer than the module's own cable", AUTO, conductors(),
            "the smallest that keeps the allowed drop; metric jobs in mm², others in AWG", "NEC chapter 9, table 8 (75 °C, stranded); IEC 60228, class 5");
    static final Setting<Double> TEMPERATURE = Setting.number("power.conductor-temperature", "temperature of the copper", Quantity.TEMPERATURE, 75.0, -40, 105,
            "the temperature of the table, which already contains it: at 75 °C its values hold as printed; at 20 °C they are 18 % less", "NEC chapter 9, table 8, note 2");
    static final Setting<Double> SLACK = Setting.number("power.slack", "cable laid for each length of way", Quantity.RATIO, 1.1, 1, 3,
            "cable does not run straight and needs ends to splice", ASSUMED);
    static final Setting<Double> PASSAGE = Setting.lengthMm("power.passage", "cable more where it goes from one part into the next", 150.0, 0, 5000,
            "out through one back and in through the next", ASSUMED);
    static final Setting<String> SUPPLY_PLACE = Setting.choice("power.supply-place", "where the feeds come from", NEAREST_EDGE, List.of(NEAREST_EDGE, GIVEN_POINT),
            "the nearest edge of the sign, or the point power.supply-x, power.supply-y", ASSUMED);
    static final Setting<Double> SUPPLY_X = Setting.lengthMm("power.supply-x", "where the supplies are, from the left of the proof", 0.0, -FARTHEST_MM, FARTHEST_MM,
            "only with power.supply-place: given point", JOB);
    static final Setting<Double> SUPPLY_Y = Setting.lengthMm("power.supply-y", "where the supplies are, from the top of the proof", 0.0, -FARTHEST_MM, FARTHEST_MM,
            "only with power.supply-place: given point", JOB);
    static final Setting<Double> LEAD_IN = Setting.lengthMm("power.lead-in", "cable from there to the supply itself", 2000.0, 0, FARTHEST_MM,
            "through the wall to a box behind it; only the site knows", ASSUMED);
    static final Setting<Boolean> CLASS_TWO = Setting.flag("power.class-2", "whether each circuit stays within the limits of Class 2", true,
            "low-voltage signs are mostly wired so: 5 A up to 20 V, 100 VA above, thus 60 W at 12 V. Check the edition in force",
            "NEC chapter 9, table 11(B), 2005 edition, from secondary pages");
    static final Setting<Integer> SUPPLIES = Setting.count("power.supplies", "supplies that there are, 0 for as many as are needed", 0, 0, 10_000,
            "an existing installation has so many and no more", JOB);
    static final Setting<Double> HOURS_PER_DAY = Setting.number("power.hours-per-day", "hours a day that the sign is lit", Quantity.RATIO, 12.0, 0, HOURS,
            "dusk to dawn, on the average of a year", "geometry of the earth: night and day share the year");
    static final Setting<Double> DAYS_PER_YEAR = Setting.number("power.days-per-year", "days a year that the sign is lit", Quantity.RATIO, 365.0, 0, DAYS,
            "every day", JOB);
    static final Setting<Double> EFFICIENCY = Setting.number("power.efficiency", "what the supplies give of what they take", Quantity.RATIO, 0.85, 0.3, 1,
            "data sheets of small supplies say 0.8 to 0.9", PRACTICE);
    static final Setting<Double> PRICE = Setting.number("power.price", "price of a kilowatt-hour, 0 for not given", Quantity.RATIO, 0.0, 0, 1e6,
            "without it no cost is told; in the currency that it is given in", JOB);
    static final List<Setting<?>> ALL = List.of(LOADING, ALLOWED_DROP, CONDUCTOR, TEMPERATURE, SLACK, PASSAGE, SUPPLY_PLACE, SUPPLY_X, SUPPLY_Y, LEAD_IN, CLASS_TWO,
            SUPPLIES, HOURS_PER_DAY, DAYS_PER_YEAR, EFFICIENCY, PRICE);

    static final Setting<Double> WATTS = Setting.number("watts", "load of a module, 0 for not known", Quantity.POWER, 0.0, 0, MOST_WATTS, "depends on the module", SHOP);
    static final Setting<Double> VOLTS = Setting.number("volts", "voltage of a module", Quantity.VOLTAGE, 12.0, 1, MOST_VOLTS, "modules are commonly 12 V direct current", PRACTICE);
    static final Setting<Double> CABLE_PITCH = Setting.lengthMm("cable-pitch", "greatest distance to the next module on the module's own cable, 0 for any", 0.0, 0, 5000,
            "0 where the list does not say", SHOP);
    static final Setting<Integer> LONGEST_RUN = Setting.count("longest-run", "most modules in one string, 0 for any", 0, 0, 10_000, "0 where the list does not say", SHOP);
    static final Setting<String> CABLE = Setting.choice("cable", "conductor of the module's own cable", "20 AWG", Conductor.names(), "makers use 18 to 22 AWG", PRACTICE);
    static final StockKind MODULES = new StockKind("light-modules", "light modules", List.of(WATTS, VOLTS, CABLE_PITCH, LONGEST_RUN, CABLE));

    static final Setting<Double> SUPPLY_VOLTS = Setting.number("volts", "output of a supply", Quantity.VOLTAGE, 12.0, 1, MOST_VOLTS, "modules are commonly 12 V direct current", PRACTICE);
    static final Setting<Double> SUPPLY_WATTS = Setting.number("watts", "rating of a supply, all circuits together", Quantity.POWER, null, 1, MOST_WATTS, "depends on the supply", SHOP);
    static final Setting<Integer> CIRCUITS = Setting.count("circuits", "separate outputs that share the rating", 1, 1, 32, "small supplies have one", SHOP);
    static final StockKind POWER_SUPPLIES = new StockKind("power-supplies", "power supplies", List.of(SUPPLY_VOLTS, SUPPLY_WATTS, CIRCUITS));

    private PowerSettings() {
    }

    private static List<String> conductors() {
        List<String> all = new ArrayList<>();
        all.add(AUTO);
        all.addAll(Conductor.names());
        return all;
    }
}
