// SPDX-License-Identifier: Apache-2.0
package kerfglow.light.layout;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.TreeMap;

/** What a search for a layout begins from: modules in even rows, and in even shares of the face. */
final class Starts {
    /** Pitches of even rows that are looked at, in the pitch that the series of the endless row asks for, and the step from one to the next. Assumed. */
    private static final double MOST_PITCH = 3;
    private static final double LEAST_PITCH = 0.3;
    private static final double STEP = 0.94;
    /** How far even rows begin from an end, in steps: nearer than half a step lights an end that nothing lies beyond. Assumed. */
    private static final double[] ENDS = {Pattern.HALF, 0.35};
    /** Pitches for a long row whose ends are lit apart: the series leaves out that its modules lie at steps of the sites. */
    private static final double[] LONG = {1, 0.95};
    /** More than so many share the face as evenly in rows. Assumed. */
    static final int MOST_SHARED = 50;
    /** Starts that come less near to the target than this are not counted from. Of three settings the one that finds a bold serif R at 2 % within the settlings; 0.85 does not. */
    private static final double NEAR_ENOUGH = 0.88;
    /** Likewise where only evenness rules, which moving mends more readily. */
    private static final double NEAR_EVEN = 0.7;

    private final LayoutRequest request;
    private final Sites sites;
    private final Lighting lighting;
    private final Search search;
    private final Pattern pattern;
    private final RowSeries series;
    private final Runnable pulse;
    private final Map<Target, Double> pitches = new HashMap<>();

    Starts(LayoutRequest request, Sites sites, Lighting lighting, Search search, Runnable pulse) {
        this.request = request;
        this.sites = sites;
        this.lighting = lighting;
        this.search = search;
        this.pulse = pulse;
        pattern = new Pattern(sites);
        series = new RowSeries(request.type());
    }

    /** Even rows at the pitch that the series of the endless row asks for. */
    Choice row(Target target) {
        return even(target, pattern.even(pitch(target), Pattern.HALF));
    }

    private double pitch(Target wanted) {
        return pitches.computeIfAbsent(wanted, this::pitchOf);
    }

    private double pitchOf(Target wanted) {
        double pitch = series.pitchMm(wanted.uniformity(), request.heightMm());
        return Double.isFinite(wanted.contrast()) ? Math.min(pitch, series.pitchOfContrastMm(wanted.contrast(), request.heightMm())) : pitch;
    }

    private Choice even(Target target, List<Integer> places) {
        Choice choice = Choice.none(lighting, target);
        places.stream().filter(site -> search.isFree(choice, site, -1)).forEach(choice::add);
        return choice;
    }

    /** Even rows from wide to close, up to the first of each kind that reach the target. */
    List<Choice> evens(Target target) {
        List<Choice> evens = new ArrayList<>();
        double pitch = pitch(new Target(target.uniformity(), Double.POSITIVE_INFINITY));
        double closest = Math.max(LEAST_PITCH * pitch(target), Math.min(request.type().lengthMm(), request.type().widthMm()) + request.gapMm());
        for (double end : ENDS) {
            Choice last = null;
            for (double p = MOST_PITCH * pitch; p > closest && (last == null || !last.isMet()); p *= STEP) {
                pulse.run();
                Choice next = even(target, pattern.even(p, end));
                if (next.size() > 0 && (last == null || !next.sites().equals(last.sites()))) {
                    evens.add(next);
                    last = next;
                }
            }
        }
        for (double times : LONG) {
            evens.add(even(target, pattern.between(times * pitch, series.endMm(target.uniformity(), times * pitch, request.heightMm()))));
        }
        return evens;
    }

    /** Starts for counting up, the best of each number of modules. */
    List<Choice> byCount(Target target, int below) {
        List<Choice> starts = new ArrayList<>(evens(target));
        Shares shares = new Shares(lighting.middles(), List.copyOf(sites.list()));
        int most = starts.stream().mapToInt(Choice::size).max().orElse(0);
        for (int count = below == Finder.ANY ? 1 : Math.max(1, below - Finder.MOST_FEWER); count <= Math.min(Math.min(most, MOST_SHARED), below - 1); count++) {
            starts.add(even(target, shares.of(count)));
        }
        double near = Double.isFinite(target.contrast()) ? NEAR_ENOUGH : NEAR_EVEN;
        NavigableMap<Integer, Choice> best = new TreeMap<>();
        for (Choice each : starts) {
            if (each.size() < below && each.size() > 0 && search.isChained(each) && (below < Finder.ANY || each.merit() >= near)) {
                best.merge(each.size(), each, (one, other) -> other.merit() > one.merit() ? other : one);
            }
        }
        return below == Finder.ANY ? List.copyOf(best.values()) : List.copyOf(best.descendingMap().values());
    }
}
