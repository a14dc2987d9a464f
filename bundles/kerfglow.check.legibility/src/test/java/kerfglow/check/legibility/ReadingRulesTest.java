// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.legibility;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ReadingRulesTest {
    private static final double INCH = 25.4;
    private static final double FOOT = 304.8;
    private static final double EXACT = 1e-9;

    private static ReadingRule rule(String id, double acuity) {
        return ReadingRules.shipped(acuity).stream().filter(rule -> rule.id().equals(id)).findFirst().orElseThrow();
    }

    private static double required(String id, double distanceMm) {
        return rule(id, 1).step(OptionalDouble.empty()).orElseThrow().requiredMm(distanceMm);
    }

    /** 2010 ADA Standards, table 703.5.5: base line above the floor, distance, least height, in inches; worked rows and each row's limits. */
    @ParameterizedTest
    @CsvSource({"40, 60, 0.625", "60, 72, 0.625", "60, 84, 0.750", "60, 120, 1.125", "70, 240, 2.375", "60, 252, 2.500", "70.001, 100, 2.000", "96, 180, 2.000",
        "96, 240, 2.625", "120, 360, 3.875", "120.01, 240, 3.000", "132, 252, 3.000", "132, 480, 5.375", "144, 600, 6.625",
        "40, 71.99, 0.625", "70, 72.96, 0.635", "70, 71.99, 0.625", "70.001, 179.99, 2", "120, 180, 2", "120, 180.96, 2.01", "120.01, 251.99, 3", "120.01, 252.96, 3.01"})
    void the_accessibility_table(double floor, double distance, double height) {
        ReadingRule rule = rule("accessibility", 1);
        ReadingRule.Step step = rule.step(OptionalDouble.of(floor * INCH)).orElseThrow();
        double required = step.requiredMm(distance * INCH);
        assertEquals(height, required / INCH, EXACT);
        assertTrue(ReadingRule.isEnough(height * INCH, required), "on the limit");
        assertFalse(ReadingRule.isEnough((height - 0.001) * INCH, required), "just under");
        assertTrue(ReadingRule.isEnough((height + 0.001) * INCH, required), "just over");
    }

    @Test
    void the_accessibility_table_has_no_row_below_forty_inches_and_none_without_a_height_above_the_floor() {
        ReadingRule rule = rule("accessibility", 1);
        assertTrue(rule.step(OptionalDouble.of(39.99 * INCH)).isEmpty());
        assertTrue(rule.step(OptionalDouble.of(40 * INCH)).isPresent());
        assertTrue(rule.step(OptionalDouble.empty()).isEmpty());
    }

    /** The distance that a height reads from is the inverse of the height that a distance needs; too low a letter reads from nowhere. */
    @ParameterizedTest
    @CsvSource({"60, 1.125, 120", "60, 0.625, 72", "60, 0.6, 0", "96, 2.625, 240", "132, 5.375, 480", "132, 2.9, 0"})
    void how_far_an_accessible_height_reads(double floor, double height, double distance) {
        assertEquals(distance * INCH, rule("accessibility", 1).step(OptionalDouble.of(floor * INCH)).orElseThrow().reachMm(height * INCH), 1e-6);
    }

    /** Feet of distance for each inch of capital height; ratio 12 times that. The last column is the sign chart that rounds 75, 174, 348. */
    @ParameterizedTest
    @CsvSource({"index-30, 360, 12", "index-40, 480, 12", "index-33, 396, 12", "index-29, 29, 1", "index-29, 87, 3", "index-29, 174, 6", "index-29, 348, 12",
        "index-29, 1392, 48", "index-25, 75, 3", "index-25, 300, 12", "index-25, 1200, 48", "least-20, 240, 12", "impact-10, 120, 12"})
    void legibility_indexes(String id, double feet, double inches) {
        assertEquals(inches * INCH, required(id, feet * FOOT), EXACT * FOOT);
    }

    /** "1 in per 33 ft (25 mm per 10 m)": the same manual's metric rounding, within 1 %. */
    @Test
    void the_metric_side_of_index_33() {
        assertEquals(25, required("index-33", 10_000), 0.01 * 25.4);
    }

    /** EN 1838 as summarised: l = z h; z = 200 lit from inside, 100 from outside. */
    @ParameterizedTest
    @CsvSource({"safety-lit-inside, 20, 0.10", "safety-lit-outside, 10, 0.10", "safety-lit-inside, 30, 0.150"})
    void safety_sign_factors(String id, double metres, double height) {
        assertEquals(height * 1000, required(id, metres * 1000), EXACT);
        assertEquals(ReadingRule.Height.FIELD, rule(id, 1).about());
    }

    /** Exit letters: 6 in at 100 ft is the same ratio as z = 200. */
    @Test
    void exit_letters_agree_with_the_safety_factor() {
        assertEquals(6 * INCH, required("safety-lit-inside", 100 * FOOT), EXACT * FOOT);
    }

    /** 5 minutes of arc at acuity 1: 8.727 mm at 6 m, 8.866 mm at 20 ft, 1.4544 mm for each metre (a page rounds 7.25 mm at 5 m). */
    @ParameterizedTest
    @CsvSource({"1, 6000, 8.727, 0.0005", "1, 6096, 8.866, 0.0005", "1, 1000, 1.4544, 0.00005", "0.5, 1000, 2.9089, 0.0001", "1, 5000, 7.25, 0.03"})
    void acuity(double acuity, double distance, double height, double rounding) {
        assertEquals(height, rule("acuity", acuity).step(OptionalDouble.empty()).orElseThrow().requiredMm(distance), rounding);
    }

    /** As a legibility index: 57.30 ft for each inch at 20/20, 28.65 at 20/40, 19.10 at 20/60. */
    @ParameterizedTest
    @CsvSource({"20, 57.30", "40, 28.65", "60, 19.10"})
    void acuity_as_an_index(double snellen, double feetPerInch) {
        assertEquals(feetPerInch, rule("acuity", 20 / snellen).steps().get(0).ratio() / 12, 0.005);
    }

    /** ASR A6: height at least distance / 155: 3.2 mm at 500 mm, 3.9 at 600, 4.5 at 700, 5.2 at 800, as the page rounds. */
    @ParameterizedTest
    @CsvSource({"500, 3.2", "600, 3.9", "700, 4.5", "800, 5.2"})
    void workplace_displays(double distance, double height) {
        assertEquals(height, required("workplace-155", distance), 0.05);
    }
}
