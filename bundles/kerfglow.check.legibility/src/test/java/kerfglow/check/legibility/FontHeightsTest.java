// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.legibility;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.util.AffineTransformation;

/**
 * Heights found in outlines against what each font's own OS/2 table says (sCapHeight, sxHeight; OpenType specification). Fonts of many
 * kinds whose tables give the flat tops of their own H and x. (In TeX Gyre Pagella, for one, sxHeight is that of the serifs' tips, 2 %
 * above the flat top of x; there the x-height found is 1.6 % lower than the table says.)
 */
class FontHeightsTest {
    private static final double EM_MM = 150;
    private static final double CONFIDENCE = 0.5;
    /** Flat-topped letters within 1 %, all round ones within 3 %. */
    private static final double FLAT = 0.01;
    private static final double ROUND = 0.03;
    private static final double JOINED = 0.10;
    private static final String TEXT = "Hex Fruit King";
    private static final double RADIUS_MM = 700;

    private static final String LIBERATION = "fonts/truetype/liberation/Liberation";
    private static final String GYRE = "texmf/fonts/opentype/public/tex-gyre/texgyre";

    static Stream<OpenFont> fonts() {
        return Stream.concat(
                Stream.of("Sans-Regular.ttf", "Serif-Italic.ttf", "Mono-Regular.ttf", "Sans-BoldItalic.ttf", "Serif-Bold.ttf")
                        .map(name -> OpenFont.of("fonts-liberation", LIBERATION + name, EM_MM)),
                Stream.of("adventor-regular.otf", "bonum-bold.otf", "cursor-regular.otf", "heros-bold.otf", "heroscn-bold.otf",
                        "schola-regular.otf", "termes-regular.otf").map(name -> OpenFont.of("fonts-texgyre", GYRE + name, EM_MM)));
    }

    static Stream<Arguments> turns() {
        return fonts().flatMap(font -> Stream.of(0.0, 17.0, -8.0, 90.0, -90.0, 45.0).map(turn -> Arguments.of(font, turn)));
    }

    private static Line only(List<Polygon> shapes) {
        List<Line> lines = LineFinder.find(OpenFont.asPieces(shapes), CONFIDENCE, () -> { }).lines();
        assertEquals(1, lines.size(), () -> "lines: " + lines.stream().map(line -> line.letters().size() + " " + line.frame().form()).toList());
        return lines.get(0);
    }

    private static void assertHeights(OpenFont font, Line line, double tolerance) {
        assertEquals(font.capMm(), line.model().capMm(), tolerance * font.capMm(), "cap height of " + font);
        assertEquals(font.xMm(), line.model().xMm().orElseThrow(), tolerance * font.xMm(), "x-height of " + font);
    }

    @ParameterizedTest
    @MethodSource("turns")
    void straight_and_turned_lines_have_the_heights_of_the_font(OpenFont font, double degrees) {
        Line line = only(OpenFont.turned(font.straight(TEXT), degrees));
        assertHeights(font, line, FLAT);
        assertEquals(Frame.Form.STRAIGHT, line.frame().form());
        assertEquals(1, Math.cos(line.frame().angle() - Math.toRadians(degrees)), 1e-4, "angle of " + font);
        assertEquals(TEXT.replace(" ", "").length(), line.letters().size(), "letters of " + font);
        assertEquals(2, line.marks().size(), "two dots of i, " + font);
    }

    @ParameterizedTest
    @MethodSource("fonts")
    void arched_lines_have_the_heights_of_the_font(OpenFont font) {
        for (boolean outward : new boolean[] {true, false}) {
            Line line = only(font.arched(TEXT, new Coordinate(2000, 2000), RADIUS_MM, outward));
            assertHeights(font, line, FLAT);
            assertEquals(Frame.Form.ARCHED, line.frame().form());
            assertEquals(outward, line.frame().isOutward());
            assertEquals(RADIUS_MM, line.frame().radiusMm() + (outward ? line.model().base() : -line.model().base()), 0.01 * RADIUS_MM, font.toString());
        }
    }

    @ParameterizedTest
    @MethodSource("fonts")
    void capitals_alone_have_the_cap_height(OpenFont font) {
        Line line = only(font.straight("FINEST BREAD"));
        assertEquals(font.capMm(), line.model().capMm(), FLAT * font.capMm(), font.toString());
        assertTrue(line.model().xMm().isEmpty(), font.toString());
    }

