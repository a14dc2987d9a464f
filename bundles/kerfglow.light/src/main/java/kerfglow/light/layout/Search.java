// SPDX-License-Identifier: Apache-2.0
package kerfglow.light.layout;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import kerfglow.light.LightModuleType;

/**
 * Finds few sites whose light reaches a target. Modules are added where that helps most, moved while that helps, and taken out one by one
 * as long as the others, moved again, still do. Every step is the best of all, the first of equals, so that the same sites give the same answer.
 */
final class Search {
    /** A shortfall below this is rounding of sums. */
    private static final double NOTHING = 1e-12;
    /** A step must better the shortfall by this share, or it would go on for ever. */
    private static final double BETTER = 1e-3;
    /** Added modules must take this share of the shortfall away; less means that the target is out of reach. Assumed. */
    private static final double WORTH_ADDING = 0.03;
    /** So many modules are added in hope, since often two together help where one does not. Assumed. */
    private static final int HOPES = 3;
    private static final int MOST_ROUNDS = 25;
    /** Times that dark places which were overlooked are looked at and modules moved again. */
    private static final int MOST_LOOKS = 6;
    /** Up to so many modules every one is tried as the one to take out; above, those that are missed least. Assumed. */
    private static final int FEW = 12;
    private static final int TRIED = 4;

    private final List<Site> sites;
    private final Map<Integer, int[]> near = new HashMap<>();
    private final int base;
    private final double reachMm;
    private long work;
    private final LightModuleType type;
    private final double gapMm;
    private final Chain chain;
    private final Runnable pulse;

    /** @param reachMm how far a module is moved in one step, mm */
    Search(LayoutRequest request, List<Site> sites, double reachMm, Runnable pulse) {
        this.sites = sites;
        this.reachMm = reachMm;
        base = sites.size();
        this.pulse = pulse;
        type = request.type();
        gapMm = request.gapMm();
        chain = new Chain(sites, Sites.fixed(request), request.cablePitchMm());
    }

    /** Allows so many more looks at cells; without them the search ends where it is. */
    void allow(long looks) {
        work = looks;
    }

    private boolean isSpent() {
        return work <= 0;
    }

    /** Sites that a module may move to in one step. */
    private int[] near(int site) {
        return near.computeIfAbsent(site, self -> IntStream.range(0, base).filter(j -> j != self && sites.get(j).distanceTo(sites.get(self)) <= reachMm).toArray());
    }

    private double shortfall(Choice choice, int out, int in, double enough) {
        work -= choice.cells();
        return choice.shortfall(out, in, enough);
    }

    static boolean isReached(Choice choice) {
        return choice.shortfall() <= NOTHING;
    }

    boolean isChained(Choice choice) {
        return chain.holds(choice);
    }

    /** True when a site keeps clear of all chosen ones but the one at a place (-1 for none). */
    boolean isFree(Choice choice, int site, int but) {
        for (int place = 0; place < choice.size(); place++) {
            if (place != but && !Site.apart(sites.get(site), sites.get(choice.sites().get(place)), type, gapMm)) {
                return false;
            }
        }
        return true;
    }

    /** Moves modules of a start while that helps. */
    Choice settledFrom(Choice start) {
        return settled(start.copy());
    }

    /** Moves modules while that helps, and looks closer at what was overlooked; the choice itself may be changed. */
    private Choice settled(Choice start) {
        Choice choice = start;
        for (int look = 0; look < MOST_LOOKS; look++) {
            settle(choice);
            Choice closer = isReached(choice) ? choice.lookedCloser() : choice;
            if (closer == choice) {
                return choice;
            }
            choice = closer;
        }
        return choice;
    }

    private void settle(Choice choice) {
        double now = choice.shortfall();
        for (int round = 0; round < MOST_ROUNDS && now > NOTHING && !isSpent(); round++) {
            pulse.run();
            double before = now;
            for (int place = 0; place < choice.size() && now > NOTHING; place++) {
                int site = choice.sites().get(place);
                int best = -1;
                double least = now * (1 - BETTER);
                for (int to : near(site)) {
                    double then = shortfall(choice, site, to, least);
                    if (then < least && isFree(choice, to, place) && chain.allows(choice, place, to)) {
                        least = then;
                        best = to;
                    }
                }
                if (best >= 0) {
                    choice.move(place, best);
                    now = least;
                }
            }
            if (now > before * (1 - BETTER)) {
                return;
            }
        }
    }

    /** Adds modules until the target is reached or more do not help. */
    Choice grown(Choice start) {
        Choice best = settled(start);
        Choice choice = best.copy();
        for (int hope = 0; hope < HOPES && !isReached(best) && !isSpent(); hope++) {
            pulse.run();
            int site = mostHelpful(choice);
            if (site < 0) {
                return best;
            }
            choice.add(site);
            choice = settled(choice);
            if (choice.shortfall() < best.shortfall() * (1 - WORTH_ADDING)) {
                best = choice.copy();
                hope = -1;
            }
        }
        return best;
    }

    private int mostHelpful(Choice choice) {
        int best = -1;
        double least = Double.POSITIVE_INFINITY;
        for (int site = 0; site < base; site++) {
            double then = shortfall(choice, -1, site, least);
            if (then < least && isFree(choice, site, -1)) {
                least = then;
                best = site;
            }
        }
        return best;
    }

    /** Takes modules out while the target stays reached, where it can be reached by moving them. */
    Choice reduced(Choice choice) {
        Choice best = settled(choice);
        if (!isReached(best)) {
            return choice;
        }
        boolean fewer = true;
        while (fewer && best.size() > 1 && !isSpent()) {
            fewer = false;
            Choice from = best;
            double[] missed = IntStream.range(0, from.size()).mapToDouble(place -> shortfall(from, from.sites().get(place), -1, Double.POSITIVE_INFINITY)).toArray();
            List<Integer> order = new ArrayList<>(IntStream.range(0, from.size()).boxed().toList());
            order.sort(Comparator.comparingDouble(place -> missed[place]));
            int tries = from.size() <= FEW ? from.size() : TRIED;
            for (int i = 0; i < tries && !fewer && !isSpent(); i++) {
                pulse.run();
                Choice without = from.copy();
                without.remove(order.get(i));
                without = settled(without);
                if (isReached(without) && chain.holds(without)) {
                    best = without;
                    fewer = true;
                }
            }
        }
        return best;
    }

    /** Adds modules until the cable reaches all of them, as far as there is room for them. */
    void chain(Choice choice) {
        while (!chain.holds(choice)) {
            pulse.run();
            int next = chain.next(choice, IntStream.range(0, base).filter(site -> isFree(choice, site, -1)).boxed().toList());
            if (next < 0) {
                return;
            }
            choice.add(next);
        }
    }
}
