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

    /** How far off an edge is. */
    interface Square {
        /** The square of the distance to an edge. */
        double of(int edge);
    }

    /** The edge nearest to a point; of equals any. */
    int nearest(double x, double y, Square square) {
        Search search = new Search(x, y, square);
        int top = levels.length - 1;
        search.visit(top, 0, levels[top].length / 4);
        return search.best;
    }

    /** Goes into the nearest box first, so that most of the others need not be opened. */
    private final class Search {
        private final double x;
        private final double y;
        private final Square square;
        private double least = Double.POSITIVE_INFINITY;
        private int best;

        Search(double x, double y, Square square) {
            this.x = x;
            this.y = y;
            this.square = square;
        }

        void visit(int level, int from, int to) {
            int first = from;
            double nearest = Double.POSITIVE_INFINITY;
            for (int i = from; i < to; i++) {
                double distance = toBox(level, i);
                if (distance < nearest) {
                    nearest = distance;
                    first = i;
                }
            }
            open(level, first);
            for (int i = from; i < to; i++) {
                if (i != first && toBox(level, i) < least) {
                    open(level, i);
                }
            }
        }

        private void open(int level, int i) {
            if (level > 0) {
                visit(level - 1, i << SHIFT, Math.min((i + 1) << SHIFT, levels[level - 1].length / 4));
                return;
            }
            double distance = square.of(i);
            if (distance < least) {
                least = distance;
                best = i;
            }
        }

        private double toBox(int level, int i) {
            double[] boxes = levels[level];
            double dx = Math.max(0, Math.max(boxes[4 * i] - x, x - boxes[4 * i + 2]));
            double dy = Math.max(0, Math.max(boxes[4 * i + 1] - y, y - boxes[4 * i + 3]));
            return dx * dx + dy * dy;
        }
    }
}
