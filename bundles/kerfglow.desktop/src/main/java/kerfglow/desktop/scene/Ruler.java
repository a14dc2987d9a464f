// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.scene;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import kerfglow.api.UnitSystem;
import kerfglow.api.Units;

/** Where the marks of a ruler stand, in round steps of the job's units: 1, 2, 5, 10... mm, or fractions of an inch, inches and feet. */
public final class Ruler {
    /**
     * One mark.
     *
     * @param atMm where it stands
     * @param label what is written at it, empty at a mark between two figures
     */
    public record Mark(double atMm, String label) {
    }

    /** Steps between figures on a rule in inches, in inches; the last ones are 1, 5, 10... ft. */
    private static final double[] INCH_STEPS = {1.0 / 64, 1.0 / 16, 1.0 / 8, 1.0 / 4, 1.0 / 2, 1, 2, 6, 12, 24, 60, 120, 240, 600, 1200};
    private static final int INCHES_PER_FOOT = 12;
    private static final double MM_PER_M = 1000;

    private Ruler() {
    }

    /**
     * The marks from one end to the other.
     *
     * @param fromMm where the rule begins
     * @param toMm where it ends
     * @param leastMm least distance between two figures, above 0
     * @param units what it is figured in
     */
    public static List<Mark> marks(double fromMm, double toMm, double leastMm, UnitSystem units) {
        double stepMm = units == UnitSystem.INCH ? inchStep(leastMm / Units.MM_PER_INCH) * Units.MM_PER_INCH : decimalStep(leastMm);
        int parts = units == UnitSystem.INCH ? 4 : 5;
        List<Mark> marks = new ArrayList<>();
        double smallMm = stepMm / parts;
        for (long i = (long) Math.ceil(fromMm / smallMm); i * smallMm <= toMm; i++) {
            marks.add(new Mark(i * smallMm, Math.floorMod(i, parts) == 0 ? label(i / parts * stepMm, stepMm, units) : ""));
        }
        return marks;
    }

    /** The least of 1, 2, 5, 10... that is not below a value. */
    static double decimalStep(double least) {
        double power = Math.pow(10, Math.floor(Math.log10(least)));
        for (double digit : new double[] {1, 2, 5}) {
            if (digit * power >= least * (1 - 1e-9)) {
                return digit * power;
            }
        }
        return 10 * power;
    }

    static double inchStep(double least) {
        for (double step : INCH_STEPS) {
            if (step >= least * (1 - 1e-9)) {
                return step;
            }
        }
        return INCHES_PER_FOOT * decimalStep(least / INCHES_PER_FOOT);
    }

    private static String label(double mm, double stepMm, UnitSystem units) {
        if (units == UnitSystem.INCH) {
            double inches = mm / Units.MM_PER_INCH;
            return stepMm >= INCHES_PER_FOOT * Units.MM_PER_INCH * (1 - 1e-9) ? trimmed(inches / INCHES_PER_FOOT) + "\u2032" : trimmed(inches) + "\u2033";
        }
        return stepMm >= MM_PER_M ? trimmed(mm / MM_PER_M) + " m" : trimmed(mm);
    }

    private static String trimmed(double value) {
        String text = String.format(Locale.ROOT, "%.6f", value).replaceAll("0+$", "").replaceAll("\\.$", "");
        return text.equals("-0") ? "0" : text;
    }
}
