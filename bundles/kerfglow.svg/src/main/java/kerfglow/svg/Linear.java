// SPDX-License-Identifier: Apache-2.0
package kerfglow.svg;

import java.awt.geom.AffineTransform;

/** Measures of the linear part of a transform. */
final class Linear {
    private Linear() {
    }

    /** The larger singular value: how much the transform stretches at most. */
    static double largestStretch(AffineTransform t) {
        double a = t.getScaleX();
        double b = t.getShearY();
        double c = t.getShearX();
        double d = t.getScaleY();
        return (Math.hypot(a + d, b - c) + Math.hypot(a - d, b + c)) / 2;
    }

    /** The smaller singular value; 0 when the transform flattens the plane to a line. */
    static double smallestStretch(AffineTransform t) {
        double largest = largestStretch(t);
        return largest == 0 ? 0 : Math.abs(t.getDeterminant()) / largest;
    }

    static boolean isFinite(AffineTransform t) {
        return Double.isFinite(t.getScaleX()) && Double.isFinite(t.getScaleY()) && Double.isFinite(t.getShearX())
                && Double.isFinite(t.getShearY()) && Double.isFinite(t.getTranslateX()) && Double.isFinite(t.getTranslateY());
    }
}
