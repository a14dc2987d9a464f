// SPDX-License-Identifier: Apache-2.0
package kerfglow.api;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class UnitsTest {
    private static final double EXACT = 1e-9;

    /** Exact conversions: international inch, 1 in = 25.4 mm, 1 ft = 304.8 mm (NIST SP 811, appendix B.8). */
    @ParameterizedTest
    @CsvSource(quoteCharacter = '~', value = {"12.7 mm, 12.7", "12.7mm, 12.7", "1.2 m, 1200", "2.5 cm, 25", "1/2 in, 12.7", "3/16 in, 4.7625", "3/32 in, 2.38125",
        "1-1/2\", 38.1", "1 1/2 in, 38.1", "8 ft, 2438.4", "8 ft 6 in, 2590.8", "8' 6\", 2590.8", ".5 in, 12.7", "-2 mm, -2", "4' 3-1/2\", 1308.1", "0 mm, 0"})
    void lengths_are_read_as_people_write_them(String text, double mm) {
        assertEquals(mm, Units.lengthMm(text), EXACT);
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "5", "mm", "5 px", "1/0 in", "1-2-3 in", "five mm", "5 mm x", "1e400 mm", "NaN mm", "5,2 mm", "2 3 in"})
    void anything_else_is_refused_with_an_example(String text) {
        IllegalArgumentException wrong = assertThrows(IllegalArgumentException.class, () -> Units.lengthMm(text));
        assertTrue(wrong.getMessage().contains("1/2 in"), wrong.getMessage());
    }

    @ParameterizedTest
    @CsvSource({"1e999, RATIO", "-1e999 %, RATIO", "1e308 m2, AREA", "1e999 deg, ANGLE", "1e400, COUNT", "1e999 F, TEMPERATURE"})
    void a_number_that_no_double_holds_is_refused(String text, Quantity quantity) {
        assertTrue(assertThrows(IllegalArgumentException.class, () -> Units.parse(text, quantity)).getMessage().contains("too large"));
    }

    /** A sheet may hold two million characters in one value. */
    @ParameterizedTest
    @ValueSource(strings = {"1", " ", "1 ", "1/", "1-", "1 in", "."})
    void a_text_without_end_is_refused_at_once_and_quoted_in_part(String piece) {
        String text = "5" + piece.repeat(2_000_000 / piece.length()) + "x";
        for (Quantity quantity : Quantity.values()) {
            IllegalArgumentException wrong = assertTimeoutPreemptively(Duration.ofSeconds(10), () -> assertThrows(IllegalArgumentException.class, () -> Units.parse(text, quantity)));
            assertTrue(wrong.getMessage().length() < 300, () -> wrong.getMessage().length() + " characters");
        }
    }

    @ParameterizedTest
    @CsvSource({"78069.04, 256.1 ft, 78.07 m", "9999, 393.661 in, 9999 mm", "3.175, 1/8 in, 3.18 mm", "4.7625, 3/16 in, 4.76 mm", "38.1, 1-1/2 in, 38.1 mm", "25.4, 1 in, 25.4 mm", "3, 0.118 in, 3 mm", "0, 0 in, 0 mm",
        "-3.175, -1/8 in, -3.18 mm", "0.001, 0.00004 in, 0.001 mm", "0.0005, 0.00002 in, 0.0005 mm", "1e-9, 0 in, 0 mm"})
    void lengths_are_shown_in_both_systems(double mm, String inch, String metric) {
        assertEquals(inch, Units.format(mm, Quantity.LENGTH, UnitSystem.INCH));
        assertEquals(metric, Units.format(mm, Quantity.LENGTH, UnitSystem.METRIC));
    }

    @Test
    void what_is_shown_in_inches_reads_back_to_within_half_a_thousandth() {
        Random random = new Random(7);
        for (int i = 0; i < 2000; i++) {
            double mm = random.nextDouble() * 5000;
            assertEquals(mm, Units.lengthMm(Units.format(mm, Quantity.LENGTH, UnitSystem.INCH)), 0.0005 * Units.MM_PER_INCH + EXACT);
            assertEquals(mm, Units.lengthMm(Units.format(mm, Quantity.LENGTH, UnitSystem.METRIC)), 0.005 + EXACT);
        }
    }

    @ParameterizedTest
    @CsvSource({"100 mm2, AREA, 100", "1 in2, AREA, 645.16", "2 cm², AREA, 200", "30, ANGLE, 30", "30 deg, ANGLE, 30", "45°, ANGLE, 45", "10 s, TIME, 10", "50 F, TEMPERATURE, 10",
        "-4 F, TEMPERATURE, -20", "21, TEMPERATURE, 21", "70 %, RATIO, 0.7", "0.7, RATIO, 0.7", "12, COUNT, 12", "1e3, COUNT, 1000"})
    void other_quantities_are_read_in_their_units(String text, Quantity quantity, double value) {
        assertEquals(value, Units.parse(text, quantity), EXACT);
    }

    @ParameterizedTest
    @CsvSource({"100, AREA", "30 mm, ANGLE", "1.5, COUNT", "x, RATIO", "5 K, TEMPERATURE"})
    void a_wrong_unit_is_refused(String text, Quantity quantity) {
        assertThrows(IllegalArgumentException.class, () -> Units.parse(text, quantity));
    }

    @Test
    void a_setting_refuses_what_is_out_of_range_and_names_the_range() {
        Setting<Double> setting = Setting.lengthMm("trial.width", "width", 3.0, 0.1, 25.0, "reason", "source");
        assertEquals(6.35, setting.parse("1/4 in"), EXACT);
        IllegalArgumentException wrong = assertThrows(IllegalArgumentException.class, () -> setting.parse("26 mm"));
        assertTrue(wrong.getMessage().contains("trial.width") && wrong.getMessage().contains("0.1 mm to 25 mm"), wrong.getMessage());
        assertThrows(IllegalArgumentException.class, () -> setting.requireAllowed(Double.NaN));
        assertThrows(IllegalArgumentException.class, () -> Setting.lengthMm("trial.width", "width", 30.0, 0.1, 25.0, "reason", "source"), "default out of range");
        assertThrows(IllegalArgumentException.class, () -> Setting.lengthMm("trial.width", "width", 3.0, 0.1, 25.0, "", "source"), "no reason");
    }
}
