// SPDX-License-Identifier: Apache-2.0
package kerfglow.light;

/**
 * What the surfaces in a can do with light; all reflect diffusely.
 *
 * @param backReflectance of the back, 0 to {@link #MOST_REFLECTANCE}
 * @param wallReflectance of the return walls' inner side, likewise
 * @param faceReflectance of the face's inner side, likewise
 * @param faceTransmittance share of the light on the face that leaves it in front, 0 to 1; with the reflectance at most 1
 * @param spreadMm how far the face spreads light sideways: the sigma of a Gaussian, mm; 0 for no diffuser
 */
public record Finish(double backReflectance, double wallReflectance, double faceReflectance, double faceTransmittance, double spreadMm) {
    /** Closed and wholly white, a can would fill with light without end; no paint reaches this either. */
    public static final double MOST_REFLECTANCE = 0.99;
    private static final double ROUNDING = 1e-9;

    /**
     * Refuses surfaces that would make light.
     *
     * @throws IllegalArgumentException naming the value and the allowed range
     */
    public Finish {
        String range = "0 to " + MOST_REFLECTANCE;
        Ranges.require("back reflectance", backReflectance, 0, MOST_REFLECTANCE, range);
        Ranges.require("wall reflectance", wallReflectance, 0, MOST_REFLECTANCE, range);
        Ranges.require("face reflectance", faceReflectance, 0, MOST_REFLECTANCE, range);
        Ranges.require("face transmittance", faceTransmittance, 0, 1, "0 to 1");
        Ranges.require("face reflectance plus transmittance", faceReflectance + faceTransmittance, 0, 1 + ROUNDING, "at most 1");
        Ranges.require("spread", spreadMm, 0, Double.MAX_VALUE, "0 mm or more");
    }

    /** Surfaces that send nothing on, and a face that lets everything through: what is left is the direct light. */
    public static Finish black() {
        return new Finish(0, 0, 0, 1, 0);
    }
}
