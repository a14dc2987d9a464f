// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.desk;

/**
 * How large a pixel of this screen is; told by the toolkit, or measured by the person with a rule.
 *
 * @param pixelsPerMm pixels in a millimetre of the screen, above 0
 */
public record Screen(double pixelsPerMm) {
    /** CSS Values and Units, reference pixel: 96 to the inch; holds until the toolkit says otherwise. */
    public static final Screen ASSUMED = new Screen(96 / 25.4);

    public Screen {
        if (!(pixelsPerMm > 0 && Double.isFinite(pixelsPerMm))) {
            throw new IllegalArgumentException("pixels per millimetre must be above 0: " + pixelsPerMm);
        }
    }
}
