// SPDX-License-Identifier: Apache-2.0
package kerfglow.svg;

/**
 * One flattened subpath in user units.
 *
 * @param xs corners, x
 * @param ys corners, y; the first corner is not repeated at the end when closed
 * @param nodes indices of the corners that are nodes of the file
 * @param corners for each corner of the polyline, true where the drawn curve itself turns, so that a stroke shows its join
 * @param closed true when the file closes it
 */
record Subpath(double[] xs, double[] ys, int[] nodes, boolean[] corners, boolean closed) {
    int size() {
        return xs.length;
    }
}
