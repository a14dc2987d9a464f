// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.returns;

import org.locationtech.jts.algorithm.Orientation;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Polygon;
import kerfglow.api.proof.Part;

/**
 * One closed line that a strip follows, with the can on its left, so that a turn to the left is convex.
 *
 * @param part the face or drawn return that it belongs to
 * @param number counts the contours of the part from 1
 * @param counter true when the can lies around it
 * @param ring the line, mm
 * @param insetMm how far it is inset from the face, by the check or by whoever drew the back, which rounds corners that point into the can;
 *     0 when the return itself is drawn
 */
record Contour(Part part, int number, boolean counter, LinearRing ring, double insetMm) {
    static Contour of(Part part, int number, boolean counter, LinearRing ring, double insetMm) {
        boolean turnsLeft = Orientation.isCCW(ring.getCoordinateSequence());
        return new Contour(part, number, counter, turnsLeft == counter ? ring.reverse() : ring, insetMm);
    }

    /** What lies within the line. */
    Polygon filled() {
        return ring.getFactory().createPolygon(ring);
    }

    String words() {
        return counter ? "counter" : "outline";
    }
}
