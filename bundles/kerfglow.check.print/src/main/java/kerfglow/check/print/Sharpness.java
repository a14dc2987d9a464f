// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.print;

import kerfglow.api.Units;
import kerfglow.api.proof.ImageInfo;

/** How fine pixels must be so that the eye cannot tell them apart. */
final class Sharpness {
    /** What an eye of acuity 1 tells apart: one minute of arc, radians. Source: definition of visual acuity. */
    private static final double MINUTE = Math.toRadians(1.0 / 60);

    private Sharpness() {
    }

    /**
     * Pixels per inch at which one pixel is as large as the eye tells apart.
     *
     * <p>25.4 / (d tan(1' / V)): 3438 / d for d in inches and V = 1 (published as a rule for print sizes).
     *
     * @param distanceMm from the eye to the print, mm, above 0
     * @param acuity decimal acuity V, above 0
     */
    static double requiredPpi(double distanceMm, double acuity) {
        return Units.MM_PER_INCH / (distanceMm * Math.tan(MINUTE / acuity));
    }

    /** From how far a picture of that many pixels per inch looks sharp, mm; the inverse of {@link #requiredPpi}. */
    static double sharpFromMm(double ppi, double acuity) {
        return requiredPpi(ppi, acuity);
    }

    /** Pixels per inch at real size along the coarser of the picture's axes; NaN when pixels or size are not known. */
    static double ppi(ImageInfo image) {
        if (image.pixelWidth() <= 0 || image.pixelHeight() <= 0 || !(image.widthMm() > 0) || !(image.heightMm() > 0)) {
            return Double.NaN;
        }
        return Units.MM_PER_INCH * Math.min(image.pixelWidth() / image.widthMm(), image.pixelHeight() / image.heightMm());
    }
}
