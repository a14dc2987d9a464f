// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.legibility;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ColoursTest {
    private static int rgb(String colour) {
        return Colours.parse(colour).orElseThrow();
    }

    /** WCAG 2.2, relative luminance and contrast ratio: luminance, ratio against white, ratio against black. */
    @ParameterizedTest
    @CsvSource({"#000000, 0, 21, 1", "#FFFFFF, 1, 1, 21", "#FF0000, 0.2126, 3.998477, 5.252", "#00FF00, 0.7152, 1.372190, 15.304", "#0000FF, 0.0722, 8.592471, 2.444",
        "#FFFF00, 0.9278, 1.073839, 19.556", "#808080, 0.2158605, 3.949440, 5.317210", "#767676, 0.1811642, 4.542225, 4.623285", "#777777, 0.1844750, 4.478089, 4.689500",
        "#949494, 0.2961383, 3.033470, 6.922765", "#959595, 0.3005438, 2.995346, 7.010876", "#595959, 0.0998987, 7.004729, 2.997975", "#C0C0C0, 0.5271151, 1.819394, 11.542303"})
    void contrast_ratios_of_wcag(String colour, double luminance, double white, double black) {
        assertEquals(luminance, Colours.luminance(rgb(colour)), 5e-8);
        assertEquals(white, Colours.ratio(rgb(colour), 0xFFFFFF), 5e-7);
        assertEquals(black, Colours.ratio(0, rgb(colour)), 5e-7);
    }

    @ParameterizedTest
    @CsvSource({"#ff0000, #0000ff, 2.148936", "#ffff00, #008000, 4.784145", "#ff0000, #00ff00, 2.913938", "#ffff00, #000080, 14.908868", "#ffd700, #ffffff, 1.402602"})
    void pairs_either_way_round(String a, String b, double ratio) {
        assertEquals(ratio, Colours.ratio(rgb(a), rgb(b)), 5e-7);
        assertEquals(ratio, Colours.ratio(rgb(b), rgb(a)), 5e-7);
    }

    /** (B1 - B2) / B1 of proposal 7-1-12 to ICC A117.1; reflectances in points. */
    @ParameterizedTest
    @CsvSource({"85, 5, 0.94118", "50, 15, 0.70000", "30, 8, 0.73333", "85, 50, 0.41176", "75, 45, 0.40000"})
    void reflectance_contrast(double lighter, double darker, double contrast) {
        assertEquals(contrast, Colours.reflectance(lighter, darker), 5e-6);
        assertEquals(contrast, Colours.reflectance(darker, lighter), 5e-6);
    }

    @Test
    void two_blacks_have_none() {
        assertEquals(0, Colours.reflectance(0, 0), 0);
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "white", "#fff", "#12345g", "#1234567"})
    void what_is_no_colour_is_refused(String text) {
        assertTrue(Colours.parse(text).isEmpty());
    }
}
