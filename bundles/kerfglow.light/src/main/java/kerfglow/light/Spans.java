// SPDX-License-Identifier: Apache-2.0
package kerfglow.light;

import java.util.Arrays;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryComponentFilter;
import org.locationtech.jts.geom.LineString;

/** The runs of cells whose centres lie in an area that closed outlines enclose, by the even-odd rule; a centre on an edge counts once. */
final class Spans {
    private final Grid grid;
    private double[] x0 = new double[64];
    private double[] y0 = new double[64];
    private double[] x1 = new double[64];
    private double[] y1 = new double[64];
    private int count;

    /** What is done with the cells of one row from one column up to, not including, another. */
    interface Run {
        void cells(int row, int from, int to);
    }

    Spans(Grid grid) {
        this.grid = grid;
    }

    /** Which cells of a grid have their centres in a polygonal area. */
    static boolean[] inside(Grid grid, Geometry area) {
        Spans spans = new Spans(grid);
        area.apply((GeometryComponentFilter) each -> {
            if (each instanceof LineString ring) {
                Coordinate[] points = ring.getCoordinates();
                for (int i = 0; i + 1 < points.length; i++) {
                    spans.edge(points[i].x, points[i].y, points[i + 1].x, points[i + 1].y);
                }
            }
        });
        boolean[] inside = new boolean[grid.size()];
        spans.runs((row, from, to) -> Arrays.fill(inside, row * grid.columns() + from, row * grid.columns() + to, true));
        return inside;
    }

    /** Adds an edge of an outline. */
    void edge(double fromX, double fromY, double toX, double toY) {
        if (count == x0.length) {
            x0 = Arrays.copyOf(x0, 2 * count);
            y0 = Arrays.copyOf(y0, 2 * count);
            x1 = Arrays.copyOf(x1, 2 * count);
            y1 = Arrays.copyOf(y1, 2 * count);
        }
        x0[count] = fromX;
        y0[count] = fromY;
        x1[count] = toX;
        y1[count] = toY;
        count++;
    }

    /** Tells every run, from the top. */
    void runs(Run run) {
        int[] starts = new int[grid.rows() + 1];
        for (int i = 0; i < count; i++) {
            int last = below(Math.max(y0[i], y1[i]));
            for (int row = below(Math.min(y0[i], y1[i])); row < last; row++) {
                starts[row + 1]++;
            }
        }
        for (int row = 0; row < grid.rows(); row++) {
            starts[row + 1] += starts[row];
        }
        double[] crossings = new double[starts[grid.rows()]];
        int[] filled = Arrays.copyOf(starts, grid.rows());
        for (int i = 0; i < count; i++) {
            int last = below(Math.max(y0[i], y1[i]));
            double lean = (x1[i] - x0[i]) / (y1[i] - y0[i]);
            for (int row = below(Math.min(y0[i], y1[i])); row < last; row++) {
                crossings[filled[row]++] = x0[i] + lean * (grid.y(row) - y0[i]);
            }
        }
        for (int row = 0; row < grid.rows(); row++) {
            Arrays.sort(crossings, starts[row], starts[row + 1]);
            for (int k = starts[row]; k + 1 < starts[row + 1]; k += 2) {
                int from = Math.max(0, right(crossings[k]));
                int to = Math.min(grid.columns(), right(crossings[k + 1]));
                if (from < to) {
                    run.cells(row, from, to);
                }
            }
        }
    }

    /** The first row whose centre does not lie above a y. */
    private int below(double y) {
        return Math.max(0, Math.min(grid.rows(), (int) Math.ceil((y - grid.topMm()) / grid.cellMm() - 0.5)));
    }

    /** The first column whose centre does not lie left of an x. */
    private int right(double x) {
        return (int) Math.ceil((x - grid.leftMm()) / grid.cellMm() - 0.5);
    }
}