    @ParameterizedTest
    @MethodSource("fonts")
    void round_letters_alone_are_right_within_three_percent(OpenFont font) {
        assertHeights(font, only(font.straight("COGS oceo")), ROUND);
        assertHeights(font, only(OpenFont.turned(font.straight("COGS oceo"), 17)), ROUND);
        for (boolean outward : new boolean[] {true, false}) {
            Line arch = only(font.arched("COGS oceo", new Coordinate(2000, 2000), RADIUS_MM, outward));
            assertEquals(Frame.Form.ARCHED, arch.frame().form());
            assertHeights(font, arch, ROUND);
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"Apply gypsum", "Ölfarbe Übung", "No. 24, Höfe", "Quay; jetty!"})
    void descenders_accents_and_points_do_not_move_the_line(String text) {
        OpenFont font = OpenFont.of("fonts-liberation", LIBERATION + "Sans-Regular.ttf", EM_MM);
        assertHeights(font, only(font.straight(text)), FLAT);
    }

    /** A script drawn to join; what is compared is the middle of the heights of the word's own letters, drawn one by one. */
    @ParameterizedTest
    @CsvSource({"fonts-dancingscript, fonts/opentype/dancingscript/DancingScript-Regular.otf, human", "fonts-dancingscript, fonts/opentype/dancingscript/DancingScript-Bold.otf, lemon",
        "fonts-dancingscript, fonts/opentype/dancingscript/DancingScript-Regular.otf, velum",
        "fonts-dancingscript, fonts/opentype/dancingscript/DancingScript-Bold.otf, muhame",
        "fonts-dancingscript, fonts/opentype/dancingscript/DancingScript-Regular.otf, helvenum",
        "fonts-lobstertwo, fonts/opentype/lobstertwo/LobsterTwo-BoldItalic.otf, human", "fonts-lobstertwo, fonts/opentype/lobstertwo/LobsterTwo-BoldItalic.otf, lemon",
        "fonts-lobstertwo, fonts/opentype/lobstertwo/LobsterTwo-BoldItalic.otf, hollow", "fonts-lobstertwo, fonts/opentype/lobstertwo/LobsterTwo-BoldItalic.otf, muhame",
        "fonts-leckerli-one, fonts/truetype/leckerli-one/LeckerliOne-Regular.ttf, human", "fonts-leckerli-one, fonts/truetype/leckerli-one/LeckerliOne-Regular.ttf, helvenum",
        "fonts-leckerli-one, fonts/truetype/leckerli-one/LeckerliOne-Regular.ttf, melon", "fonts-leckerli-one, fonts/truetype/leckerli-one/LeckerliOne-Regular.ttf, unable"})
    void a_joined_word_has_heights_within_ten_percent_of_its_letters(String debianPackage, String path, String word) {
        OpenFont font = OpenFont.of(debianPackage, path, EM_MM);
        for (double degrees : new double[] {0, 12, -25}) {
            Line line = only(OpenFont.turned(inOnePiece(font.straight(word)), degrees));
            assertEquals(Frame.Form.STRAIGHT, line.frame().form());
            assertHeights(font, word, line);
        }
        for (double radius : new double[] {500, 900, 2000}) {
            for (boolean outward : new boolean[] {true, false}) {
                List<Polygon> shapes = font.arched(word, new Coordinate(2000, 2000), radius, outward);
                if (shapes.size() == 1) { // on a small circle the joins of some faces come apart
                    Line line = only(shapes);
                    assertHeights(font, word, line);
                    if (radius < 2000) { // flatter than that an arch and a line explain a short word alike
                        assertEquals(Frame.Form.ARCHED, line.frame().form());
                        assertEquals(outward, line.frame().isOutward());
                    }
                }
            }
        }
    }

    private static List<Polygon> inOnePiece(List<Polygon> shapes) {
        assertEquals(1, shapes.size(), "the word is one piece");
        return shapes;
    }

    private static void assertHeights(OpenFont font, String word, Line line) {
        assertTrue(line.isJoined());
        assertEquals(middle(font, word, "aeouvmn"), line.model().xMm().orElseThrow(), JOINED * middle(font, word, "aeouvmn"), "short letters");
        assertEquals(middle(font, word, "hlb"), line.model().capMm(), JOINED * middle(font, word, "hlb"), "tall letters");
    }

    @Test
    void a_joined_word_without_tall_letters_has_one_height() {
        OpenFont font = OpenFont.of("fonts-lobstertwo", "fonts/opentype/lobstertwo/LobsterTwo-BoldItalic.otf", EM_MM);
        Line line = only(inOnePiece(font.straight("mouse")));
        assertTrue(line.model().xMm().isEmpty());
        assertEquals(middle(font, "mouse", "mouse"), line.model().capMm(), JOINED * middle(font, "mouse", "mouse"));
    }

