// SPDX-License-Identifier: Apache-2.0
package kerfglow.light.layout;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Whether the modules' own cable reaches them all: they hang together by steps of at most its pitch. */
final class Chain {
    private final List<Site> sites;
    private final List<Site> fixed;
    private final double pitchMm;

    /** @param pitchMm 0 for any */
    Chain(List<Site> sites, List<Site> fixed, double pitchMm) {
        this.sites = sites;
        this.fixed = fixed;
        this.pitchMm = pitchMm;
    }

    boolean holds(Choice choice) {
        return holds(choice, -1, -1);
    }

    /** True when it reaches all after the module at a place of the list has moved to a site; -1 for none. */
    boolean holds(Choice choice, int place, int to) {
        return pitchMm <= 0 || groups(modules(choice, place, to)).size() <= 1;
    }

    /** True when a move leaves no module behind that was reached before. */
    boolean allows(Choice choice, int place, int to) {
        return holds(choice, place, to) || !holds(choice);
    }

    private List<Site> modules(Choice choice, int place, int to) {
        List<Site> all = new ArrayList<>(fixed);
        for (int i = 0; i < choice.size(); i++) {
            all.add(sites.get(i == place ? to : choice.sites().get(i)));
        }
        return all;
    }

    private List<List<Site>> groups(List<Site> modules) {
        List<Site> left = new ArrayList<>(modules);
        List<List<Site>> groups = new ArrayList<>();
        while (!left.isEmpty()) {
            List<Site> group = new ArrayList<>(List.of(left.remove(0)));
            for (int i = 0; i < group.size(); i++) {
                Site from = group.get(i);
                for (int j = left.size() - 1; j >= 0; j--) {
                    if (left.get(j).distanceTo(from) <= pitchMm) {
                        group.add(left.remove(j));
                    }
                }
            }
            groups.add(group);
        }
        return groups;
    }

    /** Of some free sites the one that the cable reaches and that lies nearest to modules that it does not reach yet; -1 when there is none. */
    int next(Choice choice, List<Integer> free) {
        List<List<Site>> groups = groups(modules(choice, -1, -1));
        int best = -1;
        double least = Double.POSITIVE_INFINITY;
        for (int site : free) {
            Site between = sites.get(site);
            List<Double> steps = groups.stream().map(group -> group.stream().mapToDouble(between::distanceTo).min().orElseThrow()).sorted(Comparator.naturalOrder()).toList();
            if (steps.size() > 1 && steps.get(0) <= pitchMm && steps.get(1) < least) {
                least = steps.get(1);
                best = site;
            }
        }
        return best;
    }
}
