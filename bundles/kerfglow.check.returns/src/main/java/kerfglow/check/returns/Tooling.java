// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.returns;

import kerfglow.api.Settings;
import kerfglow.api.SharedSettings;
import kerfglow.api.proof.Part;

/**
 * The settings that hold for the returns of one part, read once, so that measuring can run on any thread. Lengths in mm, angles in
 * degrees; what each is: {@link ReturnsSettings}.
 */
record Tooling(double depthMm, String material, double thicknessMm, double k, boolean outside, double insetMm, double fitMm,
        double leastRadiusMm, double leastTurn, double cornerRadiusMm, double cornerAngle, double foldRadiusMm, double foldK,
        double leastFlangeMm, double leastAngle, double armMm, double leastCounterMm, boolean jointLow, double jointStraightMm) {
    /** Common practice: the least flange is this many thicknesses and the inside radius. */
    private static final double FLANGE_THICKNESSES = 4;

    static Tooling of(double depthMm, Part part, Settings settings) {
        String material = settings.get(ReturnsSettings.MATERIAL, part);
        double thickness = settings.get(ReturnsSettings.THICKNESS, part);
        double fold = settings.get(ReturnsSettings.FOLD_RADIUS, part);
        return new Tooling(depthMm, material, thickness,
                settings.given(ReturnsSettings.K_FACTOR, part).orElse(ReturnsSettings.K_OF_MATERIAL.get(material)),
                settings.get(ReturnsSettings.LINE, part).equals(ReturnsSettings.OUTSIDE), sideMm(part, settings),
                settings.get(ReturnsSettings.FIT_TOLERANCE, part), settings.get(ReturnsSettings.LEAST_RADIUS, part),
                settings.get(ReturnsSettings.LEAST_TURN, part), settings.get(ReturnsSettings.CORNER_RADIUS, part),
                settings.get(ReturnsSettings.CORNER_ANGLE, part), fold, settings.get(ReturnsSettings.FOLD_K, part),
                settings.given(ReturnsSettings.LEAST_FLANGE, part).orElse(FLANGE_THICKNESSES * thickness + fold),
                settings.get(ReturnsSettings.LEAST_ANGLE, part), settings.get(ReturnsSettings.ARM_WIDTH, part),
                settings.get(ReturnsSettings.LEAST_COUNTER, part), settings.get(ReturnsSettings.JOINT, part).equals(ReturnsSettings.LOW),
                settings.get(ReturnsSettings.JOINT_STRAIGHT, part));
    }

    /** How far the back stays inside the face on each side. */
    private static double sideMm(Part part, Settings settings) {
        double given = settings.get(SharedSettings.BACK_ALLOWANCE, part);
        return settings.get(SharedSettings.BACK_ALLOWANCE_KIND, part).equals(SharedSettings.IN_TOTAL) ? given / 2 : given;
    }

    /** True when the face of the strip that lies on the line is the inside of a bend: the line's radius is the inside radius. */
    private boolean insideOnLine(boolean convex) {
        return convex == outside;
    }

    /** The inside radius of a strip bent along a curve of the line; never below 0. */
    double insideRadiusMm(double lineRadiusMm, boolean convex) {
        return Math.max(0, insideOnLine(convex) ? lineRadiusMm : lineRadiusMm - thicknessMm);
    }

    /** What a curve takes of the strip: angle (R + K t). */
    double curveMm(double lineRadiusMm, double turn, boolean convex) {
        double inside = insideOnLine(convex) ? lineRadiusMm : lineRadiusMm - thicknessMm;
        return Math.max(0, Math.abs(turn) * (inside + k * thicknessMm));
    }

    /** What a slight bend adds to a straight: the same with no radius on the line. */
    double kinkMm(double turn, boolean convex) {
        return Math.abs(turn) * (insideOnLine(convex) ? k : k - 1) * thicknessMm;
    }

    /**
     * What a fold takes of the strip beyond the legs up to its sharp corner on the line: allowance less twice the setback, the
     * setback with the inside radius, or the outside one where the line is the outside of the fold.
     */
    double foldMm(double turn, boolean convex) {
        double angle = Math.abs(turn);
        double onLine = insideOnLine(convex) ? foldRadiusMm : foldRadiusMm + thicknessMm;
        return allowanceMm(turn) - 2 * onLine * Math.tan(angle / 2);
    }

    /** The bend allowance of a fold: angle (R + K t). */
    double allowanceMm(double turn) {
        return Math.abs(turn) * (foldRadiusMm + foldK * thicknessMm);
    }
}
