// SPDX-License-Identifier: Apache-2.0
package kerfglow.geometry;

import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.operation.buffer.BufferParameters;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;

/**
 * Erosion, dilation, opening and closing of polygons by a disc (G. Matheron, Random Sets and Integral Geometry, 1975), without
 * the bias of a plain buffer: a buffer simplifies its input first, by a share of the distance, and an opening built of two of
 * them then keeps corners that no disc reaches. Arcs are chords, inside the true arc by the chord error at most.
 */
public final class Opening {
    /** Fewer than this would not be round at any tolerance. */
    private static final int LEAST_QUADRANT_SEGMENTS = 4;

    private Opening() {
    }

    /** How many chords a quarter circle needs to stay within a chord error. Sagitta: {@code r (1 - cos(half the chord's angle))}. */
    public static int quadrantSegments(double radiusMm, double chordErrorMm) {
        if (!(radiusMm > 0 && chordErrorMm > 0)) {
            throw new IllegalArgumentException("radius and chord error must be above 0: " + radiusMm + " mm, " + chordErrorMm + " mm");
        }
        double chord = 2 * Math.acos(Math.max(0, 1 - chordErrorMm / radiusMm));
        return Math.max(LEAST_QUADRANT_SEGMENTS, (int) Math.ceil(Math.PI / 2 / chord));
    }

    /** The points of an area that a disc's centre may take while the disc stays inside. May be empty. */
    public static Geometry erosion(Geometry area, double radiusMm, double chordErrorMm) {
        return offset(area, -radiusMm, chordErrorMm);
    }

    /** The area swept by a disc whose centre takes every point of an area. */
    public static Geometry dilation(Geometry area, double radiusMm, double chordErrorMm) {
        return offset(area, radiusMm, chordErrorMm);
    }

    /** What a disc covers that moves about inside an area. May be empty. */
    public static Geometry opening(Geometry area, double radiusMm, double chordErrorMm) {
        return dilation(erosion(area, radiusMm, chordErrorMm), radiusMm, chordErrorMm);
    }

    /** An area with all that no disc reaches from outside. */
    public static Geometry closing(Geometry area, double radiusMm, double chordErrorMm) {
        return erosion(dilation(area, radiusMm, chordErrorMm), radiusMm, chordErrorMm);
    }

    /** What of one area is not in another; robust where edges nearly coincide. */
    public static Geometry difference(Geometry area, Geometry without) {
        return OverlayNGRobust.overlay(area, without, OverlayNG.DIFFERENCE);
    }

    private static Geometry offset(Geometry area, double distanceMm, double chordErrorMm) {
        BufferParameters parameters = new BufferParameters(quadrantSegments(Math.abs(distanceMm), chordErrorMm));
        parameters.setSimplifyFactor(0);
        return Offset.of(area, distanceMm, parameters);
    }
}
