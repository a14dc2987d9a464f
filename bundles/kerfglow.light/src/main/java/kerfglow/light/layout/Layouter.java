// SPDX-License-Identifier: Apache-2.0
package kerfglow.light.layout;

import java.util.ArrayList;
import java.util.List;
import kerfglow.light.Accuracy;
import kerfglow.light.Can;
import kerfglow.light.Cavity;
import kerfglow.light.LightMap;
import kerfglow.light.LightModule;
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
    /** Likewise of the contrast so much is made use of, and less each time. */
    private static final double CONTRAST_LEFT = 0.75;
    private static final double CONTRAST_LESS = 0.2;

    /** Frames in which cells lie otherwise: a layout that holds in all of them holds however the artwork is turned. Radians against the own frame. */
    private static final double[] TURNS = {0, Math.toRadians(45)};

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
        if (lighting.cells() == 0) {
            return verdict.noRoom();
        }
        Finder finder = new Finder(inPose, sites, lighting, pulse);
        List<Cavity> turned = new ArrayList<>();
        Layout best = null;
        double merit = 0;
        for (int i = 0; i < MOST_TRIES; i++) {
            Target target = new Target(Math.min(Verdict.MOST_UNIFORM, request.uniformity() * (1 + MARGIN + i * MORE)),
                    request.contrast() * (CONTRAST_LEFT - i * CONTRAST_LESS));
            Finder.Found found = finder.find(target);
            List<LightModule> modules = found.sites().stream().map(site -> pose.back(site.module(request.type()))).toList();
            List<LightModule> all = new ArrayList<>(request.fixed());
            all.addAll(modules);
            LightMap map = cavity.light(all, pulse);
            if (map.litCells() == 0) {
                return verdict.noRoom();
            }
            Layout layout = verdict.of(modules, map, found.chained());
            for (int k = turned.size(); found.met() && k < TURNS.length; k++) {
                turned.add(cavity.inOwnFrame(TURNS[k], cell, false, pulse));
            }
            // the grain of the map that is shown makes spots of its own, which closer modules leave less room for
            boolean holds = found.met() && layout.contrast() == 0;
            for (int k = 0; holds && k < turned.size(); k++) {
                Pose frame = pose.further(TURNS[k]);
                holds = verdict.holds(turned.get(k).light(all.stream().map(frame::into).toList(), pulse));
            }
            if (holds) {
                return layout;
            }
            best = best == null || found.merit() >= merit ? layout : best;
            merit = Math.max(merit, found.merit());
            if (!found.met()) {
                return best;
            }
        }
        return best;
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
