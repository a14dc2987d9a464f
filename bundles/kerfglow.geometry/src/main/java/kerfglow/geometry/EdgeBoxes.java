// SPDX-License-Identifier: Apache-2.0
package kerfglow.geometry;

import java.util.function.IntConsumer;

/**
 * Boxes about edges that follow one another along outlines, boxes about eight of these each, and so on: edges that follow each other
 * lie near each other, so that no sorting is needed, and for outlines of a few hundred edges this is several times faster than a tree.
 */
final class EdgeBoxes {
    private static final int SHIFT = 3;
    private static final int FAN = 1 << SHIFT;

    /** For each level least x, least y, greatest x, greatest y of every box; the edges themselves first. */
    private final double[][] levels;

    /** @param boxes least x, least y, greatest x, greatest y of every edge, in order along the outlines */
    EdgeBoxes(double[] boxes) {
        int depth = 1;
        for (int count = boxes.length / 4; count > FAN; count = (count + FAN - 1) / FAN) {
            depth++;
        }
        levels = new double[depth][];
        levels[0] = boxes;
        for (int level = 1; level < depth; level++) {
            levels[level] = above(levels[level - 1]);
        }
    }

    private static double[] above(double[] below) {
        int count = below.length / 4;
        double[] boxes = new double[4 * ((count + FAN - 1) / FAN)];
        for (int i = 0; i < count; i++) {
            int to = 4 * (i >> SHIFT);
            boolean first = i % FAN == 0;
            for (int k = 0; k < 4; k++) {
                double value = below[4 * i + k];
                boxes[to + k] = first ? value : k < 2 ? Math.min(boxes[to + k], value) : Math.max(boxes[to + k], value);
            }
        }
        return boxes;
    }

    /** Tells every edge whose box meets the given one, in order. */
    void query(double minX, double minY, double maxX, double maxY, IntConsumer edge) {
        int top = levels.length - 1;
        query(top, 0, levels[top].length / 4, minX, minY, maxX, maxY, edge);
    }

    private void query(int level, int from, int to, double minX, double minY, double maxX, double maxY, IntConsumer edge) {
        double[] boxes = levels[level];
        for (int i = from; i < to; i++) {
            int at = 4 * i;
            if (boxes[at] <= maxX && boxes[at + 2] >= minX && boxes[at + 1] <= maxY && boxes[at + 3] >= minY) {
                if (level == 0) {
                    edge.accept(i);
                } else {
                    query(level - 1, i << SHIFT, Math.min((i + 1) << SHIFT, levels[level - 1].length / 4), minX, minY, maxX, maxY, edge);
                }
            }
        }
    }
}
