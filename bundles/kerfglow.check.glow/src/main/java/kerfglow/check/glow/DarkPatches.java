// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.glow;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import kerfglow.light.Grid;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.util.AffineTransformation;
import org.locationtech.jts.operation.union.CascadedPolygonUnion;

/** Connected patches of a map below a level. */
final class DarkPatches {
    private static final int SIDES = 4;

    private DarkPatches() {
    }

    /**
     * A patch.
     *
     * @param place its cells, united
     * @param at its darkest cell, mm
     * @param level the level there
     * @param areaMm2 of its cells
     */
    record Patch(Geometry place, Coordinate at, double level, double areaMm2) {
        Patch moved(double dx, double dy) {
            return new Patch(AffineTransformation.translationInstance(dx, dy).transform(place), new Coordinate(at.x + dx, at.y + dy), level, areaMm2);
        }
    }

    /** From the top, then from the left. */
    static List<Patch> of(Grid grid, boolean[] lit, double[] values, double level, double leastAreaMm2, GeometryFactory factory) {
        List<Patch> patches = new ArrayList<>();
        boolean[] done = new boolean[values.length];
        int[] queue = new int[values.length];
        for (int seed = 0; seed < values.length; seed++) {
            if (done[seed] || !lit[seed] || values[seed] >= level) {
                continue;
            }
            int size = 1;
            int darkest = seed;
            queue[0] = seed;
            done[seed] = true;
            for (int k = 0; k < size; k++) {
                int cell = queue[k];
                darkest = values[cell] < values[darkest] ? cell : darkest;
                for (int side = 0; side < SIDES; side++) {
                    int column = cell % grid.columns() + (side == 0 ? 1 : side == 1 ? -1 : 0);
                    int row = cell / grid.columns() + (side == 2 ? 1 : side == 3 ? -1 : 0);
                    int next = row * grid.columns() + column;
                    if (column >= 0 && row >= 0 && column < grid.columns() && row < grid.rows() && !done[next] && lit[next] && values[next] < level) {
                        done[next] = true;
                        queue[size++] = next;
                    }
                }
            }
            double area = size * grid.cellMm() * grid.cellMm();
            if (area >= leastAreaMm2) {
                patches.add(new Patch(united(grid, queue, size, factory), grid.at(darkest), values[darkest], area));
            }
        }
        return patches;
    }

    /** Runs of cells as rectangles, united. */
    private static Geometry united(Grid grid, int[] cells, int size, GeometryFactory factory) {
        int[] sorted = Arrays.copyOf(cells, size);
        Arrays.sort(sorted);
        List<Geometry> runs = new ArrayList<>();
        for (int from = 0; from < size;) {
            int to = from + 1;
            while (to < size && sorted[to] == sorted[to - 1] + 1 && sorted[to] % grid.columns() != 0) {
                to++;
            }
            double left = grid.leftMm() + sorted[from] % grid.columns() * grid.cellMm();
            double top = grid.topMm() + sorted[from] / grid.columns() * grid.cellMm();
            runs.add(factory.toGeometry(new Envelope(left, left + (to - from) * grid.cellMm(), top, top + grid.cellMm())));
            from = to;
        }
        return CascadedPolygonUnion.union(runs);
    }
}
