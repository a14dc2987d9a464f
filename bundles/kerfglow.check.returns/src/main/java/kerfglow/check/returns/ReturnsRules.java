// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.returns;

import java.util.List;
import kerfglow.api.Rule;
import kerfglow.api.Severity;

/** What the check of returns can report. */
final class ReturnsRules {
    static final Rule TIGHT_RADIUS = new Rule("returns.tight-radius", Severity.STOP,
            "A curve is tighter than the bender rolls",
            "The strip kinks, cracks its paint, or leaves the line, and the face no longer goes on.",
            "Open the curve to the radius that is wanted, draw it as a corner to be folded, or form it by hand.",
            "geometry: radius of the outline, less the strip's thickness where the strip lies on the inside of the curve");
    static final Rule SHORT_FLANGE = new Rule("returns.short-flange", Severity.REVIEW,
            "Two folds stand closer than the least flange",
            "The bender cannot hold what is left between two folds; the second one opens the first.",
            "Move the corners apart, take one away, or set the short side on as a piece of its own.",
            "common practice, no source: four thicknesses and the inside radius of the fold, unless the shop gives its own");
    static final Rule SHARP_BEND = new Rule("returns.sharp-bend", Severity.REVIEW,
            "A corner is sharper than the bender makes",
            "The strip springs back or breaks on the notch; two strips have to meet in the corner instead.",
            "Blunt the corner, or plan a seam in it.",
            "common practice, no source");
    static final Rule NARROW_CHANNEL = new Rule("returns.narrow-channel", Severity.REVIEW,
            "Two runs of one strip stand closer than the arm of the bender is wide",
            "The arm that forms the strip stands between what it has already formed and cannot get out, or in.",
            "Open the channel, or form the strip in two pieces with a seam outside the channel.",
            "geometry: width between opposite walls of one contour");
    static final Rule SMALL_COUNTER = new Rule("returns.small-counter", Severity.REVIEW,
            "A counter is too small to form a strip in",
            "Neither tool nor hand gets into it, and the ends of so short a strip cannot be joined.",
            "Open the counter, close it, or leave it without a return.",
            "common practice, no source");
    static final Rule COIL = new Rule("returns.coil", Severity.REVIEW,
            "No stocked coil makes the strip in one piece",
            "A strip longer than the coil needs another joint; one deeper than the coil is wide cannot be made from it at all.",
            "Plan a further joint, order a coil that is long and wide enough, or change the depth.",
            "geometry: developed length and depth against the coil");

    static final List<Rule> ALL = List.of(TIGHT_RADIUS, SHORT_FLANGE, SHARP_BEND, NARROW_CHANNEL, SMALL_COUNTER, COIL);

    private ReturnsRules() {
    }
}
