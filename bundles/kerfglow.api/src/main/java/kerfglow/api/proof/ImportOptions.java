// SPDX-License-Identifier: Apache-2.0
package kerfglow.api.proof;

import java.util.function.DoubleConsumer;

/**
 * How a file is read.
 *
 * @param scale how many times larger the sign is than the file says, above 0; 1 for a file at real size
 * @param unitsPerInch user units in an inch where the file says nothing else; 96 by CSS, 72 or 90 from some older programs
 * @param chordErrorMm how far a flattened curve may lie from the true one, mm at real size, above 0
 * @param progress told the fraction done, 0 to 1, now and then; may throw {@link java.util.concurrent.CancellationException}
 */
public record ImportOptions(double scale, double unitsPerInch, double chordErrorMm, DoubleConsumer progress) {
    /** CSS Values and Units: 1 in = 96 px. */
    public static final double CSS_UNITS_PER_INCH = 96;
    /** Assumed: finer than a router positions (about 0.01 to 0.05 mm, common practice), coarse enough for long scripts. */
    public static final double DEFAULT_CHORD_ERROR_MM = 0.02;

    public ImportOptions {
        requirePositive("scale", scale);
        requirePositive("units per inch", unitsPerInch);
        requirePositive("chord error", chordErrorMm);
    }

    /** A file at real size, read with the defaults. */
    public static ImportOptions defaults() {
        return new ImportOptions(1, CSS_UNITS_PER_INCH, DEFAULT_CHORD_ERROR_MM, fraction -> { });
    }

    public ImportOptions withScale(double value) {
        return new ImportOptions(value, unitsPerInch, chordErrorMm, progress);
    }

    public ImportOptions withChordErrorMm(double value) {
        return new ImportOptions(scale, unitsPerInch, value, progress);
    }

    public ImportOptions withUnitsPerInch(double value) {
        return new ImportOptions(scale, value, chordErrorMm, progress);
    }

    public ImportOptions withProgress(DoubleConsumer value) {
        return new ImportOptions(scale, unitsPerInch, chordErrorMm, value);
    }

    private static void requirePositive(String name, double value) {
        if (!(value > 0 && value < Double.POSITIVE_INFINITY)) { // also refuses NaN
            throw new IllegalArgumentException(name + " must be above 0 and finite: " + value);
        }
    }
}
