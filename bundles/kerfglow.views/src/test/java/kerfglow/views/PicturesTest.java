// SPDX-License-Identifier: Apache-2.0
package kerfglow.views;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.image.BufferedImage;
import java.util.List;
import java.util.Optional;
import kerfglow.api.Rule;
import kerfglow.host.Result;
import kerfglow.testkit.CheckTester;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;

class PicturesTest {
    private static int count(BufferedImage image, int rgb) {
        int count = 0;
        for (int y = 0; y < image.getHeight(); y++) {
            for (int x = 0; x < image.getWidth(); x++) {
                count += (image.getRGB(x, y) & 0xffffff) == rgb ? 1 : 0;
            }
        }
        return count;
    }

    @Test
    void layers_are_found_by_name_and_unknown_ones_are_told() {
        Result result = Sample.result();
        assertEquals(List.of("trial.map"), Layers.names(result));
        assertEquals("Map of <levels>", Layers.named(result, List.of("trial.map")).get(0).title());
        assertEquals(1, Layers.named(result, List.of("all")).size());
        IllegalArgumentException told = assertThrows(IllegalArgumentException.class, () -> Layers.named(result, List.of("glow.map")));
        assertTrue(told.getMessage().contains("there are trial.map"), told::getMessage);
    }

    /** Two red cells of 5 mm and one green, on a page of 100 mm that is drawn 1900 pixels wide; the fourth is clear. */
    @Test
    void a_raster_lies_where_its_layer_says() {
        BufferedImage image = OverlayPicture.image(Sample.result(List.of()), Layers.named(Sample.result(), List.of("trial.map")));
        double cell = 5 * 19.0 * 5 * 19;
        assertEquals(2 * cell, count(image, 0xff0000), 0.15 * cell, "but for the line of the layer, which crosses both");
        assertEquals(cell, count(image, 0x00ff00), 0.1 * cell);
    }

    @Test
    void the_legend_says_what_the_colours_mean() {
        String svg = OverlayPicture.svg(Sample.result(), Layers.named(Sample.result(), List.of("trial.map")));
        assertTrue(svg.contains("Map of &lt;levels&gt;") && svg.contains("0 cd/m²") && svg.contains("100 cd/m²") && svg.contains(">half<"));
        assertTrue(svg.contains("<image ") && svg.contains("data:image/png;base64,"));
        assertFalse(OverlayPicture.svg(Sample.result()).contains("Map of"));
    }

    /** ISO 5455 has 1, 2 and 5 with powers of ten; twice the place must fit into 72 by 43 mm of paper. */
    @ParameterizedTest
    @CsvSource({"0.1, 5:1", "7, 5:1", "8, 2:1", "18, 2:1", "20, 1:1", "36, 1:1", "37, 1:2", "400, 1:20", "3500, 1:100", "30000, 1:1000"})
    void close_ups_take_the_largest_scale_that_shows_the_place_and_what_is_around(double width, String scale) {
        Result.ReportedFinding finding = Sample.at("1", Sample.NARROW, "LINESTRING (0 0, " + width + " 0)");
        assertEquals(scale, new CloseUps(Sample.result()).of(finding, 1).orElseThrow().scale());
    }

    /** The bar is 80 mm long: at 1:2 the window of 144 mm shows it all, at 1:1 one of 72 mm does not. */
    @Test
    void a_point_of_the_sign_is_shown_on_the_sign() {
        Result.ReportedFinding centre = Sample.at("1", Sample.NOTE, "POINT (20 25)");
        assertEquals("1:2", new CloseUps(Sample.result()).of(centre, 1).orElseThrow().scale());
        Result.ReportedFinding ofAPart = Sample.finding("1", Sample.NARROW, 1, "20 25");
        assertEquals("5:1", new CloseUps(Sample.result()).of(ofAPart, 1).orElseThrow().scale());
    }

    @Test
    void a_finding_on_the_whole_proof_has_no_close_up() {
        assertTrue(new CloseUps(Sample.result()).of(Sample.finding("1", Sample.NOTE, 1), 1).isEmpty());
    }

    /** Around (25, 25) at 2:1 the close-up shows 36 by 21.5 mm: of the bar that is all but the hole of 10 by 10 mm. */
    @Test
    void a_close_up_shows_the_proof_at_the_scale_that_it_states() {
        Result.ReportedFinding finding = Sample.at("1", Sample.NARROW, "LINESTRING (30 25, 46 25)");
        CloseUp closeUp = new CloseUps(Sample.result()).of(finding, 7).orElseThrow();
        assertEquals("2:1", closeUp.scale());
        int dots = 10; // a millimetre of paper
        ImageCanvas canvas = new ImageCanvas(720, 480);
        closeUp.draw(new Enlarged(canvas, dots));
        double holeMm2 = 10 * 10; // from x 20 to 30, of which the window, from 20 to 56, shows all
        double shown = count(canvas.image(), 0x3366cc) / (double) (dots * dots) / 4;
        assertEquals(36 * 21.5 - holeMm2, shown, 16, "but for the finding's line, its halo and the badge");
    }

