// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.power;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import kerfglow.api.Finding;
import kerfglow.api.Inspection;
import kerfglow.api.Measure;
import kerfglow.api.Quantity;
import kerfglow.api.Rule;
import kerfglow.api.Units;
import org.locationtech.jts.geom.GeometryFactory;

/** Says what is overloaded, what loses voltage and what the plan is, in the units of the job. */
final class PowerFindings {
    private static final int PER_CENT = 100;

    private final Inspection inspection;
    private final GeometryFactory factory;

    PowerFindings(Inspection inspection, GeometryFactory factory) {
        this.inspection = inspection;
        this.factory = factory;
    }

    private String words(double value, Quantity quantity) {
        return Units.format(value, quantity, inspection.units());
    }

    private static String perCent(double share) {
        return String.format(Locale.ROOT, "%.1f %%", share * PER_CENT);
    }

    private Finding.Builder at(Rule rule, String message, LightString string) {
        return Finding.of(rule, message).place(string.way(factory)).at(string.lamps().get(string.lamps().size() - 1).at()).parts(string.parts());
    }

    List<Finding> ofString(String name, LightString string, Plan plan, Wiring wiring) {
        List<Finding> findings = new ArrayList<>();
        if (string.watts() > plan.circuitLimitWatts() * (1 + Plan.ROUNDING)) {
            findings.add(at(PowerRules.OVERLOAD, "String " + name + " of " + string.lamps().size() + " modules takes " + words(string.watts(), Quantity.POWER)
                    + "; a circuit of supply \"" + plan.supply().name() + "\" may carry " + words(plan.circuitLimitWatts(), Quantity.POWER) + ".", string)
                    .measured(new Measure(string.watts(), Quantity.POWER)).required(new Measure(plan.circuitLimitWatts(), Quantity.POWER)).cause("load").build());
        }
        int longest = string.type().longestRun();
        if (longest > 0 && string.lamps().size() > longest) {
            findings.add(at(PowerRules.OVERLOAD, "String " + name + " has " + string.lamps().size() + " modules; module \"" + string.type().name()
                    + "\" runs in strings of at most " + longest + ".", string)
                    .measured(Measure.count(string.lamps().size())).required(Measure.count(longest)).cause("run").build());
        }
        if (!wiring.keepsDrop(string)) {
            findings.add(at(PowerRules.VOLTAGE_DROP, "String " + name + " loses " + words(string.dropVolts(), Quantity.VOLTAGE) + ", "
                    + perCent(string.dropShare()) + ", on " + words(string.cableMm(), Quantity.LENGTH) + " of cable with " + string.conductor().name()
                    + "; its last module gets " + words(string.supplyVolts() - string.dropVolts(), Quantity.VOLTAGE) + " of "
                    + words(string.supplyVolts(), Quantity.VOLTAGE) + ", and " + perCent(wiring.allowedDrop()) + " may be lost.", string)
                    .measured(new Measure(string.dropVolts(), Quantity.VOLTAGE))
                    .required(new Measure(wiring.allowedDrop() * string.supplyVolts(), Quantity.VOLTAGE)).build());
        }
        return findings;
    }

    Finding tooFewSupplies(int needed, int present, double watts) {
        return Finding.of(PowerRules.OVERLOAD, "The modules take " + words(watts, Quantity.POWER) + " and need " + needed + " supplies; there are " + present + ".")
                .measured(Measure.count(needed)).required(Measure.count(present)).cause("supplies").build();
    }

    Finding plan(Totals totals) {
        String kinds = String.join(", ", totals.supplyCounts().entrySet().stream().map(kind -> kind.getValue() + " of \"" + kind.getKey() + "\"").toList());
        return Finding.of(PowerRules.PLAN, totals.modules() + " modules take " + words(totals.watts(), Quantity.POWER) + " in " + totals.strings()
                + (totals.strings() == 1 ? " string" : " strings") + "; supplies: " + kinds + "; about " + words(totals.mainsWatts(), Quantity.POWER)
                + " from the mains and " + words(totals.energyKwh(), Quantity.ENERGY) + " a year. " + PowerRules.CAUTION)
                .measured(new Measure(totals.watts(), Quantity.POWER)).parts(totals.parts()).build();
    }
}
