// SPDX-License-Identifier: Apache-2.0
package kerfglow.light;

import java.util.Arrays;
import org.locationtech.jts.geom.Coordinate;

/**
 * Brings the light that back and walls send on to the cells of a map. At nodes some cells apart it is found once where the rays of many
 * directions end: a place on the back or on a wall. What is sent on there is read between patches, and between nodes, by interpolation.
 * Immutable.
 */
final class Gather {
    /** Nodes stand this share of a patch apart: light sent on varies over patches, not over cells. */
    static final double NODES_PER_PATCH = 6;
    /** A quarter of that moves the map by about 0.5 % (root mean square) and costs a quarter; enough for a search. */
    static final double FEW_NODES_PER_PATCH = 1.5;
    private static final int DIRECTIONS_PER_RISE = 3;
    /** Places to a wall patch, each way. */
    private static final int FINE = 4;
    private static final double NO_WEIGHT = 1e-6;
    private static final int NONE = -1;

    private final Patches patches;
    private final Grid grid;
    private final boolean[] inside;
    private final double depth;
    private final int stride;
    private final int first;
    private final int nodeColumns;
    private final int nodeRows;
    /** For each place of the lattice of nodes, and then for each cell that has no node beside it, the number of its node; or none. */
    private final int[] lattice;
    private final int[] alone;
    private final int samples;
    /** For each node the places that its rays end at: label cells of the back, then places of the walls. */
    private int[] ends;
    private int nodes;

    /** @param pose from where the map is to where the interior is reckoned */
    Gather(Interior interior, Pose pose, double nodesPerPatch, Grid grid, boolean[] inside, Runnable pulse) {
        patches = interior.patches;
        depth = interior.depthMm;
        this.grid = grid;
        this.inside = inside;
        int directions = interior.directions;
        stride = Math.max(1, (int) (patches.patchMm / nodesPerPatch / grid.cellMm()));
        first = stride / 2;
        nodeColumns = (grid.columns() - 1 - first + stride) / stride;
        nodeRows = (grid.rows() - 1 - first + stride) / stride;
        samples = directions * Math.max(1, directions / DIRECTIONS_PER_RISE);
        ends = new int[samples * Math.max(1, nodeColumns * nodeRows / 2)];
        Rays rays = new Rays(new Room(interior.outline, patches, depth), pose, directions);
        lattice = new int[nodeColumns * nodeRows];
        Arrays.fill(lattice, NONE);
        for (int j = 0; j < nodeRows; j++) {
            pulse.run();
            for (int i = 0; i < nodeColumns; i++) {
                int cell = (first + j * stride) * grid.columns() + first + i * stride;
                if (inside[cell]) {
                    lattice[j * nodeColumns + i] = add(rays, cell);
                }
            }
        }
        alone = new int[grid.size()];
        Arrays.fill(alone, NONE);
        double[] levels = new double[nodes];
        for (int cell = 0; cell < inside.length; cell++) {
            if (inside[cell] && Double.isNaN(between(levels, cell))) {
                alone[cell] = add(rays, cell);
            }
        }
    }

    /** Directions as seen from the face, the same from every place, so that what is seen changes smoothly from place to place. */
    private final class Rays {
        private final Room room;
        private final Pose pose;
        private final Coordinate place = new Coordinate();
        private final int rises;
        private final double[] sideways;
        private final double[] cos;
        private final double[] sin;

        Rays(Room room, Pose pose, int directions) {
            this.room = room;
            this.pose = pose;
            rises = samples / directions;
            Lattice level = Lattice.level();
            sideways = new double[samples];
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
        }

        void from(double x, double y, int to) {
            pose.into(x, y, place);
            for (int a = 0; a < cos.length; a++) {
                boolean sees = room.look(place.x, place.y, cos[a], sin[a]);
                for (int r = 0; r < rises; r++) {
                    int sample = a * rises + r;
                    if (sees) {
                        room.follow(depth, -1, sideways[sample]);
                    }
                    ends[to + sample] = !sees ? NONE : room.edge < 0 ? patches.nearest[patches.grid.cell(room.endX, room.endY)] : wall(room);
                }
            }
        }
    }

