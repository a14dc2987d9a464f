// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.fit;

import java.util.List;
import kerfglow.api.proof.Part;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LineString;

/**
 * What was measured on one pair.
 *
 * @param pair the parts
 * @param allowance what was wanted
 * @param leastMm least clearance, mm; below 0 where the inner part sticks out
 * @param greatestMm greatest clearance, mm
 * @param meanMm mean clearance along the edge, mm
 * @param lengthMm length of the edge, mm
 * @param departingMm how much of it departs, mm
 * @param departures where
 * @param counters counters that do not grow as they must
 * @param missed stretches of the outer part's edge without inner part near
 */
record PairResult(Pair pair, Allowance allowance, double leastMm, double greatestMm, double meanMm, double lengthMm, double departingMm,
        List<Departure> departures, List<CounterFault> counters, List<Missed> missed) {
    /** A counter that does not grow as it must. */
    record CounterFault(Kind kind, Geometry place, double clearanceMm, Part part) {
        enum Kind { SHRUNK, CLOSED, EXTRA }
    }

    /** A stretch of the outer part's edge; {@code distanceMm} is how far off the inner part is where it is farthest, at {@code at}. */
    record Missed(LineString place, double distanceMm, Coordinate at, Part part) {
    }
}
