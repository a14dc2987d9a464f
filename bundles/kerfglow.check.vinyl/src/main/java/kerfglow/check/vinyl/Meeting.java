// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.vinyl;

import kerfglow.api.proof.Part;
import org.locationtech.jts.geom.LineString;

/**
 * A stretch along which the edge of one colour meets another that lies over it.
 *
 * @param kind how they meet
 * @param lower the piece that is laid first
 * @param upper the piece of another colour that is laid over it
 * @param measuredMm least overlap along it, below 0 for a gap; for a repeated edge the least distance of the two edges
 * @param line the stretch of the lower piece's edge, mm
 */
record Meeting(Kind kind, Part lower, Part upper, double measuredMm, LineString line) {
    /** How two colours meet. */
    enum Kind {
        /** They are meant to meet, and do not. */
        GAP("gap"),
        /** The upper one covers the edge of the lower one by too little. */
        SHORT("short overlap"),
        /** Both end in one edge, on the same side of it. */
        REPEAT("repeated edge");

        private final String words;

        Kind(String words) {
            this.words = words;
        }

        String words() {
            return words;
        }
    }
}
