// SPDX-License-Identifier: Apache-2.0
package kerfglow.light.layout;

import java.util.List;
import java.util.Set;
import kerfglow.light.LightModule;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.util.AffineTransformation;

/**
 * What was laid out.
 *
 * @param modules those that were added to the fixed ones, line by line along the strokes; empty where none fits
 * @param pitchMm the middle one of the distances from each module to its nearest neighbour, mm; 0 for fewer than two modules
 * @param uniformity least over mean luminance that it reaches, fixed modules included
 * @param contrast of the strongest bright spot above the limit; 0 where there is none
 * @param reached true when that is what was wanted
 * @param limits what stands in the way where it was not reached
 * @param dark where the face stays below what was wanted, points, mm; empty when it was reached
 * @param neededDepthMm the depth at which a long row at this pitch would reach what is wanted, mm: the series of the row, without reflection and ends; 0
 *     for fewer than two modules
 */
public record Layout(List<LightModule> modules, double pitchMm, double uniformity, double contrast, boolean reached, Set<Limit> limits, Geometry dark, double neededDepthMm) {
    /** What can keep a layout from its target. */
    public enum Limit {
        /** No plate fits anywhere between the walls. */
        NO_ROOM,
        /** Dark places lie where no plate can come near: in points and strokes too narrow for it. */
        MODULE_EDGE,
        /** Dark places lie at ends and edges, which light reaches from one side only. */
        FREE_ENDS,
        /** The depth is too little for these modules: even side by side they would leave dark between them, or bright spots remain. */
        TOO_SHALLOW,
        /** The cable does not reach from one module to the next. */
        CABLE
    }

    public Layout {
        modules = List.copyOf(modules);
        limits = Set.copyOf(limits);
    }

    /** The same elsewhere, moved by so much, mm. */
    public Layout moved(double dx, double dy) {
        return new Layout(modules.stream().map(each -> each.moved(dx, dy)).toList(), pitchMm, uniformity, contrast, reached, limits,
                AffineTransformation.translationInstance(dx, dy).transform(dark), neededDepthMm);
    }
}
