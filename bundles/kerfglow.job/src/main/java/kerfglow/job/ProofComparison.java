// SPDX-License-Identifier: Apache-2.0
package kerfglow.job;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import kerfglow.host.Result;
import org.locationtech.jts.geom.util.AffineTransformation;

/**
 * Two revisions of a proof: what changed in the outlines, which findings are gone, new or the same, and which marks still stand. Both are held
 * against each other in their best rigid alignment.
 */
public final class ProofComparison {
    private final AffineTransformation motion;
    private final List<OutlineChange> outlines;
    private final List<FindingChange> findings;
    private final List<MarkStand> marks;

    /**
     * What became of a finding.
     *
     * @param kind gone, new or the same
     * @param before the old finding; absent when it is new
     * @param after the new finding; absent when it is gone
     * @param morePlaces of the new finding, places that were none before
     * @param fewerPlaces of the old finding, places that are none any more
     */
    public record FindingChange(Kind kind, Optional<SeenFinding> before, Optional<SeenFinding> after, int morePlaces, int fewerPlaces) {
        /** What became of it. */
        public enum Kind { SAME, NEW, GONE }
    }

    /**
     * What became of a mark.
     *
     * @param mark the mark where it is on the new revision
     * @param stands true when the outlines around it are as they were
     */
    public record MarkStand(Mark mark, boolean stands) {
    }

    private ProofComparison(Snapshot old, Snapshot young, List<Mark> marks, AffineTransformation motion) {
        this.motion = motion;
        Snapshot before = old.moved(motion);
        this.outlines = List.copyOf(new OutlineMatch(before, young).changes());
        this.findings = findings(before.findings(), young.findings());
        this.marks = marks.isEmpty() ? List.of() : stands(new MarkGround(before, young), marks, motion);
    }

    private static List<MarkStand> stands(MarkGround ground, List<Mark> marks, AffineTransformation motion) {
        return marks.stream().map(mark -> mark.moved(motion, mark.proofSha256())).map(mark -> new MarkStand(mark, ground.isUnchanged(mark))).toList();
    }

    /**
     * Compares.
     *
     * @param old the old revision
     * @param young the new revision
     * @param marks made on the old one
     */
    public static ProofComparison of(Snapshot old, Snapshot young, List<Mark> marks) {
        return new ProofComparison(old, young, marks, Alignment.best(old, young));
    }

    /** Compares two runs. */
    public static ProofComparison of(Result old, Result young, List<Mark> marks) {
        return of(Snapshot.of(old), Snapshot.of(young), marks);
    }

    private static List<FindingChange> findings(List<SeenFinding> old, List<SeenFinding> young) {
        FindingMatch match = FindingMatch.of(old, young);
        List<FindingChange> changes = new ArrayList<>();
        boolean[] found = new boolean[old.size()];
        for (int i = 0; i < young.size(); i++) {
            List<FindingMatch.Spot> spots = FindingMatch.spots(i, young.get(i));
            List<FindingMatch.Spot> before = spots.stream().flatMap(spot -> match.old(spot).stream()).toList();
            before.forEach(spot -> found[spot.finding()] = true);
            if (before.isEmpty()) {
                changes.add(new FindingChange(FindingChange.Kind.NEW, Optional.empty(), Optional.of(young.get(i)), spots.size(), 0));
                continue;
            }
            int index = before.get(0).finding();
            int gone = (int) FindingMatch.spots(index, old.get(index)).stream().filter(spot -> match.young(spot).isEmpty()).count();
            changes.add(new FindingChange(FindingChange.Kind.SAME, Optional.of(old.get(index)), Optional.of(young.get(i)), spots.size() - before.size(), gone));
        }
        for (int i = 0; i < old.size(); i++) {
            if (!found[i]) {
                changes.add(new FindingChange(FindingChange.Kind.GONE, Optional.of(old.get(i)), Optional.empty(), 0, FindingMatch.spots(i, old.get(i)).size()));
            }
        }
        return List.copyOf(changes);
    }

    /** Takes the old revision onto the new one, to show them over each other; a new object each time. */
    public AffineTransformation motion() {
        return new AffineTransformation(motion);
    }

    /** True when the two lie on each other as they are. */
    public boolean liesAsItWas() {
        return motion.isIdentity();
    }

    /** Outlines that changed, moved, came or went; empty when all are as they were. */
    public List<OutlineChange> outlines() {
        return outlines;
    }

    /** Every finding of either revision: those of the new one in its order, then those that are gone. */
    public List<FindingChange> findings() {
        return findings;
    }

    /** Those of one kind. */
    public List<FindingChange> findings(FindingChange.Kind kind) {
        return findings.stream().filter(each -> each.kind() == kind).toList();
    }

    /** Every mark, in the order given. */
    public List<MarkStand> marks() {
        return marks;
    }
}
