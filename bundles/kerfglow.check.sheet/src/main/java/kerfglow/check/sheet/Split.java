// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.sheet;

import java.util.List;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;

/**
 * How a part is cut into pieces that fit sheets.
 *
 * @param cuts the seams; empty when the part fits as it is
 * @param pieces what is left between them
 */
record Split(List<Cut> cuts, List<Polygon> pieces) {
    /**
     * A straight seam.
     *
     * @param line where it runs through the material, mm
     * @param lengthMm its length there, mm
     * @param degrees its direction, 0 for upright
     * @param near what it crosses or comes too close to because nothing better was there
     */
    record Cut(Geometry line, double lengthMm, double degrees, List<Sweep.Obstacle> near) {
    }

    int penalty() {
        return cuts.stream().flatMap(cut -> cut.near().stream()).mapToInt(Sweep.Obstacle::weight).sum();
    }

    double lengthMm() {
        return cuts.stream().mapToDouble(Cut::lengthMm).sum();
    }
}
