// SPDX-License-Identifier: Apache-2.0
package kerfglow.light;

/**
 * Smooths a map along its rows and then along its columns. A run of cells inside the outline is smoothed by itself, with the weights that
 * fall outside shared among the others: nothing passes through a wall, and what is even stays even.
 */
final class Smoothing {
    /** Beyond this many sigmas a Gaussian is left out: a ten-thousandth of its sum. */
    private static final double GAUSSIAN_REACH = 3.9;

    private Smoothing() {
    }

    /** By a Gaussian, sigma in cells; 0 changes nothing. */
    static double[] gaussian(Grid grid, boolean[] inside, double[] values, double sigma) {
        if (sigma <= 0) {
            return values;
        }
        double[] half = new double[1 + (int) Math.ceil(GAUSSIAN_REACH * sigma)];
        for (int i = 0; i < half.length; i++) {
            half[i] = Math.exp(-i * i / (2 * sigma * sigma));
        }
        return both(grid, inside, values, half);
    }

    /** By the mean over a square; width in cells. */
    static double[] box(Grid grid, boolean[] inside, double[] values, double width) {
        double[] half = new double[1 + (int) Math.floor(width / 2 + 0.5)];
        for (int i = 0; i < half.length; i++) {
            half[i] = Math.min(1, width / 2 + 0.5 - i);
        }
        return both(grid, inside, values, half);
    }

    private static double[] both(Grid grid, boolean[] inside, double[] values, double[] half) {
        double[] once = along(inside, values, half, grid.rows(), grid.columns(), grid.columns(), 1);
        return along(inside, once, half, grid.columns(), grid.rows(), 1, grid.columns());
    }

    private static double[] along(boolean[] inside, double[] values, double[] half, int lines, int length, int lineStep, int step) {
        double[] smooth = new double[values.length];
        double[] sums = new double[half.length + 1]; // weights of one side, from the centre outwards
        sums[0] = 0;
        for (int i = 0; i < half.length; i++) {
            sums[i + 1] = sums[i] + half[i];
        }
        for (int line = 0; line < lines; line++) {
            int start = line * lineStep;
            for (int from = 0; from < length;) {
                if (!inside[start + from * step]) {
                    from++;
                    continue;
                }
                int to = from;
                while (to < length && inside[start + to * step]) {
                    to++;
                }
                for (int i = from; i < to; i++) {
                    int before = Math.min(half.length - 1, i - from);
                    int after = Math.min(half.length - 1, to - 1 - i);
                    double sum = 0;
                    for (int k = -before; k <= after; k++) {
                        sum += half[Math.abs(k)] * values[start + (i + k) * step];
                    }
                    smooth[start + i * step] = sum / (sums[before + 1] + sums[after + 1] - half[0]);
                }
                from = to;
            }
        }
        return smooth;
    }
}
