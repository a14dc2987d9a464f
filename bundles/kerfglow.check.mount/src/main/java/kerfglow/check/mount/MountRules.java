// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.mount;

import java.util.List;
import kerfglow.api.Rule;
import kerfglow.api.Severity;

/** What the check of mounting can report. */
final class MountRules {
    /** Stands wherever these numbers are shown. */
    static final String CAUTION = "An estimate for planning, no design: the local building code governs, and a licensed engineer decides on fixings and structure.";

    static final Rule WEIGHT = new Rule("mount.weight", Severity.INFO,
            "What the sign weighs, as an estimate",
            "Fixings, lifting gear and the wall are chosen by the weight, and a part hangs straight when it is held about its centre of mass.",
            "Add what is not counted (mount.extra-mass), and have a licensed engineer choose the fixings.",
            "geometry: area or developed length by thickness by density; densities as each setting says");
    static final Rule WIND = new Rule("mount.wind", Severity.INFO,
            "What the wind may press on the sign with, as an estimate",
            "On most outdoor signs the wind, not the weight, decides how many fixings there are and how deep they go.",
            "Have a licensed engineer check it by the code that governs where the sign hangs.",
            "force = pressure x force coefficient x area; pressure by EN 1991-1-4 or ASCE 7 as the settings say");

    static final List<Rule> ALL = List.of(WEIGHT, WIND);

    private MountRules() {
    }
}
