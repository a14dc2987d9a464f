// SPDX-License-Identifier: Apache-2.0
package kerfglow.light;

import java.util.Arrays;
import org.locationtech.jts.geom.Polygon;

/**
 * The surfaces of a can in patches that send light on evenly: in plan about square, each connected (two strokes that pass close by are never
 * one patch), the same on back and face; along the walls pieces of each ring, in bands. Numbered back, face, walls. Immutable.
 */
final class Patches {
    /** Label cells along the side of a plan patch. */
    private static final int CELLS_PER_PATCH = 6;
    /** A piece of plan with less than this share of a square patch goes to a neighbour. */
    private static final double LEAST_SHARE = 1.0 / 6;
    /** How much larger patches are made at a time while there are too many. */
    private static final double GROWTH = 1.15;
    /** Light on a wall differs from top to bottom in every can. */
    private static final int LEAST_BANDS = 2;
    private static final int LEAST_PIECES = 4;
    /** The end of a ring belongs to its last piece. */
    private static final double SHORT_OF_END = 1e-9;
    private static final int SIDES = 4;

    final double patchMm;
    /** Label cells, about a sixth of a patch. */
    final Grid grid;
    /** True for label cells whose centres lie inside. */
    final boolean[] inside;
    /** For every label cell the nearest one inside; itself for those inside. */
    final int[] nearest;
    /** How many patches the back has, and the face. */
    final int plan;
    final int bands;
    /** The first wall piece of each ring, and one past the last. */
    final int[] ringPieces;
    /** mm². */
    final double[] areas;

    private final Outline outline;
    private final int[] owner;
    private final int[] cellStarts;
    private final int[] cells;
    private final int[] ringOf;
    /** Length of its ring before each edge, mm. */
    private final double[] before;
    private final double[] pieceLengths;

    /** Of one can, in patches of about this size or, where they would be too many, larger ones. */
    static Patches of(Polygon inside, Outline outline, double depthMm, double patchMm, int most) {
        double size = patchMm;
        while (expected(inside, outline, depthMm, size) > most) {
            size *= GROWTH;
        }
        return new Patches(inside, outline, depthMm, size);
    }

    private static double expected(Polygon inside, Outline outline, double depthMm, double size) {
        double pieces = inside.getLength() / size + LEAST_PIECES * (outline.rings.length - 1);
        return 2 * inside.getArea() / (size * size) + pieces * bands(depthMm, size);
    }

    private static int bands(double depthMm, double size) {
        return Math.max(LEAST_BANDS, (int) Math.round(depthMm / size));
    }

    private Patches(Polygon polygon, Outline outline, double depthMm, double patchMm) {
        this.outline = outline;
        this.patchMm = patchMm;
        grid = Grid.over(polygon.getEnvelopeInternal(), patchMm / CELLS_PER_PATCH);
        inside = Spans.inside(grid, polygon);
        inside[grid.cell(polygon.getInteriorPoint().getX(), polygon.getInteriorPoint().getY())] = true; // never without any
        owner = new int[grid.size()];
        plan = label();
        nearest = spread();
        cellStarts = new int[plan + 1];
        for (int i = 0; i < owner.length; i++) {
            cellStarts[owner[i] + 1] += inside[i] ? 1 : 0;
        }
        for (int i = 0; i < plan; i++) {
            cellStarts[i + 1] += cellStarts[i];
        }
        cells = new int[cellStarts[plan]];
        int[] filled = Arrays.copyOf(cellStarts, plan);
        for (int i = 0; i < owner.length; i++) {
            if (inside[i]) {
                cells[filled[owner[i]]++] = i;
            }
        }
        bands = bands(depthMm, patchMm);
        int ringCount = outline.rings.length - 1;
        ringPieces = new int[ringCount + 1];
        pieceLengths = new double[ringCount];
        ringOf = new int[outline.edges()];
        before = new double[outline.edges()];
        for (int ring = 0; ring < ringCount; ring++) {
            double length = 0;
            for (int edge = outline.rings[ring]; edge < outline.rings[ring + 1]; edge++) {
                ringOf[edge] = ring;
                before[edge] = length;
                length += outline.length(edge);
            }
            int pieces = Math.max(LEAST_PIECES, (int) Math.ceil(length / patchMm));
            pieceLengths[ring] = length / pieces;
            ringPieces[ring + 1] = ringPieces[ring] + pieces;
        }
        areas = new double[2 * plan + ringPieces[ringCount] * bands];
        double perCell = polygon.getArea() / cells.length;
        for (int i = 0; i < plan; i++) {
            areas[i] = perCell * (cellStarts[i + 1] - cellStarts[i]);
            areas[plan + i] = areas[i];
        }
        for (int ring = 0; ring < ringCount; ring++) {
            Arrays.fill(areas, wall(ringPieces[ring], 0), wall(ringPieces[ring + 1], 0), pieceLengths[ring] * depthMm / bands);
        }
    }

