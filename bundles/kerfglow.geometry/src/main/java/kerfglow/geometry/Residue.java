// SPDX-License-Identifier: Apache-2.0
package kerfglow.geometry;

import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;

/**
 * A piece of waste that a round bit does not reach.
 *
 * @param kind what shape it has
 * @param area the piece, polygonal, mm
 * @param widthMm for a gap the narrowest width between its walls, for a hole that the bit does not enter at all its largest
 *     disc where no walls lie opposite; for a corner the bit's diameter
 * @param depthMm how far its deepest point lies from the bit at its nearest; for a hole that the bit does not enter at all,
 *     the width
 * @param at the narrowest place of a gap, the deepest point of a corner
 * @param isEntered false when the bit does not fit into this part of the waste at all
 */
public record Residue(Kind kind, Geometry area, double widthMm, double depthMm, Coordinate at, boolean isEntered) {
    /** What shape a residue has. */
    public enum Kind {
        /** Between opposite walls closer than the bit, or cutting off waste that the bit would fit into. */
        GAP,
        /** Any other: an inside corner that stays round. */
        CORNER
    }
}
