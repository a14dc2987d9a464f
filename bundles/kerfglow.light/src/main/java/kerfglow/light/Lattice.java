// SPDX-License-Identifier: Apache-2.0
package kerfglow.light;

/**
 * Directions spread evenly, with no chance in them: each is told by a share 0..1 that stands for the part of the light below it.
 * Tables hold a direction for the middle of each of equal parts.
 */
final class Lattice {
    /** Entries of a table; finer than any number of directions taken from it. */
    private static final int ENTRIES = 512;
    /** The golden ratio less one: its multiples fall most evenly. */
    private static final double STEP = (Math.sqrt(5) - 1) / 2;
    /** Another irrational number, so that the two patterns do not march together. */
    private static final double OTHER_STEP = Math.sqrt(2) - 1;

    private final double[] values;

    private interface Rule {
        double at(double share);
    }

    private Lattice(Rule rule) {
        values = new double[ENTRIES];
        for (int i = 0; i < ENTRIES; i++) {
            values[i] = rule.at((i + 0.5) / ENTRIES);
        }
    }

    /** The k-th shift of a pattern, 0 up to, not including, 1. */
    static double shift(int k) {
        double value = 0.5 + k * STEP;
        return value - Math.floor(value);
    }

    /** The k-th shift of a second pattern, which has nothing to do with the first. */
    static double otherShift(int k) {
        double value = 0.5 + k * OTHER_STEP;
        return value - Math.floor(value);
    }

    /** Of a level surface: how far a diffuse ray goes sideways while it goes one up; sin² of its angle is even. */
    static Lattice level() {
        return new Lattice(share -> Math.sqrt(share / (1 - share)));
    }

    /** Of an emitter with intensity cos^m, likewise; 1 - cos^(m + 1) of its angle is even. */
    static Lattice emitter(double exponent) {
        return new Lattice(share -> {
            double cos = Math.pow(1 - share, 1 / (exponent + 1));
            return Math.sqrt(1 - cos * cos) / cos;
        });
    }

    /** Of an upright surface: how far a diffuse ray goes up while it goes one sideways; angle + sin cos is even. */
    static Lattice upright() {
        return new Lattice(share -> {
            double low = -Math.PI / 2;
            double high = Math.PI / 2;
            for (int i = 0; i < Double.SIZE; i++) {
                double middle = (low + high) / 2;
                if ((middle + Math.sin(middle) * Math.cos(middle)) / Math.PI + 0.5 < share) {
                    low = middle;
                } else {
                    high = middle;
                }
            }
            return Math.tan((low + high) / 2);
        });
    }

    double at(double share) {
        return values[(int) (share * ENTRIES)];
    }
}
