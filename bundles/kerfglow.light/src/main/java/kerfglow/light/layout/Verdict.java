// SPDX-License-Identifier: Apache-2.0
package kerfglow.light.layout;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import kerfglow.light.LightModule;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;

/** Says what a choice of sites comes to and what stands in its way. */
final class Verdict {
    /** No row asks for a target this near to 1. */
    static final double MOST_UNIFORM = 0.99;
    /** Above this size of a step, a place counts as far from every plate: in plates and in heights. Assumed. */
    private static final double NEAR_HEIGHTS = 0.5;

    private final LayoutRequest request;
    private final Lighting lighting;
    private final List<Site> sites;
    private final RowSeries series;

    Verdict(LayoutRequest request, Lighting lighting, List<Site> sites) {
        this.request = request;
        this.lighting = lighting;
        this.sites = sites;
        series = new RowSeries(request.type());
    }

    static Layout noRoom(LayoutRequest request) {
        boolean reached = request.uniformity() == 0;
        return new Layout(List.of(), 0, 0, 0, reached, reached ? Set.of() : Set.of(Layout.Limit.NO_ROOM), request.can().inside().getFactory().createMultiPoint(), 0);
    }

    /**
     * @param total the light of each lit cell
     * @param seen the same as an eye sees it
     */
    Layout layout(float[] total, float[] seen, List<Integer> chosen, boolean chained) {
        double mean = Samples.mean(total);
        double least = Double.POSITIVE_INFINITY;
        List<Coordinate> dark = new ArrayList<>();
        for (int i = 0; i < total.length; i++) {
            least = Math.min(least, total[i]);
            if (total[i] < request.uniformity() * mean) {
                dark.add(lighting.at(i));
            }
        }
        List<Site> ordered = chosen.stream().map(sites::get).sorted(Comparator.comparingInt(Site::line).thenComparingDouble(Site::along)).toList();
        List<LightModule> modules = ordered.stream().map(site -> site.module(request.type())).toList();
        double pitch = pitch(ordered);
        Geometry places = request.can().inside().getFactory().createMultiPointFromCoords(dark.toArray(new Coordinate[0]));
        double contrast = lighting.contrast(seen);
        Set<Layout.Limit> limits = limits(dark, contrast > 0);
        if (!chained) {
            limits.add(Layout.Limit.CABLE);
        }
        return new Layout(modules, pitch, mean > 0 ? Math.max(0, least) / mean : 0, contrast, mean > 0 && dark.isEmpty() && contrast == 0, limits, places,
                neededDepthMm(pitch));
    }

    private double neededDepthMm(double pitch) {
        if (pitch <= 0) {
            return 0;
        }
        double height = series.heightMm(Math.min(MOST_UNIFORM, request.uniformity()), pitch);
        double ofContrast = Double.isFinite(request.contrast()) ? series.heightOfContrastMm(request.contrast(), pitch) : 0;
        return Math.max(height, ofContrast) + request.type().heightMm();
    }

    private static double pitch(List<Site> modules) {
        List<Double> nearest = new ArrayList<>();
        for (Site site : modules) {
            modules.stream().filter(other -> other != site).mapToDouble(site::distanceTo).min().ifPresent(nearest::add);
        }
        nearest.sort(Comparator.naturalOrder());
        return nearest.isEmpty() ? 0 : nearest.get(nearest.size() / 2);
    }

    private Set<Layout.Limit> limits(List<Coordinate> dark, boolean spotty) {
        Set<Layout.Limit> limits = EnumSet.noneOf(Layout.Limit.class);
        double closest = request.type().lengthMm() + request.gapMm();
        double near = Math.max(request.type().lengthMm(), NEAR_HEIGHTS * request.heightMm());
        for (Coordinate place : dark) {
            boolean within = sites.stream().anyMatch(site -> Math.hypot(site.x() - place.x, site.y() - place.y) <= near);
            limits.add(within ? Layout.Limit.FREE_ENDS : Layout.Limit.MODULE_EDGE);
        }
        boolean tooDark = !dark.isEmpty() && closest > 0 && series.leastToMean(closest, request.heightMm()) < request.uniformity();
        if (tooDark || spotty) {
            limits.add(Layout.Limit.TOO_SHALLOW);
        }
        return limits;
    }
}
