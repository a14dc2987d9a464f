// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.legibility;

import kerfglow.api.proof.Part;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Polygon;

/**
 * One part that may be a letter, a bit of one, or no letter at all.
 *
 * @param part whose outline it is; counters are holes of the outline
 * @param centre the middle of its box, mm
 * @param shape its outline
 */
record Piece(Part part, Coordinate centre, Polygon shape) {
    static Piece of(Part part) {
        return new Piece(part, part.shape().getEnvelopeInternal().centre(), part.shape());
    }
}
