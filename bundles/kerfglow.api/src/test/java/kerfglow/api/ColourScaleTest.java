// SPDX-License-Identifier: Apache-2.0
package kerfglow.api;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class ColourScaleTest {
    /** Relative luminance, WCAG 2.2. */
    private static double luminance(int rgb) {
        double[] weights = {0.2126, 0.7152, 0.0722};
        double sum = 0;
        for (int i = 0; i < weights.length; i++) {
            double channel = (rgb >> 16 - 8 * i & 0xFF) / 255.0;
            sum += weights[i] * (channel <= 0.04045 ? channel / 12.92 : Math.pow((channel + 0.055) / 1.055, 2.4));
        }
        return sum;
    }

    @Test
    void grows_lighter_all_the_way() {
        for (int i = 1; i <= 100; i++) {
            assertTrue(luminance(ColourScale.rgb(i / 100.0)) > luminance(ColourScale.rgb((i - 1) / 100.0)), "at " + i + " %");
        }
    }

    @Test
    void neighbours_a_quarter_apart_are_told_apart_by_lightness_alone() {
        for (double level = 0; level <= 0.75; level += 0.25) { // 1.4:1 at least, so that grey print and every colour vision tell them apart
            double ratio = (luminance(ColourScale.rgb(level + 0.25)) + 0.05) / (luminance(ColourScale.rgb(level)) + 0.05);
            assertTrue(ratio > 1.4, level + ": " + ratio);
        }
    }

    @Test
    void contour_lines_stand_out_from_the_ground_of_their_own_level() {
        for (double level = 0; level <= 1; level += 0.05) { // 3:1, WCAG 2.2, 1.4.11, graphical objects
            double ground = luminance(ColourScale.rgb(level)) + 0.05;
            double line = luminance(ColourScale.rgbOver(level)) + 0.05;
            double ratio = Math.max(ground, line) / Math.min(ground, line);
            assertTrue(ratio >= 3, level + ": " + ratio);
        }
    }

    @Test
    void ends_hold_beyond_the_range() {
        assertEquals(ColourScale.rgb(0), ColourScale.rgb(-3));
        assertEquals(ColourScale.rgb(1), ColourScale.rgb(7));
    }
}
