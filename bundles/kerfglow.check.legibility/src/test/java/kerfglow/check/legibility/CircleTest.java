// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.legibility;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Polygon;

/** Lettering round a circle, up to all of it, against the OS/2 tables of twelve open fonts. */
class CircleTest {
    private static final double CONFIDENCE = 0.5;
    private static final double FLAT = 0.01;
    private static final Coordinate CENTRE = new Coordinate(2000, 2000);
    private static final String SMALL = "Fresh Bread and Hot Soup Every Day Except Monday";
    private static final String CAPITALS = "THE OLD TOWN BAKERY AND COFFEE HOUSE SINCE";

    static Stream<OpenFont> fonts() {
        return FontHeightsTest.fonts();
    }

    private static double radius(OpenFont font, String text, double degrees) {
        return text.chars().mapToDouble(letter -> font.advance((char) letter)).sum() / Math.toRadians(degrees);
    }

    private static Line only(OpenFont font, String text, double radiusMm, boolean outward) {
        List<Line> lines = LineFinder.find(OpenFont.asPieces(font.arched(text, CENTRE, radiusMm, outward)), CONFIDENCE, () -> { }).lines();
        assertEquals(1, lines.size(), () -> font + ", radius " + radiusMm + ", outward " + outward);
        assertEquals(Frame.Form.ARCHED, lines.get(0).frame().form());
        return lines.get(0);
    }

    @ParameterizedTest
    @MethodSource("fonts")
    void lettering_round_a_circle_is_one_line_with_the_heights_of_the_font(OpenFont font) {
        for (double degrees : new double[] {200, 350}) {
            for (boolean outward : new boolean[] {true, false}) {
                Line line = only(font, SMALL, radius(font, SMALL, degrees), outward);
                assertEquals(font.capMm(), line.model().capMm(), FLAT * font.capMm(), font + " " + degrees);
                assertEquals(font.xMm(), line.model().xMm().orElseThrow(), FLAT * font.xMm(), font + " " + degrees);
                assertEquals(outward, line.frame().isOutward(), font + " " + degrees);
            }
        }
    }

    /** Capitals upside down look much like capitals: up to 330 degrees the bare stretch tells which way they stand, beyond only their height is. */
    @ParameterizedTest
    @MethodSource("fonts")
    void capitals_round_a_circle_have_the_heights_of_the_font(OpenFont font) {
        for (boolean outward : new boolean[] {true, false}) {
            Line most = only(font, CAPITALS, radius(font, CAPITALS, 330), outward);
            assertEquals(font.capMm(), most.model().capMm(), FLAT * font.capMm(), font.toString());
            assertEquals(outward, most.frame().isOutward(), font.toString());
        }
        // heads inward on so small a circle the letters of wide faces run into each other
        assertEquals(font.capMm(), only(font, CAPITALS, radius(font, CAPITALS, 350), true).model().capMm(), FLAT * font.capMm(), font.toString());
    }

    @ParameterizedTest
    @MethodSource("fonts")
    void short_arches_from_seven_cap_heights_of_radius_on_stand_the_right_way_up(OpenFont font) {
        for (String text : List.of("Hex Fruit King", "Fresh Bread")) {
            for (boolean outward : new boolean[] {true, false}) {
                Line line = only(font, text, 7 * font.capMm(), outward);
                assertEquals(outward, line.frame().isOutward(), font + " " + text);
                assertEquals(font.capMm(), line.model().capMm(), FLAT * font.capMm(), font + " " + text);
            }
        }
    }

    @ParameterizedTest
    @MethodSource("fonts")
    void a_badge_has_a_line_above_a_line_below_and_one_in_the_middle(OpenFont font) {
        double radius = 500;
        List<Polygon> shapes = new ArrayList<>(font.arched("Old Town Bakery", CENTRE, radius, true));
        shapes.addAll(font.arched("Fresh Bread", CENTRE, radius + font.capMm(), false));
        shapes.addAll(FontHeightsTest.moved(font.straight("Hex Tea"), CENTRE.x - 250, CENTRE.y + 50));
        List<Line> lines = LineFinder.find(OpenFont.asPieces(shapes), CONFIDENCE, () -> { }).lines();
        assertEquals(3, lines.size(), () -> font + ": " + lines.stream().map(line -> line.letters().size() + " " + line.frame().form()).toList());
        for (Line line : lines) {
            assertEquals(font.capMm(), line.model().capMm(), FLAT * font.capMm(), font.toString());
        }
    }

    @Test
    void base_line_and_cap_height_are_drawn_along_their_circles() {
        OpenFont font = fonts().findFirst().orElseThrow();
        double radius = radius(font, SMALL, 300);
        Line line = only(font, SMALL, radius, true);
        for (Coordinate at : line.level(line.model().capMm()).getCoordinates()) {
            assertEquals(radius + font.capMm(), at.distance(CENTRE), 0.06 * font.capMm(), "corners of the letters' turned boxes");
        }
        assertTrue(line.level(0).getLength() > 0.7 * radius * Math.toRadians(300));
    }
}
