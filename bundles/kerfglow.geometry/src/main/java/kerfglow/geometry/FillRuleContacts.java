// SPDX-License-Identifier: Apache-2.0
package kerfglow.geometry;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.algorithm.Distance;
import org.locationtech.jts.algorithm.LineIntersector;
import org.locationtech.jts.algorithm.RobustLineIntersector;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.noding.MCIndexNoder;
import org.locationtech.jts.noding.NodedSegmentString;
import org.locationtech.jts.noding.SegmentIntersector;
import org.locationtech.jts.noding.SegmentString;

/**
 * Whether closed rings meet, or come within {@link FillRuleFaces#SNAP_MM} of meeting, anywhere but in the corner between two neighbouring
 * edges. What lies on an edge in one drawing lies a rounding beside it in the same drawing turned, so near counts as met. Stops at the
 * first meeting. Time grows with edges times the logarithm of edges.
 */
final class FillRuleContacts implements SegmentIntersector {
    private final LineIntersector lines = new RobustLineIntersector();
    private boolean found;

    private FillRuleContacts() {
    }

    /** @param rings closed, first point repeated, no two equal points in a row */
    static boolean anyIn(List<Coordinate[]> rings) {
        FillRuleContacts contacts = new FillRuleContacts();
        List<SegmentString> strings = new ArrayList<>(rings.size());
        for (Coordinate[] ring : rings) {
            strings.add(new NodedSegmentString(ring, null));
        }
        new MCIndexNoder(contacts, FillRuleFaces.SNAP_MM).computeNodes(strings);
        return contacts.found;
    }

    @Override
    public void processIntersections(SegmentString a, int i, SegmentString b, int j) {
        if (found || a == b && i == j) {
            return;
        }
        Coordinate a0 = a.getCoordinate(i);
        Coordinate a1 = a.getCoordinate(i + 1);
        Coordinate b0 = b.getCoordinate(j);
        Coordinate b1 = b.getCoordinate(j + 1);
        if (a == b && areNeighbours(i, j, a.size() - 1)) {
            found = a1.equals2D(b0) ? foldsBack(a0, a1, b1) : foldsBack(b0, b1, a1);
            return;
        }
        lines.computeIntersection(a0, a1, b0, b1);
        found = lines.hasIntersection() || isNear(a0, b0, b1) || isNear(a1, b0, b1) || isNear(b0, a0, a1) || isNear(b1, a0, a1);
    }

    private static boolean isNear(Coordinate point, Coordinate from, Coordinate to) {
        return Distance.pointToSegment(point, from, to) <= FillRuleFaces.SNAP_MM;
    }

    /** Neighbours share their corner; they meet elsewhere when one runs back along the other. */
    private static boolean foldsBack(Coordinate before, Coordinate corner, Coordinate after) {
        double dot = (before.x - corner.x) * (after.x - corner.x) + (before.y - corner.y) * (after.y - corner.y);
        return dot > 0 && (isNear(before, corner, after) || isNear(after, corner, before));
    }

    private static boolean areNeighbours(int i, int j, int edges) {
        int apart = Math.abs(i - j);
        return apart == 1 || apart == edges - 1;
    }

    @Override
    public boolean isDone() {
        return found;
    }
}
