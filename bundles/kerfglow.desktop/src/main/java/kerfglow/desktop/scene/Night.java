// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.scene;

import java.util.Arrays;
import kerfglow.api.ColourScale;
import kerfglow.api.OverlayLayer;

/**
 * What a light map leaves of the colours of the day: how dark a veil each cell lays over them, 0 for the brightest place of the map to 255. A screen
 * shows a share of light as its 2.2th root (IEC 61966-2-1, as a power law), so that a veil of 1 - share^(1/2.2) over a colour shows that share of its light.
 */
public final class Night {
    /** What is not lit is still made out, of 255. Assumed: street light on a wall. */
    public static final int UNLIT = 225;

    private static final int OPAQUE = 255;
    private static final double GAMMA = 2.2;
    private static final int STEPS = 1024;
    private static final double[] LIGHTNESS = new double[STEPS + 1];

    static {
        Arrays.setAll(LIGHTNESS, i -> lightness(ColourScale.rgb((double) i / STEPS)));
    }

    private Night() {
    }

    /** The veil of each cell, row by row. */
    public static byte[] veil(OverlayLayer.Raster raster) {
        byte[] veil = new byte[raster.argb().length];
        for (int i = 0; i < veil.length; i++) {
            int argb = raster.argb()[i];
            veil[i] = (byte) (argb >>> 24 == 0 ? UNLIT : Math.min(UNLIT, (int) Math.round(OPAQUE * (1 - Math.pow(level(argb), 1 / GAMMA)))));
        }
        return veil;
    }

    /** The level that the one colour scale shows with this colour; it grows lighter all the way. */
    static double level(int rgb) {
        int at = Arrays.binarySearch(LIGHTNESS, lightness(rgb));
        return (double) Math.min(STEPS, at >= 0 ? at : -at - 1) / STEPS;
    }

    /** ITU-R BT.601. */
    private static double lightness(int rgb) {
        return 0.299 * (rgb >> 16 & OPAQUE) + 0.587 * (rgb >> 8 & OPAQUE) + 0.114 * (rgb & OPAQUE);
    }
}
