// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.scene;

import java.util.ArrayDeque;
import java.util.BitSet;
import java.util.Deque;

/**
 * Leaves out points of a line that lie within a tolerance of what is left (D. Douglas and T. Peucker, "Algorithms for the reduction
 * of the number of points required to represent a digitized line", 1973). Made for drawing: a ring may come to cross itself.
 */
final class Thinning {
    private Thinning() {
    }

    /**
     * The line with fewer points; its ends stay. A ring keeps its first point and the one farthest from it, so that it never
     * falls together to a point.
     *
     * @param xy x, y, x, y... of at least one point
     */
    static double[] of(double[] xy, double tolerance) {
        int points = xy.length / 2;
        if (points <= 2) {
            return xy;
        }
        BitSet kept = new BitSet(points);
        kept.set(0);
        kept.set(points - 1);
        Deque<int[]> open = new ArrayDeque<>();
        if (xy[0] == xy[xy.length - 2] && xy[1] == xy[xy.length - 1]) {
            int far = farthestFrom(xy, 0);
            kept.set(far);
            open.push(new int[] {0, far});
            open.push(new int[] {far, points - 1});
        } else {
            open.push(new int[] {0, points - 1});
        }
        while (!open.isEmpty()) {
            int[] span = open.pop();
            int far = -1;
            double most = tolerance;
            for (int i = span[0] + 1; i < span[1]; i++) {
                double off = Segments.distance(xy[2 * i], xy[2 * i + 1], xy[2 * span[0]], xy[2 * span[0] + 1], xy[2 * span[1]], xy[2 * span[1] + 1]);
                if (off > most) {
                    most = off;
                    far = i;
                }
            }
            if (far >= 0) {
                kept.set(far);
                open.push(new int[] {span[0], far});
                open.push(new int[] {far, span[1]});
            }
        }
        double[] thin = new double[2 * kept.cardinality()];
        int next = 0;
        for (int i = kept.nextSetBit(0); i >= 0; i = kept.nextSetBit(i + 1)) {
            thin[next++] = xy[2 * i];
            thin[next++] = xy[2 * i + 1];
        }
        return thin;
    }

    private static int farthestFrom(double[] xy, int from) {
        int far = 0;
        double most = -1;
        for (int i = 0; i < xy.length / 2; i++) {
            double distance = Math.hypot(xy[2 * i] - xy[2 * from], xy[2 * i + 1] - xy[2 * from + 1]);
            if (distance > most) {
                most = distance;
                far = i;
            }
        }
        return far;
    }
}
