// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.artwork;

import java.util.ArrayList;
import java.util.List;
import kerfglow.api.Check;
import kerfglow.api.CheckInfo;
import kerfglow.api.Finding;
import kerfglow.api.Inspection;
import kerfglow.api.Outcome;
import kerfglow.api.Rule;
import kerfglow.api.Setting;
import kerfglow.api.SharedSettings;
import org.osgi.service.component.annotations.Component;

/** Looks for what is wrong with the drawing itself, before any machine: whether it says clearly what is to be made. */
@Component
public final class ArtworkCheck implements Check {
    private static final List<Rule> RULES = List.of(NothingDrawn.RULE, OpenOutlines.OPEN, OpenOutlines.NEARLY, OpenOutlines.PIECES, Doubled.WHOLE,
            Doubled.STRETCH, Crossings.SELF, Crossings.CROSSING, Crossings.OVERLAP, Swallowed.RULE, NeedlessNodes.RULE, Specks.STRAY,
            Specks.TINY, NotCuttable.TEXT, NotCuttable.SUBSTITUTED, NotCuttable.STROKE, NotCuttable.CUT_LINE,
            NotCuttable.IMAGE, NotCuttable.MASK, NotCuttable.EFFECT, Unseen.RULE, OffPage.WHOLLY, OffPage.PARTLY, Unassigned.RULE, SignSize.IMPLAUSIBLE, SignSize.ASSUMED,
            KnockOut.RULE, NotTakenOver.LEFT_OUT, NotTakenOver.BAD_VALUE);
    private static final List<Setting<?>> SETTINGS = List.of(SharedSettings.HAIRLINE, OpenOutlines.NEAR_ENDS, OpenOutlines.CLOSED_WITHIN,
            Doubled.WITHIN, Doubled.LEAST, Doubled.ANGLE, Crossings.DEPTH, NeedlessNodes.TOLERANCE, NeedlessNodes.LEAST,
            NeedlessNodes.SHARE, Specks.LEAST_SIZE, OffPage.MARGIN, SignSize.LEAST, SignSize.GREATEST, KnockOut.LIGHTNESS,
            Gatherer.LIST_AT_MOST);

    // Shares of the work, measured on a proof of 2,000 elements and 500,000 points; they only steer the progress bar.
    private static final double AFTER_READING = 0.1;
    static final double AFTER_PAIRS = 0.6;
    private static final double AFTER_NODES = 0.9;

    private final CheckInfo info = new CheckInfo("artwork", "faults of the drawing itself", RULES, SETTINGS, List.of(), List.of(),
            CheckInfo.page(ArtworkCheck.class, "page.md"));

    @Override
    public CheckInfo info() {
        return info;
    }

    @Override
    public Outcome inspect(Inspection inspection) {
        inspection.checkpoint(0);
        Artwork artwork = new Artwork(inspection);
        inspection.checkpoint(AFTER_READING);
        Copies copies = new Copies(artwork.contours());
        List<NearPair> pairs = NearPairs.find(artwork, copies.originals(), inspection.settings().get(Doubled.WITHIN),
                inspection.settings().get(Doubled.ANGLE), AFTER_READING, AFTER_PAIRS);
        List<Finding> findings = new ArrayList<>();
        findings.addAll(NothingDrawn.find(artwork));
        findings.addAll(OpenOutlines.find(artwork));
        findings.addAll(Doubled.find(artwork, copies, pairs));
        findings.addAll(Crossings.find(artwork, pairs));
        findings.addAll(Swallowed.find(artwork, copies, pairs));
        findings.addAll(NeedlessNodes.find(artwork, AFTER_PAIRS, AFTER_NODES));
        findings.addAll(Specks.find(artwork));
        findings.addAll(NotCuttable.find(artwork));
        findings.addAll(Unseen.find(artwork));
        findings.addAll(OffPage.find(artwork));
        findings.addAll(Unassigned.find(artwork));
        findings.addAll(SignSize.find(artwork));
        findings.addAll(KnockOut.find(artwork));
        findings.addAll(NotTakenOver.find(artwork));
        inspection.checkpoint(1);
        return Outcome.of(findings);
    }
}
