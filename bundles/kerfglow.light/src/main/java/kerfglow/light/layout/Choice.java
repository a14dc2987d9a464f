// SPDX-License-Identifier: Apache-2.0
package kerfglow.light.layout;

import java.util.ArrayList;
import java.util.List;

/**
 * Some of the sites, and how far their light falls short of a target: the sum of the squares by which samples lie below the wanted share of
 * the mean, and passes below the wanted share of their peaks. 0 is reached. The sum, not the worst place alone, tells a search where to go.
 */
final class Choice {
    /** Peaks and passes that turned up last; older ones belong to modules that have moved since. Assumed. */
    private static final int MOST_PAIRS = 80;

    private final Samples samples;
    private final Base base;
    private final Target target;
    private final List<Integer> sites = new ArrayList<>();
    private final double[] light;
    private final double[] seen;
    /** Places of a peak and its pass among the seen samples. */
    private final List<int[]> pairs;
    private double mean;

    private Choice(Samples samples, Base base, Target target, double[] light, double[] seen, List<int[]> pairs, double mean) {
        this.samples = samples;
        this.base = base;
        this.target = target;
        this.light = light;
        this.seen = seen;
        this.pairs = pairs;
        this.mean = mean;
    }

    /** No site chosen. */
    static Choice none(Samples samples, Base base, Target target) {
        return none(samples, base, target, List.of());
    }

    private static Choice none(Samples samples, Base base, Target target, List<int[]> pairs) {
        return new Choice(samples, base, target, doubles(samples.picked(base.luminance())), doubles(samples.seenPicked(base.seen())), pairs,
                Samples.mean(base.luminance()));
    }

    private static double[] doubles(float[] floats) {
        double[] doubles = new double[floats.length];
        for (int i = 0; i < doubles.length; i++) {
            doubles[i] = floats[i];
        }
        return doubles;
    }

    Choice copy() {
        Choice copy = new Choice(samples, base, target, light.clone(), seen.clone(), pairs, mean);
        copy.sites.addAll(sites);
        return copy;
    }

    /** The same sites over another light for another target, with the samples that there are by now. */
    Choice over(Base otherBase, Target otherTarget) {
        return rebuilt(otherBase, otherTarget, pairs);
    }

    /** The same for another target. */
    Choice toward(Target otherTarget) {
        return rebuilt(base, otherTarget, pairs);
    }

    private Choice rebuilt(Base otherBase, Target otherTarget, List<int[]> otherPairs) {
        Choice again = none(samples, otherBase, otherTarget, otherPairs);
        sites.forEach(again::add);
        return again;
    }

    /** False when samples were added since. */
    boolean isCurrent() {
        return light.length == samples.size() && seen.length == samples.seenSize();
    }

    /** The same with the darkest of all cells and all bright spots among the samples; itself when nothing was overlooked. */
    Choice lookedCloser() {
        float[] total = samples.total(base, sites);
        boolean overlooked = samples.addDarkest(total, target.uniformity() * Samples.mean(total));
        List<int[]> spots = Double.isFinite(target.contrast()) ? samples.spots(samples.seenTotal(base, sites)) : List.of();
        if (!overlooked && spots.isEmpty() && isCurrent()) {
            return this;
        }
        List<int[]> all = new ArrayList<>(spots);
        all.addAll(pairs);
        return rebuilt(base, target, List.copyOf(all.subList(0, Math.min(MOST_PAIRS, all.size()))));
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
        add(samples.of(site), sign, light);
        if (seen.length > 0) {
            add(samples.seenOf(site), sign, seen);
        }
        mean += sign * samples.mean(site);
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
        double then = mean - (out < 0 ? 0 : samples.mean(out)) + (in < 0 ? 0 : samples.mean(in));
        if (then <= 0) {
            return target.uniformity() * target.uniformity() * light.length;
        }
        float[] minus = out < 0 ? null : samples.of(out);
        float[] plus = in < 0 ? null : samples.of(in);
        double wanted = target.uniformity() * then;
        double most = enough * then * then;
        double sum = pairs.isEmpty() ? 0 : ofPairs(out, in);
        for (int i = 0; i < light.length && sum <= most; i++) {
            double level = light[i] - (minus == null ? 0 : minus[i]) + (plus == null ? 0 : plus[i]);
            if (level < wanted) {
                sum += (wanted - level) * (wanted - level);
            }
        }
        return sum > most ? Double.POSITIVE_INFINITY : sum / (then * then);
    }

    private double ofPairs(int out, int in) {
        float[] minus = out < 0 ? null : samples.seenOf(out);
        float[] plus = in < 0 ? null : samples.seenOf(in);
        double sum = 0;
        for (int[] pair : pairs) {
            double missing = seen(pair[0], minus, plus) / (1 + target.contrast()) - seen(pair[1], minus, plus);
            sum += missing > 0 ? missing * missing : 0;
        }
        return sum;
    }

    private double seen(int place, float[] minus, float[] plus) {
        return seen[place] - (minus == null ? 0 : minus[place]) + (plus == null ? 0 : plus[place]);
    }

    /** How near it comes to the target, all cells looked at: 1 is reached. */
    double merit() {
        double even = Double.isFinite(target.contrast()) ? Math.min(1, (1 + target.contrast()) / (1 + contrast())) : 1;
        return Math.min(1, target.uniformity() > 0 ? uniformity() / target.uniformity() : 1) * even;
    }

    /** True when bright spots are left, all cells looked at. */
    boolean hasSpots() {
        return Double.isFinite(target.contrast()) && samples.contrast(samples.seenTotal(base, sites)) > 0;
    }

    /** The strongest contrast of a peak over its pass that is too much; what may remain where there is none. */
    double contrast() {
        return Double.isFinite(target.contrast()) ? Math.max(target.contrast(), samples.contrast(samples.seenTotal(base, sites))) : target.contrast();
    }

    /** Least over mean. */
    double uniformity() {
        float[] total = samples.total(base, sites);
        double least = Double.POSITIVE_INFINITY;
        for (double each : total) {
            least = Math.min(least, each);
        }
        return mean > 0 ? Math.max(0, least) / mean : 0;
    }
}
