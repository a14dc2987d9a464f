// SPDX-License-Identifier: Apache-2.0
package kerfglow.light.layout;

/**
 * Light that is there before any site is chosen, in each lit cell.
 *
 * @param luminance as it is
 * @param seen as an eye sees it
 */
record Base(float[] luminance, float[] seen) {
    /** The same with more light in both. */
    Base plus(float[] more) {
        return new Base(sum(luminance, more), sum(seen, more));
    }

    private static float[] sum(float[] one, float[] other) {
        float[] sum = one.clone();
        for (int i = 0; i < sum.length; i++) {
            sum[i] += other[i];
        }
        return sum;
    }
}
