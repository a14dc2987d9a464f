// SPDX-License-Identifier: Apache-2.0
package kerfglow.light.layout;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import kerfglow.light.Levels;
import kerfglow.light.LightMap;
import kerfglow.light.LightModule;
import kerfglow.light.Spots;
import org.locationtech.jts.geom.Coordinate;

/** Says what a choice of sites comes to and what stands in its way. */
final class Verdict {
    /** No row asks for a target this near to 1. */
    static final double MOST_UNIFORM = 0.99;
    /** Above this size of a step, a place counts as far from every plate: in plates and in heights. Assumed. */
    private static final double NEAR_HEIGHTS = 0.5;

    private final LayoutRequest request;
    private final List<LightModule> places;
    private final RowSeries series;

    /**
     * @param request where the artwork is
     * @param places where modules could lie
     */
    Verdict(LayoutRequest request, List<LightModule> places) {
        this.request = request;
        this.places = places;
        series = new RowSeries(request.type());
    }

    Layout noRoom() {
        boolean reached = request.uniformity() == 0;
        return new Layout(List.of(), 0, 0, 0, reached, reached ? Set.of() : Set.of(Layout.Limit.NO_ROOM), request.can().inside().getFactory().createMultiPoint(), 0);
    }

    /** @param map of these and the fixed modules, with lit cells */
    Layout of(List<LightModule> modules, LightMap map, boolean chained) {
        Levels levels = map.luminanceLevels();
        List<Coordinate> dark = new ArrayList<>();
        for (int i = 0; i < map.grid().size(); i++) {
            if (map.isLit(i) && map.luminance()[i] < request.uniformity() * levels.mean()) {
                dark.add(map.grid().at(i));
            }
        }
        double contrast = contrast(map);
        double pitch = pitch(modules);
        Set<Layout.Limit> limits = limits(dark, contrast > 0);
        if (!chained) {
            limits.add(Layout.Limit.CABLE);
        }
        return new Layout(modules, pitch, levels.uniformity(), contrast, levels.mean() > 0 && dark.isEmpty() && contrast == 0, limits,
                request.can().inside().getFactory().createMultiPointFromCoords(dark.toArray(new Coordinate[0])), neededDepthMm(pitch));
    }

    /** True when a map has what is wanted, or no cell to judge by. */
    boolean holds(LightMap map) {
        if (map.litCells() == 0) {
            return true;
        }
        Levels levels = map.luminanceLevels();
        return levels.mean() > 0 && levels.uniformity() >= request.uniformity() && contrast(map) == 0;
    }

    private double contrast(LightMap map) {
        if (!Double.isFinite(request.contrast())) {
            return 0;
        }
        boolean[] lit = new boolean[map.grid().size()];
        for (int i = 0; i < lit.length; i++) {
            lit[i] = map.isLit(i);
        }
        return Spots.of(map.grid(), lit, map.seen(request.eyeMm()), request.contrast()).stream().mapToDouble(Spots.Spot::contrast).max().orElse(0);
    }

    private double neededDepthMm(double pitch) {
        if (pitch <= 0) {
            return 0;
        }
        double height = series.heightMm(Math.min(MOST_UNIFORM, request.uniformity()), pitch);
        double ofContrast = Double.isFinite(request.contrast()) ? series.heightOfContrastMm(request.contrast(), pitch) : 0;
        return Math.max(height, ofContrast) + request.type().heightMm();
    }

    private static double pitch(List<LightModule> modules) {
        List<Double> nearest = new ArrayList<>();
        for (LightModule module : modules) {
            modules.stream().filter(other -> other != module).mapToDouble(other -> Math.hypot(other.xMm() - module.xMm(), other.yMm() - module.yMm())).min()
                    .ifPresent(nearest::add);
        }
        nearest.sort(Comparator.naturalOrder());
        return nearest.isEmpty() ? 0 : nearest.get(nearest.size() / 2);
    }

    private Set<Layout.Limit> limits(List<Coordinate> dark, boolean spotty) {
        Set<Layout.Limit> limits = EnumSet.noneOf(Layout.Limit.class);
        double closest = request.type().lengthMm() + request.gapMm();
        double near = Math.max(request.type().lengthMm(), NEAR_HEIGHTS * request.heightMm());
        for (Coordinate place : dark) {
            boolean within = places.stream().anyMatch(at -> Math.hypot(at.xMm() - place.x, at.yMm() - place.y) <= near);
            limits.add(within ? Layout.Limit.FREE_ENDS : Layout.Limit.MODULE_EDGE);
        }
        boolean tooDark = !dark.isEmpty() && closest > 0 && series.leastToMean(closest, request.heightMm()) < request.uniformity();
        if (tooDark || spotty) {
            limits.add(Layout.Limit.TOO_SHALLOW);
        }
        return limits;
    }
}
