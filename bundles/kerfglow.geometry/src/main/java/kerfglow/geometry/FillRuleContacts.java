// SPDX-License-Identifier: Apache-2.0
package kerfglow.geometry;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.algorithm.LineIntersector;
import org.locationtech.jts.algorithm.RobustLineIntersector;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.noding.MCIndexNoder;
import org.locationtech.jts.noding.NodedSegmentString;
import org.locationtech.jts.noding.SegmentIntersector;
import org.locationtech.jts.noding.SegmentString;

/**
 * Whether closed rings meet anywhere but in the corner between two neighbouring edges. Stops at the first meeting. Time grows
 * with edges times the logarithm of edges.
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
        new MCIndexNoder(contacts).computeNodes(strings);
        return contacts.found;
    }

    @Override
    public void processIntersections(SegmentString a, int i, SegmentString b, int j) {
        if (found || a == b && i == j) {
            return;
        }
        lines.computeIntersection(a.getCoordinate(i), a.getCoordinate(i + 1), b.getCoordinate(j), b.getCoordinate(j + 1));
        if (!lines.hasIntersection()) {
            return;
        }
        // Neighbours share their corner; they fold back on each other when they share more.
        found = !(a == b && areNeighbours(i, j, a.size() - 1)) || lines.getIntersectionNum() > 1;
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
