// SPDX-License-Identifier: Apache-2.0
package kerfglow.light.layout;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import kerfglow.light.Can;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.simplify.TopologyPreservingSimplifier;

/**
 * Lays light modules out in a can: few of them, on the centre lines of the strokes or in rows where a stroke is wide, turned along it, so that the
 * darkest place of the lit face keeps the wanted share of the mean. Fixed modules stay and are built upon. The same request gives the same
 * layout, and a turned or moved one gives it turned or moved. Where the target is out of reach, the best that was found with as few modules as give it.
 *
 * <p>It is a search and gives no proof that fewer would not do; tests hold it against brute force on small letters.
 */
public final class Layouter {
    /** Assumed: this much of an outline's wiggle, mm, changes no light worth looking at. */
    private static final double SMOOTH_MM = 0.2;
    /** Pitches that a search starts from, in the pitch that the series of the endless row asks for; reflecting walls bear wider ones. Assumed. */
    private static final double[] STARTS = {2, 1.4, 1, 0.7, 0.5};
    /** How far modules are moved in one step, in heights. Assumed. */
    private static final double MOVES = 0.7;
    private static final double LEAST_MOVE_MM = 12;
    /** Times that dark places which were overlooked are added and the search goes on. */
    private static final int MOST_LOOKS = 8;
    private static final int ADDED_A_LOOK = 12;
    /** After so many looks in vain the target counts as out of reach. */
    private static final int VAIN_LOOKS = 2;
    /** Wanted so much more than asked for, as a share, so that another map of the same light with cells elsewhere still has it. Assumed. */
    private static final double MARGIN = 0.01;
    /** Where the target is out of reach, modules may go that cost less than this share of what was reached. Assumed. */
    private static final double KEEPS = 0.99;

    private final LayoutRequest request;
    private final Runnable pulse;
    private final List<CentreLine> lines;
    private final List<Site> sites;
    private final double target;

    private Layouter(LayoutRequest request, Runnable pulse) {
        this.request = request;
        this.pulse = pulse;
        lines = CentreLines.of(request.can().inside(), pulse);
        sites = Sites.of(request, lines, pulse);
        target = Math.min(Verdict.MOST_UNIFORM, request.uniformity() * (1 + MARGIN));
    }

    /**
     * Lays out.
     *
     * @param request what is to be lit, and by what
     * @param pulse called often, for progress; throws when the work is over
     * @throws IllegalArgumentException when the emitters stand at or beyond the face
     */
    public static Layout layout(LayoutRequest request, Runnable pulse) {
        if (request.type().heightMm() >= request.can().depthMm()) {
            throw new IllegalArgumentException("emitter height must be below the depth of " + request.can().depthMm() + " mm, not " + request.type().heightMm());
        }
        Pose pose = Pose.of(request.can().inside());
        Polygon inside = (Polygon) smooth(pose.into(request.can().inside()));
        Geometry lit = request.can().lit() == request.can().inside() ? inside : smooth(pose.into(request.can().lit()));
        LayoutRequest inPose = new LayoutRequest(new Can(inside, lit, request.can().depthMm(), request.can().finish()), request.type(),
                pose.into(request.keepClear()), request.edgeMm(), request.clearMm(), request.gapMm(), request.cablePitchMm(),
                request.fixed().stream().map(pose::into).toList(), request.uniformity());
        Layout found = new Layouter(inPose, pulse).find();
        return new Layout(found.modules().stream().map(pose::back).toList(), found.pitchMm(), found.uniformity(), found.reached(), found.limits(),
                pose.back(found.dark()), found.neededDepthMm());
    }

    private static Geometry smooth(Geometry area) {
        Geometry smooth = TopologyPreservingSimplifier.simplify(area, SMOOTH_MM);
        return smooth.isValid() && !smooth.isEmpty() && smooth.getGeometryType().equals(area.getGeometryType()) ? smooth : area;
    }

