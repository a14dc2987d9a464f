// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.mount;

import java.util.Optional;
import kerfglow.api.Settings;
import kerfglow.api.Units;

/**
 * The pressure of the wind and what makes a force of it.
 *
 * @param pressurePa velocity pressure, Pa
 * @param loadFactor what the force has besides pressure, coefficient and area: gust effect, and the directionality factor where the edition puts it there
 * @param how in which way the pressure was found, for a person
 */
record Wind(double pressurePa, double loadFactor, String how) {
    private static final double MM_PER_M = 1000;

    /** The pressure that the settings give; empty when they give neither pressure nor speed. */
    static Optional<Wind> of(Settings settings) {
        Double pressure = settings.get(WindSettings.PRESSURE);
        Double speed = settings.get(WindSettings.SPEED);
        if (pressure != null) {
            return Optional.of(new Wind(pressure, 1, "the pressure given (mount.wind-pressure)"));
        }
        if (speed == null) {
            return Optional.empty();
        }
        double height = settings.get(WindSettings.HEIGHT);
        return Optional.of(settings.get(WindSettings.CODE).equals(WindSettings.EUROPEAN)
                ? new Wind(European.of(settings).peakPressurePa(speed, height), 1, "the peak velocity pressure of EN 1991-1-4")
                : American.of(settings).wind(speed, height));
    }

    double forceN(double coefficient, double areaMm2) {
        return pressurePa * loadFactor * coefficient * areaMm2 / (MM_PER_M * MM_PER_M);
    }

    /**
     * Peak velocity pressure by EN 1991-1-4, 4.5, flat ground (kI = co = 1).
     *
     * @param airDensity kg/m³
     * @param roughnessM roughness length, m
     * @param leastHeightM the wind is not taken lower, m
     */
    record European(double airDensity, double roughnessM, double leastHeightM) {
        private static final double TERRAIN_FACTOR = 0.19;
        private static final double TERRAIN_EXPONENT = 0.07;
        /** Roughness length to which the terrain factor refers, m. */
        private static final double REFERENCE_ROUGHNESS_M = 0.05;
        /** Peak factor of 3.5, twice: (1 + 7 Iv). */
        private static final double PEAK = 7;

        static European of(Settings settings) {
            return new European(settings.get(WindSettings.AIR_DENSITY), settings.get(WindSettings.ROUGHNESS) / MM_PER_M, settings.get(WindSettings.LEAST_HEIGHT) / MM_PER_M);
        }

        /** Basic velocity pressure, Pa. */
        double basicPressurePa(double speed) {
            return airDensity * speed * speed / 2;
        }

        /** Roughness factor cr at a height, nothing rounded on the way. */
        double roughnessFactor(double heightM) {
            return TERRAIN_FACTOR * Math.pow(roughnessM / REFERENCE_ROUGHNESS_M, TERRAIN_EXPONENT) * profile(heightM);
        }

        private double profile(double heightM) {
            return Math.log(Math.max(heightM, Math.max(leastHeightM, 2 * roughnessM)) / roughnessM);
        }

        double peakPressurePa(double speed, double heightMm) {
            double height = heightMm / MM_PER_M;
            double turbulence = 1 / profile(height);
            return (1 + PEAK * turbulence) * basicPressurePa(roughnessFactor(height) * speed);
        }
    }

    /**
     * Velocity pressure by ASCE 7 up to 7-22.
     *
     * @param directionality Kd
     * @param kdInPressure true up to 7-16, where Kd is a factor of the pressure; from 7-22 it is one of the load
     * @param otherFactors Kzt and Ke, multiplied
     * @param gust G
     * @param gradientHeightMm zg
     * @param exponent alpha
     */
    record American(double directionality, boolean kdInPressure, double otherFactors, double gust, double gradientHeightMm, double exponent) {
        /** Half the density of air, for m/s and Pa; 0.00256 for mph and psf is 0.06 % more, by rounding. */
        private static final double CONSTANT = 0.613;
        private static final double PROFILE_FACTOR = 2.01;
        /** Kz is not taken lower. */
        private static final double LEAST_HEIGHT_MM = 15 * Units.MM_PER_FOOT;

        static American of(Settings settings) {
            return new American(settings.get(WindSettings.DIRECTIONALITY), settings.get(WindSettings.EDITION).equals(WindSettings.UP_TO_7_16),
                    settings.get(WindSettings.TOPOGRAPHY) * settings.get(WindSettings.ELEVATION), settings.get(WindSettings.GUST),
                    settings.get(WindSettings.GRADIENT_HEIGHT), settings.get(WindSettings.EXPONENT));
        }

        /** Kz. */
        double exposure(double heightMm) {
            return PROFILE_FACTOR * Math.pow(Math.max(heightMm, LEAST_HEIGHT_MM) / gradientHeightMm, 2 / exponent);
        }

        Wind wind(double speed, double heightMm) {
            double pressure = CONSTANT * exposure(heightMm) * otherFactors * (kdInPressure ? directionality : 1) * speed * speed;
            return new Wind(pressure, gust * (kdInPressure ? 1 : directionality),
                    "the velocity pressure of ASCE 7, " + (kdInPressure ? "up to 7-16, Kd in it" : "from 7-22, Kd in the load"));
        }
    }
}
