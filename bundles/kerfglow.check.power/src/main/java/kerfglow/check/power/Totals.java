// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.power;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import kerfglow.api.Settings;

/**
 * What some plans come to.
 *
 * @param plans one for each type of module
 * @param mainsWatts taken from the mains
 * @param energyKwh in a year
 * @param price of a kilowatt-hour; 0 for not given
 */
record Totals(List<Plan> plans, double mainsWatts, double energyKwh, double price) {
    private static final double W_PER_KW = 1000;

    static Totals of(List<Plan> plans, Settings settings) {
        double mains = plans.stream().mapToDouble(Plan::watts).sum() / settings.get(PowerSettings.EFFICIENCY);
        double hours = settings.get(PowerSettings.HOURS_PER_DAY) * settings.get(PowerSettings.DAYS_PER_YEAR);
        return new Totals(plans, mains, mains * hours / W_PER_KW, settings.get(PowerSettings.PRICE));
    }

    int modules() {
        return plans.stream().flatMap(plan -> plan.strings().stream()).mapToInt(string -> string.lamps().size()).sum();
    }

    int strings() {
        return plans.stream().mapToInt(plan -> plan.strings().size()).sum();
    }

    int supplies() {
        return plans.stream().mapToInt(Plan::supplies).sum();
    }

    double watts() {
        return plans.stream().mapToDouble(Plan::watts).sum();
    }

    Map<String, Integer> supplyCounts() {
        Map<String, Integer> counts = new LinkedHashMap<>();
        plans.forEach(plan -> counts.merge(plan.supply().name(), plan.supplies(), Integer::sum));
        return counts;
    }

    List<String> parts() {
        return plans.stream().flatMap(plan -> plan.strings().stream()).flatMap(string -> string.parts().stream()).distinct().toList();
    }
}
