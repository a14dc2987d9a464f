// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.print;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.concurrent.CancellationException;
import kerfglow.api.Finding;
import kerfglow.api.Outcome;
import kerfglow.api.proof.Element;
import kerfglow.api.proof.ImageInfo;
import kerfglow.api.proof.Role;
import kerfglow.testkit.CheckTester;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PrintCheckTest {
    private static final double INCH = 25.4;
    private static final double BLEED = 4;
    private static final double TOLERANCE_MM = 0.02;
    private static final String PANEL = "POLYGON ((100 100, 500 100, 500 300, 100 300, 100 100))";

    private static Element picture(int across, int down, double x, double y, double width, double height) {
        return Element.builder("i1").tag("image").layer("Art").origin(Element.Origin.IMAGE)
                .image(new ImageInfo(across, down, width, height, true))
                .fillArea(CheckTester.wkt(rectangle(x, y, x + width, y + height))).build();
    }

    private static String rectangle(double x1, double y1, double x2, double y2) {
        return "POLYGON ((" + x1 + " " + y1 + ", " + x2 + " " + y1 + ", " + x2 + " " + y2 + ", " + x1 + " " + y2 + ", " + x1 + " " + y1 + "))";
    }

    private static CheckTester tester() {
        return CheckTester.of(new PrintCheck()).with(PrintSettings.BLEED, BLEED);
    }

    private static List<Finding> bleeds(double x1, double y1, double x2, double y2) {
        return tester().part("p", Role.PANEL, PANEL).element(picture(100, 100, x1, y1, x2 - x1, y2 - y1)).findings(PrintCheck.BLEED_RULE);
    }

    /** 3437.7467 / d in inches: one pixel to one minute of arc, rounded as derived for these distances. */
    @ParameterizedTest
    @CsvSource({"12, 286.48, 0.005", "24, 143.24, 0.005", "36, 95.49, 0.005", "72, 47.75, 0.005", "120, 28.65, 0.005", "360, 9.549, 0.0005", "600, 5.730, 0.0005", "1200, 2.865, 0.0005"})
    void pixels_that_the_eye_needs(double inches, double ppi, double rounding) {
        assertEquals(ppi, Sharpness.requiredPpi(inches * INCH, 1), rounding);
        assertEquals(inches * INCH, Sharpness.sharpFromMm(Sharpness.requiredPpi(inches * INCH, 1), 1), inches * 1e-5);
    }

    @Test
    void sharper_eyes_need_as_many_times_more() {
        assertEquals(2 * Sharpness.requiredPpi(1000, 1), Sharpness.requiredPpi(1000, 2), 1e-4);
    }

    /** 24 in asks for 143.24: a picture 10 in wide needs 1432.4 pixels. */
    @ParameterizedTest
    @CsvSource({"1432, 1", "1433, 0"})
    void a_picture_just_under_the_limit_is_found_and_one_just_over_is_not(int across, int found) {
        CheckTester tester = tester().with(PrintSettings.VIEWING_DISTANCE, 24 * INCH).element(picture(across, 3000, 0, 0, 10 * INCH, 10 * INCH));
        List<Finding> findings = tester.findings(PrintCheck.RESOLUTION);
        assertEquals(found, findings.size(), findings::toString);
        if (found > 0) {
            assertEquals(143.2, findings.get(0).measured().orElseThrow().value(), 1e-9);
            assertEquals(143.24, findings.get(0).required().orElseThrow().value(), 0.005);
            assertTrue(findings.get(0).message().contains("layer \"Art\"") && findings.get(0).message().contains("609.6 mm"), findings.get(0).message());
        }
    }

    @Test
    void without_a_distance_the_size_is_told_and_nothing_is_compared() {
        Outcome outcome = tester().element(picture(100, 200, 0, 0, 254, 254)).run();
        assertTrue(outcome.findings().isEmpty());
        assertEquals(1, outcome.missing().size());
        assertTrue(outcome.missing().get(0).contains("print.viewing-distance"));
        List<Object> row = outcome.tables().get(0).rows().get(0);
        assertEquals(10.0, (Double) row.get(6), 1e-9, "100 pixels on 10 in");
        assertEquals(343.77467 * INCH, (Double) row.get(7), 0.01, "3437.7467 in divided by 10");
    }

    @Test
    void a_picture_whose_pixels_cannot_be_read_is_said_to_be_unmeasured() {
        Outcome outcome = tester().with(PrintSettings.VIEWING_DISTANCE, 1000.0).element(picture(0, 0, 0, 0, 254, 254)).run();
        assertTrue(outcome.findings().isEmpty());
        assertTrue(outcome.missing().get(0).contains("i1"));
    }

    @Test
    void pictures_among_notes_are_left_alone_and_a_proof_without_print_is_not_measured() {
        Element note = Element.builder("n").layer("Art").fillArea(CheckTester.wkt(PANEL)).build();
        assertFalse(tester().with(PrintSettings.VIEWING_DISTANCE, 1000.0).element(note).element(picture(1, 1, 0, 0, 254, 254)).run().measured());
        assertFalse(tester().part("p", Role.PANEL, PANEL).run().measured());
    }

    @Test
    void a_picture_exactly_as_large_as_the_panel_has_no_bleed() {
        Finding finding = bleeds(100, 100, 500, 300).get(0);
        assertEquals(0, finding.measured().orElseThrow().value(), TOLERANCE_MM);
        assertEquals(BLEED, finding.required().orElseThrow().value(), 0);
        assertEquals(1200, finding.place().orElseThrow().getLength(), 2 * BLEED, "all of the contour");
        assertEquals(List.of("p"), finding.parts());
        assertEquals(List.of("i1"), finding.elements());
    }

    @ParameterizedTest
    @CsvSource({"4, 0", "3.99, 1", "10, 0"})
    void bleed_on_and_just_under_the_limit(double beyond, int found) {
        List<Finding> findings = bleeds(100 - beyond, 100 - beyond, 500 + beyond, 300 + beyond);
        assertEquals(found, findings.size(), findings::toString);
        findings.forEach(finding -> assertEquals(beyond, finding.measured().orElseThrow().value(), TOLERANCE_MM));
    }

    @Test
    void one_short_side_is_one_finding_along_that_side() {
        Finding finding = bleeds(90, 90, 501, 310).get(0);
        assertEquals(1, finding.measured().orElseThrow().value(), TOLERANCE_MM);
        assertEquals(200, finding.place().orElseThrow().getLength(), BLEED);
    }

    @Test
    void print_that_ends_inside_the_edge_by_less_than_the_bleed_is_found_with_a_negative_reach() {
        Finding finding = bleeds(90, 90, 498, 310).get(0);
        assertEquals(-2, finding.measured().orElseThrow().value(), TOLERANCE_MM);
        assertTrue(finding.message().contains("2 mm inside"), finding.message());
    }

    @Test
    void a_picture_in_the_middle_and_one_that_ends_across_the_edge_need_no_bleed() {
        assertEquals(List.of(), bleeds(200, 150, 400, 250));
        assertEquals(List.of(), bleeds(90, 90, 300, 310));
        assertEquals(List.of(), bleeds(600, 90, 700, 310), "it does not touch the panel");
    }

    @Test
    void a_printed_part_is_held_against_the_panel_and_a_picture_against_the_printed_part() {
        CheckTester panelled = tester().part("p", Role.PANEL, PANEL).part("q", Role.PRINT, PANEL);
        assertEquals(List.of("q", "p"), panelled.findings(PrintCheck.BLEED_RULE).get(0).parts());
        CheckTester decal = tester().part("q", Role.PRINT, PANEL).element(picture(100, 100, 100, 100, 400, 200));
        assertEquals(List.of("q"), decal.findings(PrintCheck.BLEED_RULE).get(0).parts());
        assertEquals(List.of(), tester().part("q", Role.PRINT, PANEL).findings(PrintCheck.BLEED_RULE));
    }

    @Test
    void a_cancelled_run_ends() {
        CheckTester tester = tester().part("p", Role.PANEL, PANEL).element(picture(100, 100, 100, 100, 400, 200)).onCheckpoint(fraction -> {
            throw new CancellationException();
        });
        assertThrows(CancellationException.class, tester::run);
    }
}
