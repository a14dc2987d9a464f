// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.scene;

import static org.junit.jupiter.api.Assertions.assertEquals;

import kerfglow.api.ColourScale;
import kerfglow.api.OverlayLayer;
import org.junit.jupiter.api.Test;

/** Colours are put through sRGB's power law backwards, as a screen does, and held against the share of light that the map gives. */
class NightTest {
    @Test
    void a_level_is_found_again_from_its_colour() {
        for (int i = 0; i <= 100; i++) {
            assertEquals(i / 100.0, Night.level(ColourScale.rgb(i / 100.0)), 0.01, "colours are in steps of a 255th");
        }
    }

    @Test
    void a_colour_under_the_veil_gives_the_share_of_its_light() {
        double[] shares = {1, 0.5, 0.2, 0.05};
        int[] argb = new int[shares.length + 1];
        for (int i = 0; i < shares.length; i++) {
            argb[i] = 0xff000000 | ColourScale.rgb(shares[i]);
        }
        byte[] veil = Night.veil(new OverlayLayer.Raster(0, 0, 1, argb.length, 1, argb));
        for (int i = 0; i < shares.length; i++) {
            for (int day : new int[] {255, 128, 40}) {
                double seen = day * (1 - (veil[i] & 0xff) / 255.0);
                assertEquals(shares[i], Math.pow(seen / 255, 2.2) / Math.pow(day / 255.0, 2.2), 0.02);
            }
        }
        assertEquals(Night.UNLIT, veil[shares.length] & 0xff, "no cell of the map, so not lit");
    }
}
