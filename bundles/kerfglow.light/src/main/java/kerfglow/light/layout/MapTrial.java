// SPDX-License-Identifier: Apache-2.0
package kerfglow.light.layout;

import java.util.ArrayList;
import java.util.List;
import kerfglow.light.Cavity;
import kerfglow.light.LightModule;
import kerfglow.light.Pose;

/** Holds what was found against maps: the one that is shown, and others in frames of the can's own whose cells lie otherwise. */
final class MapTrial {
    /** A layout that holds in all of these holds however the artwork is turned. Radians against the own frame. */
    private static final double[] TURNS = {0, Math.toRadians(45)};

    private final LayoutRequest request;
    private final Cavity cavity;
    private final double cellMm;
    private final Verdict verdict;
    private final Runnable pulse;
    private final List<Cavity> turned = new ArrayList<>();

    /**
     * @param cavity its map is the one that is shown
     * @param cellMm cell of the other maps, mm
     */
    MapTrial(LayoutRequest request, Cavity cavity, double cellMm, Verdict verdict, Runnable pulse) {
        this.request = request;
        this.cavity = cavity;
        this.cellMm = cellMm;
        this.verdict = verdict;
        this.pulse = pulse;
    }

    /** What the map that is shown says. */
    Layout of(Finder.Found found) {
        List<LightModule> modules = found.sites().stream().map(site -> cavity.pose().back(site.module(request.type()))).toList();
        return verdict.of(modules, cavity.light(all(modules), pulse), found.chained());
    }

    private List<LightModule> all(List<LightModule> modules) {
        List<LightModule> all = new ArrayList<>(request.fixed());
        all.addAll(modules);
        return all;
    }

    /** True when all maps have what is wanted; of the shown one no more than its spots count, since its grain makes some of its own. */
    boolean holds(Layout layout) {
        boolean holds = layout.contrast() == 0;
        for (int k = 0; holds && k < TURNS.length; k++) {
            if (turned.size() == k) {
                turned.add(cavity.inOwnFrame(TURNS[k], cellMm, false, pulse));
            }
            Pose frame = cavity.pose().further(TURNS[k]);
            holds = verdict.holds(turned.get(k).light(all(layout.modules()).stream().map(frame::into).toList(), pulse));
        }
        return holds;
    }
}
