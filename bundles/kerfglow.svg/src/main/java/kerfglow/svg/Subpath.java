// SPDX-License-Identifier: Apache-2.0
package kerfglow.svg;

/**
 * One flattened subpath in user units.
 *
 * @param xs corners, x
 * @param ys corners, y; the first corner is not repeated at the end when closed
 * @param nodes indices of the corners that are nodes of the file
 * @param corners for each corner of the polyline, true where the drawn curve itself turns, so that a stroke shows its join
 * @param closed true when the file closes it; one that only ends where it began has caps there and repeats the corner
 */
record Subpath(double[] xs, double[] ys, int[] nodes, boolean[] corners, boolean closed) {
    /** True when it ends where it began, whether the file closes it or not. */
    boolean returns() {
        return closed || size() > 1 && xs[0] == xs[size() - 1] && ys[0] == ys[size() - 1];
    }

    int size() {
        return xs.length;
    }
}
