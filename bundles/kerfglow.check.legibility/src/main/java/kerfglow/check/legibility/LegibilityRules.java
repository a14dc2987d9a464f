// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.legibility;

import java.util.List;
import kerfglow.api.Rule;
import kerfglow.api.Severity;

/** What the legibility check can report. */
final class LegibilityRules {
    private static final String NAMED = "the reading rule that the job names; a planning value";
    static final Rule TOO_SMALL = new Rule("legibility.too-small", Severity.REVIEW, "A line cannot be read from where it must be",
            "On the wall the line is there and nobody reads it; on a road it draws the eye for longer than is safe.",
            "Make the line larger, leave words out, or ask from where it really must be read.", NAMED);
    static final Rule STROKE = new Rule("legibility.stroke", Severity.REVIEW, "Strokes are too thin or too heavy for their height",
            "Thin strokes vanish at a distance and heavy ones fill the counters.",
            "Use another weight of the face.", NAMED);
    static final Rule SPACING = new Rule("legibility.spacing", Severity.REVIEW, "Letters stand too close together or too far apart",
            "Close letters run into one another at a distance, most of all when lit; wide ones fall apart.",
            "Change the letter spacing of the line.", NAMED);
    static final Rule CONTRAST = new Rule("legibility.contrast", Severity.REVIEW, "Lettering stands out too little from what lies behind it",
            "Without contrast no height helps.",
            "Change one of the two colours, or put an outline of a third between them.",
            "WCAG 2.2, relative luminance and contrast ratio; written for screens, for signs a stand-in");
    static final Rule LINE = new Rule("legibility.line", Severity.INFO, "A line of lettering and its heights",
            "Quotes, reading distances and permits go by letter height.",
            "Compare it with the letter heights that were agreed.", "geometry: measured from the outlines");

    static final List<Rule> ALL = List.of(TOO_SMALL, STROKE, SPACING, CONTRAST, LINE);

    private LegibilityRules() {
    }
}
