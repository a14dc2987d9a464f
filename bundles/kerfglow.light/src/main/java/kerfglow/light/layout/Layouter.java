// SPDX-License-Identifier: Apache-2.0
package kerfglow.light.layout;

import java.util.Optional;
import java.util.stream.IntStream;
import kerfglow.light.Accuracy;
import kerfglow.light.Can;
import kerfglow.light.Cavity;
import kerfglow.light.Pose;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.simplify.TopologyPreservingSimplifier;

/**
 * Lays light modules out in a can: few of them, on the centre lines of the strokes or in rows where a stroke is wide, turned along it, so that the
 * darkest place of the lit face keeps the wanted share of the mean and no bright spot stands out. Fixed modules stay and are built upon. The
 * same request gives the same layout, and a turned or moved one gives it turned or moved. Where the target is out of reach, the best that was
 * found with as few modules as give it.
 *
 * <p>It is a search in a bounded number of steps and gives no proof that fewer would not do; tests hold it against brute force on small letters.
 */
public final class Layouter {
    /** Assumed: this much of an outline's wiggle, mm, changes no light worth looking at. */
    private static final double SMOOTH_MM = 0.2;
    /** About so many cells of the map that a search is checked by. Assumed. */
    private static final double CELLS = 12_000;
    /** Times that a layout which the map does not bear out is sought again with more wanted. Assumed. */
    private static final int MOST_TRIES = 3;
    /** Wanted so much more than asked for, as a share, so that the map with its cells elsewhere still has it; and so much more each time. Assumed. */
    private static final double MARGIN = 0.02;
    private static final double MORE = 0.025;
    /**
     * Likewise the contrast is to be lower by the grain of a map, which coarse cells lack, and by more each time; where it is as small as that
     * itself, by shares of it. Seen: about 1 %.
     */
    private static final double GRAIN = 0.005;
    private static final double MORE_GRAIN = 0.004;
    private static final double GRAIN_SHARE = 0.25;
    private static final double MORE_SHARE = 0.2;

    private Layouter() {
    }

    /**
     * Lays out and judges by a map of the usual accuracy.
     *
     * @param request what is to be lit, and by what
     * @param pulse called often, for progress; throws when the work is over
     * @throws IllegalArgumentException when the emitters stand at or beyond the face
     */
    public static Layout layout(LayoutRequest request, Runnable pulse) {
        requireRoom(request);
        return layout(request, Cavity.of(request.can(), Accuracy.usual(), pulse), pulse);
    }

    /**
     * Lays out.
     *
     * @param request what is to be lit, and by what
     * @param cavity its can; the map of this says whether the target is reached, maps in frames of the can's own decide what is laid out
     * @param pulse called often, for progress; throws when the work is over
     * @throws IllegalArgumentException when the emitters stand at or beyond the face
     */
    public static Layout layout(LayoutRequest request, Cavity cavity, Runnable pulse) {
        requireRoom(request);
        Pose pose = cavity.pose();
        double cell = Math.max(cavity.grid().cellMm(), Math.sqrt(request.can().lit().getArea() / CELLS));
        Cavity own = cavity.inOwnFrame(0, cell, true, pulse);
        Polygon inside = (Polygon) smooth(own.can().inside());
        Geometry lit = request.can().lit() == request.can().inside() ? inside : smooth(own.can().lit());
        LayoutRequest inPose = new LayoutRequest(new Can(inside, lit, request.can().depthMm(), request.can().finish()), request.type(),
                pose.into(request.keepClear()), request.edgeMm(), request.clearMm(), request.gapMm(), request.cablePitchMm(),
                request.fixed().stream().map(pose::into).toList(), request.uniformity(), request.contrast(), request.eyeMm());
        Sites sites = Sites.of(inPose, CentreLines.of(inside, pulse), pulse);
        Verdict verdict = new Verdict(request, sites.list().stream().map(site -> pose.back(site.module(request.type()))).toList());
        if (sites.list().isEmpty()) {
            return verdict.noRoom();
        }
        Lighting lighting = new Lighting(inPose, own, sites, pulse);
        if (lighting.cells() == 0 || IntStream.range(0, cavity.grid().size()).noneMatch(cavity::isLit)) {
            return verdict.noRoom();
        }
        Finder finder = new Finder(inPose, sites, lighting, pulse);
        MapTrial trial = new MapTrial(request, cavity, cell, verdict, pulse);
        Layout best = null;
        double merit = 0;
        for (int i = 0; i < MOST_TRIES; i++) {
            Finder.Found found = finder.find(target(request, i));
            Layout layout = trial.of(found);
            if (found.met() && trial.holds(layout)) {
                return fewer(layout, target(request, i), finder, trial);
            }
            best = best == null || found.merit() >= merit ? layout : best;
            merit = Math.max(merit, found.merit());
            if (!found.met()) {
                break;
            }
        }
        Target target = target(request, 0);
        Optional<Finder.Found> rows = finder.unmoved(target, found -> trial.holds(trial.of(found)));
        if (rows.isPresent()) {
            return fewer(trial.of(rows.get()), target, finder, trial);
        }
        double searched = merit;
        Optional<Finder.Found> counted = finder.counted(target, Finder.ANY, found -> trial.holds(trial.of(found)));
        return counted.filter(found -> found.met() || found.merit() > searched).map(trial::of).orElse(best);
    }

    /** Fewer modules, where counting finds some that hold too. */
    private static Layout fewer(Layout held, Target target, Finder finder, MapTrial trial) {
        Layout least = held;
        boolean isFewer = Double.isFinite(target.contrast()) && held.modules().size() <= Starts.MOST_SHARED; // the search alone finds few where only evenness rules
        while (isFewer) {
            Layout[] next = new Layout[1];
            finder.counted(target, least.modules().size(), found -> {
                next[0] = trial.of(found);
                boolean holds = trial.holds(next[0]);
                next[0] = holds ? next[0] : null;
                return holds;
            });
            isFewer = next[0] != null;
            least = isFewer ? next[0] : least;
        }
        return least;
    }

    private static Target target(LayoutRequest request, int times) {
        double grain = Math.min(GRAIN + times * MORE_GRAIN, (GRAIN_SHARE + times * MORE_SHARE) * request.contrast());
        return new Target(Math.min(Verdict.MOST_UNIFORM, request.uniformity() * (1 + MARGIN + times * MORE)), request.contrast() - grain);
    }

    private static void requireRoom(LayoutRequest request) {
        if (request.type().heightMm() >= request.can().depthMm()) {
            throw new IllegalArgumentException("emitter height must be below the depth of " + request.can().depthMm() + " mm, not " + request.type().heightMm());
        }
    }

    private static Geometry smooth(Geometry area) {
        Geometry smooth = TopologyPreservingSimplifier.simplify(area, SMOOTH_MM);
        return smooth.isValid() && !smooth.isEmpty() && smooth.getGeometryType().equals(area.getGeometryType()) ? smooth : area;
    }
}
