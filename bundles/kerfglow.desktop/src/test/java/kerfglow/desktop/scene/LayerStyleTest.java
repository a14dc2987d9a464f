// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.scene;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashSet;
import java.util.Set;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class LayerStyleTest {
    /** For who lacks the middle (deutan) or the long (protan) cones: Machado, Oliveira and Fernandes 2009, severity 1.0, on linear RGB. */
    private static final double[][] DEUTAN = {{0.367322, 0.860646, -0.227968}, {0.280085, 0.672501, 0.047413}, {-0.011820, 0.042940, 0.968881}};
    private static final double[][] PROTAN = {{0.152286, 1.052583, -0.204868}, {0.114503, 0.786281, 0.099216}, {-0.003882, -0.048116, 1.051998}};
    private static final double[][] FULL = {{1, 0, 0}, {0, 1, 0}, {0, 0, 1}};
    /** Assumed: about five times the difference that is just noticed (CIE 1976 L*a*b*, 2.3). */
    private static final double APART = 11.5;
    private static final int COLOURS = 6;

    @Test
    void every_layer_differs_from_every_other_in_more_than_colour_or_less() {
        Set<LayerStyle> seen = new HashSet<>();
        IntStream.range(0, LayerStyle.COUNT).forEach(i -> seen.add(LayerStyle.of(i)));
        assertEquals(LayerStyle.COUNT, seen.size());
        for (int i = 0; i + 1 < LayerStyle.COUNT; i++) {
            assertNotEquals(LayerStyle.of(i).dash(), LayerStyle.of(i + 1).dash());
            assertNotEquals(LayerStyle.of(i).sign(), LayerStyle.of(i + 1).sign());
            assertNotEquals(LayerStyle.of(i).rgb(), LayerStyle.of(i + 1).rgb());
        }
    }

    @Test
    void colours_stand_out_from_white_and_from_each_other_also_for_who_sees_red_and_green_alike() {
        for (int i = 0; i < COLOURS; i++) {
            double luminance = 0;
            double[] linear = linear(LayerStyle.of(i).rgb());
            luminance += 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2];
            assertTrue(1.05 / (luminance + 0.05) >= 4.5, "contrast on white (WCAG 2.1, 1.4.3)");
            for (double[][] eye : new double[][][] {FULL, DEUTAN, PROTAN}) {
                for (int j = 0; j < i; j++) {
                    double[] a = lab(seen(eye, linear));
                    double[] b = lab(seen(eye, linear(LayerStyle.of(j).rgb())));
                    double apart = Math.sqrt(Math.pow(a[0] - b[0], 2) + Math.pow(a[1] - b[1], 2) + Math.pow(a[2] - b[2], 2));
                    assertTrue(apart >= APART, i + " and " + j + " are " + apart + " apart");
                }
            }
        }
    }

    private static double[] linear(int rgb) {
        double[] linear = new double[3];
        for (int i = 0; i < 3; i++) {
            double share = (rgb >> 16 - 8 * i & 0xff) / 255.0;
            linear[i] = share <= 0.04045 ? share / 12.92 : Math.pow((share + 0.055) / 1.055, 2.4);
        }
        return linear;
    }

    private static double[] seen(double[][] eye, double[] rgb) {
        double[] seen = new double[3];
        for (int i = 0; i < 3; i++) {
            seen[i] = Math.max(0, Math.min(1, eye[i][0] * rgb[0] + eye[i][1] * rgb[1] + eye[i][2] * rgb[2]));
        }
        return seen;
    }

    /** CIE 1976 L*a*b* for D65, from linear sRGB (IEC 61966-2-1). */
    private static double[] lab(double[] rgb) {
        double x = f((0.4124 * rgb[0] + 0.3576 * rgb[1] + 0.1805 * rgb[2]) / 0.9505);
        double y = f(0.2126 * rgb[0] + 0.7152 * rgb[1] + 0.0722 * rgb[2]);
        double z = f((0.0193 * rgb[0] + 0.1192 * rgb[1] + 0.9505 * rgb[2]) / 1.089);
        return new double[] {116 * y - 16, 500 * (x - y), 200 * (y - z)};
    }

    private static double f(double t) {
        return t > 216.0 / 24389 ? Math.cbrt(t) : (24389.0 / 27 * t + 16) / 116;
    }
}
