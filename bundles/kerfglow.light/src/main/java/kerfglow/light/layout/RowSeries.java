// SPDX-License-Identifier: Apache-2.0
package kerfglow.light.layout;

import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;
import kerfglow.light.LightModuleType;

/**
 * Illuminance under an endless row of equal modules, by summing their generalised Lambertian sources: what pitch a target asks for at a
 * height, and what height at a pitch. Direct light alone, no walls; beneath the row's line.
 */
public final class RowSeries {
    /** Modules on each side that are summed one by one; what lies farther is replaced by its integral. */
    private static final int SUMMED = 60;
    /** Places within a pitch that are looked at, among them those beneath and between modules. */
    private static final int PLACES = 64;
    private static final int HALVINGS = 50;
    /** The end of a root, in the logarithm of a length. */
    private static final double CLOSE = 1e-12;
    /** The power of the Lambertian source, of which no power need be taken. */
    private static final double LAMBERTIAN = 2;
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
        double[] levels = levels(pitchMm, heightMm);
        return Arrays.stream(levels).min().orElseThrow() / Arrays.stream(levels).average().orElseThrow();
    }

    /** Least over greatest illuminance beneath the row; see {@link #leastToMean}. */
    public double leastToGreatest(double pitchMm, double heightMm) {
        double[] levels = levels(pitchMm, heightMm);
        return Arrays.stream(levels).min().orElseThrow() / Arrays.stream(levels).max().orElseThrow();
    }

    /** At even steps from beneath one module to beneath the next. */
    private double[] levels(double pitchMm, double heightMm) {
        double[] levels = new double[PLACES];
        for (int i = 0; i <= PLACES / 2; i++) {
            levels[i] = at((double) i / PLACES * pitchMm, pitchMm, heightMm);
            levels[(PLACES - i) % PLACES] = levels[i]; // emitters lie alike to both sides
        }
        return levels;
    }

    private double at(double x, double pitchMm, double heightMm) {
        double edge = (SUMMED + 0.5) * pitchMm / heightMm;
        double rest = 2 * Math.pow(edge, 1 - 2 * power) / (2 * power - 1) * heightMm / pitchMm;
        return sum(x, -SUMMED, pitchMm, heightMm) + type.emitters() * rest;
    }

    /** Light at a distance from module 0, of the modules from a number on; those beyond it by more than the sum's reach are left out. */
    private double sum(double x, int first, double pitchMm, double heightMm) {
        double sum = 0;
        for (int emitter = 0; emitter < type.emitters(); emitter++) {
            double offset = x - (emitter - (type.emitters() - 1) / 2.0) * type.emitterPitchMm();
            for (int k = first; k <= SUMMED; k++) {
                double r = (offset + k * pitchMm) / heightMm;
                double s = 1 + r * r;
                sum += power == LAMBERTIAN ? 1 / (s * s) : Math.pow(s, -power);
            }
        }
        return sum;
    }

    /** The widest pitch at which least over mean reaches a uniformity, mm. */
    public double pitchMm(double uniformity, double heightMm) {
        return widest(pitch -> leastToMean(pitch, heightMm) - uniformity, heightMm);
    }

    /**
     * How far the first module of a long row may stand from its free end, mm, so that the end keeps a share of the mean; at most half a pitch, 0
     * where even a module at the end is too little.
     */
    double endMm(double uniformity, double pitchMm, double heightMm) {
        double wanted = uniformity * Arrays.stream(levels(pitchMm, heightMm)).average().orElseThrow();
        double near = 0;
        double far = pitchMm / 2;
        for (int i = 0; i < HALVINGS; i++) {
            double middle = (near + far) / 2;
            if (sum(middle, 0, pitchMm, heightMm) >= wanted) {
                near = middle;
            } else {
                far = middle;
            }
        }
        return near;
    }

    /** The widest pitch at which no place beneath a module is brighter than that between modules by more than a contrast, mm. */
    public double pitchOfContrastMm(double contrast, double heightMm) {
        return widest(pitch -> leastToGreatest(pitch, heightMm) * (1 + contrast) - 1, heightMm);
    }

    /** What is left over above the target falls with the pitch. */
    private static double widest(DoubleUnaryOperator over, double heightMm) {
        return root(over, heightMm / WIDEST, heightMm * WIDEST);
    }

    /**
     * Where a function changes sign, by false position with the end that stays halved (Illinois), in the logarithm; an end where it does not.
     *
     * @param good where it is 0 or more
     * @param bad where it is below
     */
    private static double root(DoubleUnaryOperator function, double good, double bad) {
        double a = Math.log(good);
        double b = Math.log(bad);
        double atA = function.applyAsDouble(good);
        double atB = function.applyAsDouble(bad);
        if (atA < 0 || atB >= 0) {
            return atA < 0 ? good : bad;
        }
        int side = 0;
        for (int i = 0; i < HALVINGS && Math.abs(a - b) > CLOSE; i++) {
            double middle = i % 3 == 2 ? (a + b) / 2 : (a * atB - b * atA) / (atB - atA);
            double at = function.applyAsDouble(Math.exp(middle));
            if (at >= 0) {
                atB = side == 1 ? atB / 2 : atB;
                a = middle;
                atA = at;
                side = 1;
            } else {
                atA = side == -1 ? atA / 2 : atA;
                b = middle;
                atB = at;
                side = -1;
            }
            if (at == 0) {
                return Math.exp(middle);
            }
        }
        return Math.exp(a);
    }

    /** The least height of the face above the emitters at which a row of this pitch reaches a uniformity, mm. */
    public double heightMm(double uniformity, double pitchMm) {
        return lowest(height -> leastToMean(pitchMm, height) - uniformity, pitchMm);
    }

    /** The least height at which no place beneath a module of a row of this pitch is brighter than that between modules by more than a contrast, mm. */
    public double heightOfContrastMm(double contrast, double pitchMm) {
        return lowest(height -> leastToGreatest(pitchMm, height) * (1 + contrast) - 1, pitchMm);
    }

    private static double lowest(DoubleUnaryOperator over, double pitchMm) {
        return root(over, pitchMm * WIDEST, pitchMm / WIDEST);
    }
}
