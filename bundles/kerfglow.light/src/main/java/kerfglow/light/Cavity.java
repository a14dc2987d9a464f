// SPDX-License-Identifier: Apache-2.0
package kerfglow.light;

import java.util.List;

/**
 * A can made ready for light: how its surfaces see each other is reckoned once, so that modules can be moved and lit again in little time.
 * Immutable; {@link #light} may run on several threads.
 */
public final class Cavity {
    private final Can can;
    private final Accuracy accuracy;
    private final Outline outline;
    private final Grid grid;
    private final boolean[] inside;
    private final boolean[] lit;

    private Cavity(Can can, Accuracy accuracy) {
        this.can = can;
        this.accuracy = accuracy;
        outline = new Outline(can.inside());
        grid = Grid.over(can.inside().getEnvelopeInternal(), accuracy.cellMm());
        inside = Spans.inside(grid, can.inside());
        lit = Spans.inside(grid, can.lit());
        for (int i = 0; i < lit.length; i++) {
            lit[i] &= inside[i];
        }
    }

    /**
     * Makes a can ready.
     *
     * @param pulse called often; throws when the work is over
     */
    public static Cavity of(Can can, Accuracy accuracy, Runnable pulse) {
        pulse.run();
        return new Cavity(can, accuracy);
    }

    public Can can() {
        return can;
    }

    public Accuracy accuracy() {
        return accuracy;
    }

    /** The cells of its maps. */
    public Grid grid() {
        return grid;
    }

    /**
     * The light of modules on the face.
     *
     * @param modules emitters that do not stand inside the can give no light
     * @param pulse called often; throws when the work is over
     */
    public LightMap light(List<LightModule> modules, Runnable pulse) {
        DirectLight direct = new DirectLight(outline, grid, can.depthMm());
        double[] lux = new double[grid.size()];
        for (LightModule module : modules) {
            pulse.run();
            direct.add(module, 1, lux);
        }
        double[] luminance = Smoothing.gaussian(grid, inside, lux, can.finish().spreadMm() / grid.cellMm()).clone();
        for (int i = 0; i < luminance.length; i++) {
            luminance[i] *= can.finish().faceTransmittance() / Math.PI;
        }
        return new LightMap(grid, lit, lux, luminance, 1, new LightMap.Balance(0, 0, 0, 0, 0));
    }
}
