// SPDX-License-Identifier: Apache-2.0
package kerfglow.light.layout;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;

/** Finds the layout of one can for a target: even rows first, then a search from the best of them, held against fine maps. */
final class Finder {
    /** Rows that a search begins from. Assumed. */
    private static final int STARTS = 8;
    /** Up to so many modules a search also begins from none: the best places of few are on no even rows. Assumed. */
    private static final int FEW = 12;
    /** How far modules are moved in one step, in heights. Assumed. */
    private static final double MOVES = 0.7;
    private static final double LEAST_MOVE_MM = 12;
    /** Looks at cells that a search from one start may take, some tens of milliseconds. */
    private static final long LOOKS = 40_000_000;
    /** Times that factors are taken from a fine map and the search goes on. Assumed: they settle in two or three. */
    private static final int MOST_MAPS = 7;
    private static final int LEANER_MAPS = 2;
    /** The next map is to bear out so much more than the best before, as a share, or it counts as idle. Assumed. */
    private static final double WORTH_GOING_ON = 1.005;
    /** Maps in a row that may bear out less: each shows dark places that were overlooked. Assumed. */
    private static final int MOST_IDLE = 2;
    /** So much more is wanted each time, as a share, because moved modules have other factors. Assumed. */
    private static final double MORE = 0.01;
    /** Where the target is out of reach, modules may go that cost less than this share of what was reached. Assumed. */
    private static final double KEEPS = 0.99;

    /** Any number of modules. */
    static final int ANY = Integer.MAX_VALUE;
    /** Settlings that may be taken to find fewer than a number. */
    static final int MOST_FEWER = 4;
    /** Settlings that counting up may take; so many factors are taken for each start. Assumed. */
    private static final int MOST_COUNTED = 16;
    private static final int SETTLINGS = 2;
    /** The fine map has a grain that coarse cells lack: contrasts are to be lower by this, or by a share where they are small. Seen: up to 1 %. */
    private static final double GRAIN = 0.006;
    private static final double MOST_GRAIN = 0.4;

    private final Sites sites;
    private final Lighting lighting;
    private final Search search;
    private final Starts starts;
    /** The sites that the factors are from. */
    private List<Integer> calibrated = List.of();

    /**
     * What was found.
     *
     * @param sites where modules are to lie
     * @param met true when the fine map has what was wanted
     * @param merit how near the fine map comes to it, 1 at most
     * @param chained true when the cable reaches all
     */
    record Found(List<Site> sites, boolean met, double merit, boolean chained) {
    }

    Finder(LayoutRequest request, Sites sites, Lighting lighting, Runnable pulse) {
        this.sites = sites;
        this.lighting = lighting;
        search = new Search(request, sites.list(), Math.max(LEAST_MOVE_MM, MOVES * request.heightMm()), pulse);
        starts = new Starts(request, sites, lighting, search, pulse);
    }

    Found find(Target target) {
        checked(starts.row(target), target);
        List<Choice> evens = starts.evens(target);
        Choice chosen = first(target, evens);
        Choice best = null;
        double reached = 0;
        boolean met = false;
        int idle = 0;
        for (int map = 0; map < MOST_MAPS && !met; map++) {
            Choice now = checked(chosen, target);
            met = now.isMet();
            double merit = now.merit();
            idle = merit < reached * WORTH_GOING_ON ? idle + 1 : 0;
            if (idle > MOST_IDLE) {
                break;
            }
            if (best == null || met || merit > reached) {
                best = now;
                reached = merit;
            }
            if (!met) {
                Target more = more(target, map);
                search.allow(LOOKS);
                chosen = search.grown(now.toward(more));
                search.chain(chosen);
                if (!isReached(chosen)) {
                    chosen = better(chosen, first(more, evens.stream().map(each -> each.toward(more)).toList()));
                }
            }
        }
        Choice ended = evened(met ? leaner(best, target) : fewer(best, target), evens, target);
        return found(ended);
    }

    /** The fewest in even rows or even shares of the face, as they are, that hold; see {@link #counted}. */
    Optional<Found> unmoved(Target target, Predicate<Found> holds) {
        for (Choice start : starts.byCount(target, ANY)) {
            Choice now = start.isMet() ? checked(start, target) : start;
            if (now.isMet() && holds.test(found(now))) {
                return Optional.of(found(now));
            }
        }
        return Optional.empty();
    }

    /**
     * Counts up, from few modules to many, in even rows and in even shares of the face, moved while that helps, to the first that hold; or from
     * a number down for a few steps.
     *
     * @param below only fewer modules than this
     * @param holds told sites that the fine map has what is wanted of; true when other maps have it too
     * @return what holds, or what comes nearest to the target; empty where there is nothing to begin from
     */
    Optional<Found> counted(Target target, int below, Predicate<Found> holds) {
        int left = below == ANY ? MOST_COUNTED : MOST_FEWER;
        Found best = null;
        for (Choice start : starts.byCount(target, below)) {
            Target wanted = new Target(target.uniformity(), underGrain(target.contrast()));
            Choice now = start;
            double merit = 0;
            for (int i = 0; i <= SETTLINGS && left > 0; i++) {
                left--;
                now = checked(i == 0 ? start : moved(now.toward(wanted)), target);
                Found found = found(now);
                if (now.isMet()) {
                    if (holds.test(found)) {
                        return Optional.of(found);
                    }
                    wanted = new Target(Math.min(Verdict.MOST_UNIFORM, wanted.uniformity() * (1 + MORE)), underGrain(wanted.contrast()));
                }
                if (now.merit() < merit) {
                    break;
                }
                merit = now.merit();
                best = best == null || merit > best.merit() ? found : best;
            }
        }
        return Optional.ofNullable(best);
    }

