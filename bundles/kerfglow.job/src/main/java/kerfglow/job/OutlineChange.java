// SPDX-License-Identifier: Apache-2.0
package kerfglow.job;

import java.util.Optional;
import org.locationtech.jts.geom.Geometry;

/**
 * What became of one outline between two revisions.
 *
 * @param kind changed, moved, added or removed
 * @param before the old part's id; absent when it was added
 * @param after the new part's id; absent when it was removed
 * @param role what it becomes, as a word; the new one where both are there
 * @param areaMm2 area that belongs to one of the two only (symmetric difference), mm²
 * @param greatestMm how far the outlines are apart at most, mm; for one that moved without being turned how far it moved; 0 for what was added or removed
 * @param where what belongs to one of the two only, polygonal, mm on the new revision
 */
public record OutlineChange(Kind kind, Optional<String> before, Optional<String> after, String role, double areaMm2, double greatestMm, Geometry where) {
    /** Outlines are the same when they are nowhere farther apart: both may be flattened to within 0.02 mm of the true curve. */
    public static final double SAME_MM = 0.04;

    /** What happened. */
    public enum Kind {
        /** It is another shape. */
        CHANGED,
        /** It is elsewhere, or turned, of the same shape. */
        MOVED,
        ADDED,
        REMOVED
    }
}