    private Layout find() {
        if (sites.isEmpty()) {
            return Verdict.noRoom(request);
        }
        Lighting lighting = new Lighting(request, sites, pulse);
        if (lighting.cells() == 0) {
            return Verdict.noRoom(request);
        }
        Samples samples = new Samples(lighting, sites.size());
        float[] fixed = lighting.of(request.fixed());
        Search search = new Search(request, sites, Math.max(LEAST_MOVE_MM, MOVES * request.heightMm()), pulse);
        Choice chosen = first(search, samples, fixed);
        for (int look = 0; look < MOST_LOOKS; look++) {
            float[] base = sum(fixed, lighting.correction(chosen.sites()));
            boolean overlooked = looksCloser(samples, total(lighting, base, chosen.sites()));
            Choice now = again(samples, base, chosen, target);
            if (!overlooked && Search.isReached(now) || look >= VAIN_LOOKS && !Search.isReached(now) && !overlooked) {
                chosen = now;
                break;
            }
            Choice onward = ended(search, now);
            chosen = Search.isReached(onward) ? onward : better(onward, first(search, samples, base));
        }
        float[] base = sum(fixed, lighting.correction(chosen.sites()));
        if (!Search.isReached(again(samples, base, chosen, target))) {
            chosen = fewer(search, samples, base, chosen);
        }
        float[] total = total(lighting, sum(fixed, lighting.correction(chosen.sites())), chosen.sites());
        return new Verdict(request, lighting, sites).layout(total, chosen.sites(), search.isChained(chosen));
    }

    /** Where the target is out of reach, what can be left out for next to nothing. */
    private Choice fewer(Search search, Samples samples, float[] base, Choice chosen) {
        Choice lower = again(samples, base, chosen, again(samples, base, chosen, target).uniformity() * KEEPS);
        return Search.isReached(lower) ? search.reduced(lower) : lower;
    }

    /** The same sites over another light, with the samples that there are by now. */
    private static Choice again(Samples samples, float[] base, Choice chosen, double wanted) {
        Choice again = Choice.none(samples, base, wanted);
        chosen.sites().forEach(again::add);
        return again;
    }

    private static float[] sum(float[] one, float[] other) {
        float[] sum = one.clone();
        for (int i = 0; i < sum.length; i++) {
            sum[i] += other[i];
        }
        return sum;
    }

    /** The fewest that some starts lead to; denser ones are tried only where the others do not get there. */
    private Choice first(Search search, Samples samples, float[] base) {
        double pitch = new RowSeries(request.type()).pitchMm(target, request.heightMm());
        Choice best = ended(search, Choice.none(samples, base, target));
        for (double start : STARTS) {
            if (start < 1 && Search.isReached(best)) {
                break;
            }
            pulse.run();
            Choice choice = Choice.none(samples, base, target);
            new Pattern(sites, lines).sites(start * pitch).stream().filter(site -> search.isFree(choice, site, -1)).forEach(choice::add);
            best = better(best, ended(search, choice));
        }
        return best;
    }

    private static Choice ended(Search search, Choice start) {
        Choice grown = search.grown(start);
        search.chain(grown);
        return Search.isReached(grown) ? search.reduced(grown) : grown;
    }

    /** The one that reaches the target, with fewer modules, with more uniformity; the first of equals. */
    private static Choice better(Choice one, Choice other) {
        boolean reached = Search.isReached(one);
        if (reached != Search.isReached(other)) {
            return reached ? one : other;
        }
        return reached ? other.size() < one.size() ? other : one : other.uniformity() > one.uniformity() ? other : one;
    }

    private static float[] total(Lighting lighting, float[] fixed, List<Integer> chosen) {
        float[] total = fixed.clone();
        for (int site : chosen) {
            float[] each = lighting.of(site);
            for (int i = 0; i < total.length; i++) {
                total[i] += each[i];
            }
        }
        return total;
    }

    /** Adds the darkest cells that were overlooked to the samples; false when there were none. */
    private boolean looksCloser(Samples samples, float[] total) {
        double wanted = target * Samples.mean(total);
        List<Integer> dark = IntStream.range(0, total.length).filter(cell -> total[cell] < wanted).boxed()
                .sorted((a, b) -> Float.compare(total[a], total[b])).toList();
        int added = 0;
        for (int i = 0; i < dark.size() && added < ADDED_A_LOOK; i++) {
            added += samples.add(dark.get(i)) ? 1 : 0;
        }
        return added > 0;
    }
}
