// SPDX-License-Identifier: Apache-2.0
package kerfglow.light.layout;

import java.util.List;
import java.util.Objects;
import kerfglow.light.Can;
import kerfglow.light.LightModule;
import kerfglow.light.LightModuleType;
import org.locationtech.jts.geom.Geometry;

/**
 * What is to be lit, by what, and how well.
 *
 * @param can the can
 * @param type the module to be used
 * @param keepClear where no plate may lie, mm: holes and keep-outs; may be empty
 * @param edgeMm how far plates keep from walls, mm
 * @param clearMm how far plates keep from {@code keepClear}, mm
 * @param gapMm how far plates keep from each other, mm
 * @param cablePitchMm the greatest distance of a module to the next on its own cable, mm; 0 for any
 * @param fixed modules that a person put; they stay where they are and count as light
 * @param uniformity the least luminance over the mean that is wanted, 0 to below 1
 * @param contrast of a bright spot that may remain ({@link kerfglow.light.Spots}), above 0; infinite for any
 * @param eyeMm how far the eye blurs the face from where spots are judged: the sigma of a Gaussian, mm
 */
public record LayoutRequest(Can can, LightModuleType type, Geometry keepClear, double edgeMm, double clearMm, double gapMm, double cablePitchMm,
        List<LightModule> fixed, double uniformity, double contrast, double eyeMm) {
    /** No contrast is too much. */
    private static final double ANY_CONTRAST = Double.POSITIVE_INFINITY;

    /**
     * Refuses distances below 0 and targets that nothing reaches.
     *
     * @throws IllegalArgumentException naming the value and the allowed range
     */
    public LayoutRequest {
        Objects.requireNonNull(can, "can");
        Objects.requireNonNull(type, "type");
        Objects.requireNonNull(keepClear, "keepClear");
        fixed = List.copyOf(fixed);
        requireNotNegative("edge distance", edgeMm);
        requireNotNegative("clear distance", clearMm);
        requireNotNegative("gap", gapMm);
        requireNotNegative("cable pitch", cablePitchMm);
        requireNotNegative("eye's blur", eyeMm);
        if (!(contrast > 0)) {
            throw new IllegalArgumentException("contrast must be above 0, not " + contrast);
        }
        if (!(uniformity >= 0 && uniformity < 1)) {
            throw new IllegalArgumentException("uniformity must be 0 or more and below 1, not " + uniformity);
        }
    }

    /** A request with no distances to keep, no cable, no module placed by hand, and any contrast. */
    public static LayoutRequest of(Can can, LightModuleType type, double uniformity) {
        return new LayoutRequest(can, type, can.inside().getFactory().createPolygon(), 0, 0, 0, 0, List.of(), uniformity, ANY_CONTRAST, 0);
    }

    /** The same with distances to keep, mm: from walls, from {@code keepClear}, from each other. */
    public LayoutRequest distances(double fromWallsMm, double fromKeepClearMm, double betweenMm) {
        return new LayoutRequest(can, type, keepClear, fromWallsMm, fromKeepClearMm, betweenMm, cablePitchMm, fixed, uniformity, contrast, eyeMm);
    }

    /** The same with places where no plate may lie, mm. */
    public LayoutRequest keepClear(Geometry value) {
        return new LayoutRequest(can, type, value, edgeMm, clearMm, gapMm, cablePitchMm, fixed, uniformity, contrast, eyeMm);
    }

    /** The same with a cable's pitch, mm. */
    public LayoutRequest cablePitch(double value) {
        return new LayoutRequest(can, type, keepClear, edgeMm, clearMm, gapMm, value, fixed, uniformity, contrast, eyeMm);
    }

    /** The same with modules that a person put. */
    public LayoutRequest fixed(List<LightModule> value) {
        return new LayoutRequest(can, type, keepClear, edgeMm, clearMm, gapMm, cablePitchMm, value, uniformity, contrast, eyeMm);
    }

    /** The same with a contrast that may remain, and the eye's blur, mm. */
    public LayoutRequest contrast(double limit, double eyeBlurMm) {
        return new LayoutRequest(can, type, keepClear, edgeMm, clearMm, gapMm, cablePitchMm, fixed, uniformity, limit, eyeBlurMm);
    }

    /** From the emitters to the face's inner side, mm. */
    double heightMm() {
        return can.depthMm() - type.heightMm();
    }

    private static void requireNotNegative(String name, double value) {
        if (!(value >= 0 && value < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(name + " must be 0 mm or more, not " + value);
        }
    }
}
