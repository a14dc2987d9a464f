// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import kerfglow.api.Outcome;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Role;
import kerfglow.geometry.FontLetters;
import kerfglow.geometry.RectangleFit;
import kerfglow.testkit.CheckTester;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;

/** Outlined lettering of an open font (Debian's package fonts-dejavu-core). */
class SheetLetteringTest {
    private static final double CHORD_ERROR_MM = 0.02;
    private static final GeometryFactory FACTORY = new GeometryFactory();

    private static List<Polygon> letters(String text, double sizeMm) {
        return FontLetters.of(FontLetters.SERIF, text, sizeMm);
    }

    private static Outcome run(CheckTester tester, List<Polygon> pieces) {
        for (int i = 0; i < pieces.size(); i++) {
            tester.part(Part.builder("p" + i, Role.FACE, pieces.get(i)).build());
        }
        return tester.run();
    }

    private static CheckTester tester() {
        return CheckTester.of(new SheetCheck()).stock(SheetCheck.SHEETS, Map.of(SheetCheck.WIDTH, 1220.0, SheetCheck.HEIGHT, 2440.0));
    }

    @ParameterizedTest
    @ValueSource(strings = {"B", "8", "&", "S", "W", "M"})
    void letters_larger_than_a_sheet_are_split_into_pieces_that_fit(String letter) throws Exception {
        StockSheet.Usable sheet = new StockSheet("s", 1220, 2440, "", 0, "none").less(10, "horizontal");
        Polygon shape = letters(letter, 3200).get(0);
        assertTrue(sheet.fit(new RectangleFit(shape)).isEmpty(), "the sample must be too large");
        Split split = new Splitter(List.of(sheet), new Sweep.Limits(20, 30, List.of()), CHORD_ERROR_MM, () -> { }).split(shape).orElseThrow();
        assertTrue(split.pieces().size() <= 8, () -> split.pieces().size() + " pieces");
        for (Polygon piece : split.pieces()) {
            assertTrue(sheet.fit(new RectangleFit(piece)).isPresent());
        }
        assertEquals(shape.getArea(), split.pieces().stream().mapToDouble(Geometry::getArea).sum(), 1e-6 * shape.getArea());
    }

    @Test
    void hundreds_of_letters_fit_and_are_counted_between_the_bounds() throws Exception {
        List<Polygon> line = letters("Skelderfen Observatory & 1896 Lumber Wharf, jig", 300);
        List<Polygon> pieces = new ArrayList<>();
        for (int i = 0; i < 8; i++) {
            pieces.addAll(line);
        }
        Outcome outcome = run(tester(), pieces);
        assertTrue(pieces.size() > 300);
        assertEquals(List.of("sheet.count"), outcome.findings().stream().map(finding -> finding.rule().id()).toList());
        List<Object> row = outcome.tables().get(1).rows().get(0);
        assertEquals((double) pieces.size(), row.get(3));
        assertTrue((Double) row.get(4) >= (Double) row.get(5) && (Double) row.get(5) >= 1);
        // outlined letters fill at least a third of their rectangles, and the packing at least three quarters of a sheet
        assertTrue((Double) row.get(4) <= 1 + 4 * (Double) row.get(5), row::toString);
    }

    @Test
    void joined_script_is_one_part_and_one_split() throws Exception {
        Geometry[] letters = letters("loose", 1400).toArray(new Geometry[0]);
        Geometry joined = FACTORY.createGeometryCollection(letters).union().buffer(110).buffer(-30);
        assertEquals(1, joined.getNumGeometries(), "the sample must be joined");
        Outcome outcome = run(tester(), List.of((Polygon) joined));
        assertEquals(List.of("sheet.too-large", "sheet.count"), outcome.findings().stream().map(finding -> finding.rule().id()).toList());
        assertTrue((Double) outcome.tables().get(0).rows().get(0).get(6) >= 2);
    }
}
