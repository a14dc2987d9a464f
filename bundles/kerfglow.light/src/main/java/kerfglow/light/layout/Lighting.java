// SPDX-License-Identifier: Apache-2.0
package kerfglow.light.layout;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import kerfglow.light.Accuracy;
import kerfglow.light.Can;
import kerfglow.light.Cavity;
import kerfglow.light.Finish;
import kerfglow.light.LightMap;
import kerfglow.light.LightModule;
import kerfglow.light.Spots;
import org.locationtech.jts.geom.Coordinate;

/**
 * What a module at each site gives to each cell of the lit face, reckoned when it is first asked for. Light adds up, so that a search needs
 * no more than sums of these. Direct light is exact at every cell; what surfaces send on is smooth and comes from {@link Reflections}.
 */
final class Lighting {
    /** About so many cells cover the lit face of a large part. Assumed. */
    private static final double CELLS = 5000;
    /** The cell of the map that is shown, mm: what is dark there is to be dark here. */
    private static final double LEAST_CELL_MM = 2;
    /** A blur of less, in cells, changes nothing. */
    private static final double LEAST_BLUR = 0.5;
    /** Without meaning where nothing is sent on. */
    private static final double PATCH_SHARE = 1;
    private static final int DIRECTIONS = 12;

    private final LayoutRequest request;
    private final Cavity direct;
    private final Optional<Cavity> blurred;
    private final Reflections reflections;
    private final int[] lit;
    private final List<Site> sites;
    private final float[][] responses;
    private final float[][] seen;
    private final int[] index;
    private final Runnable pulse;

    Lighting(LayoutRequest request, List<Site> sites, Runnable pulse) {
        this.request = request;
        this.sites = sites;
        this.pulse = pulse;
        responses = new float[sites.size()][];
        seen = new float[sites.size()][];
        Can can = request.can();
        double cell = Math.max(LEAST_CELL_MM, Math.sqrt(can.lit().getArea() / CELLS));
        Accuracy accuracy = new Accuracy(cell, PATCH_SHARE, DIRECTIONS);
        direct = Cavity.of(black(can, can.finish().spreadMm()), accuracy, pulse);
        double eye = Math.hypot(can.finish().spreadMm(), request.eyeMm());
        boolean blurs = Double.isFinite(request.contrast()) && request.eyeMm() > LEAST_BLUR * cell;
        blurred = blurs ? Optional.of(Cavity.of(black(can, eye), accuracy, pulse)) : Optional.empty();
        LightMap dark = direct.light(List.of(), pulse);
        lit = IntStream.range(0, direct.grid().size()).filter(dark::isLit).toArray();
        index = new int[direct.grid().size()];
        Arrays.fill(index, -1);
        for (int i = 0; i < lit.length; i++) {
            index[lit[i]] = i;
        }
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

    /** What an eye sees of {@link #of(int)}: what comes straight is blurred, what surfaces send on is smooth already. */
    float[] seen(int site) {
        if (blurred.isEmpty()) {
            return of(site);
        }
        if (seen[site] == null) {
            seen[site] = picked(blurred.get().light(List.of(sites.get(site).module(request.type())), pulse).luminance());
            reflections.add(site, seen[site]);
        }
        return seen[site];
    }

    /** What an eye sees of modules in any place; see {@link #seen(int)}. */
    float[] seen(List<LightModule> modules) {
        float[] all = picked(blurred.orElse(direct).light(modules, pulse).luminance());
        reflections.add(modules, all);
        return all;
    }

    /**
     * Bright spots of what is seen, above the contrast that may remain: the lit cell of the peak and that of its pass, strongest first. The
     * highest peak is left out: it has no higher one beside it, and where a lower one is made even with its pass, so is it.
     */
    List<int[]> spots(float[] all) {
        return found(all).stream().map(spot -> new int[] {cell(spot.at()), cell(spot.pass())}).toList();
    }

    /** The contrast of the strongest of them; 0 when there is none. */
    double contrast(float[] all) {
        return found(all).stream().mapToDouble(Spots.Spot::contrast).max().orElse(0);
    }

    private List<Spots.Spot> found(float[] all) {
        if (!Double.isFinite(request.contrast())) {
            return List.of();
        }
        double[] values = new double[index.length];
        boolean[] counts = new boolean[index.length];
        for (int i = 0; i < lit.length; i++) {
            values[lit[i]] = all[i];
            counts[lit[i]] = true;
        }
        double highest = Arrays.stream(values).max().orElse(0);
        return Spots.of(direct.grid(), counts, values, request.contrast()).stream().filter(spot -> all[cell(spot.at())] < highest).toList();
    }

    private int cell(Coordinate at) {
        return index[direct.grid().cell(at.x, at.y)];
    }

    private static Can black(Can can, double spreadMm) {
        return new Can(can.inside(), can.lit(), can.depthMm(), new Finish(0, 0, 0, can.finish().faceTransmittance(), spreadMm));
    }

    private float[] straight(List<LightModule> modules) {
        return picked(direct.light(modules, pulse).luminance());
    }

    private float[] picked(double[] luminance) {
        float[] picked = new float[lit.length];
        for (int i = 0; i < lit.length; i++) {
            picked[i] = (float) luminance[lit[i]];
        }
        return picked;
    }
}
