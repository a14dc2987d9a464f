// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.fit;

import kerfglow.api.Inspection;
import kerfglow.api.Setting;
import kerfglow.api.SharedSettings;
import kerfglow.api.proof.Part;

/**
 * How much smaller the inner part is than the outer one.
 *
 * @param sideMm on one side, mm: the clearance wanted
 * @param toleranceMm how far the clearance may depart, mm
 * @param inTotal true when the shop states it for both sides together
 */
record Allowance(double sideMm, double toleranceMm, boolean inTotal) {
    static Allowance of(Inspection inspection, Setting<Double> setting, Part outer) {
        double given = inspection.settings().get(setting, outer);
        boolean total = inspection.settings().get(SharedSettings.BACK_ALLOWANCE_KIND, outer).equals(SharedSettings.IN_TOTAL);
        return new Allowance(total ? given / 2 : given, inspection.settings().get(FitSettings.TOLERANCE, outer), total);
    }

    double totalMm() {
        return 2 * sideMm;
    }

    /** The allowance as the shop states it, and as the other kind. */
    String words(Inspection inspection) {
        String total = inspection.length(totalMm()) + " in total";
        String side = inspection.length(sideMm) + " a side";
        return inTotal ? total + " (" + side + ")" : side + " (" + total + ")";
    }
}
