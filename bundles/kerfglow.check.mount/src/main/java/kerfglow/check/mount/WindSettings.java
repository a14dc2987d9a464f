// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.mount;

import java.util.List;
import kerfglow.api.Quantity;
import kerfglow.api.Setting;
import kerfglow.api.Units;

/** What goes into the estimate of the wind. Speeds are in m/s. */
final class WindSettings {
    static final String EUROPEAN = "EN 1991-1-4";
    static final String AMERICAN = "ASCE 7";
    /** Kd is a factor of the velocity pressure. */
    static final String UP_TO_7_16 = "7-16";
    /** Kd is a factor of the load. */
    static final String FROM_7_22 = "7-22";
    static final String RECTANGLE = "rectangle";
    static final String OUTLINE = "outline";

    private static final String JOB = "the job sheet";
    private static final String EN_SOURCE = "EN 1991-1-4 as in Steel Buildings in Europe, Part 3, Appendix B";
    private static final String ASCE_SOURCE = "ASCE 7-05 to 7-16, as on pages about velocity pressure (secondary)";
    private static final double MOST_SPEED = 150;
    private static final double TALLEST_MM = 1e6;
    private static final double LEAST_HEIGHT_MM = 2000;
    private static final double USUAL_HEIGHT_MM = 6000;
    private static final double REFERENCE_ROUGHNESS_MM = 50;
    private static final double GRADIENT_FEET = 900;

    static final Setting<Double> PRESSURE = Setting.number("mount.wind-pressure", "peak velocity pressure of the wind", Quantity.PRESSURE, null, 0, 100_000,
            "not given: it follows from the wind speed; give it where the engineer or the code gives a pressure", JOB);
    static final Setting<Double> SPEED = Setting.number("mount.wind-speed", "basic wind speed of the place, m/s", Quantity.RATIO, null, 0, MOST_SPEED,
            "only the place knows: 10 minute mean at 10 m for EN 1991-1-4, 3 s gust for ASCE 7", "the national annex, or the maps of ASCE 7");
    static final Setting<String> CODE = Setting.choice("mount.wind-code", "the code by which the speed becomes a pressure", EUROPEAN, List.of(EUROPEAN, AMERICAN),
            "the code that governs where the sign hangs", JOB);
    static final Setting<Double> HEIGHT = Setting.lengthMm("mount.height", "height of the middle of the sign above ground", USUAL_HEIGHT_MM, 0, TALLEST_MM,
            "above a shop front", "Assumed: give the real height");
    static final Setting<Double> COEFFICIENT = Setting.number("mount.force-coefficient", "force coefficient of the sign", Quantity.RATIO, 1.8, 0.1, 5,
            "a signboard that the wind goes round", "EN 1991-1-4, 7.4.3 signboards, by a secondary page and memory: confirm it");
    static final Setting<String> AREA = Setting.choice("mount.wind-area", "the area that the wind presses on", RECTANGLE, List.of(RECTANGLE, OUTLINE),
            "the enclosing rectangle is on the safe side of open letters", "Assumed: an engineer may take the outline");

    static final Setting<Double> AIR_DENSITY = Setting.number("mount.air-density", "density of air, kg/m³", Quantity.RATIO, 1.25, 0.5, 2,
            "the recommended value", EN_SOURCE);
    static final Setting<Double> ROUGHNESS = Setting.lengthMm("mount.terrain-roughness", "roughness length of the terrain", REFERENCE_ROUGHNESS_MM, 0.1, 10_000,
            "0.05 m, open country, to which the terrain factor refers; 0.003 m by the sea, 0.3 m in suburbs", EN_SOURCE);
    static final Setting<Double> LEAST_HEIGHT = Setting.lengthMm("mount.terrain-least-height", "height below which the wind is taken as at this height", LEAST_HEIGHT_MM, 100, 50_000,
            "close to the ground the profile does not hold; rougher terrain asks for more", "Assumed: about the height of a shop door");

    static final Setting<String> EDITION = Setting.choice("mount.asce-edition", "edition of ASCE 7", UP_TO_7_16, List.of(UP_TO_7_16, FROM_7_22),
            "up to 7-16 the directionality factor is part of the velocity pressure, from 7-22 of the load; the force is one and the same", "from memory, not confirmed");
    static final Setting<Double> DIRECTIONALITY = factor("mount.asce-directionality", "directionality factor Kd", 0.85, "signs, by the worked examples");
    static final Setting<Double> TOPOGRAPHY = factor("mount.asce-topography", "topographic factor Kzt", 1.0, "flat ground");
    static final Setting<Double> ELEVATION = factor("mount.asce-elevation", "ground elevation factor Ke", 1.0, "sea level; leave it at 1 for editions without it");
    static final Setting<Double> GUST = factor("mount.asce-gust", "gust effect factor G", 0.85, "a rigid structure");
    static final Setting<Double> GRADIENT_HEIGHT = Setting.lengthMm("mount.asce-gradient-height", "gradient height zg", GRADIENT_FEET * Units.MM_PER_FOOT, 1000, TALLEST_MM,
            "900 ft, exposure C", ASCE_SOURCE);
    static final Setting<Double> EXPONENT = factor("mount.asce-exponent", "power law exponent alpha", 9.5, "exposure C");

    static final List<Setting<?>> ALL = List.of(PRESSURE, SPEED, CODE, HEIGHT, COEFFICIENT, AREA, AIR_DENSITY, ROUGHNESS, LEAST_HEIGHT, EDITION, DIRECTIONALITY,
            TOPOGRAPHY, ELEVATION, GUST, GRADIENT_HEIGHT, EXPONENT);

    private WindSettings() {
    }

    private static Setting<Double> factor(String key, String title, double value, String reason) {
        return Setting.number(key, title, Quantity.RATIO, value, 0.1, 50, reason, ASCE_SOURCE);
    }
}