    private static Result.ReportedFinding suggesting(Rule rule) {
        Geometry line = CheckTester.wkt("LINESTRING (50 25, 60 25)");
        Geometry right = CheckTester.wkt("POLYGON ((45 20, 65 20, 65 30, 45 30, 45 20))");
        Result.Place place = new Result.Place(new Coordinate(55, 25), line, Optional.empty(), Optional.of(right));
        return new Result.ReportedFinding("1", rule, rule.severity(), "", List.of(), List.of(), Optional.empty(), Optional.empty(), List.of(place), "Here.", rule.fix());
    }

    /** Half of an outline of 60 mm, at 19 pixels to the mm and 2.2 wide, is drawn, and of each gap the two round ends of its dashes. */
    @Test
    void an_outline_as_it_would_be_right_is_dashed_and_explained() {
        Result result = Sample.result(List.of(suggesting(Sample.NARROW)));
        String legend = "dashed: the outline as it would be right";
        assertTrue(OverlayPicture.svg(result).contains(legend));
        assertFalse(OverlayPicture.svg(Sample.result()).contains(legend));
        assertFalse(OverlayPicture.svg(Sample.result(List.of(suggesting(Sample.NOTE)))).contains(legend), "a note is not drawn on the artwork");
        double pen = 2.2;
        double inked = 60 * 19 * pen / 2;
        int swatch = 19 * 19; // of the legend
        int seen = count(OverlayPicture.image(result), 0x0b6e4f) - swatch;
        assertTrue(seen > 0.5 * inked && seen < 1.4 * inked, seen + " of " + inked);
        assertTrue(new CloseUps(result).of(result.findings().get(0), 1).orElseThrow().svg("a", "b").contains("dashed: suggested"));
    }

    @Test
    void dashes_and_gaps_are_equally_long_and_go_round_corners() {
        Geometry dashes = Dashes.of(CheckTester.wkt("LINESTRING (0 0, 5 0, 5 7)"), 2);
        assertEquals(CheckTester.wkt("MULTILINESTRING ((0 0, 2 0), (4 0, 5 0, 5 1), (5 3, 5 5))"), dashes);
        assertEquals(20, Dashes.of(CheckTester.wkt("POLYGON ((0 0, 10 0, 10 10, 0 10, 0 0))"), 2).getLength(), 1e-9);
        assertTrue(Dashes.of(CheckTester.wkt("POINT (1 1)"), 2).isEmpty());
    }

    @Test
    void what_lies_far_outside_a_viewport_is_cut_and_what_lies_inside_keeps_its_shape() {
        Viewport view = new Viewport(new Envelope(0, 10, 0, 10), 5, 5, 2, 0.01);
        Geometry far = view.at(CheckTester.wkt("POLYGON ((-1000 -1000, 1000 -1000, 1000 1000, -1000 1000, -1000 -1000), (4 4, 6 4, 6 6, 4 6, 4 4))"));
        assertTrue(new Envelope(0, 30, 0, 30).contains(far.getEnvelopeInternal()), far::toString);
        Envelope frame = view.frame();
        assertEquals(20 * 20 - 4 * 4, far.intersection(far.getFactory().toGeometry(frame)).getArea(), 1e-6);
        assertTrue(view.at(CheckTester.wkt("POLYGON ((20 20, 30 20, 30 30, 20 20))")).isEmpty());
        Geometry line = view.at(CheckTester.wkt("LINESTRING (-100 5, 100 5)"));
        assertEquals(15, line.getCoordinate().y, 1e-9);
        assertEquals(new Coordinate(15, 15), view.at(new Coordinate(5, 5)));
    }

    @Test
    void a_reviewers_decisions_read_as_a_person_says_them() {
        Review review = Review.of(MachineViewsTest.reviewed());
        Result result = Sample.result();
        assertTrue(review.isWaived(result.findings().get(0)) && !review.isWaived(result.findings().get(1)));
        assertEquals("hidden by the \"frame\" & fine", review.ruling(result.findings().get(0)).orElseThrow().reason());
        assertEquals("Rhea", review.acceptedChecks().get("late").author());
        assertEquals("50 mm", review.marks().get(0).text(), "a dimension over 30 and 40 mm");
        assertEquals("A", review.marks().get(0).letter());
        assertEquals(List.of("Z", "AA", "AZ", "BA"), List.of(25, 26, 51, 52).stream().map(Review.MarkLine::letter).toList());
    }
}
