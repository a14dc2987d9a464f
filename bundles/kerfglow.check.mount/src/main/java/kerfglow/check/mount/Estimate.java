// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.mount;

import java.util.List;
import java.util.Optional;
import kerfglow.api.Settings;
import org.locationtech.jts.geom.Coordinate;

/**
 * Weight, size and wind of the whole sign.
 *
 * @param massKg everything that was weighed, and what the job adds
 * @param centre centre of mass of what was weighed, mm; empty when that was nothing
 * @param size how large it is
 * @param wind empty when neither pressure nor speed is given
 * @param coefficient force coefficient
 * @param areaBy outline or rectangle
 */
record Estimate(double massKg, Optional<Coordinate> centre, SignSize size, Optional<Wind> wind, double coefficient, String areaBy) {
    /** EN 1991-1-4, 7.4.3: the force acts up to a quarter of the width off the middle (by memory, see the setting of the coefficient). */
    private static final double ECCENTRICITY_SHARE = 0.25;

    static Estimate of(List<Load> loads, SignSize size, Settings settings) {
        double weighed = loads.stream().mapToDouble(Load::massKg).sum();
        Optional<Coordinate> centre = weighed == 0 ? Optional.empty() : Optional.of(new Coordinate(
                loads.stream().mapToDouble(load -> load.massKg() * load.centre().x).sum() / weighed,
                loads.stream().mapToDouble(load -> load.massKg() * load.centre().y).sum() / weighed));
        return new Estimate(weighed + settings.get(MountSettings.EXTRA_MASS), centre, size, Wind.of(settings), settings.get(WindSettings.COEFFICIENT), settings.get(WindSettings.AREA));
    }

    double areaMm2() {
        return areaBy.equals(WindSettings.OUTLINE) ? size.outlineMm2() : size.rectangleMm2();
    }

    double forceN(Wind given) {
        return given.forceN(coefficient, areaMm2());
    }

    double eccentricityMm() {
        return size.box().getWidth() * ECCENTRICITY_SHARE;
    }
}
