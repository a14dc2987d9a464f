// SPDX-License-Identifier: Apache-2.0
package kerfglow.geometry;

import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.operation.buffer.BufferParameters;

/**
 * A shape made smaller by a distance on every side, its counters larger; without the bias of a plain buffer, see {@link Opening}.
 * Its edge keeps the distance to about a thousandth of it, because JTS joins offset edges that lie nearer to each other.
 * Corners that stick out stay sharp; what becomes of corners that point inwards (and of those of counters) is the join.
 */
public final class Inset {
    /** What lies at a distance from a corner that points inwards. */
    public enum Join {
        /** An arc about the corner: no point is farther from the outline than the distance. */
        ROUND,
        /** The straight edges, prolonged until they meet, up to the mitre limit. */
        MITRE,
        /** A straight cut from the end of one edge to the start of the next. */
        BEVEL
    }

    private Inset() {
    }

    /**
     * The inset.
     *
     * @param area polygonal, mm; not changed
     * @param distanceMm how much smaller on every side, 0 or more, mm
     * @param join at corners that point inwards
     * @param mitreLimit how far a mitre may reach, in distances; a longer one is cut off. 1 or more
     * @param chordErrorMm how far a chord of a round join may lie inside the true arc, above 0, mm
     * @return polygonal; empty when nothing is left; the area itself for a distance of 0
     */
    public static Geometry of(Geometry area, double distanceMm, Join join, double mitreLimit, double chordErrorMm) {
        if (!(distanceMm >= 0 && mitreLimit >= 1)) {
            throw new IllegalArgumentException("distance and mitre limit must be at least 0 mm and 1: " + distanceMm + " mm, " + mitreLimit);
        }
        if (distanceMm == 0) {
            return area;
        }
        int style = switch (join) {
            case ROUND -> BufferParameters.JOIN_ROUND;
            case MITRE -> BufferParameters.JOIN_MITRE;
            case BEVEL -> BufferParameters.JOIN_BEVEL;
        };
        BufferParameters parameters = new BufferParameters(Opening.quadrantSegments(distanceMm, chordErrorMm), BufferParameters.CAP_ROUND,
                style, mitreLimit);
        parameters.setSimplifyFactor(0);
        return Offset.of(area, -distanceMm, parameters);
    }
}
