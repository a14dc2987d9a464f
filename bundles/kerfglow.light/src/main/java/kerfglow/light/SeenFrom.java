// SPDX-License-Identifier: Apache-2.0
package kerfglow.light;

import java.util.Arrays;

/**
 * What light from one point inside an outline reaches in plan: the star-shaped region up to the first wall in every direction. Between two
 * neighbouring directions of corners the first wall is one edge, so that one look at it gives the region exactly.
 */
final class SeenFrom {
    /** Directions nearer to each other than this (radians) count as one. */
    private static final double SAME_DIRECTION = 1e-10;

    /** The region's corners, in order of direction. */
    private double[] xs = new double[0];
    private double[] ys = new double[0];
    private int count;

    /** Finds the region; empty when the point does not lie inside. */
    SeenFrom(Outline outline, double x, double y) {
        if (!outline.contains(x, y)) {
            return;
        }
        int n = outline.edges();
        double[] angles = new double[n + 1];
        for (int i = 0; i < n; i++) {
            angles[i] = Math.atan2(outline.ay[i] - y, outline.ax[i] - x);
        }
        Arrays.sort(angles, 0, n);
        angles[n] = angles[0] + 2 * Math.PI;
        xs = new double[2 * n];
        ys = new double[2 * n];
        Outline.Hit hit = new Outline.Hit();
        for (int i = 0; i < n; i++) {
            if (angles[i + 1] - angles[i] < SAME_DIRECTION) {
                continue;
            }
            double middle = (angles[i] + angles[i + 1]) / 2;
            outline.cast(x, y, Math.cos(middle), Math.sin(middle), hit);
            if (hit.edge >= 0) {
                addOn(outline, hit.edge, x, y, angles[i]);
                addOn(outline, hit.edge, x, y, angles[i + 1]);
            }
        }
    }

    /** The point of an edge's line in a direction. */
    private void addOn(Outline outline, int edge, double x, double y, double angle) {
        double dx = Math.cos(angle);
        double dy = Math.sin(angle);
        double ex = outline.ex[edge];
        double ey = outline.ey[edge];
        double px = x - outline.ax[edge];
        double py = y - outline.ay[edge];
        double cross = dx * ey - dy * ex;
        double along = cross == 0 ? 0 : Math.max(0, Math.min(1, (px * dy - py * dx) / -cross));
        xs[count] = outline.ax[edge] + along * ex;
        ys[count] = outline.ay[edge] + along * ey;
        count++;
    }

    /** Tells every run of cells of a grid whose centres lie in the region. */
    void runs(Grid grid, Spans.Run run) {
        Spans spans = new Spans(grid);
        for (int i = 0; i < count; i++) {
            int j = i + 1 == count ? 0 : i + 1;
            spans.edge(xs[i], ys[i], xs[j], ys[j]);
        }
        spans.runs(run);
    }
}
