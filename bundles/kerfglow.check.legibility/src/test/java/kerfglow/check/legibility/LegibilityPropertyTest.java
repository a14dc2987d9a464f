// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.legibility;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import kerfglow.api.proof.Part;
import kerfglow.testkit.CheckTester;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.util.AffineTransformation;

/** What holds for every drawing. */
class LegibilityPropertyTest {
    private static final GeometryFactory FACTORY = new GeometryFactory();
    private static final double CONFIDENCE = 0.5;

    private static LineFinder.Found find(List<Polygon> shapes) {
        return LineFinder.find(OpenFont.asPieces(shapes), CONFIDENCE, () -> { });
    }

    /** Scribbles: random walks drawn with a pen, from hairlines to blobs. */
    private static List<Polygon> scribbles(Random random, int count) {
        List<Polygon> shapes = new ArrayList<>();
        while (shapes.size() < count) {
            Coordinate[] walk = new Coordinate[2 + random.nextInt(6)];
            double x = random.nextDouble() * 2000;
            double y = random.nextDouble() * 1000;
            for (int i = 0; i < walk.length; i++) {
                walk[i] = new Coordinate(x += random.nextGaussian() * 30, y += random.nextGaussian() * 30);
            }
            LineString line = FACTORY.createLineString(walk);
            Geometry drawn = line.buffer(0.5 + random.nextDouble() * 8);
            shapes.add((Polygon) drawn);
        }
        return shapes;
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void every_piece_is_in_one_line_or_left_and_every_height_is_a_number(long seed) {
        List<Polygon> shapes = scribbles(new Random(seed), 80);
        LineFinder.Found found = find(shapes);
        Set<String> seen = new HashSet<>();
        found.lines().forEach(line -> line.pieces().forEach(piece -> assertTrue(seen.add(piece.part().id()), "twice: " + piece.part().id())));
        found.left().forEach(piece -> assertTrue(seen.add(piece.part().id()), "twice: " + piece.part().id()));
        assertEquals(shapes.size(), seen.size());
        for (Line line : found.lines()) {
            assertTrue(line.model().capMm() > 0 && Double.isFinite(line.model().capMm()), () -> "cap height " + line.model().capMm());
            assertTrue(line.model().xMm().orElse(0) < line.model().capMm());
            assertTrue(line.confidence() >= CONFIDENCE && line.confidence() <= 1, () -> "confidence " + line.confidence());
            assertTrue(line.level(0).isValid());
        }
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6})
    void what_the_job_calls_lettering_is_all_measured(long seed) {
        CheckTester tester = CheckTester.of(new LegibilityCheck()).with(LegibilitySettings.LETTERING, "yes");
        List<Part> parts = OpenFont.parts(scribbles(new Random(seed), 40), part -> part);
        parts.forEach(tester::part);
        Set<String> measured = new HashSet<>();
        tester.findings(LegibilityRules.LINE).forEach(line -> measured.addAll(line.parts()));
        assertEquals(List.of(), tester.run().tables().get(2).rows(), "graphics");
        assertEquals(parts.size(), measured.size()); // all in one plane, so that no line covers another
    }

    @Test
    void a_wave_is_no_word() {
        Coordinate[] wave = new Coordinate[200];
        for (int i = 0; i < wave.length; i++) {
            wave[i] = new Coordinate(5 * i, 40 * Math.sin(i / 5.0));
        }
        assertEquals(List.of(), find(List.of((Polygon) FACTORY.createLineString(wave).buffer(6))).lines());
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.1, 3, 25})
    void heights_go_with_the_scale_and_not_with_the_place_or_the_order(double scale) {
        OpenFont font = OpenFont.of("fonts-liberation", "fonts/truetype/liberation/LiberationSerif-Bold.ttf", 150);
        List<Polygon> shapes = font.straight("Hex Fruit King");
        LineModel model = find(shapes).lines().get(0).model();
        AffineTransformation change = AffineTransformation.scaleInstance(scale, scale).translate(-4321, 987);
        List<Polygon> changed = new ArrayList<>(shapes.stream().map(shape -> (Polygon) change.transform(shape)).toList());
        changed.sort(Comparator.comparingDouble(Polygon::getArea));
        LineModel other = find(changed).lines().get(0).model();
        assertEquals(scale * model.capMm(), other.capMm(), 1e-6 * scale * model.capMm());
        assertEquals(scale * model.xMm().orElseThrow(), other.xMm().orElseThrow(), 1e-6 * scale * model.capMm());
    }

    @Test
    void a_border_of_dots_and_a_grid_of_squares_are_no_lettering() {
        List<Polygon> shapes = new ArrayList<>();
        for (int i = 0; i < 300; i++) {
            shapes.add((Polygon) FACTORY.createPoint(new Coordinate(20 * i, 0)).buffer(6));
            shapes.add((Polygon) FACTORY.createPoint(new Coordinate(30 * (i % 20), 200 + 30 * (i / 20))).buffer(10, 1));
        }
        assertEquals(List.of(), find(shapes).lines());
    }

    @Test
    void a_paragraph_is_as_many_lines_as_it_has() {
        OpenFont font = OpenFont.of("fonts-liberation", "fonts/truetype/liberation/LiberationSerif-Bold.ttf", 60);
        List<Polygon> shapes = new ArrayList<>();
        List<String> rows = List.of("Fresh bread and rolls", "every day from six", "Hot soup at noon", "Private parties by", "appointment only");
        for (int i = 0; i < rows.size(); i++) {
            shapes.addAll(FontHeightsTest.moved(font.straight(rows.get(i)), 0, 70.0 * i));
        }
        List<Line> lines = find(shapes).lines();
        assertEquals(rows.size(), lines.size());
        assertEquals(List.of(), find(shapes).left());
    }
}
