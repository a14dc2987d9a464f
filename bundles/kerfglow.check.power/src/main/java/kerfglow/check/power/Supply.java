// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.power;

import java.util.List;
import kerfglow.api.StockItem;

/**
 * A power supply that is stocked.
 *
 * @param name what the shop calls it
 * @param volts its output
 * @param watts its rating, all circuits together
 * @param circuits how many separate outputs share the rating
 */
record Supply(String name, double volts, double watts, int circuits) {
    /** Voltages nearer than this are one nominal voltage: geometry of a label, 12 V and 12.0 V. */
    private static final double SAME_VOLTS = 0.5;
    /** NEC chapter 9, table 11(B), direct current, limited source: up to 20 V this current, above it this power; 60 W at 12 V and 100 VA at 24 V. From secondary pages of the 2005 edition. */
    private static final double CLASS_2_AMPERES = 5;
    private static final double CLASS_2_VA = 100;

    /** Where the shop sheet lists none: 60 W at 12 V and 96 W at 24 V are the common sizes (common practice, no source). */
    static final List<Supply> USUAL = List.of(new Supply("60 W, 12 V", 12, 60, 1), new Supply("96 W, 24 V", 24, 96, 1));

    static Supply of(StockItem item) {
        return new Supply(item.name(), item.get(PowerSettings.SUPPLY_VOLTS), item.get(PowerSettings.SUPPLY_WATTS), item.get(PowerSettings.CIRCUITS));
    }

    boolean isFor(ModuleType type) {
        return Math.abs(volts - type.volts()) < SAME_VOLTS;
    }

    /** The most that a Class 2 circuit of direct current may carry, VA. */
    static double classTwoVa(double volts) {
        return Math.min(CLASS_2_AMPERES * volts, CLASS_2_VA);
    }

    /** What one of its circuits is rated for, W, before loading. */
    double circuitWatts(boolean classTwo) {
        double share = watts / circuits;
        return classTwo ? Math.min(share, classTwoVa(volts)) : share;
    }
}
