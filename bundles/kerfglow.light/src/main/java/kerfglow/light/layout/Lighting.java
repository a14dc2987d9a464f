// SPDX-License-Identifier: Apache-2.0
package kerfglow.light.layout;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import kerfglow.light.Accuracy;
import kerfglow.light.Can;
import kerfglow.light.Cavity;
import kerfglow.light.DirectLight;
import kerfglow.light.Grid;
import kerfglow.light.LightMap;
import kerfglow.light.LightModule;
import kerfglow.light.Spots;
import org.locationtech.jts.geom.Coordinate;

/**
 * What a module at each site gives to each of some coarse cells of the lit face, reckoned when it is first asked for. Light adds up, so that a
 * search needs no more than sums of these. Factors for each cell, from a fine map of one layout, tell what the coarse cells leave out.
 */
final class Lighting {
    /** About so many cells cover the lit face of a letter. Assumed: five across a stroke. */
    private static final double CELLS = 700;
    /** A cell is never larger than this share of the height, over which light changes, unless there would be too many. Assumed. */
    private static final double CELL_HEIGHTS = 0.25;
    private static final double MOST_CELLS = 3000;
    /** Coarse patches and few directions: the mean lies within 1 % of that of fine ones; factors tell the rest. Assumed. */
    private static final double COARSE = 0.7;
    private static final int COARSE_DIRECTIONS = 12;
    /** A blur of the eye of less, in cells, is left to the fine map. */
    private static final double LEAST_BLUR = 0.3;
    /** Factors beyond this tell of light that another layout throws elsewhere, not of the cell. Assumed. */
    private static final double MOST_FACTOR = 1.25;

    private final LayoutRequest request;
    private final Cavity fine;
    private final Cavity coarse;
    private final DirectLight direct;
    private final Reflections reflections;
    private final Sites sites;
    private final Runnable pulse;
    /** Lit cells of the coarse grid, and their numbers by cell. */
    private final int[] lit;
    private final int[] index;
    /** For each cell of the fine grid that is lit the number of the coarse one that stands for it; -1 for others. */
    private final int[] standsFor;
    private final double[] fineCells;
    private final boolean blurs;
    private final float[] fixed;
    private final float[] fixedSeen;
    private final List<float[]> rows = new ArrayList<>();
    private final List<float[]> seenRows = new ArrayList<>();
    private double[] means = new double[0];
    private double[] least;
    private double[] share;
    private double[] seen;

    /**
     * @param request in the can's own frame
     * @param fine the can in its own frame, whose maps tell the factors
     */
    Lighting(LayoutRequest request, Cavity fine, Sites sites, Runnable pulse) {
        this.request = request;
        this.fine = fine;
        this.sites = sites;
        this.pulse = pulse;
        Can can = request.can();
        double area = can.lit().getArea();
        double cell = Math.max(Math.sqrt(area / MOST_CELLS), Math.min(Math.sqrt(area / CELLS), CELL_HEIGHTS * request.heightMm()));
        coarse = Cavity.of(can, new Accuracy(Math.max(cell, fine.grid().cellMm()), COARSE, COARSE_DIRECTIONS), pulse);
        direct = new DirectLight(can.inside(), can.depthMm(), coarse.grid());
        lit = IntStream.range(0, coarse.grid().size()).filter(coarse::isLit).toArray();
        index = new int[coarse.grid().size()];
        Arrays.fill(index, -1);
        for (int i = 0; i < lit.length; i++) {
            index[lit[i]] = i;
        }
        standsFor = new int[fine.grid().size()];
        fineCells = new double[lit.length];
        for (int i = 0; i < standsFor.length; i++) {
            standsFor[i] = fine.isLit(i) && lit.length > 0 ? nearest(fine.grid().x(i % fine.grid().columns()), fine.grid().y(i / fine.grid().columns())) : -1;
            if (standsFor[i] >= 0) {
                fineCells[standsFor[i]]++;
            }
        }
        blurs = Double.isFinite(request.contrast()) && request.eyeMm() > LEAST_BLUR * coarse.grid().cellMm();
        reflections = new Reflections(coarse, request.type(), request.heightMm(), sites.list(), lit, pulse);
        least = ones(lit.length);
        share = fineCells.clone();
        seen = ones(lit.length);
        fixed = new float[lit.length];
        fixedSeen = new float[lit.length];
        for (Site site : Sites.fixed(request)) {
            addTo(fixed, row(site));
            addTo(fixedSeen, blurs ? seenRow(site) : row(site));
        }
    }

    private static double[] ones(int size) {
        double[] ones = new double[size];
        Arrays.fill(ones, 1);
        return ones;
    }

    private static void addTo(float[] sums, float[] row) {
        for (int i = 0; i < sums.length; i++) {
            sums[i] += row[i];
        }
    }

    /** The number of the lit coarse cell nearest to a place, looking ring by ring. */
    private int nearest(double x, double y) {
        Grid grid = coarse.grid();
        int column = grid.column(x);
        int row = grid.row(y);
        int best = index[row * grid.columns() + column];
        for (int ring = 1; best < 0 && ring < grid.columns() + grid.rows(); ring++) {
            double near = Double.POSITIVE_INFINITY;
            for (int j = Math.max(0, row - ring); j <= Math.min(grid.rows() - 1, row + ring); j++) {
                for (int i = Math.max(0, column - ring); i <= Math.min(grid.columns() - 1, column + ring); i++) {
                    double distance = (grid.x(i) - x) * (grid.x(i) - x) + (grid.y(j) - y) * (grid.y(j) - y);
                    if (index[j * grid.columns() + i] >= 0 && distance < near) {
                        near = distance;
                        best = index[j * grid.columns() + i];
                    }
                }
            }
        }
        return best;
    }

