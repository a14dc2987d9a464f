// SPDX-License-Identifier: Apache-2.0
package kerfglow.light.layout;

import java.util.ArrayList;
import java.util.List;
import kerfglow.light.Spots;

/**
 * Some of the sites, and how far their light falls short of a target: the sum of the squares by which cells lie below the wanted share of
 * the mean, and passes below the wanted share of their peaks. 0 is reached. The sum, not the worst place alone, tells a search where to go.
 */
final class Choice {
    /** Peaks and passes that turned up last; older ones belong to modules that have moved since. Assumed. */
    private static final int MOST_PAIRS = 80;

    private final Lighting lighting;
    private final Target target;
    private final List<Integer> sites = new ArrayList<>();
    private final double[] light;
    private final double[] seen;
    /** Cells of a peak and its pass. */
    private final List<int[]> pairs;
    private double mean;
    /** NaN until it is asked for. */
    private double merit = Double.NaN;

    private Choice(Lighting lighting, Target target, double[] light, double[] seen, List<int[]> pairs, double mean) {
        this.lighting = lighting;
        this.target = target;
        this.light = light;
        this.seen = seen;
        this.pairs = pairs;
        this.mean = mean;
    }

    /** No site chosen; what a person put gives its light. */
    static Choice none(Lighting lighting, Target target) {
        return none(lighting, target, List.of());
    }

    private static Choice none(Lighting lighting, Target target, List<int[]> pairs) {
        double[] light = doubles(lighting.fixed());
        double[] seen = Double.isFinite(target.contrast()) ? doubles(lighting.fixedSeen()) : new double[0];
        return new Choice(lighting, target, light, seen, pairs, lighting.fixedMean());
    }

    private static double[] doubles(float[] floats) {
        double[] doubles = new double[floats.length];
        for (int i = 0; i < doubles.length; i++) {
            doubles[i] = floats[i];
        }
        return doubles;
    }

    Choice copy() {
        Choice copy = new Choice(lighting, target, light.clone(), seen.clone(), pairs, mean);
        copy.sites.addAll(sites);
        return copy;
    }

    /** The same sites for another target, with the factors that the light has by now. */
    Choice toward(Target other) {
        return rebuilt(other, pairs);
    }

    private Choice rebuilt(Target other, List<int[]> otherPairs) {
        Choice again = none(lighting, other, otherPairs);
        sites.forEach(again::add);
        return again;
    }

    /** The same with all bright spots that there are among the pairs; itself when there is none. */
    Choice lookedCloser() {
        List<Spots.Spot> spots = spots();
        if (spots.isEmpty()) {
            return this;
        }
        List<int[]> all = new ArrayList<>();
        spots.forEach(spot -> all.add(new int[] {lighting.cell(spot.at()), lighting.cell(spot.pass())}));
        all.addAll(pairs);
        Choice closer = new Choice(lighting, target, light.clone(), seen.clone(), List.copyOf(all.subList(0, Math.min(MOST_PAIRS, all.size()))), mean);
        closer.sites.addAll(sites);
        return closer;
    }

    private List<Spots.Spot> spots() {
        return seen.length == 0 ? List.of() : lighting.spots(seen, target.contrast());
    }

    Target target() {
        return target;
    }

    List<Integer> sites() {
        return sites;
    }

    int size() {
        return sites.size();
    }

    int cells() {
        return light.length;
    }

    void add(int site) {
        sites.add(site);
        change(site, 1);
    }

    void remove(int place) {
        change(sites.remove(place), -1);
    }

    void move(int place, int to) {
        change(sites.get(place), -1);
        sites.set(place, to);
        change(to, 1);
    }

    private void change(int site, int sign) {
        add(lighting.row(site), sign, light);
        if (seen.length > 0) {
            add(lighting.seenRow(site), sign, seen);
        }
        mean += sign * lighting.mean(site);
        merit = Double.NaN;
    }

    private static void add(float[] row, int sign, double[] sums) {
        for (int i = 0; i < sums.length; i++) {
            sums[i] += sign * row[i];
        }
    }

    double shortfall() {
        return shortfall(-1, -1, Double.POSITIVE_INFINITY);
    }

    /**
     * The shortfall after taking out one site and adding another.
     *
     * @param out -1 for none
     * @param in -1 for none
     * @param enough what is worse than this need not be told exactly
     */
    double shortfall(int out, int in, double enough) {
        float[] minus = out < 0 ? null : lighting.row(out);
        float[] plus = in < 0 ? null : lighting.row(in);
        double then = mean - (out < 0 ? 0 : lighting.mean(out)) + (in < 0 ? 0 : lighting.mean(in));
        if (then <= 0) {
            return target.uniformity() * target.uniformity() * light.length;
        }
        double wanted = target.uniformity() * then;
        double most = enough * then * then;
        double sum = pairs.isEmpty() ? 0 : ofPairs(out, in);
        double[] least = lighting.least();
        for (int i = 0; i < light.length && sum <= most; i++) {
            double level = light[i] - (minus == null ? 0 : minus[i]) + (plus == null ? 0 : plus[i]);
            level *= least[i];
            if (level < wanted) {
                sum += (wanted - level) * (wanted - level);
            }
        }
        return sum > most ? Double.POSITIVE_INFINITY : sum / (then * then);
    }

    private double ofPairs(int out, int in) {
        float[] minus = out < 0 ? null : lighting.seenRow(out);
        float[] plus = in < 0 ? null : lighting.seenRow(in);
        double sum = 0;
        for (int[] pair : pairs) {
            double missing = seen(pair[0], minus, plus) / (1 + target.contrast()) - seen(pair[1], minus, plus);
            sum += missing > 0 ? missing * missing : 0;
        }
        return sum;
    }

    private double seen(int cell, float[] minus, float[] plus) {
        return (seen[cell] - (minus == null ? 0 : minus[cell]) + (plus == null ? 0 : plus[cell])) * lighting.seen()[cell];
    }

    /** True when all cells keep what is wanted. */
    boolean isMet() {
        return uniformity() >= target.uniformity() && spots().isEmpty();
    }

    /** How near it comes to the target: 1 is reached. */
    double merit() {
        if (Double.isNaN(merit)) {
            merit = nearness(uniformity(), contrast(), target);
        }
        return merit;
    }

    static double nearness(double uniformity, double contrast, Target target) {
        double even = Double.isFinite(target.contrast()) ? Math.min(1, (1 + target.contrast()) / (1 + contrast)) : 1;
        return Math.min(1, target.uniformity() > 0 ? uniformity / target.uniformity() : 1) * even;
    }

    /** The strongest contrast of a peak over its pass that is too much; 0 where there is none. */
    double contrast() {
        return spots().stream().mapToDouble(Spots.Spot::contrast).max().orElse(0);
    }

    /** Least over mean. */
    double uniformity() {
        double darkest = Double.POSITIVE_INFINITY;
        for (int i = 0; i < light.length; i++) {
            darkest = Math.min(darkest, light[i] * lighting.least()[i]);
        }
        return mean > 0 ? Math.max(0, darkest) / mean : 0;
    }
}
