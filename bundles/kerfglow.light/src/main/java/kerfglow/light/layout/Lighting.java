// SPDX-License-Identifier: Apache-2.0
package kerfglow.light.layout;

import java.util.List;
import java.util.stream.IntStream;
import kerfglow.light.Accuracy;
import kerfglow.light.Cavity;
import kerfglow.light.LightMap;
import kerfglow.light.LightModule;
import org.locationtech.jts.geom.Coordinate;

/**
 * What a module at each site gives to each cell of the lit face, reckoned when it is first asked for. Light adds up, so that a search needs
 * no more than sums of these.
 */
final class Lighting {
    /** About so many cells cover the lit face of a large part. Assumed. */
    private static final double CELLS = 8000;
    /** The cell of the map that is shown, mm: what is dark there is to be dark here. */
    private static final double LEAST_CELL_MM = 2;
    /** The patches that send light on may be coarse in a search: what they send is smooth. Assumed; the map that is shown is finer. */
    private static final double PATCH_SHARE = 0.5;
    private static final int DIRECTIONS = 16;

    private final LayoutRequest request;
    private final Cavity cavity;
    private final int[] lit;
    private final List<Site> sites;
    private final float[][] responses;
    private final Runnable pulse;

    Lighting(LayoutRequest request, List<Site> sites, Runnable pulse) {
        this.request = request;
        this.sites = sites;
        this.pulse = pulse;
        responses = new float[sites.size()][];
        double cell = Math.max(LEAST_CELL_MM, Math.sqrt(request.can().lit().getArea() / CELLS));
        cavity = Cavity.of(request.can(), new Accuracy(cell, PATCH_SHARE, DIRECTIONS), pulse);
        LightMap dark = cavity.light(List.of(), pulse);
        lit = IntStream.range(0, cavity.grid().size()).filter(dark::isLit).toArray();
    }

    /** How many cells of the face are lit. */
    int cells() {
        return lit.length;
    }

    /** The centre of a lit cell, mm. */
    Coordinate at(int cell) {
        return cavity.grid().at(lit[cell]);
    }

    int column(int cell) {
        return lit[cell] % cavity.grid().columns();
    }

    int row(int cell) {
        return lit[cell] / cavity.grid().columns();
    }

    /** Luminance in each lit cell from a module at a site. */
    float[] of(int site) {
        if (responses[site] == null) {
            responses[site] = of(List.of(sites.get(site).module(request.type())));
        }
        return responses[site];
    }

    /** Luminance in each lit cell from some modules. */
    float[] of(List<LightModule> modules) {
        double[] luminance = cavity.light(modules, pulse).luminance();
        float[] picked = new float[lit.length];
        for (int i = 0; i < lit.length; i++) {
            picked[i] = (float) luminance[lit[i]];
        }
        return picked;
    }
}
