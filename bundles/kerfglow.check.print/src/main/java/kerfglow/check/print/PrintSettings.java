// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.print;

import java.util.List;
import kerfglow.api.Quantity;
import kerfglow.api.Setting;
import kerfglow.api.Units;

/** What the print check can be told. */
final class PrintSettings {
    static final Setting<Double> VIEWING_DISTANCE = Setting.lengthMm("print.viewing-distance",
            "how near people come to look at the print, 0 for not given", 0.0, 0, 1e6,
            "only the job knows; without it sharpness is not compared", "the job sheet");
    static final Setting<Double> ACUITY = Setting.number("print.acuity", "decimal acuity of the eyes that look, 1 for 20/20", Quantity.RATIO,
            1.0, 0.1, 3, "the usual meaning of normal sight: two points one minute of arc apart are told apart", "arithmetic of visual acuity");
    static final Setting<Double> BLEED = Setting.lengthMm("print.bleed", "how far print must reach beyond the contour that is cut",
            0.15 * Units.MM_PER_INCH, 0, 100, "the blade and the lamination wander; without bleed a white edge shows",
            "one print shop's page asks 0.15 to 0.25 in for decals; no standard");
    static final List<Setting<?>> ALL = List.of(VIEWING_DISTANCE, ACUITY, BLEED);

    private PrintSettings() {
    }
}
