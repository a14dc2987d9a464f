// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.power;

import kerfglow.api.StockItem;

/**
 * A kind of light module, as far as its power goes.
 *
 * @param name what the shop calls it
 * @param watts its load
 * @param volts its nominal voltage
 * @param cablePitchMm the greatest distance to the next on its own cable; 0 where the list does not say
 * @param longestRun most modules in one string; 0 where the list does not say
 * @param cable the conductors of its own cable
 */
record ModuleType(String name, double watts, double volts, double cablePitchMm, int longestRun, Conductor cable) {
    static ModuleType of(StockItem item) {
        return new ModuleType(item.name(), item.get(PowerSettings.WATTS), item.get(PowerSettings.VOLTS), item.get(PowerSettings.CABLE_PITCH),
                item.get(PowerSettings.LONGEST_RUN), Conductor.of(item.get(PowerSettings.CABLE)).orElseThrow());
    }

    double amperes() {
        return watts / volts;
    }
}
