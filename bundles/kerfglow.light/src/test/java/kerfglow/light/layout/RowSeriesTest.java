// SPDX-License-Identifier: Apache-2.0
package kerfglow.light.layout;

import static org.junit.jupiter.api.Assertions.assertEquals;

import kerfglow.light.LightModuleType;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class RowSeriesTest {
    private static final RowSeries POINTS = new RowSeries(new LightModuleType("", 1, 120, 0, 0, 0, 1, 0));

    /** Fourier series of a row of Lambertian points: E/mean = 1 + 2 sum (1 + q) e^-q cos(2 pi a x / p), q = 2 pi a h / p; its values of min/max. */
    @ParameterizedTest
    @CsvSource({"1, 0.947041", "1.25, 0.853535", "1.5, 0.728922", "2, 0.481393"})
    void least_to_greatest_is_that_of_the_series(double pitchOverHeight, double leastToGreatest) {
        assertEquals(leastToGreatest, POINTS.leastToGreatest(60 * pitchOverHeight, 60), 1e-6);
    }

    /** The same series at x = p/2: cos(pi a) = (-1)^a. */
    @ParameterizedTest
    @ValueSource(doubles = {0.5, 0.8, 1, 1.4, 2, 3})
    void least_to_mean_is_that_of_the_series(double pitchOverHeight) {
        double sum = 1;
        for (int a = 1; a < 60; a++) {
            double q = 2 * Math.PI * a / pitchOverHeight;
            sum += 2 * (1 + q) * Math.exp(-q) * (a % 2 == 0 ? 1 : -1);
        }
        assertEquals(sum, POINTS.leastToMean(60 * pitchOverHeight, 60), 1e-5);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.4, 0.6, 0.8, 0.95})
    void the_widest_pitch_and_the_least_height_just_reach_the_target(double uniformity) {
        double pitch = POINTS.pitchMm(uniformity, 60);
        assertEquals(uniformity, POINTS.leastToMean(pitch, 60), 1e-9);
        assertEquals(60, POINTS.heightMm(uniformity, pitch), 1e-6);
        double even = POINTS.pitchOfContrastMm(1 - uniformity, 60);
        assertEquals(1 / (2 - uniformity), POINTS.leastToGreatest(even, 60), 1e-9);
        assertEquals(60, POINTS.heightOfContrastMm(1 - uniformity, even), 1e-6);
    }

    /** A module of two emitters, half a pitch apart, is a row of single ones at half the pitch. */
    @ParameterizedTest
    @ValueSource(doubles = {60, 90})
    void emitters_of_a_module_count_each(double pitch) {
        RowSeries pairs = new RowSeries(new LightModuleType("", 2, 120, 0, 0, 0, 2, pitch / 2));
        assertEquals(POINTS.leastToGreatest(pitch / 2, 60), pairs.leastToGreatest(pitch, 60), 1e-7); // far modules stand as an integral
    }

    /** The general beam: the infinite integral of cos^(m + 3) over the row's length gives the mean; here m = 3, so that E ~ (1 + r²)^-3 and the mean is 3 pi / 8 h / p. */
    @ParameterizedTest
    @ValueSource(doubles = {0.7, 1.2, 2})
    void narrower_beams_follow_their_own_power(double pitchOverHeight) {
        double beam = 2 * Math.toDegrees(Math.acos(Math.pow(0.5, 1.0 / 3)));
        RowSeries narrow = new RowSeries(new LightModuleType("", 1, beam, 0, 0, 0, 1, 0));
        double least = 0;
        for (int k = -2000; k <= 2000; k++) {
            double r = (k + 0.5) * pitchOverHeight;
            least += Math.pow(1 + r * r, -3);
        }
        assertEquals(least / (3 * Math.PI / 8 / pitchOverHeight), narrow.leastToMean(pitchOverHeight * 50, 50), 1e-6);
    }
}
