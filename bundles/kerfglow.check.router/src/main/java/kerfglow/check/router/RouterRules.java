// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.router;

import java.util.List;
import kerfglow.api.Rule;
import kerfglow.api.Severity;

/** What the router check can report. */
final class RouterRules {
    static final Rule NARROW_GAP = new Rule("router.narrow-gap", Severity.STOP,
            "The bit does not pass between two walls",
            "What stands in the gap is not cut away: the part stays joined across it, or the opening stays shut.",
            "Open the gap to the bit's diameter, close it altogether, or use a smaller bit that reaches through the sheet.",
            "geometry: the residue of an opening by a disc of the bit's diameter");
    static final Rule INSIDE_CORNER = new Rule("router.inside-corner", Severity.REVIEW,
            "The bit leaves an inside corner round",
            "A round bit leaves its own radius in every inside corner. What is left shows, and keeps an insert from seating.",
            "Accept the radius, draw it, use a smaller bit, or have the corner finished by hand.",
            "geometry: a straight corner of angle t keeps r (1 / sin(t / 2) - 1)");
    static final Rule THIN_STROKE = new Rule("router.thin-stroke", Severity.REVIEW,
            "A stroke is thinner than its material stands",
            "Thin strokes chatter and break under the bit, and later in handling; thin openings do not let the bit through.",
            "Make the stroke wider, or cut the part from a tougher material or with another process.",
            "common practice, no source");
    static final Rule SMALL_PART = new Rule("router.small-part", Severity.REVIEW,
            "A part is too small to be held by vacuum",
            "The last cut pushes a small part out of place: it is spoiled, or thrown by the bit.",
            "Leave tabs, hold it with tape or screws, or cut it from a larger blank.",
            "common practice, no source");
    static final Rule LOOSE_ISLAND = new Rule("router.loose-island", Severity.REVIEW,
            "A counter falls out of the panel",
            "Nothing holds the middle of a routed letter once its outline is cut through.",
            "Draw a bridge, mount the counter on what backs the panel, or make the letter push-through.",
            "geometry");
    static final Rule OPENING_OFF_PANEL = new Rule("router.opening-off-panel", Severity.REVIEW,
            "An opening does not lie wholly in a panel",
            "There is nothing to cut where no panel is: the opening was moved, or the panel made smaller, and the sign is not what was meant.",
            "Move the opening onto its panel, make the panel larger, or end the opening at the panel's edge where a notch is meant.",
            "geometry");
    static final Rule TOO_DEEP = new Rule("router.too-deep", Severity.STOP,
            "The stock is thicker than the bit can reach",
            "The shank rubs in the cut above the flutes; the cut burns, or the bit breaks.",
            "Use thinner stock, a bit with longer flutes, or a shape that a larger bit can cut.",
            "geometry: thickness against flute length");
    static final Rule BIT = new Rule("router.bit", Severity.INFO,
            "The largest stocked bit that cuts everything",
            "A larger bit cuts faster and stands longer; a smaller one leaves less in the inside corners.",
            "Choose the bit with the table of what each one leaves.",
            "geometry");

    static final List<Rule> ALL = List.of(NARROW_GAP, INSIDE_CORNER, THIN_STROKE, SMALL_PART, LOOSE_ISLAND, OPENING_OFF_PANEL,
            TOO_DEEP, BIT);

    private RouterRules() {
    }
}
