// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.trim;

import java.util.List;
import kerfglow.api.Rule;
import kerfglow.api.Severity;

/** What the trim check can report. */
final class TrimRules {
    static final Rule LITTLE_LIT = new Rule("trim.little-lit", Severity.REVIEW,
            "Little of a stroke stays lit between the lips of its edge moulding",
            "The moulding covers a lip's width on both edges. A thin stroke is then a dark line at night, and the letter reads as another.",
            "Widen the stroke, use a moulding with a narrower lip, or leave the moulding off.",
            "geometry: local width less two lips");
    static final Rule TIGHT_CURVE = new Rule("trim.tight-curve", Severity.REVIEW,
            "A curve is tighter than the edge moulding follows",
            "Bent tighter than it allows, the moulding kinks, turns white or lifts off the edge.",
            "Open the radius, make it a sharp corner and notch the moulding there, or use a softer moulding.",
            "common practice, no source");
    static final Rule LENGTH = new Rule("trim.length", Severity.INFO,
            "How much edge moulding the faces take",
            "Every closed edge needs a length of its own and has a joint where the ends meet.",
            "Put the joints where they are seen least: below, or in a corner.",
            "geometry");

    static final List<Rule> ALL = List.of(LITTLE_LIT, TIGHT_CURVE, LENGTH);

    private TrimRules() {
    }
}
