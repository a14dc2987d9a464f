// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.closeup;

import java.util.Locale;

/**
 * A scale as drawings state it.
 *
 * @param factor size on the screen divided by size on the sign
 */
public record Scale(double factor) {
    /** ISO 5455, recommended scales, enlargement to reduction; beyond 50 the series goes on. */
    private static final double[] SERIES = {100, 50, 20, 10, 5, 2, 1, 1 / 2.0, 1 / 5.0, 1 / 10.0, 1 / 20.0, 1 / 50.0, 1 / 100.0, 1 / 200.0, 1 / 500.0, 1 / 1000.0};

    public Scale {
        if (!(factor > 0 && Double.isFinite(factor))) {
            throw new IllegalArgumentException("a scale must be above 0: " + factor);
        }
    }

    /** The largest scale of the series at which a length on the sign fits on the screen; the smallest one when none does. */
    public static Scale showing(double signMm, double screenMm) {
        for (double factor : SERIES) {
            if (signMm * factor <= screenMm) {
                return new Scale(factor);
            }
        }
        return new Scale(SERIES[SERIES.length - 1]);
    }

    private static String trimmed(double number) {
        return String.format(Locale.ROOT, "%.1f", number).replaceAll("\\.0$", "");
    }

    /** {@code 5 : 1} or {@code 1 : 20}. */
    @Override
    public String toString() {
        return factor >= 1 ? trimmed(factor) + " : 1" : "1 : " + trimmed(1 / factor);
    }
}
