// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.artwork;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import kerfglow.api.Finding;
import kerfglow.api.proof.Paint;
import kerfglow.api.proof.Role;
import kerfglow.api.proof.Visibility;
import kerfglow.testkit.CheckTester;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.util.AffineTransformation;

class OutlineRulesTest {
    private static final String SQUARE = "LINESTRING (100 100, 300 100, 300 300, 100 300, 100 100)";

    private static Finding only(List<Finding> findings) {
        assertEquals(1, findings.size(), findings::toString);
        return findings.get(0);
    }

    private static void assertPlace(String wkt, Finding finding) {
        Geometry place = finding.place().orElseThrow();
        assertTrue(CheckTester.wkt(wkt).norm().equalsExact(place.norm(), 1e-6), () -> wkt + " is not " + place);
    }

    private static double measured(Finding finding) {
        return finding.measured().orElseThrow().value();
    }

    @Test
    void a_closed_square_has_no_fault() {
        assertEquals(List.of(), new Drawn().path("a", SQUARE).broken());
    }

    // open

    @Test
    void an_open_outline_is_reported_with_the_gap_between_its_ends() {
        Finding finding = only(new Drawn().path("a", "LINESTRING (100 100, 300 100, 300 300, 100 300, 100 140)").findings(OpenOutlines.OPEN));
        assertPlace("LINESTRING (100 100, 100 140)", finding);
        assertEquals(40, measured(finding), 1e-9);
        assertEquals(new Coordinate(100, 100), finding.at().orElseThrow());
        assertEquals(List.of("a"), finding.elements());
        assertEquals(List.of("p1"), finding.parts());
        assertEquals("The outline of path a (layer Faces, line 1) is open over 40 mm, from x 100 mm, y 100 mm to x 100 mm, y 140 mm; "
                + "a closed outline has no gap", finding.message());
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.002, 0.5, 1.0})
    void ends_up_to_the_limit_apart_nearly_meet(double gap) {
        Drawn drawn = new Drawn().path("a", "LINESTRING (100 100, 300 100, 300 300, 100 300, 100 " + (100 + gap) + ")");
        assertEquals(List.of("artwork.nearly-closed"), drawn.broken());
        assertEquals(gap, measured(only(drawn.findings(OpenOutlines.NEARLY))), 1e-9);
    }

    @ParameterizedTest
    @ValueSource(doubles = {1.002, 30})
    void ends_beyond_the_limit_are_wide_open(double gap) {
        assertEquals(List.of("artwork.open-outline"),
                new Drawn().path("a", "LINESTRING (100 100, 300 100, 300 300, 100 300, 100 " + (100 + gap) + ")").broken());
    }

    @Test
    void ends_within_rounding_are_closed() {
        assertEquals(List.of(), new Drawn().path("a", "LINESTRING (100 100, 300 100, 300 300, 100 300, 100 100.0009)").broken());
    }

    @Test
    void an_open_line_that_is_only_stroked_is_to_be_a_stroke_unless_it_is_a_hairline() {
        Geometry line = CheckTester.wkt("LINESTRING (100 100, 400 100, 400 300)");
        for (double width : new double[] {0.1, 0.36, 0.37, 8}) {
            Drawn drawn = new Drawn().path("a", line, element -> element.fill(Paint.NONE).fillArea(new GeometryFactory().createPolygon())
                    .stroke(Paint.colour(0), width).strokeArea(line.buffer(width / 2)));
            assertEquals(width <= 0.36 ? List.of("artwork.cut-line", "artwork.open-outline") : List.of("artwork.live-stroke"), drawn.broken(), width + " mm");
        }
    }

    @Test
    void pieces_whose_ends_meet_are_told_from_open_outlines() {
        Drawn drawn = new Drawn().path("a", "LINESTRING (100 100, 200 40, 300 100)").path("b", "LINESTRING (300.4 100, 200 300, 100 100)");
        assertEquals(List.of("artwork.outline-in-pieces"), drawn.broken());
        assertEquals(2, drawn.findings(OpenOutlines.PIECES).size());
    }

    @Test
    void notes_are_not_looked_at() {
        assertEquals(List.of(), new Drawn().path("sign", SQUARE)
                .path("a", "LINESTRING (500 500, 600 500, 600 600)", element -> element.layer("Notes")).role("Notes", Role.NOTE).broken());
    }

    // doubled

    @Test
    void three_copies_are_one_finding() {
        Drawn drawn = new Drawn().path("a", SQUARE).path("b", SQUARE).path("c", "LINESTRING (300 300, 300 100, 100 100, 100 300, 300 300)");
        Finding finding = only(drawn.findings(Doubled.WHOLE));
        assertEquals(3, measured(finding));
        assertEquals(List.of("a", "b", "c"), finding.elements());
        assertEquals(800, finding.place().orElseThrow().getLength(), 1e-9);
        assertEquals(List.of("artwork.doubled-outline"), drawn.broken());
    }

    @Test
    void a_letter_with_a_counter_and_its_copy_are_one_finding() {
        String letter = "MULTILINESTRING ((100 100, 300 100, 300 300, 100 300, 100 100), (150 150, 200 150, 200 200, 150 200, 150 150))";
        Drawn drawn = new Drawn().path("o", letter).path("o2", letter);
        assertEquals(1000, only(drawn.findings(Doubled.WHOLE)).place().orElseThrow().getLength(), 1e-9);
        assertEquals(List.of("artwork.doubled-outline"), drawn.broken());
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.0, 0.02, 0.049})
    void a_copy_a_little_aside_is_a_copy(double aside) {
        assertEquals(List.of("artwork.doubled-outline"), new Drawn().path("a", SQUARE).path("b", square(100 + aside, 100, 200)).broken());
    }

    @Test
    void an_outline_just_beyond_the_distance_is_another_outline() {
        Drawn drawn = new Drawn().path("a", SQUARE).path("b", square(100.06, 100.06, 199.88));
        assertEquals(List.of("artwork.swallowed"), drawn.broken());
    }

    @Test
    void squares_side_by_side_share_a_stretch() {
        Drawn drawn = new Drawn().path("a", SQUARE).path("b", square(300, 250, 200));
        Finding finding = only(drawn.findings(Doubled.STRETCH));
        assertPlace("LINESTRING (300 250, 300 300)", finding);
        assertEquals(50, measured(finding), 1e-9);
        assertEquals(List.of("artwork.doubled-stretch"), drawn.broken());
    }

    @Test
    void a_stretch_below_the_least_is_let_pass() {
        assertEquals(List.of(), new Drawn().path("a", SQUARE).path("b", square(300, 295.1, 200)).broken());
        assertEquals(List.of("artwork.doubled-stretch"), new Drawn().path("a", SQUARE).path("b", square(300, 294.9, 200)).broken());
    }

    @Test
    void a_line_that_runs_back_over_itself_is_doubled() {
        Finding finding = only(new Drawn().path("a", "LINESTRING (100 100, 300 100, 300 300, 400 300, 300 300, 100 300, 100 100)")
                .findings(Doubled.STRETCH));
        assertPlace("LINESTRING (300 300, 400 300)", finding);
    }

    @Test
    void discs_that_touch_are_not_doubled() {
        Drawn drawn = new Drawn().with(NeedlessNodes.LEAST, 1000).path("a", circle(200, 200, 100, 720), element -> element).path("b", circle(400, 200, 100, 720), element -> element);
        assertEquals(List.of(), drawn.broken());
    }

    @Test
    void a_doubled_stretch_whose_lines_weave_is_no_row_of_crossings() {
        StringBuilder wavy = new StringBuilder("LINESTRING (500 100, 500 300");
        for (int y = 300; y >= 100; y -= 5) {
            wavy.append(", ").append(y % 10 == 0 ? 300.03 : 299.97).append(' ').append(y);
        }
        Drawn drawn = new Drawn().path("a", SQUARE).path("b", wavy + ", 500 100)");
        assertEquals(List.of("artwork.doubled-stretch"), drawn.broken());
        assertEquals(200, measured(only(drawn.findings(Doubled.STRETCH))), 0.1);
    }

    @Test
    void only_what_is_cut_in_one_run_is_compared() {
        assertEquals(List.of(), new Drawn().path("a", SQUARE).path("b", SQUARE, element -> element.layer("Backs")).role("Backs", Role.BACK)
                .broken(), "face and back");
        assertEquals(List.of("artwork.doubled-outline"), new Drawn().path("a", SQUARE)
                .path("b", SQUARE, element -> element.layer("Faces 2")).broken(), "faces of two layers");
        assertEquals(List.of(), new Drawn().path("a", SQUARE).path("b", SQUARE, element -> element.fill(Paint.colour(0x203040)))
                .role("Faces", Role.VINYL).broken(), "film of two colours");
        assertEquals(List.of(), new Drawn().path("a", SQUARE).path("b", SQUARE, element -> element.layer("Faces 2")).unassigned("Faces 2")
                .broken().stream().filter(id -> id.contains("doubled")).toList(), "a layer that nobody assigned");
    }

    // crossings

    @Test
    void a_bow_tie_crosses_itself_once() {
        Drawn drawn = new Drawn().path("a", "LINESTRING (100 100, 300 300, 300 100, 100 300, 100 100)");
        Finding finding = only(drawn.findings(Crossings.SELF));
        assertPlace("MULTIPOINT ((200 200))", finding);
        assertEquals(List.of("artwork.self-crossing"), drawn.broken());
    }

    /** Rounding puts a line that runs back over itself now on one side of itself, now on the other, as the drawing is turned. */
    @ParameterizedTest
    @ValueSource(doubles = {0.002, 0.5, 4})
    void an_outline_that_runs_back_over_itself_does_not_cross_itself_however_it_is_turned(double spikeMm) {
        String spike = "LINESTRING (100 100, 299.013 99.974, 300 100, 300 " + (100 - spikeMm) + ", 300 300, 100 300, 100 100)";
        Drawn drawn = new Drawn().path("a", spike);
        Drawn loop = new Drawn().path("a", "LINESTRING (100 100, 300 100, 300.5 104, 299.5 104, 300 100.1, 300 99, 310 99, 310 300, 100 300, 100 100)");
        for (int degrees = 0; degrees < 360; degrees += 7) {
            AffineTransformation turn = AffineTransformation.rotationInstance(Math.toRadians(degrees), 500, 500);
            assertEquals(List.of(), drawn.moved(turn).findings(Crossings.SELF), degrees + " degrees");
            assertEquals(1, loop.moved(turn).findings(Crossings.SELF).size(), degrees + " degrees, a loop 1 mm wide");
        }
    }

    @Test
    void passing_through_a_shared_node_is_a_crossing_and_touching_there_is_none() {
        String through = "LINESTRING (100 100, 200 200, 300 300, 300 100, 200 200, 100 300, 100 100)";
        String touching = "LINESTRING (100 100, 200 200, 300 100, 300 300, 200 200, 100 300, 100 100)";
        assertEquals(List.of("artwork.self-crossing"), new Drawn().path("a", through).broken());
        assertPlace("MULTIPOINT ((200 200))", only(new Drawn().path("a", through).findings(Crossings.SELF)));
        assertEquals(List.of(), new Drawn().path("a", touching).broken());
    }

    @Test
    void a_node_that_lies_on_another_line_crosses_it_only_when_the_line_goes_on_beyond() {
        assertEquals(List.of(), new Drawn().path("a", SQUARE).path("b", "LINESTRING (300 200, 400 150, 400 250, 300 200)").broken());
        Drawn beyond = new Drawn().path("a", SQUARE).path("b", "LINESTRING (300 200, 400 150, 400 250, 300 220, 250 210, 300 200)");
        assertPlace("MULTIPOINT ((300 200), (300 220))", only(beyond.findings(Crossings.OVERLAP)));
    }

    @Test
    void shapes_of_one_part_overlap_in_two_points() {
        Drawn drawn = new Drawn().path("a", SQUARE).path("b", square(200, 200, 200));
        assertPlace("MULTIPOINT ((300 200), (200 300))", only(drawn.findings(Crossings.OVERLAP)));
        assertEquals(List.of("artwork.overlap"), drawn.broken());
    }

    @Test
    void an_opening_that_runs_over_the_edge_of_its_panel_crosses_it() {
        Drawn drawn = new Drawn().path("a", SQUARE, element -> element.layer("Panel")).role("Panel", Role.PANEL)
                .path("b", square(250, 150, 100), element -> element.layer("Panel").fill(Paint.colour(0xFFFFFF)));
        assertPlace("MULTIPOINT ((300 150), (300 250))", only(drawn.findings(Crossings.CROSSING)));
    }

    @Test
    void film_lies_over_film_of_another_colour() {
        assertEquals(List.of(), new Drawn().role("Faces", Role.VINYL).path("a", SQUARE)
                .path("b", square(200, 200, 200), element -> element.fill(Paint.colour(0x803020))).broken());
    }

    @Test
    void outlines_that_only_graze_do_not_cross() {
        Drawn deep = new Drawn().path("a", SQUARE).path("b", "LINESTRING (299.98 200, 400 150, 400 250, 299.98 200)");
        Drawn grazing = new Drawn().path("a", SQUARE).path("b", "LINESTRING (299.995 200, 400 150, 400 250, 299.995 200)");
        assertEquals(List.of("artwork.overlap"), deep.broken());
        assertEquals(List.of(), grazing.broken());
    }

    @Test
    void a_shape_within_another_of_its_part_is_swallowed() {
        Drawn drawn = new Drawn().path("a", SQUARE).path("b", square(150, 150, 50));
        Finding finding = only(drawn.findings(Swallowed.RULE));
        assertEquals(List.of("b", "a"), finding.elements());
        assertEquals(List.of("artwork.swallowed"), drawn.broken());
        String counter = "MULTILINESTRING ((100 100, 300 100, 300 300, 100 300, 100 100), (150 150, 200 150, 200 200, 150 200, 150 150))";
        assertEquals(List.of(), new Drawn().path("a", counter).path("b", square(160, 160, 20)).broken(), "it lies in the counter");
    }

    @Test
    void a_shape_on_top_of_another_colour_is_seen_and_not_swallowed() {
        Drawn drawn = new Drawn().path("disc", square(100, 100, 200)).path("ring", square(130, 130, 140), element -> element.fill(Paint.colour(0xffffff)))
                .path("centre", square(150, 150, 100));
        assertEquals(List.of(), drawn.findings(Swallowed.RULE));
        Drawn under = new Drawn().path("centre", square(150, 150, 100)).path("ring", square(130, 130, 140), element -> element.fill(Paint.colour(0xffffff)))
                .path("disc", square(100, 100, 200));
        assertEquals(1, under.findings(Swallowed.RULE).size(), "painted over, it is not seen");
    }

    @Test
    void a_proof_that_draws_nothing_is_no_pass() {
        assertEquals(List.of("artwork.nothing-drawn"), new Drawn().broken());
        Drawn hidden = new Drawn().path("a", square(100, 100, 200), element -> element.visibility(Visibility.HIDDEN));
        assertTrue(hidden.broken().contains("artwork.nothing-drawn"));
        assertTrue(hidden.findings(NothingDrawn.RULE).get(0).message().contains("1 shape"));
    }

    // nodes

    @Test
    void a_circle_of_two_thousand_nodes_needs_a_few_arcs() {
        Finding finding = only(new Drawn().path("a", circle(300, 300, 200, 2000), element -> element).findings(NeedlessNodes.RULE));
        assertEquals(2001, measured(finding), "the first node is drawn again at the end");
        double needed = finding.required().orElseThrow().value();
        assertTrue(needed >= 1 && needed <= 4, "a circle is one arc, or few: " + needed);
    }

    @Test
    void a_square_with_nodes_along_its_sides_needs_its_corners() {
        List<Coordinate> points = new ArrayList<>();
        for (int i = 0; i <= 400; i++) {
            int side = i / 100 % 4;
            double along = 100 + 2.0 * (i % 100);
            double back = 400 - along;
            points.add(switch (side) {
                case 0 -> new Coordinate(along, 100);
                case 1 -> new Coordinate(300, along);
                case 2 -> new Coordinate(back, 300);
                default -> new Coordinate(100, back);
            });
        }
        points.set(400, new Coordinate(100, 100));
        Geometry line = new GeometryFactory().createLineString(points.toArray(new Coordinate[0]));
        Finding finding = only(new Drawn().path("a", line, element -> element).findings(NeedlessNodes.RULE));
        assertEquals(4, finding.required().orElseThrow().value());
    }

    @ParameterizedTest
    @ValueSource(ints = {3, 4, 6, 12})
    void a_polygon_needs_its_corners_though_they_lie_on_a_circle(int corners) {
        Coordinate[] points = circle(0, 0, 100, corners).getCoordinates();
        int[] nodes = IntStream.rangeClosed(0, corners).toArray();
        assertEquals(corners, new PieceFit(points, 0.1).pieces(nodes));
    }

    @Test
    void nodes_that_hold_the_shape_are_needed() {
        List<Coordinate> zigzag = new ArrayList<>();
        for (int i = 0; i <= 400; i++) {
            zigzag.add(new Coordinate(100 + i, i % 2 == 0 ? 100 : 98));
        }
        zigzag.add(new Coordinate(300, 400));
        zigzag.add(zigzag.get(0));
        Geometry line = new GeometryFactory().createLineString(zigzag.toArray(new Coordinate[0]));
        assertEquals(List.of(), new Drawn().path("a", line, element -> element).broken());
        assertEquals(List.of("artwork.needless-nodes"), new Drawn().with(NeedlessNodes.TOLERANCE, 2.5)
                .path("a", line, element -> element).broken(), "within 2.5 mm the teeth do not matter");
    }

    @Test
    void a_few_needless_nodes_are_let_pass() {
        assertEquals(List.of(), new Drawn().path("a", circle(300, 300, 200, 150), element -> element).broken());
        assertEquals(List.of("artwork.needless-nodes"), new Drawn().path("a", circle(300, 300, 200, 160), element -> element).broken());
    }

    static String square(double x, double y, double side) {
        double r = x + side;
        double b = y + side;
        return "LINESTRING (" + x + " " + y + ", " + r + " " + y + ", " + r + " " + b + ", " + x + " " + b + ", " + x + " " + y + ")";
    }

    static Geometry circle(double x, double y, double radius, int nodes) {
        Coordinate[] points = new Coordinate[nodes + 1];
        for (int i = 0; i < nodes; i++) {
            double angle = 2 * Math.PI * i / nodes;
            points[i] = new Coordinate(x + radius * Math.cos(angle), y + radius * Math.sin(angle));
        }
        points[nodes] = points[0];
        return new GeometryFactory().createLineString(points);
    }
}
