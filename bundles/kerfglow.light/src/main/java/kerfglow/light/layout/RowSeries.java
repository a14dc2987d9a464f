// SPDX-License-Identifier: Apache-2.0
package kerfglow.light.layout;

import kerfglow.light.LightModuleType;

/**
 * Illuminance under an endless row of equal modules, by summing their generalised Lambertian sources: what pitch a target asks for at a
 * height, and what height at a pitch. Direct light alone, no walls; beneath the row's line.
 */
public final class RowSeries {
    /** Modules on each side that are summed one by one; what lies farther is replaced by its integral. */
    private static final int SUMMED = 60;
    /** Places within a pitch that are looked at, besides those beneath and between modules. */
    private static final int PLACES = 64;
    private static final int HALVINGS = 50;
    /** Beyond this pitch, in heights, a row is dark between its modules for every beam that is allowed. */
    private static final double WIDEST = 50;

    private final LightModuleType type;
    private final double power;

    /** For modules of a type that lie along the row. */
    public RowSeries(LightModuleType type) {
        this.type = type;
        power = (type.exponent() + 3) / 2;
    }

    /**
     * Least over mean illuminance beneath the row.
     *
     * @param pitchMm from module to module, mm, above 0
     * @param heightMm from the emitters to the face, mm, above 0
     */
    public double leastToMean(double pitchMm, double heightMm) {
        double least = Math.min(at(0, pitchMm, heightMm), at(pitchMm / 2, pitchMm, heightMm));
        double sum = 0;
        for (int i = 0; i < PLACES; i++) {
            double level = at((i + 0.5) / PLACES * pitchMm, pitchMm, heightMm);
            least = Math.min(least, level);
            sum += level;
        }
        return least / (sum / PLACES);
    }

    private double at(double x, double pitchMm, double heightMm) {
        double sum = 0;
        for (int emitter = 0; emitter < type.emitters(); emitter++) {
            double offset = x - (emitter - (type.emitters() - 1) / 2.0) * type.emitterPitchMm();
            for (int k = -SUMMED; k <= SUMMED; k++) {
                double r = (offset - k * pitchMm) / heightMm;
                sum += Math.pow(1 + r * r, -power);
            }
            double edge = (SUMMED + 0.5) * pitchMm / heightMm;
            sum += 2 * Math.pow(edge, 1 - 2 * power) / (2 * power - 1) * heightMm / pitchMm;
        }
        return sum;
    }

    /** The widest pitch at which the row reaches a uniformity, mm. */
    public double pitchMm(double uniformity, double heightMm) {
        double near = heightMm / WIDEST;
        double far = heightMm * WIDEST;
        for (int i = 0; i < HALVINGS; i++) {
            double middle = Math.sqrt(near * far);
            if (leastToMean(middle, heightMm) >= uniformity) {
                near = middle;
            } else {
                far = middle;
            }
        }
        return near;
    }

    /** The least height of the face above the emitters at which a row of this pitch reaches a uniformity, mm. */
    public double heightMm(double uniformity, double pitchMm) {
        double low = pitchMm / WIDEST;
        double high = pitchMm * WIDEST;
        for (int i = 0; i < HALVINGS; i++) {
            double middle = Math.sqrt(low * high);
            if (leastToMean(pitchMm, middle) >= uniformity) {
                high = middle;
            } else {
                low = middle;
            }
        }
        return high;
    }
}
