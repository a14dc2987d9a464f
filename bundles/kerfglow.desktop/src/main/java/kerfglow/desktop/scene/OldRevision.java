// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.scene;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import kerfglow.job.OutlineChange;
import kerfglow.job.ProofComparison;
import kerfglow.job.Snapshot;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;

/**
 * The revision before, prepared for drawing where it lies best on the new one.
 *
 * @param outlines every outline of it
 * @param changes what belongs to one of the two revisions only
 * @param gone where findings were that are no more, bounds of each place, mm
 * @param extent bounds of the outlines, mm; null envelope when there are none
 */
public record OldRevision(List<Line> outlines, List<Line> changes, List<Envelope> gone, Envelope extent) {
    /** No revision before. */
    public static final OldRevision NONE = new OldRevision(List.of(), List.of(), List.of(), new Envelope());

    /** Between two revisions that stand beside each other, of the new page's size: enough to tell them apart. */
    private static final double GAP_SHARE = 0.06;

    /**
     * One shape.
     *
     * @param outlines its rings
     * @param extent bounds, mm
     * @param changed true when it is no longer there, or is another
     */
    public record Line(Outlines outlines, Envelope extent, boolean changed) {
        private static Line of(Geometry shape, boolean changed) {
            return new Line(Outlines.of(shape), shape.getEnvelopeInternal(), changed);
        }
    }

    public OldRevision {
        outlines = List.copyOf(outlines);
        changes = List.copyOf(changes);
        gone = List.copyOf(gone);
    }

    /** Prepares what the job was last seen with. */
    public static OldRevision of(Snapshot before, ProofComparison comparison) {
        Set<String> changed = new HashSet<>();
        comparison.outlines().forEach(change -> change.before().ifPresent(changed::add));
        List<Line> outlines = new ArrayList<>();
        Envelope extent = new Envelope();
        for (Snapshot.Outline outline : before.outlines()) {
            Line line = Line.of(comparison.motion().transform(outline.shape()), changed.contains(outline.part()));
            outlines.add(line);
            extent.expandToInclude(line.extent());
        }
        return new OldRevision(outlines, comparison.outlines().stream().map(OutlineChange::where).filter(where -> !where.isEmpty()).map(where -> Line.of(where, true)).toList(),
                comparison.findings(ProofComparison.FindingChange.Kind.GONE).stream().flatMap(change -> change.before().orElseThrow().places().stream())
                        .map(place -> place.shape().getEnvelopeInternal()).toList(), extent);
    }

    public boolean isEmpty() {
        return outlines.isEmpty();
    }

    /**
     * How far it is shifted to stand beside the new one, mm: below a wide proof, to the right of a tall one, so that both are seen large.
     *
     * @param young what the new revision takes up, mm
     */
    public Coordinate besides(Envelope young) {
        if (young.getWidth() >= young.getHeight()) {
            return new Coordinate(0, young.getMaxY() - Math.min(extent.getMinY(), young.getMinY()) + young.getHeight() * GAP_SHARE);
        }
        return new Coordinate(young.getMaxX() - Math.min(extent.getMinX(), young.getMinX()) + young.getWidth() * GAP_SHARE, 0);
    }

    /** Where a place of it is drawn, mm. */
    public Envelope seenAt(Envelope place, boolean beside, Envelope young) {
        Envelope seen = new Envelope(place);
        if (beside) {
            Coordinate by = besides(young);
            seen.translate(by.x, by.y);
        }
        return seen;
    }

    /** Both beside each other, mm. */
    public Envelope both(Envelope young) {
        Envelope both = new Envelope(young);
        if (!isEmpty()) {
            Envelope shifted = new Envelope(extent);
            Coordinate by = besides(young);
            shifted.translate(by.x, by.y);
            both.expandToInclude(shifted);
        }
        return both;
    }
}
