// SPDX-License-Identifier: Apache-2.0
package kerfglow.light;

/**
 * Illuminance on a plane from one generalised Lambertian source that shines straight at it:
 * {@code E = (m + 1) flux h^(m + 1) / (2 pi (h² + r²)^((m + 3) / 2))}, from the inverse square law, the cosine of incidence and an
 * intensity that falls as the m-th power of the cosine; integrated over the plane it gives the flux. Distances in mm, result in lux.
 *
 * <p>Tabulated over h²/(h² + r²) and read by cubic interpolation, which is exact for m = 1 and within 1e-6 of the greatest value for the
 * narrowest beam allowed.
 */
final class Falloff {
    private static final int STEPS = 2048;
    private static final double MM2_PER_M2 = 1e6;

    private final double height2;
    private final double[] value = new double[STEPS + 2];
    /** Slopes, per step. */
    private final double[] slope = new double[STEPS + 2];

    /**
     * Of one source.
     *
     * @param fluxLm its light, lumen
     * @param exponent the power m of the cosine
     * @param heightMm its distance from the plane, mm, above 0
     */
    Falloff(double fluxLm, double exponent, double heightMm) {
        height2 = heightMm * heightMm;
        double power = (exponent + 3) / 2;
        double peak = (exponent + 1) * fluxLm * MM2_PER_M2 / (2 * Math.PI * height2);
        for (int i = 0; i < value.length; i++) {
            double u = (double) i / STEPS;
            value[i] = peak * Math.pow(u, power);
            slope[i] = peak * power * Math.pow(u, power - 1) / STEPS;
        }
    }

    /** At this square of the distance from the foot of the source, mm². */
    double at(double r2) {
        double place = height2 / (height2 + r2) * STEPS;
        int i = (int) place;
        double t = place - i;
        double rise = value[i + 1] - value[i];
        return value[i] + t * (slope[i] + t * (3 * rise - 2 * slope[i] - slope[i + 1] + t * (slope[i] + slope[i + 1] - 2 * rise)));
    }
}
