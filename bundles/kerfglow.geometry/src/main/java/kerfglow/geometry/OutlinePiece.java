// SPDX-License-Identifier: Apache-2.0
package kerfglow.geometry;

import org.locationtech.jts.geom.Geometry;

/**
 * A stretch of an outline as a person would describe it: straight, an arc, or a corner.
 *
 * @param kind what it is
 * @param line where it is, mm: a line, or a point for a corner
 * @param lengthMm its length, mm; for an arc that of the true arc, not of its chords; 0 for a corner
 * @param turn how far the direction turns along it, radians, positive to the left; near 0 for a straight
 * @param radiusMm length over turn; infinite for a straight, 0 for a corner
 * @param residualMm the farthest that the outline lies from that arc or straight, chord error left out, mm
 */
public record OutlinePiece(Kind kind, Geometry line, double lengthMm, double turn, double radiusMm, double residualMm) {
    /** What a piece of an outline is. */
    public enum Kind { STRAIGHT, ARC, CORNER }

    /** The turn without its sign, degrees. */
    public double degrees() {
        return Math.toDegrees(Math.abs(turn));
    }
}