    private static double underGrain(double contrast) {
        return Double.isInfinite(contrast) ? contrast : contrast - Math.min(GRAIN, MOST_GRAIN * contrast);
    }

    private Found found(Choice ended) {
        return new Found(ended.sites().stream().map(sites.list()::get).sorted(Comparator.comparingInt(Site::line).thenComparingDouble(Site::along)).toList(),
                ended.isMet(), ended.merit(), search.isChained(ended));
    }

    /** The same with the factors of its own fine map, so that what it says of itself is what that map says. */
    private Choice checked(Choice choice, Target target) {
        if (!choice.sites().equals(calibrated)) {
            lighting.calibrate(lighting.fine(choice.sites()), choice.sites(), target.uniformity());
            calibrated = List.copyOf(choice.sites());
        }
        return choice.toward(target);
    }

    private static Target more(Target target, int times) {
        return new Target(Math.min(Verdict.MOST_UNIFORM, target.uniformity() * (1 + times * MORE)), target.contrast());
    }

    /** The fewest that a search from some of the even rows, and from none, leads to; or what comes nearest. */
    private Choice first(Target target, List<Choice> evens) {
        Choice best = evens.stream().filter(each -> each.isMet() && search.isChained(each)).min(Comparator.comparingInt(Choice::size)).map(this::ended).orElse(null);
        if (best == null) {
            for (Choice start : nearest(evens)) {
                Choice moved = moved(start);
                best = better(best, moved);
                if (isReached(moved)) {
                    break;
                }
            }
            best = best == null ? null : better(best, ended(best));
        }
        if (best == null || best.size() <= FEW) {
            best = better(best, ended(Choice.none(lighting, target)));
        }
        return isReached(best) ? fewerFrom(best, evens) : best;
    }

    /** Those that come nearest to the target, nearest first. */
    private static List<Choice> nearest(List<Choice> evens) {
        Comparator<Choice> byMerit = Comparator.comparingDouble(Choice::merit).reversed();
        return evens.stream().sorted(byMerit).limit(STARTS).toList();
    }

    /** With fewer modules where a search from even rows of fewer leads there. */
    private Choice fewerFrom(Choice reached, List<Choice> evens) {
        Choice best = reached;
        for (Choice start : nearest(evens.stream().filter(each -> each.size() < reached.size() && !each.isMet()).toList())) {
            if (start.size() < best.size()) {
                Choice moved = moved(start);
                best = isReached(moved) ? better(best, ended(moved)) : best;
            }
        }
        return best;
    }

    private Choice moved(Choice start) {
        search.allow(LOOKS);
        return search.settledFrom(start);
    }

    private boolean isReached(Choice choice) {
        return Search.isReached(choice) && search.isChained(choice);
    }

    private Choice ended(Choice start) {
        search.allow(LOOKS);
        Choice grown = search.grown(start);
        search.chain(grown);
        return Search.isReached(grown) ? search.reduced(grown) : grown;
    }

    /** The one that reaches the target, with fewer modules, or else the one that comes nearer to it; the first of equals. */
    private static Choice better(Choice one, Choice other) {
        if (one == null) {
            return other;
        }
        boolean reached = Search.isReached(one);
        if (reached != Search.isReached(other)) {
            return reached ? one : other;
        }
        boolean isOther = reached ? other.size() < one.size() : other.merit() > one.merit();
        return isOther ? other : one;
    }

    /** With fewer modules where that is still met on a fine map. */
    private Choice leaner(Choice met, Target target) {
        for (int map = 0; map < LEANER_MAPS; map++) {
            search.allow(LOOKS);
            Choice fewer = search.reduced(checked(met, target).toward(more(target, map)));
            if (fewer.size() >= met.size()) {
                break;
            }
            Choice now = checked(fewer, target);
            if (now.isMet()) {
                return now;
            }
        }
        return checked(met, target);
    }

    /** Where the target is out of reach, what can be left out for next to nothing. */
    private Choice fewer(Choice chosen, Target target) {
        Choice from = checked(chosen, target);
        double merit = from.merit();
        Target lower = new Target(Math.min(target.uniformity(), from.uniformity() * KEEPS), Math.max(target.contrast(), from.contrast()));
        search.allow(LOOKS);
        Choice fewer = search.reduced(from.toward(lower));
        if (fewer.size() < from.size()) {
            Choice now = checked(fewer, target);
            if (now.merit() >= merit * KEEPS * KEEPS) {
                return now;
            }
        }
        return checked(chosen, target);
    }

    /** As many modules in even rows, where they do not fall short of what a search put anywhere: they look better and are set out faster. */
    private Choice evened(Choice found, List<Choice> evens, Target target) {
        double merit = found.merit();
        for (Choice each : evens) {
            if (each.size() == found.size() && search.isChained(each) && each.toward(target).merit() >= merit) {
                Choice now = checked(each, target);
                return now.merit() >= merit ? now : checked(found, target);
            }
        }
        return found;
    }
}
