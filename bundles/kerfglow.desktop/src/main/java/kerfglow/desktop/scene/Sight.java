// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.scene;

/**
 * Looking at the sign from a distance, and at the screen from another: a length on the screen is seen under the same angle as one on the
 * sign when both are to each other as the distances (intercept theorem).
 *
 * @param distanceMm from the eye to the sign, mm, above 0
 * @param eyeMm from the eye to the screen, mm, above 0
 */
public record Sight(double distanceMm, double eyeMm) {
    /** Assumed: an arm's length and a little; ISO 9241-5 asks for at least 400 mm and finds 600 mm usual. */
    public static final double USUAL_EYE_MM = 600;
    /** Assumed: across a street. */
    public static final double USUAL_DISTANCE_MM = 20_000;

    public Sight {
        if (!(distanceMm > 0 && eyeMm > 0 && Double.isFinite(distanceMm) && Double.isFinite(eyeMm))) {
            throw new IllegalArgumentException("distances must be above 0: " + distanceMm + " and " + eyeMm + " mm");
        }
    }

    /** How large the sign is drawn so that it is seen under the angle that it has. */
    public double pixelsPerMm(double screenPixelsPerMm) {
        return screenPixelsPerMm * eyeMm / distanceMm;
    }

    /** The angle under which a length on the sign is seen from straight before it, in minutes of arc. */
    public double minutesOfArc(double lengthMm) {
        return Math.toDegrees(2 * Math.atan(lengthMm / 2 / distanceMm)) * 60;
    }
}
