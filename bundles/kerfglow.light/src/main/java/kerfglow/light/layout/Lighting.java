// SPDX-License-Identifier: Apache-2.0
package kerfglow.light.layout;

import java.util.List;
import java.util.stream.IntStream;
import kerfglow.light.Accuracy;
import kerfglow.light.Can;
import kerfglow.light.Cavity;
import kerfglow.light.Finish;
import kerfglow.light.LightMap;
import kerfglow.light.LightModule;
import org.locationtech.jts.geom.Coordinate;

/**
 * What a module at each site gives to each cell of the lit face, reckoned when it is first asked for. Light adds up, so that a search needs
 * no more than sums of these. Direct light is exact at every cell; what surfaces send on is smooth and comes from {@link Reflections}.
 */
final class Lighting {
    /** About so many cells cover the lit face of a large part. Assumed. */
    private static final double CELLS = 8000;
    /** The cell of the map that is shown, mm: what is dark there is to be dark here. */
    private static final double LEAST_CELL_MM = 2;
    private static final double PATCH_SHARE = 1;
    private static final int DIRECTIONS = 12;

    private final LayoutRequest request;
    private final Cavity direct;
    private final Reflections reflections;
    private final int[] lit;
    private final List<Site> sites;
    private final float[][] responses;
    private final Runnable pulse;

    Lighting(LayoutRequest request, List<Site> sites, Runnable pulse) {
        this.request = request;
        this.sites = sites;
        this.pulse = pulse;
        responses = new float[sites.size()][];
        Can can = request.can();
        double cell = Math.max(LEAST_CELL_MM, Math.sqrt(can.lit().getArea() / CELLS));
        Finish black = new Finish(0, 0, 0, can.finish().faceTransmittance(), can.finish().spreadMm());
        direct = Cavity.of(new Can(can.inside(), can.lit(), can.depthMm(), black), new Accuracy(cell, PATCH_SHARE, DIRECTIONS), pulse);
        LightMap dark = direct.light(List.of(), pulse);
        lit = IntStream.range(0, direct.grid().size()).filter(dark::isLit).toArray();
        reflections = new Reflections(request, sites, IntStream.of(lit).mapToObj(direct.grid()::at).toList(), pulse);
    }

    /** How many cells of the face are lit. */
    int cells() {
        return lit.length;
    }

    /** The centre of a lit cell, mm. */
    Coordinate at(int cell) {
        return direct.grid().at(lit[cell]);
    }

    int column(int cell) {
        return lit[cell] % direct.grid().columns();
    }

    int row(int cell) {
        return lit[cell] / direct.grid().columns();
    }

    /** Luminance in each lit cell from a module at a site. */
    float[] of(int site) {
        if (responses[site] == null) {
            responses[site] = straight(List.of(sites.get(site).module(request.type())));
            reflections.add(site, responses[site]);
        }
        return responses[site];
    }

    /** Luminance in each lit cell from modules in any place. */
    float[] of(List<LightModule> modules) {
        float[] all = straight(modules);
        reflections.add(modules, all);
        return all;
    }

    /** What the sum of single sites leaves out of the light that they make together: sent on and reckoned finely. 0 where nothing is sent on. */
    float[] correction(List<Integer> chosen) {
        float[] missing = new float[lit.length];
        if (!reflections.areNone() && !chosen.isEmpty()) {
            reflections.add(chosen.stream().map(site -> sites.get(site).module(request.type())).toList(), missing);
            float[] single = new float[lit.length];
            chosen.forEach(site -> reflections.add(site, single));
            for (int i = 0; i < missing.length; i++) {
                missing[i] -= single[i];
            }
        }
        return missing;
    }

    private float[] straight(List<LightModule> modules) {
        double[] luminance = direct.light(modules, pulse).luminance();
        float[] picked = new float[lit.length];
        for (int i = 0; i < lit.length; i++) {
            picked[i] = (float) luminance[lit[i]];
        }
        return picked;
    }
}
