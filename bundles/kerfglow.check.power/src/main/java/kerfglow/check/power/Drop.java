// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.power;

import java.util.List;

/** Voltage that is lost on the way to the last of a string's loads. Direct current, two conductors. */
final class Drop {
    /** There and back. */
    private static final double WAYS = 2;

    private Drop() {
    }

    /**
     * A stretch of cable with a load at its end.
     *
     * @param lengthM one way
     * @param ohmPerM of one conductor
     * @param amperes of the load at its end
     */
    record Stretch(double lengthM, double ohmPerM, double amperes) {
    }

    /** Volts lost at the end of the last stretch, the supply being at the start of the first. N equal loads at equal steps lose (N + 1)/(2 N) of what one load at the end would. */
    static double volts(List<Stretch> stretches) {
        double sum = 0;
        double amperes = 0;
        for (int i = stretches.size() - 1; i >= 0; i--) {
            Stretch stretch = stretches.get(i);
            amperes += stretch.amperes();
            sum += WAYS * amperes * stretch.lengthM() * stretch.ohmPerM();
        }
        return sum;
    }
}
