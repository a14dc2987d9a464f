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
    private static final double[] STARTS = {2, 1.4, 1};
    /** How far modules are moved in one step, in heights. Assumed. */
    private static final double MOVES = 0.7;
    private static final double LEAST_MOVE_MM = 12;
    /** Times that dark places which were overlooked are added and the search goes on. */
    private static final int MOST_LOOKS = 8;
    private static final int ADDED_A_LOOK = 12;
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
        float[] total = total(lighting, fixed, chosen.sites());
        for (int look = 0; look < MOST_LOOKS && looksCloser(samples, total); look++) {
            Choice again = Choice.none(samples, fixed, target);
            chosen.sites().forEach(again::add);
            chosen = ended(search, samples, fixed, again);
            total = total(lighting, fixed, chosen.sites());
        }
        return new Verdict(request, lighting, sites).layout(total, chosen.sites(), search.isChained(chosen));
    }

    /** The fewest that some starts lead to. */
    private Choice first(Search search, Samples samples, float[] fixed) {
        double pitch = new RowSeries(request.type()).pitchMm(target, request.heightMm());
        List<List<Integer>> starts = new ArrayList<>(List.of(List.of()));
        for (double start : STARTS) {
            starts.add(new Pattern(sites, lines).sites(start * pitch));
        }
        Choice best = null;
        for (List<Integer> start : starts) {
            pulse.run();
            Choice choice = Choice.none(samples, fixed, target);
            start.stream().filter(site -> search.isFree(choice, site, -1)).forEach(choice::add);
            Choice ended = ended(search, samples, fixed, choice);
            best = best == null || isBetter(ended, best) ? ended : best;
        }
        return best;
    }

    private Choice ended(Search search, Samples samples, float[] fixed, Choice start) {
        Choice grown = search.grown(start);
        search.chain(grown);
        if (Search.isReached(grown)) {
            return search.reduced(grown);
        }
        Choice lower = Choice.none(samples, fixed, grown.uniformity() * KEEPS);
        grown.sites().forEach(lower::add);
        Choice fewer = Search.isReached(lower) ? search.reduced(lower) : lower;
        Choice same = Choice.none(samples, fixed, target);
        fewer.sites().forEach(same::add);
        return same;
    }

    private static boolean isBetter(Choice one, Choice other) {
        boolean reached = Search.isReached(one);
        if (reached != Search.isReached(other)) {
            return reached;
        }
        return reached ? one.size() < other.size() : one.uniformity() > other.uniformity();
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
