// SPDX-License-Identifier: Apache-2.0
package kerfglow.light;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import org.locationtech.jts.geom.Coordinate;

/**
 * Bright spots of a map: peaks that stand out from the highest pass to a higher peak by more than a contrast. A face that only fades towards
 * its edges has one peak and no spot. The highest peak has no higher one; it counts as a spot when another does, against the same pass.
 */
public final class Spots {
    private static final int SIDES = 8;

    private Spots() {
    }

    /**
     * A spot.
     *
     * @param at its brightest cell, mm
     * @param pass the highest cell on the way to a higher peak, mm
     * @param contrast peak over pass, less 1
     */
    public record Spot(Coordinate at, Coordinate pass, double contrast) {
        /** The same elsewhere, moved by so much, mm. */
        public Spot moved(double dx, double dy) {
            return new Spot(new Coordinate(at.x + dx, at.y + dy), new Coordinate(pass.x + dx, pass.y + dy), contrast);
        }
    }

    /**
     * The spots of a map, strongest first.
     *
     * @param lit which cells count
     * @param values of each cell
     * @param limit contrasts up to this are no spots
     */
    public static List<Spot> of(Grid grid, boolean[] lit, double[] values, double limit) {
        int[] order = brightestFirst(lit, values);
        int[] peaks = new int[values.length]; // for each cell seen so far the way to its peak
        Arrays.fill(peaks, -1);
        List<Spot> spots = new ArrayList<>();
        int highestPass = -1;
        for (int cell : order) {
            peaks[cell] = cell;
            int column = cell % grid.columns();
            int row = cell / grid.columns();
            for (int side = 0; side < SIDES; side++) {
                int k = side < SIDES / 2 ? side : side + 1;
                int nextColumn = column + k % 3 - 1;
                int nextRow = row + k / 3 - 1;
                if (nextColumn < 0 || nextRow < 0 || nextColumn >= grid.columns() || nextRow >= grid.rows()) {
                    continue;
                }
                int next = nextRow * grid.columns() + nextColumn;
                if (peaks[next] < 0) {
                    continue;
                }
                int one = root(peaks, cell);
                int other = root(peaks, next);
                if (one != other) {
                    int lower = values[one] < values[other] || values[one] == values[other] && one > other ? one : other;
                    peaks[lower] = lower == one ? other : one;
                    double contrast = values[cell] > 0 ? values[lower] / values[cell] - 1 : 0;
                    if (contrast > limit) {
                        spots.add(new Spot(grid.at(lower), grid.at(cell), contrast));
                        highestPass = highestPass < 0 ? cell : highestPass; // cells come from the brightest on
                    }
                }
            }
        }
        if (highestPass >= 0) {
            spots.add(new Spot(grid.at(order[0]), grid.at(highestPass), values[order[0]] / values[highestPass] - 1));
        }
        spots.sort(Comparator.comparingDouble(Spot::contrast).reversed());
        return spots;
    }

    /** Cells by value, of equal ones the first; to single precision, which a contrast does not feel. */
    private static int[] brightestFirst(boolean[] lit, double[] values) {
        long[] keys = IntStream.range(0, values.length).filter(i -> lit[i])
                .mapToLong(i -> ((long) Float.floatToIntBits((float) Math.max(0, values[i])) << Integer.SIZE) + Integer.MAX_VALUE - i).sorted().toArray();
        int[] order = new int[keys.length];
        for (int i = 0; i < keys.length; i++) {
            order[i] = Integer.MAX_VALUE - (int) keys[keys.length - 1 - i];
        }
        return order;
    }

    private static int root(int[] peaks, int cell) {
        int at = cell;
        while (peaks[at] != at) {
            peaks[at] = peaks[peaks[at]];
            at = peaks[at];
        }
        return at;
    }
}
