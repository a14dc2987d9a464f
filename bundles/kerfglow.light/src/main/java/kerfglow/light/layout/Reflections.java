// SPDX-License-Identifier: Apache-2.0
package kerfglow.light.layout;

import java.util.ArrayList;
import java.util.List;
import kerfglow.light.Cavity;
import kerfglow.light.LightModuleType;

/**
 * What back, walls and face send on to the lit cells, for modules at sites. It changes little over a fraction of the depth, so it is reckoned
 * for some of the sites and read between them along their centre line.
 */
final class Reflections {
    /** From one site that is reckoned to the next on its line, in heights. Assumed. */
    private static final double STEP_HEIGHTS = 0.8;
    /** Sites nearer than this, mm, are one. */
    private static final double SAME_MM = 1e-3;

    private final Cavity cavity;
    private final LightModuleType type;
    private final int[] lit;
    private final Runnable pulse;
    private final List<Site> anchors = new ArrayList<>();
    private final List<float[]> sentOn = new ArrayList<>();

    /** @param lit cells that are lit */
    Reflections(Cavity cavity, LightModuleType type, double heightMm, List<Site> sites, int[] lit, Runnable pulse) {
        this.cavity = cavity;
        this.type = type;
        this.lit = lit;
        this.pulse = pulse;
        double step = STEP_HEIGHTS * heightMm;
        for (int i = 0; i < sites.size() && !cavity.isBlack(); i++) {
            Site here = sites.get(i);
            boolean last = i + 1 == sites.size() || sites.get(i + 1).line() != here.line();
            double nearest = anchors.stream().filter(anchor -> anchor.line() == here.line()).mapToDouble(here::distanceTo).min().orElse(Double.POSITIVE_INFINITY);
            if (nearest >= step || last && nearest > SAME_MM) {
                anchors.add(here);
                sentOn.add(new float[0]); // reckoned when it is asked for
            }
        }
    }

    /** Adds the illuminance from what a module at a site makes surfaces send on, lux in each lit cell. */
    void add(Site here, float[] lux) {
        if (cavity.isBlack()) {
            return;
        }
        int first = nearest(here, -1);
        int second = first < 0 ? -1 : nearest(here, first);
        if (first < 0) {
            add(reckoned(here), 1, lux);
            return;
        }
        double near = anchors.get(first).distanceTo(here);
        double far = second < 0 ? Double.POSITIVE_INFINITY : anchors.get(second).distanceTo(here);
        double share = near <= SAME_MM || second < 0 ? 1 : far / (near + far);
        add(anchor(first), share, lux);
        if (share < 1) {
            add(anchor(second), 1 - share, lux);
        }
    }

    /** The nearest anchor on the same line; -1 for none. */
    private int nearest(Site here, int but) {
        int best = -1;
        for (int i = 0; i < anchors.size(); i++) {
            if (i != but && anchors.get(i).line() == here.line() && (best < 0 || anchors.get(i).distanceTo(here) < anchors.get(best).distanceTo(here))) {
                best = i;
            }
        }
        return best;
    }

    private float[] anchor(int index) {
        if (sentOn.get(index).length == 0) {
            sentOn.set(index, reckoned(anchors.get(index)));
        }
        return sentOn.get(index);
    }

    private float[] reckoned(Site site) {
        double[] all = cavity.sentOn(List.of(site.module(type)), pulse);
        float[] picked = new float[lit.length];
        for (int i = 0; i < lit.length; i++) {
            picked[i] = (float) all[lit[i]];
        }
        return picked;
    }

    private static void add(float[] own, double share, float[] lux) {
        float weight = (float) share;
        for (int i = 0; i < lux.length; i++) {
            lux[i] += weight * own[i];
        }
    }
}
