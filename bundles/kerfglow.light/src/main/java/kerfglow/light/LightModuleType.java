// SPDX-License-Identifier: Apache-2.0
package kerfglow.light;

import java.util.Objects;

/**
 * A kind of light module: a plate with one or several equal emitters in a row along its long side, each a generalised Lambertian
 * source, whose intensity falls as a power of the cosine of the angle from the axis.
 *
 * @param name what the shop calls it, or empty
 * @param fluxLm light that the whole module gives, lumen
 * @param beamDegrees full angle between the two directions of half the axial intensity, degrees
 * @param lengthMm long side of the plate, mm
 * @param widthMm short side of the plate, mm
 * @param heightMm how far the emitting surface stands above the back, mm
 * @param emitters how many emitters
 * @param emitterPitchMm from emitter to emitter along the long side, mm; without meaning for a single one
 */
public record LightModuleType(String name, double fluxLm, double beamDegrees, double lengthMm, double widthMm, double heightMm, int emitters,
        double emitterPitchMm) {
    /** A cosine's power reaches its half at less than a right angle from the axis; a source that shines backwards is none of this kind. */
    public static final double LEAST_BEAM_DEGREES = 2;
    /** See {@link #LEAST_BEAM_DEGREES}. */
    public static final double MOST_BEAM_DEGREES = 178;

    /**
     * Refuses what gives no light or is no generalised Lambertian source.
     *
     * @throws IllegalArgumentException naming the value and the allowed range
     */
    public LightModuleType {
        Objects.requireNonNull(name, "name");
        Ranges.require("flux", fluxLm, Double.MIN_NORMAL, Double.MAX_VALUE, "above 0 lm");
        Ranges.require("beam angle", beamDegrees, LEAST_BEAM_DEGREES, MOST_BEAM_DEGREES,
                LEAST_BEAM_DEGREES + " to " + MOST_BEAM_DEGREES + " degrees");
        Ranges.require("module length", lengthMm, 0, Double.MAX_VALUE, "0 mm or more");
        Ranges.require("module width", widthMm, 0, Double.MAX_VALUE, "0 mm or more");
        Ranges.require("emitter height", heightMm, 0, Double.MAX_VALUE, "0 mm or more");
        Ranges.require("emitters", emitters, 1, Integer.MAX_VALUE, "1 or more");
        Ranges.require("emitter pitch", emitterPitchMm, 0, Double.MAX_VALUE, "0 mm or more");
    }

    /** The power of the cosine: ln 0.5 / ln cos(half the beam angle); 1 for 120 degrees, the Lambertian source. */
    public double exponent() {
        return Math.log(0.5) / Math.log(Math.cos(Math.toRadians(beamDegrees / 2)));
    }
}
