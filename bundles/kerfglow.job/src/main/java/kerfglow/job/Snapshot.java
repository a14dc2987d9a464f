// SPDX-License-Identifier: Apache-2.0
package kerfglow.job;

import java.util.List;
import kerfglow.host.Result;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.util.AffineTransformation;

/**
 * What a run showed, as far as later runs are compared with it: outlines and findings. A job file keeps the one that its decisions stand
 * on, so that the old proof itself need not be at hand.
 *
 * @param outlines of every part, notes too
 * @param findings all of them
 * @param resolutionMm how far a kept outline may lie from the real one; 0 for one straight from a run
 */
public record Snapshot(List<Outline> outlines, List<SeenFinding> findings, double resolutionMm) {
    /** Nothing seen yet. */
    public static final Snapshot NONE = new Snapshot(List.of(), List.of(), 0);

    /**
     * A part's outline.
     *
     * @param part its id in that run
     * @param role what it becomes, as a word
     * @param layer its layer
     * @param shape polygonal, mm; not to be changed
     */
    public record Outline(String part, String role, String layer, Geometry shape) {
    }

    public Snapshot {
        outlines = List.copyOf(outlines);
        findings = List.copyOf(findings);
    }

    /** What this result shows. */
    public static Snapshot of(Result result) {
        return new Snapshot(result.parts().stream().map(part -> new Outline(part.id(), part.role().word(), part.layer(), part.shape())).toList(),
                SeenFinding.all(result), 0);
    }

    /** The same after a motion or a change of scale. */
    Snapshot moved(AffineTransformation motion) {
        return motion.isIdentity() ? this
                : new Snapshot(outlines.stream().map(each -> new Outline(each.part(), each.role(), each.layer(), motion.transform(each.shape()))).toList(),
                        findings.stream().map(each -> each.moved(motion)).toList(), resolutionMm);
    }
}
