// SPDX-License-Identifier: Apache-2.0
package kerfglow.light.layout;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
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
 * What a module at each site gives to the lit face, reckoned when it is first asked for. Light adds up, so that a search needs no more than sums
 * of these. Darkness is looked for at samples, cells of a fine map: one for each of some coarse cells, and those that turned out darkest; spots
 * are looked for on the means of the coarse cells. Direct light is exact; what surfaces send on is reckoned coarsely, and factors from the fine
 * map of one layout tell how far that is off.
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
    private static final double MOST_FACTOR = 1.5;
    /** Cells below this multiple of the darkest that is wanted are looked at from now on. Assumed. */
    private static final double NEARLY_DARK = 1.25;

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
    /** Lit cells of the fine grid, and for each the number of the coarse one that stands for it. */
    private final int[] fineLit;
    private final int[] standsFor;
    private final double[] fineCells;
    /** Numbers of fine cells that are looked at for darkness. */
    private final List<Integer> samples = new ArrayList<>();
    private final Set<Integer> sampled = new HashSet<>();
    private final boolean blurs;
    private final double[] lux;
    private final List<Given> given = new ArrayList<>();
    private Given fixed;
    private double[] means = new double[0];
    private double[] least;
    private double[] share;
    private double[] seen;

    /** What a module gives: straight to each fine cell, by surfaces to each coarse one, and what that makes of it. */
    private static final class Given {
        private final float[] straight;
        private final float[] sentOn;
        private final float[] seen;
        private float[] row = new float[0];

        Given(float[] straight, float[] sentOn, float[] seen) {
            this.straight = straight;
            this.sentOn = sentOn;
            this.seen = seen;
        }
    }

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
        direct = new DirectLight(can.inside(), can.depthMm(), fine.grid());
        lux = new double[fine.grid().size()];
        lit = IntStream.range(0, coarse.grid().size()).filter(coarse::isLit).toArray();
        index = new int[coarse.grid().size()];
        Arrays.fill(index, -1);
        for (int i = 0; i < lit.length; i++) {
            index[lit[i]] = i;
        }
        fineLit = IntStream.range(0, lit.length == 0 ? 0 : fine.grid().size()).filter(fine::isLit).toArray();
        standsFor = new int[fineLit.length];
        fineCells = new double[lit.length];
        int[] middle = new int[lit.length];
        double[] near = new double[lit.length];
        Arrays.fill(near, Double.POSITIVE_INFINITY);
        for (int i = 0; i < fineLit.length; i++) {
            Coordinate at = fine.grid().at(fineLit[i]);
            standsFor[i] = nearest(at.x, at.y);
            fineCells[standsFor[i]]++;
            double distance = at.distance(coarse.grid().at(lit[standsFor[i]]));
            if (distance < near[standsFor[i]]) {
                near[standsFor[i]] = distance;
                middle[standsFor[i]] = i;
            }
        }
        for (int i = 0; i < lit.length; i++) {
            if (fineCells[i] > 0) {
                sample(middle[i]);
            }
        }
        blurs = Double.isFinite(request.contrast()) && request.eyeMm() > LEAST_BLUR * coarse.grid().cellMm();
        reflections = new Reflections(coarse, request.type(), request.heightMm(), sites.list(), lit, pulse);
        least = ones(samples.size());
        share = fineCells.clone();
        seen = ones(lit.length);
        fixed = new Given(new float[fineLit.length], new float[lit.length], new float[lit.length]);
        for (Site site : Sites.fixed(request)) {
            Given one = given(site);
            addTo(fixed.straight, one.straight);
            addTo(fixed.sentOn, one.sentOn);
            addTo(fixed.seen, one.seen);
        }
    }

    private void sample(int fineCell) {
        if (sampled.add(fineCell)) {
            samples.add(fineCell);
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

    /** The middles of the lit coarse cells. */
    List<Coordinate> middles() {
        return Arrays.stream(lit).mapToObj(coarse.grid()::at).toList();
    }

    /** How many places a search looks at. */
    int cells() {
        return samples.size();
    }

    /** Illuminance of each sample from modules that a person put, lux. */
    float[] fixed() {
        return row(fixed);
    }

    /** Mean illuminance of each coarse cell from them, as an eye sees it. */
    float[] fixedSeen() {
        return fixed.seen;
    }

    /** Illuminance of each sample from a module at a site, lux. */
    float[] row(int site) {
        return row(known(site));
    }

    /** Mean illuminance of each coarse cell from it, as an eye sees it. */
    float[] seenRow(int site) {
        return known(site).seen;
    }

    private float[] row(Given one) {
        if (one.row.length != samples.size()) {
            one.row = new float[samples.size()];
            for (int i = 0; i < one.row.length; i++) {
                one.row[i] = one.straight[samples.get(i)] + one.sentOn[standsFor[samples.get(i)]];
            }
        }
        return one.row;
    }

    private Given known(int site) {
        while (given.size() <= site) {
            given.add(null);
        }
        if (given.get(site) == null) {
            given.set(site, given(sites.list().get(site)));
        }
        return given.get(site);
    }

    private Given given(Site site) {
        pulse.run();
        Arrays.fill(lux, 0);
        direct.add(site.module(request.type()), 1, lux);
        float[] straight = new float[fineLit.length];
        double[] eye = blurs ? fine.blurred(lux, request.eyeMm()) : lux;
        float[] means = new float[lit.length];
        for (int i = 0; i < fineLit.length; i++) {
            straight[i] = (float) lux[fineLit[i]];
            means[standsFor[i]] += (float) eye[fineLit[i]];
        }
        float[] sentOn = new float[lit.length];
        reflections.add(site, sentOn);
        for (int i = 0; i < lit.length; i++) {
            means[i] = sentOn[i] + (fineCells[i] > 0 ? means[i] / (float) fineCells[i] : 0);
        }
        return new Given(straight, sentOn, means);
    }

    /** What the fine map has of each sample's light. */
    double[] least() {
        return least;
    }

    /** What the fine map has of each coarse cell's light. */
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
            means[site] = mean(seenRow(site));
        }
        return means[site];
    }

    double fixedMean() {
        return mean(fixed.seen);
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

    /**
     * Takes the factors from the fine map of some sites.
     *
     * @param wanted least over mean; cells not far above it are samples from now on, one for each coarse cell
     */
    void calibrate(LightMap map, List<Integer> chosen, double wanted) {
        double perLux = request.can().finish().faceTransmittance() / Math.PI;
        double[] luminance = map.luminance();
        double[] eye = blurs ? map.seen(request.eyeMm()) : luminance;
        int[] darkest = new int[lit.length];
        Arrays.fill(darkest, -1);
        double[] all = new double[lit.length];
        double[] allSeen = new double[lit.length];
        double mean = 0;
        for (int i = 0; i < fineLit.length; i++) {
            int cell = standsFor[i];
            double level = luminance[fineLit[i]];
            darkest[cell] = darkest[cell] < 0 || level < luminance[fineLit[darkest[cell]]] ? i : darkest[cell];
            all[cell] += level;
            allSeen[cell] += eye[fineLit[i]];
            mean += level / fineLit.length;
        }
        for (int cell : darkest) {
            if (cell >= 0 && luminance[fineLit[cell]] < NEARLY_DARK * wanted * mean) {
                sample(cell);
            }
        }
        float[] sums = fixed().clone();
        float[] seenSums = fixedSeen().clone();
        for (int site : chosen) {
            addTo(sums, row(site));
            addTo(seenSums, seenRow(site));
        }
        means = new double[0];
        least = ones(samples.size());
        share = fineCells.clone();
        seen = ones(lit.length);
        for (int i = 0; i < least.length && perLux > 0; i++) {
            least[i] = sums[i] > 0 ? bounded(luminance[fineLit[samples.get(i)]] / (sums[i] * perLux)) : 1;
        }
        for (int i = 0; i < lit.length && perLux > 0; i++) {
            if (fineCells[i] > 0 && seenSums[i] > 0) {
                share[i] = bounded(all[i] / fineCells[i] / (seenSums[i] * perLux)) * fineCells[i];
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