    private int add(Rays rays, int cell) {
        if ((nodes + 1) * samples > ends.length) {
            ends = Arrays.copyOf(ends, Math.max(2 * ends.length, samples));
        }
        rays.from(grid.x(cell % grid.columns()), grid.y(cell / grid.columns()), nodes * samples);
        return nodes++;
    }

    /** The number of a place on a wall. */
    private int wall(Room room) {
        int ring = patches.ringOf(room.edge);
        int along = (int) ((patches.ringPieces[ring] + patches.alongRing(room.edge, room.endX, room.endY)) * FINE);
        int up = Math.min(patches.bands * FINE - 1, (int) (room.endZ / depth * patches.bands * FINE));
        return patches.grid.size() + along * patches.bands * FINE + up;
    }

    /**
     * Adds light sent on to a map.
     *
     * @param radiosity what each patch sends out, lumen per mm²
     * @param lux of each cell, changed
     */
    void add(double[] radiosity, double[] lux, Runnable pulse) {
        double[] places = places(radiosity);
        double[] levels = new double[nodes];
        pulse.run();
        for (int node = 0; node < nodes; node++) {
            double sum = 0;
            for (int k = node * samples; k < (node + 1) * samples; k++) {
                sum += ends[k] >= 0 ? places[ends[k]] : 0;
            }
            levels[node] = sum / samples * LightMap.MM2_PER_M2;
        }
        pulse.run();
        for (int cell = 0; cell < lux.length; cell++) {
            if (inside[cell]) {
                lux[cell] += alone[cell] >= 0 ? levels[alone[cell]] : between(levels, cell);
            }
        }
    }

    /** Between the nodes that lie inside; NaN where none of the four does. */
    private double between(double[] levels, int cell) {
        double i = (double) (cell % grid.columns() - first) / stride;
        double j = (double) (cell / grid.columns() - first) / stride;
        int left = (int) Math.floor(i);
        int top = (int) Math.floor(j);
        double sum = 0;
        double weights = 0;
        for (int row = Math.max(0, top); row <= Math.min(nodeRows - 1, top + 1); row++) {
            for (int column = Math.max(0, left); column <= Math.min(nodeColumns - 1, left + 1); column++) {
                double weight = (1 - Math.abs(column - i)) * (1 - Math.abs(row - j));
                int node = lattice[row * nodeColumns + column];
                if (weight > NO_WEIGHT && node >= 0) {
                    sum += weight * levels[node];
                    weights += weight;
                }
            }
        }
        return weights > 0 ? sum / weights : Double.NaN;
    }

    /** What is sent on at each label cell of the back, smooth from patch to patch, and at each place of the walls. */
    private double[] places(double[] radiosity) {
        int cells = patches.grid.size();
        double[] even = new double[cells];
        for (int i = 0; i < cells; i++) {
            even[i] = radiosity[patches.planOf(i)];
        }
        double[] back = Smoothing.box(patches.grid, patches.inside, even, patches.patchMm / patches.grid.cellMm());
        int pieces = patches.ringPieces[patches.ringPieces.length - 1];
        double[] places = Arrays.copyOf(back, cells + pieces * FINE * patches.bands * FINE);
        int next = cells;
        for (int ring = 0; ring + 1 < patches.ringPieces.length; ring++) {
            int start = patches.ringPieces[ring];
            int count = patches.ringPieces[ring + 1] - start;
            for (int i = 0; i < count * FINE; i++) {
                double along = (i + 0.5) / FINE - 0.5;
                int piece = (int) Math.floor(along);
                double share = along - piece;
                int before = start + Math.floorMod(piece, count);
                int after = start + Math.floorMod(piece + 1, count);
                for (int j = 0; j < patches.bands * FINE; j++) {
                    double up = Math.max(0, Math.min(patches.bands - 1, (j + 0.5) / FINE - 0.5));
                    int band = Math.min(patches.bands - 2, (int) up);
                    double rise = up - band;
                    places[next++] = (1 - rise) * ((1 - share) * radiosity[patches.wall(before, band)] + share * radiosity[patches.wall(after, band)])
                            + rise * ((1 - share) * radiosity[patches.wall(before, band + 1)] + share * radiosity[patches.wall(after, band + 1)]);
                }
            }
        }
        return places;
    }
}