    /** Gives each connected piece of a square of label cells a number; small pieces that touch another take its number. */
    private int label() {
        Arrays.fill(owner, -1);
        int[] queue = new int[CELLS_PER_PATCH * CELLS_PER_PATCH];
        int count = 0;
        for (int seed = 0; seed < owner.length; seed++) {
            if (!inside[seed] || owner[seed] >= 0) {
                continue;
            }
            int size = 1;
            int neighbour = -1;
            queue[0] = seed;
            owner[seed] = count;
            for (int k = 0; k < size; k++) {
                for (int side = 0; side < SIDES; side++) {
                    int next = step(queue[k], side);
                    if (next < 0 || !inside[next] || owner[next] == count) {
                        continue;
                    }
                    if (square(next) == square(seed) && owner[next] < 0) {
                        owner[next] = count;
                        queue[size++] = next;
                    } else if (owner[next] >= 0) {
                        neighbour = owner[next];
                    }
                }
            }
            if (neighbour >= 0 && size < LEAST_SHARE * queue.length) {
                for (int k = 0; k < size; k++) {
                    owner[queue[k]] = neighbour;
                }
            } else {
                count++;
            }
        }
        return count;
    }

    private int square(int cell) {
        return cell / grid.columns() / CELLS_PER_PATCH * grid.columns() + cell % grid.columns() / CELLS_PER_PATCH;
    }

    /** The cell on one side, or -1. */
    private int step(int cell, int side) {
        int column = cell % grid.columns() + (side == 0 ? 1 : side == 1 ? -1 : 0);
        int row = cell / grid.columns() + (side == 2 ? 1 : side == 3 ? -1 : 0);
        return column < 0 || row < 0 || column >= grid.columns() || row >= grid.rows() ? -1 : row * grid.columns() + column;
    }

    /** Finds for each cell outside the nearest one inside, step by step. */
    private int[] spread() {
        int[] from = new int[owner.length];
        int[] queue = new int[owner.length];
        int size = 0;
        for (int i = 0; i < from.length; i++) {
            from[i] = inside[i] ? i : -1;
            if (inside[i]) {
                queue[size++] = i;
            }
        }
        for (int k = 0; k < size; k++) {
            for (int side = 0; side < SIDES; side++) {
                int next = step(queue[k], side);
                if (next >= 0 && from[next] < 0) {
                    from[next] = from[queue[k]];
                    owner[next] = owner[queue[k]];
                    queue[size++] = next;
                }
            }
        }
        return from;
    }

    int size() {
        return areas.length;
    }

    /** The plan patch at a point. */
    int planAt(double x, double y) {
        return owner[grid.cell(x, y)];
    }

    /** The plan patch of a label cell. */
    int planOf(int cell) {
        return owner[cell];
    }

    /** One of the label cells of a plan patch; share 0 up to, not including, 1. */
    int cellOf(int patch, double share) {
        return cells[cellStarts[patch] + (int) (share * (cellStarts[patch + 1] - cellStarts[patch]))];
    }

    /** The number of a wall patch. */
    int wall(int piece, int band) {
        return 2 * plan + piece * bands + band;
    }

    /** How far round its ring a place on an edge lies, in pieces from the ring's first. */
    double alongRing(int edge, double x, double y) {
        double dx = x - outline.ax[edge];
        double dy = y - outline.ay[edge];
        double along = before[edge] + Math.sqrt(dx * dx + dy * dy); // several times as fast as hypot
        int ring = ringOf[edge];
        return Math.min(along / pieceLengths[ring], ringPieces[ring + 1] - ringPieces[ring] - SHORT_OF_END);
    }

    int ringOf(int edge) {
        return ringOf[edge];
    }

    /** The edge at a share of a piece's length, and how far along that edge, into {@code place}. */
    int edgeAt(int piece, double share, double[] place) {
        int ring = 0;
        while (piece >= ringPieces[ring + 1]) {
            ring++;
        }
        double along = (piece - ringPieces[ring] + share) * pieceLengths[ring];
        int low = outline.rings[ring];
        int high = outline.rings[ring + 1] - 1;
        while (low < high) {
            int middle = (low + high + 1) >>> 1;
            if (before[middle] <= along) {
                low = middle;
            } else {
                high = middle - 1;
            }
        }
        place[0] = along - before[low];
        return low;
    }
}