    @Test
    void the_levels_of_a_joined_word_on_an_arch_are_arcs() {
        OpenFont font = OpenFont.of("fonts-lobstertwo", "fonts/opentype/lobstertwo/LobsterTwo-BoldItalic.otf", EM_MM);
        Line line = only(inOnePiece(font.arched("hollow", new Coordinate(2000, 2000), 600, true)));
        for (Coordinate at : line.level(0).getCoordinates()) {
            assertEquals(600, at.distance(new Coordinate(2000, 2000)), 0.03 * font.capMm());
        }
    }

    private static double middle(OpenFont font, String word, String among) {
        double[] heights = word.chars().filter(letter -> among.indexOf(letter) >= 0)
                .mapToDouble(letter -> -font.glyph((char) letter).getEnvelopeInternal().getMinY()).sorted().toArray();
        return heights[heights.length / 2];
    }

    @Test
    void rows_of_text_are_lines_of_their_own_and_two_sizes_on_one_base_line_are_two() {
        OpenFont large = OpenFont.of("fonts-texgyre", GYRE + "heros-bold.otf", EM_MM);
        OpenFont small = OpenFont.of("fonts-texgyre", GYRE + "heros-bold.otf", EM_MM / 2.2);
        List<Polygon> shapes = new ArrayList<>(large.straight("Bakery"));
        shapes.addAll(moved(small.straight("Open daily"), 0, 130));
        shapes.addAll(moved(small.straight("HOURS"), 560, 0));
        List<Line> lines = LineFinder.find(OpenFont.asPieces(shapes), CONFIDENCE, () -> { }).lines();
        assertEquals(3, lines.size());
        assertEquals(List.of(true, true, true), lines.stream().map(line -> Math.abs(line.model().capMm() / large.capMm() - 1) <= FLAT
                || Math.abs(line.model().capMm() / small.capMm() - 1) <= FLAT).toList());
    }

    @Test
    void small_print_close_under_a_large_line_is_not_taken_for_its_points() {
        OpenFont large = OpenFont.of("fonts-texgyre", GYRE + "heros-bold.otf", EM_MM);
        OpenFont small = OpenFont.of("fonts-texgyre", GYRE + "heros-bold.otf", EM_MM / 4);
        List<Polygon> shapes = new ArrayList<>(large.straight("BAKER"));
        shapes.addAll(moved(small.straight("Open until noon"), 0, 40));
        List<Line> lines = LineFinder.find(OpenFont.asPieces(shapes), CONFIDENCE, () -> { }).lines();
        assertEquals(List.of(5, 13), lines.stream().map(line -> line.letters().size()).toList());
        assertEquals(small.capMm(), lines.get(1).model().capMm(), FLAT * small.capMm());
    }

    @Test
    void letters_one_under_the_other_are_a_stack() {
        OpenFont font = OpenFont.of("fonts-texgyre", GYRE + "heros-bold.otf", EM_MM);
        List<Polygon> shapes = new ArrayList<>();
        for (int i = 0; i < 5; i++) {
            Polygon letter = font.straight(String.valueOf("HOTEL".charAt(i))).get(0);
            shapes.addAll(moved(List.of(letter), -letter.getEnvelopeInternal().centre().x, 150.0 * i));
        }
        Line line = only(shapes);
        assertEquals(Frame.Form.STACKED, line.frame().form());
        assertEquals(5, line.letters().size());
        assertEquals(font.capMm(), line.model().capMm(), FLAT * font.capMm());
        assertEquals(5, line.level(0).getNumGeometries(), "a base line for each letter");
    }

    static List<Polygon> moved(List<Polygon> shapes, double x, double y) {
        AffineTransformation move = AffineTransformation.translationInstance(x, y);
        return shapes.stream().map(shape -> (Polygon) move.transform(shape)).toList();
    }

    /** The stem of I is its box in a sans serif; stems of one face differ by a few per cent (H against I by 4 in this one). */
    @Test
    void stroke_width_and_spacing_are_those_of_the_outlines() {
        OpenFont font = OpenFont.of("fonts-texgyre", GYRE + "heros-bold.otf", EM_MM);
        Line line = only(font.straight("HILL OF"));
        Proportions shape = Proportions.of(line, () -> { });
        double stem = font.glyph('I').getEnvelopeInternal().getWidth();
        assertEquals(stem, shape.strokeMm(), 0.05 * stem, "the stem of I");
        double oval = font.glyph('O').getEnvelopeInternal().getWidth();
        assertEquals(oval, shape.widthMm().orElseThrow(), 0.02, "the width of O");
        List<Polygon> row = font.straight("HIH");
        row.sort(Comparator.comparingDouble(each -> each.getEnvelopeInternal().getMinX()));
        assertEquals(Math.min(row.get(0).distance(row.get(1)), row.get(1).distance(row.get(2))),
                Proportions.of(only(row), () -> { }).leastSpacingMm().orElseThrow(), 0.02);
        assertFalse(line.isJoined());
    }
}
