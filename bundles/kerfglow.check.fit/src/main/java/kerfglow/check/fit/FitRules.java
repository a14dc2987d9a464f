// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.fit;

import java.util.List;
import kerfglow.api.Rule;
import kerfglow.api.Severity;

/** What the fit check can report. */
final class FitRules {
    static final Rule CLEARANCE = new Rule("fit.clearance", Severity.STOP,
            "The clearance departs from the allowance",
            "Too tight, and the face does not go over the can; too loose, and it rattles and light leaks out at the edge.",
            "Move the edge of the back so that it stays the allowance inside the face.",
            "common practice, no source: 3/16 in overall");
    static final Rule MISSED_STROKE = new Rule("fit.missed-stroke", Severity.STOP,
            "An edge of the face has no back near it",
            "Where a stroke has no back there is nothing to fix the return to, and the letter stays open behind.",
            "Draw the missing part of the back, or a newer face was drawn than back: make the back again from the face.",
            "geometry");
    static final Rule UNPAIRED = new Rule("fit.unpaired", Severity.REVIEW,
            "A part has no partner",
            "A face without a back, or a back without a face, was forgotten, moved, or given the wrong role.",
            "Draw the partner, put it in its place, or give the part the role that it has.",
            "geometry");
    static final Rule COUNTER = new Rule("fit.counter", Severity.STOP,
            "A counter of the back does not grow as it must",
            "In a counter the back is on the outside: its counter must be larger than the face's, or the face does not go over the return "
                    + "of the counter.",
            "Offset the counter away from the letter's middle line, into the stroke, as far as the outline.",
            "geometry");
    static final Rule BACK_SPLITS = new Rule("fit.back-splits", Severity.REVIEW,
            "The back splits where the face is narrow",
            "The face is narrower there than the total allowance, so that the back comes in pieces and no return runs through.",
            "Widen the neck, use a smaller allowance, or build the letter in pieces and say so.",
            "geometry");
    static final Rule BACK_LOST = new Rule("fit.back-lost", Severity.STOP,
            "The back loses a stroke or vanishes",
            "The stroke is narrower than the total allowance: there is no room for a can behind it.",
            "Widen the stroke, use a smaller allowance, or let the face overhang there and say so.",
            "geometry");
    static final Rule THERMAL = new Rule("fit.thermal", Severity.STOP,
            "Thermal movement is more than the play that is left",
            "Face and can grow differently. When the play is used up the face binds and bows, cracks, or climbs out of its moulding.",
            "Allow more, split the face, use a material nearer to that of the can, or assemble nearer to the middle of the temperatures.",
            "geometry: the difference of the coefficients times length times the change of temperature; coefficients as each setting says");

    static final List<Rule> ALL = List.of(CLEARANCE, MISSED_STROKE, UNPAIRED, COUNTER, BACK_SPLITS, BACK_LOST, THERMAL);

    private FitRules() {
    }
}
