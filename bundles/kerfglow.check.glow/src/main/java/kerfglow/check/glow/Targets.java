// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.glow;

import kerfglow.api.Settings;
import kerfglow.api.SharedSettings;
import kerfglow.api.proof.Part;

/**
 * How even a face is to be.
 *
 * @param uniformity least over mean
 * @param leastToGreatest least over greatest
 * @param contrast of a spot that may remain
 * @param distanceMm from where it is looked at, mm
 * @param leastPatchMm2 dark patches smaller than this are passed over, mm²
 */
record Targets(double uniformity, double leastToGreatest, double contrast, double distanceMm, double leastPatchMm2) {
    /** What an eye of normal sight just tells apart: one minute of arc, taken as the width of its blur at half height. */
    private static final double MINUTE_RADIANS = Math.toRadians(1.0 / 60);
    /** Width at half height of a Gaussian in sigmas. */
    private static final double HALF_HEIGHT_SIGMAS = 2 * Math.sqrt(2 * Math.log(2));

    static Targets of(Settings settings, Part part) {
        double reading = settings.get(SharedSettings.READING_DISTANCE, part);
        return new Targets(settings.get(GlowSettings.UNIFORMITY, part), settings.get(GlowSettings.LEAST_TO_GREATEST, part),
                settings.get(GlowSettings.CONTRAST, part), reading > 0 ? reading : settings.get(GlowSettings.VIEWING_DISTANCE, part),
                settings.get(GlowSettings.LEAST_PATCH, part));
    }

    /** How far the eye blurs the face at that distance: sigma of a Gaussian, mm. */
    double eyeMm() {
        return distanceMm * MINUTE_RADIANS / HALF_HEIGHT_SIGMAS;
    }
}