    /** How many cells a search looks at. */
    int cells() {
        return lit.length;
    }

    /** Illuminance of each cell from modules that a person put, lux. */
    float[] fixed() {
        return fixed;
    }

    float[] fixedSeen() {
        return fixedSeen;
    }

    /** Illuminance of each cell from a module at a site, lux. */
    float[] row(int site) {
        return known(rows, site, false);
    }

    /** The same as an eye sees it: what comes straight is blurred, what surfaces send on is smooth already. */
    float[] seenRow(int site) {
        return blurs ? known(seenRows, site, true) : row(site);
    }

    private float[] known(List<float[]> those, int site, boolean asSeen) {
        while (those.size() <= site) {
            those.add(new float[0]);
        }
        if (those.get(site).length == 0) {
            Site at = sites.list().get(site);
            those.set(site, asSeen ? seenRow(at) : row(at));
        }
        return those.get(site);
    }

    private float[] row(Site site) {
        return row(site, request.can().finish().spreadMm());
    }

    private float[] seenRow(Site site) {
        return row(site, Math.hypot(request.can().finish().spreadMm(), request.eyeMm()));
    }

    private float[] row(Site site, double blurMm) {
        pulse.run();
        double[] lux = new double[coarse.grid().size()];
        direct.add(site.module(request.type()), 1, lux);
        double[] blurred = coarse.blurred(lux, blurMm);
        float[] row = new float[lit.length];
        for (int i = 0; i < lit.length; i++) {
            row[i] = (float) blurred[lit[i]];
        }
        reflections.add(site, row);
        return row;
    }

    /** What the darkest place of each cell has of the cell's light. */
    double[] least() {
        return least;
    }

    /** What an eye sees of each cell's light. */
    double[] seen() {
        return seen;
    }

    /** What a module at a site gives to the mean of the lit face, lux. */
    double mean(int site) {
        if (means.length <= site) {
            int before = means.length;
            means = Arrays.copyOf(means, Math.max(2 * site, sites.list().size()) + 1);
            Arrays.fill(means, before, means.length, Double.NaN);
        }
        if (Double.isNaN(means[site])) {
            means[site] = mean(row(site));
        }
        return means[site];
    }

    double fixedMean() {
        return mean(fixed);
    }

    private double mean(float[] row) {
        double sum = 0;
        double weights = 0;
        for (int i = 0; i < row.length; i++) {
            sum += share[i] * row[i];
            weights += fineCells[i];
        }
        return sum / weights;
    }

    /** The fine map of some sites and the fixed modules. */
    LightMap fine(List<Integer> chosen) {
        List<LightModule> modules = new ArrayList<>(request.fixed());
        chosen.forEach(site -> modules.add(sites.list().get(site).module(request.type())));
        return fine.light(modules, pulse);
    }

    /** Takes the factors from the fine map of some sites. */
    void calibrate(LightMap map, List<Integer> chosen) {
        float[] sums = fixed.clone();
        float[] seenSums = fixedSeen.clone();
        for (int site : chosen) {
            addTo(sums, row(site));
            addTo(seenSums, seenRow(site));
        }
        double perLux = request.can().finish().faceTransmittance() / Math.PI;
        double[] luminance = map.luminance();
        double[] eye = blurs ? map.seen(request.eyeMm()) : luminance;
        double[] low = new double[lit.length];
        double[] all = new double[lit.length];
        double[] allSeen = new double[lit.length];
        Arrays.fill(low, Double.POSITIVE_INFINITY);
        for (int i = 0; i < standsFor.length; i++) {
            int cell = standsFor[i];
            if (cell >= 0) {
                low[cell] = Math.min(low[cell], luminance[i]);
                all[cell] += luminance[i];
                allSeen[cell] += eye[i];
            }
        }
        means = new double[0];
        least = ones(lit.length);
        share = fineCells.clone();
        seen = ones(lit.length);
        for (int i = 0; i < lit.length; i++) {
            if (fineCells[i] > 0 && sums[i] > 0 && seenSums[i] > 0 && perLux > 0) {
                least[i] = bounded(low[i] / (sums[i] * perLux));
                share[i] = bounded(all[i] / fineCells[i] / (sums[i] * perLux)) * fineCells[i];
                seen[i] = bounded(allSeen[i] / fineCells[i] / (seenSums[i] * perLux));
            }
        }
    }

    private static double bounded(double factor) {
        return Math.max(1 / MOST_FACTOR, Math.min(MOST_FACTOR, factor));
    }

    /**
     * Bright spots of what is seen, above a contrast: the cell of the peak and that of its pass, strongest first. The highest peak is left
     * out: it has no higher one beside it, and where a lower one is made even with its pass, so is it.
     *
     * @param light raw illuminance as seen, in each cell
     */
    List<Spots.Spot> spots(double[] light, double limit) {
        double[] values = new double[index.length];
        boolean[] counts = new boolean[index.length];
        double highest = 0;
        for (int i = 0; i < lit.length; i++) {
            values[lit[i]] = light[i] * seen[i];
            counts[lit[i]] = true;
            highest = Math.max(highest, values[lit[i]]);
        }
        double top = highest;
        return Spots.of(coarse.grid(), counts, values, limit).stream().filter(spot -> values[coarse.grid().cell(spot.at().x, spot.at().y)] < top).toList();
    }

    /** The number of the cell that holds a place. */
    int cell(Coordinate at) {
        return index[coarse.grid().cell(at.x, at.y)];
    }
}
