// SPDX-License-Identifier: Apache-2.0
package kerfglow.light;

/**
 * Brings the light that back and walls send on to the cells of a map: looked for in many directions at nodes some cells apart, read between
 * patches by interpolation, and interpolated between nodes. Not for use by several threads at once.
 */
final class Gather {
    /** Nodes stand this share of a patch apart: light sent on varies over patches, not over cells. */
    private static final double NODES_PER_PATCH = 6;
    private static final int DIRECTIONS_PER_RISE = 3;
    private static final double NO_WEIGHT = 1e-6;

    private final Patches patches;
    private final Room room;
    private final double depth;
    private final int directions;
    private final int rises;
    private final double[] sideways;
    private final double[] cos;
    private final double[] sin;
    /** What the back sends on at each label cell, and the walls at each patch, lumen per mm². */
    private final double[] back;
    private final double[] walls;

    Gather(Outline outline, Patches patches, double depth, int directions, double[] radiosity) {
        this.patches = patches;
        this.depth = depth;
        this.directions = directions;
        rises = Math.max(1, directions / DIRECTIONS_PER_RISE);
        room = new Room(outline, patches, depth);
        Lattice level = Lattice.level();
        sideways = new double[directions * rises];
        cos = new double[directions];
        sin = new double[directions];
        for (int a = 0; a < directions; a++) {
            double angle = 2 * Math.PI * (a + 0.5) / directions;
            cos[a] = Math.cos(angle);
            sin[a] = Math.sin(angle);
            for (int r = 0; r < rises; r++) {
                sideways[a * rises + r] = level.at((r + Lattice.shift(a)) / rises);
            }
        }
        double[] even = new double[patches.grid.size()];
        for (int i = 0; i < even.length; i++) {
            even[i] = radiosity[patches.planOf(i)];
        }
        back = Smoothing.box(patches.grid, patches.inside, even, patches.patchMm / patches.grid.cellMm());
        walls = radiosity;
    }

    /** Adds light sent on to a map, in lux. */
    void add(Grid grid, boolean[] inside, double[] lux, Runnable pulse) {
        int stride = Math.max(1, (int) (patches.patchMm / NODES_PER_PATCH / grid.cellMm()));
        int first = stride / 2;
        int nodeColumns = (grid.columns() - 1 - first + stride) / stride;
        int nodeRows = (grid.rows() - 1 - first + stride) / stride;
        double[] nodes = new double[nodeColumns * nodeRows];
        for (int j = 0; j < nodeRows; j++) {
            pulse.run();
            for (int i = 0; i < nodeColumns; i++) {
                int column = first + i * stride;
                int row = first + j * stride;
                nodes[j * nodeColumns + i] = inside[row * grid.columns() + column] ? at(grid.x(column), grid.y(row)) : Double.NaN;
            }
        }
        for (int row = 0; row < grid.rows(); row++) {
            pulse.run();
            for (int column = 0; column < grid.columns(); column++) {
                int cell = row * grid.columns() + column;
                if (inside[cell]) {
                    double between = between(nodes, nodeColumns, nodeRows, (double) (column - first) / stride, (double) (row - first) / stride);
                    lux[cell] += Double.isNaN(between) ? at(grid.x(column), grid.y(row)) : between;
                }
            }
        }
    }

    /** Between the nodes that lie inside; NaN where none of the four does. */
    private static double between(double[] nodes, int columns, int rows, double i, double j) {
        int left = (int) Math.floor(i);
        int top = (int) Math.floor(j);
        double sum = 0;
        double weights = 0;
        for (int corner = 0; corner < 4; corner++) {
            int column = left + corner % 2;
            int row = top + corner / 2;
            double weight = (1 - Math.abs(column - i)) * (1 - Math.abs(row - j));
            if (weight > NO_WEIGHT && column >= 0 && row >= 0 && column < columns && row < rows && !Double.isNaN(nodes[row * columns + column])) {
                sum += weight * nodes[row * columns + column];
                weights += weight;
            }
        }
        return weights > 0 ? sum / weights : Double.NaN;
    }

    /** What the face receives at a point, lux. */
    private double at(double x, double y) {
        double sum = 0;
        for (int a = 0; a < directions; a++) {
            if (room.look(x, y, cos[a], sin[a])) {
                for (int r = 0; r < rises; r++) {
                    room.follow(depth, -1, sideways[a * rises + r]);
                    sum += room.edge < 0 ? back[patches.nearest[patches.grid.cell(room.endX, room.endY)]] : wall();
                }
            }
        }
        return sum / (directions * rises) * LightMap.MM2_PER_M2;
    }

    /** Between the middles of the four wall patches about the place that the room came to. */
    private double wall() {
        int ring = patches.ringOf(room.edge);
        int count = patches.ringPieces[ring + 1] - patches.ringPieces[ring];
        double along = patches.alongRing(room.edge, room.endX, room.endY) - 0.5;
        double up = Math.max(0, Math.min(patches.bands - 1, room.endZ / depth * patches.bands - 0.5));
        int piece = (int) Math.floor(along);
        double share = along - piece;
        int before = patches.ringPieces[ring] + Math.floorMod(piece, count);
        int after = patches.ringPieces[ring] + Math.floorMod(piece + 1, count);
        int band = Math.min(patches.bands - 2, (int) up);
        double rise = up - band;
        return (1 - rise) * ((1 - share) * walls[patches.wall(before, band)] + share * walls[patches.wall(after, band)])
                + rise * ((1 - share) * walls[patches.wall(before, band + 1)] + share * walls[patches.wall(after, band + 1)]);
    }
}
