// SPDX-License-Identifier: Apache-2.0
package kerfglow.job;

import java.util.Arrays;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;

/**
 * Whether what marks are about is as it was: the outlines within 5 mm of a mark, of both revisions in their best alignment, lie on each
 * other. A mark on bare ground stands as long as the ground stays bare.
 */
final class MarkGround {
    private final Snapshot before;
    private final Snapshot now;
    private final Edges beforeEdges;
    private final Edges nowEdges;
    private final double allowedMm;

    /**
     * Compares two revisions.
     *
     * @param before the old one, moved by the alignment
     * @param now the new one
     */
    MarkGround(Snapshot before, Snapshot now) {
        this.before = before;
        this.now = now;
        this.beforeEdges = Edges.of(before.outlines());
        this.nowEdges = Edges.of(now.outlines());
        this.allowedMm = OutlineChange.SAME_MM + before.resolutionMm() + now.resolutionMm();
    }

    /** True when it is; the mark where it is on the new revision. */
    boolean isUnchanged(Mark mark) {
        Geometry ground = mark.shape().outline().buffer(Alignment.NEAR_MM);
        return lieOn(ground, before, nowEdges) && lieOn(ground, now, beforeEdges);
    }

    private boolean lieOn(Geometry ground, Snapshot of, Edges edges) {
        Envelope extent = ground.getEnvelopeInternal();
        return of.outlines().stream().filter(outline -> outline.shape().getEnvelopeInternal().intersects(extent)).allMatch(outline -> {
            Geometry near = OverlayNGRobust.overlay(outline.shape().getBoundary(), ground, OverlayNG.INTERSECTION);
            return Arrays.stream(near.getCoordinates()).allMatch(point -> edges.nearest(point, allowedMm).isPresent());
        });
    }
}
