// SPDX-License-Identifier: Apache-2.0
package kerfglow.light.layout;

import java.util.ArrayList;
import java.util.List;

/**
 * Some of the sites, and how far their light falls short of a target: the sum of the squares by which samples lie below the wanted share of
 * the mean. 0 is reached. The sum, not the darkest place alone, tells a search where to go.
 */
final class Choice {
    private final Samples samples;
    private final float[] base;
    private final List<Integer> sites = new ArrayList<>();
    private final double[] light;
    private final double target;
    private double mean;

    private Choice(Samples samples, float[] base, double[] light, double mean, double target) {
        this.samples = samples;
        this.base = base;
        this.light = light;
        this.mean = mean;
        this.target = target;
    }

    /** No site chosen; the light of fixed modules alone, in each lit cell. */
    static Choice none(Samples samples, float[] base, double target) {
        float[] picked = samples.picked(base);
        double[] light = new double[picked.length];
        for (int i = 0; i < picked.length; i++) {
            light[i] = picked[i];
        }
        return new Choice(samples, base, light, Samples.mean(base), target);
    }

    Choice copy() {
        Choice copy = new Choice(samples, base, light.clone(), mean, target);
        copy.sites.addAll(sites);
        return copy;
    }

    /** The same sites over another light for another target, with the samples that there are by now. */
    Choice over(float[] otherBase, double otherTarget) {
        Choice again = none(samples, otherBase, otherTarget);
        sites.forEach(again::add);
        return again;
    }

    /** The same for another target. */
    Choice toward(double otherTarget) {
        return over(base, otherTarget);
    }

    /** False when samples were added since. */
    boolean isCurrent() {
        return light.length == samples.size();
    }

    /** The same with all that is darkest of all cells among the samples; itself when nothing was overlooked. */
    Choice lookedCloser() {
        float[] total = samples.total(base, sites);
        return samples.addDarkest(total, target * Samples.mean(total)) || !isCurrent() ? over(base, target) : this;
    }

    double target() {
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
        float[] row = samples.of(site);
        for (int i = 0; i < light.length; i++) {
            light[i] += sign * row[i];
        }
        mean += sign * samples.mean(site);
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
            return target * target * light.length;
        }
        float[] minus = out < 0 ? null : samples.of(out);
        float[] plus = in < 0 ? null : samples.of(in);
        double wanted = target * then;
        double most = enough * then * then;
        double sum = 0;
        for (int i = 0; i < light.length; i++) {
            double level = light[i] - (minus == null ? 0 : minus[i]) + (plus == null ? 0 : plus[i]);
            if (level < wanted) {
                sum += (wanted - level) * (wanted - level);
                if (sum > most) {
                    return Double.POSITIVE_INFINITY;
                }
            }
        }
        return sum / (then * then);
    }

    /** Least over mean, of the samples. */
    double uniformity() {
        double least = Double.POSITIVE_INFINITY;
        for (double each : light) {
            least = Math.min(least, each);
        }
        return mean > 0 ? Math.max(0, least) / mean : 0;
    }
}
