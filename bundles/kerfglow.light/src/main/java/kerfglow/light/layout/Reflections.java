// SPDX-License-Identifier: Apache-2.0
package kerfglow.light.layout;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import kerfglow.light.Accuracy;
import kerfglow.light.Can;
import kerfglow.light.Finish;
import kerfglow.light.LightModule;
import org.locationtech.jts.geom.Coordinate;

/**
 * What back, walls and face send on to the lit cells, for modules at sites. It changes little over a fraction of the depth, so a search reckons it
 * coarsely, for some of the sites, and reads between them along their centre line; how far that is off is reckoned finely for whole layouts.
 */
final class Reflections {
    /** Cells of the coarse map, in heights and in strokes. Assumed. */
    private static final double CELL_HEIGHTS = 0.2;
    private static final double CELL_STROKES = 0.33;
    /** Coarse patches: the mean lies within 1 % of that of small ones. Assumed; see {@link #FINE}. */
    private static final double COARSE = 0.7;
    private static final int COARSE_DIRECTIONS = 12;
    /** For whole layouts: as for the map that is shown, so that both say the same of them; see {@link Accuracy#usual()}. */
    private static final double FINE = 0.25;
    private static final int FINE_DIRECTIONS = 24;
    private static final double FINER_CELL = 0.4;
    /** From one site that is reckoned to the next on its line, in heights. Assumed. */
    private static final double STEP_HEIGHTS = 0.8;
    /** Sites nearer than this, mm, are one. */
    private static final double SAME_MM = 1e-3;

    private final LayoutRequest request;
    private final List<Site> sites;
    private final List<Coordinate> centres;
    private final Runnable pulse;
    private final double cellMm;
    private final Optional<SentOn> coarse;
    private final List<Integer> anchors = new ArrayList<>();
    private final List<float[]> sentOn = new ArrayList<>();
    private Optional<SentOn> fine = Optional.empty();

    /** @param centres of the lit cells, mm */
    Reflections(LayoutRequest request, List<Site> sites, List<Coordinate> centres, Runnable pulse) {
        this.request = request;
        this.sites = sites;
        this.centres = centres;
        this.pulse = pulse;
        Can can = request.can();
        Finish finish = can.finish();
        double stroke = 2 * can.inside().getArea() / can.inside().getLength();
        cellMm = Math.min(CELL_HEIGHTS * request.heightMm(), CELL_STROKES * stroke);
        boolean none = finish.backReflectance() == 0 && finish.wallReflectance() == 0 && finish.faceReflectance() == 0;
        coarse = none ? Optional.empty() : Optional.of(new SentOn(can, new Accuracy(cellMm, COARSE, COARSE_DIRECTIONS), centres, pulse));
        if (!none) {
            chooseAnchors();
        }
    }

    /** True where surfaces send nothing on. */
    boolean areNone() {
        return coarse.isEmpty();
    }

    private void chooseAnchors() {
        double step = STEP_HEIGHTS * request.heightMm();
        for (int site = 0; site < sites.size(); site++) {
            Site here = sites.get(site);
            boolean last = site + 1 == sites.size() || sites.get(site + 1).line() != here.line();
            double nearest = anchors.stream().map(sites::get).filter(anchor -> anchor.line() == here.line()).mapToDouble(here::distanceTo).min()
                    .orElse(Double.POSITIVE_INFINITY);
            if (nearest >= step || last && nearest > SAME_MM) {
                anchors.add(site);
                sentOn.add(new float[0]); // reckoned when it is asked for
            }
        }
    }

    /** Adds the luminance from what a module at a site makes surfaces send on. */
    void add(int site, float[] luminance) {
        if (areNone()) {
            return;
        }
        Site here = sites.get(site);
        List<Integer> nearest = anchorsOf(here);
        double first = sites.get(anchors.get(nearest.get(0))).distanceTo(here);
        double second = nearest.size() == 1 ? Double.POSITIVE_INFINITY : sites.get(anchors.get(nearest.get(1))).distanceTo(here);
        double share = first <= SAME_MM || nearest.size() == 1 ? 1 : second / (first + second);
        coarse.orElseThrow().add(anchor(nearest.get(0)), share, luminance);
        if (share < 1) {
            coarse.orElseThrow().add(anchor(nearest.get(1)), 1 - share, luminance);
        }
    }

    private List<Integer> anchorsOf(Site here) {
        List<Integer> own = new ArrayList<>();
        for (int i = 0; i < anchors.size(); i++) {
            if (sites.get(anchors.get(i)).line() == here.line()) {
                own.add(i);
            }
        }
        own.sort(Comparator.comparingDouble(i -> sites.get(anchors.get(i)).distanceTo(here)));
        return own;
    }

    private float[] anchor(int index) {
        if (sentOn.get(index).length == 0) {
            sentOn.set(index, coarse.orElseThrow().of(List.of(sites.get(anchors.get(index)).module(request.type()))));
        }
        return sentOn.get(index);
    }

    /** Adds the luminance from what modules in any place make surfaces send on, reckoned finely. */
    void add(List<LightModule> modules, float[] luminance) {
        if (areNone() || modules.isEmpty()) {
            return;
        }
        SentOn finely = fine.orElseGet(() -> new SentOn(request.can(), new Accuracy(FINER_CELL * cellMm, FINE, FINE_DIRECTIONS), centres, pulse));
        fine = Optional.of(finely);
        finely.add(finely.of(modules), 1, luminance);
    }
}
