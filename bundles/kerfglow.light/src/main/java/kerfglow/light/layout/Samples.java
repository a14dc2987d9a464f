// SPDX-License-Identifier: Apache-2.0
package kerfglow.light.layout;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.IntStream;

/**
 * The lit cells that a search looks at: a lattice of them, some at the edges, and whatever turned out darkest before; and, as an eye sees
 * them, peaks and passes of bright spots that turned up. The mean is always that of all lit cells.
 */
final class Samples {
    /** About so many cells are looked at from the start. Assumed: what they miss is added when it is found dark. */
    private static final double FIRST = 350;
    /** Cells that are added at a time, and how far apart they lie at least, in cells: neighbours say the same. Assumed. */
    private static final int MOST_ADDED = 16;
    private static final int APART = 3;

    private final Lighting lighting;
    private final List<Integer> cells = new ArrayList<>();
    private final Set<Integer> known = new HashSet<>();
    private final List<Integer> seenCells = new ArrayList<>();
    private final Map<Integer, Integer> seenPlaces = new HashMap<>();
    private final float[][] rows;
    private final float[][] seenRows;
    private final double[] means;

    Samples(Lighting lighting, int sites) {
        this.lighting = lighting;
        rows = new float[sites][];
        seenRows = new float[sites][];
        means = new double[sites];
        int stride = Math.max(1, (int) Math.round(Math.sqrt(lighting.cells() / FIRST)));
        for (int cell = 0; cell < lighting.cells(); cell++) {
            boolean onLattice = lighting.column(cell) % stride == 0 && lighting.row(cell) % stride == 0;
            if (onLattice || isEdge(cell) && (lighting.column(cell) + lighting.row(cell)) % stride == 0) {
                add(cell);
            }
        }
        if (cells.isEmpty()) {
            add(0);
        }
    }

    /** True at the ends of a row of lit cells. */
    private boolean isEdge(int cell) {
        return cell == 0 || cell + 1 == lighting.cells() || !isNext(cell - 1, cell) || !isNext(cell, cell + 1);
    }

    private boolean isNext(int cell, int other) {
        return lighting.row(cell) == lighting.row(other) && lighting.column(cell) + 1 == lighting.column(other);
    }

    private boolean add(int cell) {
        return known.add(cell) && cells.add(cell);
    }

    /**
     * Looks from now on at the darkest of the cells below a level, a few, apart from each other.
     *
     * @param total the light of each lit cell
     * @return false when no such cell was overlooked so far
     */
    boolean addDarkest(float[] total, double wanted) {
        List<Integer> dark = IntStream.range(0, total.length).filter(cell -> total[cell] < wanted).boxed().sorted((a, b) -> Float.compare(total[a], total[b])).toList();
        List<Integer> added = new ArrayList<>();
        for (int cell : dark) {
            boolean apart = added.stream().allMatch(other -> Math.abs(lighting.column(other) - lighting.column(cell)) > APART
                    || Math.abs(lighting.row(other) - lighting.row(cell)) > APART);
            if (added.size() < MOST_ADDED && apart && add(cell)) {
                added.add(cell);
            }
        }
        return !added.isEmpty();
    }

    /** Bright spots of what is seen, as places among the seen samples: peak and pass, strongest first. */
    List<int[]> spots(float[] seen) {
        return lighting.spots(seen).stream().map(spot -> new int[] {seenPlace(spot[0]), seenPlace(spot[1])}).toList();
    }

    /** The contrast of the strongest spot; 0 when there is none. */
    double contrast(float[] seen) {
        return lighting.contrast(seen);
    }

    private int seenPlace(int cell) {
        return seenPlaces.computeIfAbsent(cell, each -> {
            seenCells.add(each);
            return seenCells.size() - 1;
        });
    }

    int size() {
        return cells.size();
    }

    int seenSize() {
        return seenCells.size();
    }

    /** What a module at a site gives to each sample. */
    float[] of(int site) {
        if (rows[site] == null || rows[site].length != cells.size()) {
            float[] all = lighting.of(site);
            means[site] = mean(all);
            rows[site] = picked(all);
        }
        return rows[site];
    }

    /** What an eye sees of it in each of the seen samples. */
    float[] seenOf(int site) {
        if (seenRows[site] == null || seenRows[site].length != seenCells.size()) {
            seenRows[site] = picked(lighting.seen(site), seenCells);
        }
        return seenRows[site];
    }

    /** What a module at a site gives on the mean of all lit cells. */
    double mean(int site) {
        of(site);
        return means[site];
    }

    float[] picked(float[] all) {
        return picked(all, cells);
    }

    float[] seenPicked(float[] all) {
        return picked(all, seenCells);
    }

    private static float[] picked(float[] all, List<Integer> which) {
        float[] row = new float[which.size()];
        for (int i = 0; i < row.length; i++) {
            row[i] = all[which.get(i)];
        }
        return row;
    }

    /** The light of some sites over another, in each lit cell. */
    float[] total(Base base, List<Integer> sites) {
        float[] total = base.luminance().clone();
        sites.forEach(site -> add(lighting.of(site), total));
        return total;
    }

    /** The same as an eye sees it. */
    float[] seenTotal(Base base, List<Integer> sites) {
        float[] total = base.seen().clone();
        sites.forEach(site -> add(lighting.seen(site), total));
        return total;
    }

    private static void add(float[] each, float[] total) {
        for (int i = 0; i < total.length; i++) {
            total[i] += each[i];
        }
    }

    static double mean(float[] all) {
        double sum = 0;
        for (float each : all) {
            sum += each;
        }
        return all.length == 0 ? 0 : sum / all.length;
    }
}
