// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.legibility;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import kerfglow.api.Finding;
import kerfglow.api.Outcome;
import kerfglow.api.Table;
import kerfglow.api.proof.Element;
import kerfglow.api.proof.ImportOptions;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Proof;
import kerfglow.api.proof.ProofException;
import kerfglow.api.proof.Role;
import kerfglow.api.proof.TextRun;
import kerfglow.svg.SvgImporter;
import kerfglow.testkit.CheckTester;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Polygon;

/** Live text, whose heights the font gives, against what is found in its outlines. Liberation Sans: OS/2 table 1409 and 1082 of 2048. */
class LiveTextTest {
    private static final double CONFIDENCE = 0.5;
    private static final double CAP = 1409.0 / 2048;
    private static final double X = 1082.0 / 2048;
    private static final double FLAT = 0.01;
    private static final double EXACT = 1e-4;

    private static Proof read(String content) {
        String svg = "<svg xmlns='http://www.w3.org/2000/svg' width='4000mm' height='3000mm' viewBox='0 0 4000 3000' font-family='Liberation Sans'>"
                + content + "</svg>";
        try {
            Path file = Files.createTempFile("live", ".svg");
            try {
                Files.writeString(file, svg);
                return new SvgImporter().read(file, ImportOptions.defaults());
            } finally {
                Files.delete(file);
            }
        } catch (IOException | ProofException e) {
            throw new AssertionError(e);
        }
    }

    /** Each letter a part by itself. */
    private static List<Part> parts(Proof proof) {
        List<Part> parts = new ArrayList<>();
        for (Element element : proof.elements()) {
            for (Polygon letter : OpenFont.pieces(element.fillArea())) {
                parts.add(Part.builder("p" + parts.size(), Role.FACE, letter).layer(element.layer()).paint(element.fill()).order(element.order())
                        .elements(List.of(element.id())).sources(Set.of(element.text().isPresent() ? Part.Source.TEXT : Part.Source.SHAPE)).build());
            }
        }
        return parts;
    }

    private static Outcome inspected(Proof proof) {
        CheckTester tester = CheckTester.of(new LegibilityCheck()).page(proof.widthMm(), proof.heightMm());
        proof.elements().forEach(tester::element);
        parts(proof).forEach(tester::part);
        return tester.run();
    }

    private static Object cell(Outcome outcome, int row, String column) {
        return BlockSign.cell(outcome, LegibilityTables.LINES, row, column);
    }

    /** The lines that outlines alone show stand where and as high as the font says: straight, turned, in several sizes. */
    @ParameterizedTest
    @CsvSource({"0, 400, Hex Fruit King", "0, 60, Hex Fruit King", "17, 150, Hex Fruit King", "-8, 150, No. 24 Höfe", "90, 150, Hex Fruit King", "0, 300, Quay; jetty! Ex", "-90, 300, No. 24 Höfe",
        "45, 20, Hex Fruit King", "-33, 150, Fresh bread and rolls"})
    void outlines_are_held_against_the_exact_lines(double degrees, double size, String text) {
        Proof proof = read("<text transform='translate(2000 1500) rotate(" + degrees + ")' font-size='" + size + "'>" + text + "</text>");
        TextRun run = proof.elements().get(0).text().orElseThrow();
        assertEquals(CAP * size, run.capHeightMm().orElseThrow(), EXACT * size);
        List<Piece> bare = parts(proof).stream().map(part -> Piece.of(Part.builder(part.id(), Role.FACE, part.shape()).build())).toList();
        List<Line> lines = LineFinder.find(bare, CONFIDENCE, () -> { }).lines();
        assertEquals(1, lines.size());
        Line line = lines.get(0);
        double cap = run.capHeightMm().orElseThrow();
        assertEquals(cap, line.model().capMm(), FLAT * cap);
        assertEquals(run.xHeightMm().orElseThrow(), line.model().xMm().orElseThrow(), FLAT * cap);
        LineString exact = run.baseLine().orElseThrow();
        for (Coordinate end : line.level(0).getCoordinates()) {
            assertTrue(exact.distance(exact.getFactory().createPoint(end)) <= FLAT * cap, () -> end + " is off " + exact);
        }
    }

    @Test
    void heights_of_live_text_are_those_of_the_font_and_this_is_said() {
        Outcome outcome = inspected(read("<text x='100' y='500' font-size='300'>Oceo Song</text>"
                + "<text transform='translate(100 1500) rotate(10)' font-size='200'>COGS</text><text x='100' y='2800' font-size='100'>neon sun</text>"));
        assertEquals(3, outcome.tables().get(0).rows().size());
        assertEquals(List.of("live text", "live text", "live text"), List.of(cell(outcome, 0, "heights-from"), cell(outcome, 1, "heights-from"), cell(outcome, 2, "heights-from")));
        assertEquals(CAP * 300, (Double) cell(outcome, 0, "cap-height"), EXACT * 300);
        assertEquals(X * 300, (Double) cell(outcome, 0, "x-height"), EXACT * 300);
        assertEquals(CAP * 200, (Double) cell(outcome, 1, "cap-height"), EXACT * 200);
        assertEquals(null, cell(outcome, 1, "x-height"));
        assertEquals(X * 100, (Double) cell(outcome, 2, "cap-height"), EXACT * 100, "small letters alone have one height");
        Finding line = outcome.findings().stream().filter(finding -> finding.rule().equals(LegibilityRules.LINE)).findFirst().orElseThrow();
        assertTrue(line.message().contains("live text"), line.message());
        LineString base = (LineString) cell(outcome, 0, "base-line");
        assertEquals(500, base.getCoordinateN(0).y, 0.01);
    }

    @Test
    void a_line_that_is_live_text_only_in_part_is_measured_by_its_outlines() {
        Proof proof = read("<text x='100' y='500' font-size='300'>HEX</text>");
        Proof more = read("<text x='100' y='500' font-size='300'>HEX</text><path d='M800 500v-206.4h40v80h60v-80h40v206.4h-40v-80h-60v80z'/>");
        assertEquals("live text", cell(inspected(proof), 0, "heights-from"));
        Outcome outcome = inspected(more);
        Table lines = outcome.tables().get(0);
        assertEquals(1, lines.rows().size());
        assertEquals("outlines", cell(outcome, 0, "heights-from"));
        assertEquals("HEX", cell(outcome, 0, "text"));
    }

    @Test
    void live_text_on_a_path_keeps_the_heights_of_its_font() {
        Outcome outcome = inspected(read("<defs><path id='p' d='M500 2000A1500 1500 0 0 1 3500 2000'/></defs>"
                + "<text font-size='250'><textPath href='#p' startOffset='20%'>Hex Fruit King</textPath></text>"));
        assertEquals(1, outcome.tables().get(0).rows().size());
        assertEquals("live text", cell(outcome, 0, "heights-from"));
        assertTrue(((String) cell(outcome, 0, "form")).startsWith("arched"));
        assertEquals(CAP * 250, (Double) cell(outcome, 0, "cap-height"), EXACT * 250);
    }
}
