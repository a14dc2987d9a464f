// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.fit;

import java.util.List;
import kerfglow.api.Quantity;
import kerfglow.api.Setting;
import kerfglow.api.SharedSettings;
import kerfglow.api.Units;

/** What the fit check can be told, apart from temperatures and materials ({@link ThermalSettings}). */
final class FitSettings {
    static final String ASSIGNED = "assigned";
    static final String EVERY = "all";
    static final String NONE = "none";

    private static final String PRACTICE = "common practice, no source";

    static final Setting<Double> PUSH_THROUGH_ALLOWANCE = Setting.lengthMm("fit.push-through-allowance",
            "how much smaller a push-through is than its opening", Units.MM_PER_INCH / 16, 0, 200,
            "1/16 in overall, 1/32 in a side: it goes in by hand and the gap does not show", PRACTICE);
    static final Setting<Double> TOLERANCE = Setting.lengthMm("fit.tolerance", "how far the clearance on a side may depart", 0.5, 0, 50,
            "about 1/64 in, what a router places and a bender holds", PRACTICE);
    static final Setting<String> MAKE_BACKS = Setting.choice("fit.make-backs", "for which faces backs are made where none are drawn",
            ASSIGNED, List.of(ASSIGNED, EVERY, NONE),
            "a shape that counts as a face for want of better may have no can at all; flat cut letters have none: say none for them",
            "Assumed: a job that says which shapes are faces wants them checked");
    static final Setting<Double> TIP_LENGTH = Setting.lengthMm("fit.tip-length",
            "how far a tip may run out in front of the back, 0 for three total allowances", 0.0, 0, 1000,
            "three allowances are what a straight tip of 19 degrees needs; tips as sharp are drawn to be seen and have no can in them", PRACTICE);
    static final Setting<Double> FACING_ANGLE = Setting.number("fit.facing-angle", "how far walls may lean and still make a stroke",
            Quantity.ANGLE, 30.0, 1, 89, "walls that lean more form a corner, and a corner loses no stroke",
            "Assumed: between the sharpest serif tips (about 20) and the sharpest common corners of capitals (about 35)");
    static final Setting<Double> MISSED_LENGTH = Setting.lengthMm("fit.missed-length", "how long an edge of the face may be without back near it",
            10.0, 0.1, 1000, "shorter stretches are corners of the back that were rounded or cut", PRACTICE);
    static final Setting<Double> HOLE_SIZE = Setting.lengthMm("fit.hole-size", "how wide a hole of the back may be where the face has none",
            25.4, 0, 1000, "wire and stud holes are drawn in backs and are no counters; 1 in passes the usual conduit", PRACTICE);
    static final List<Setting<?>> ALL = List.of(SharedSettings.BACK_ALLOWANCE, PUSH_THROUGH_ALLOWANCE, SharedSettings.BACK_ALLOWANCE_KIND, TOLERANCE,
            MAKE_BACKS, SharedSettings.BACK_JOINS, SharedSettings.BACK_MITRE_LIMIT,
            TIP_LENGTH, FACING_ANGLE, MISSED_LENGTH, HOLE_SIZE);

    private FitSettings() {
    }
}
