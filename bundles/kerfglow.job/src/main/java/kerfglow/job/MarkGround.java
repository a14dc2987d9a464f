// SPDX-License-Identifier: Apache-2.0
package kerfglow.job;

import java.util.Arrays;
import org.locationtech.jts.algorithm.locate.SimplePointInAreaLocator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Location;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;

/**
 * Whether what marks are about is as it was: the outlines within 5 mm of a mark, of both revisions in their best alignment, lie on each
 * other, and as many areas lie below it. A mark on bare ground stands as long as the ground stays bare, one in the middle of a letter as long
 * as the letter is there.
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
        return lieOn(ground, before, nowEdges) && lieOn(ground, now, beforeEdges) && coversAsBefore(mark.shape().anchor().coordinate());
    }

    /** Away from outlines, which say nothing there; on an outline it would be chance, and the outlines are compared anyway. */
    private boolean coversAsBefore(Coordinate at) {
        return beforeEdges.nearest(at, allowedMm).isPresent() || nowEdges.nearest(at, allowedMm).isPresent() || covers(before, at) == covers(now, at);
    }

    private static long covers(Snapshot of, Coordinate at) {
        return of.outlines().stream().filter(outline -> outline.shape().getEnvelopeInternal().contains(at))
                .filter(outline -> SimplePointInAreaLocator.locate(at, outline.shape()) == Location.INTERIOR).count();
    }

    private boolean lieOn(Geometry ground, Snapshot of, Edges edges) {
        Envelope extent = ground.getEnvelopeInternal();
        return of.outlines().stream().filter(outline -> outline.shape().getEnvelopeInternal().intersects(extent)).allMatch(outline -> {
            Geometry near = OverlayNGRobust.overlay(outline.shape().getBoundary(), ground, OverlayNG.INTERSECTION);
            return Arrays.stream(near.getCoordinates()).allMatch(point -> edges.nearest(point, allowedMm).isPresent());
        });
    }
}
