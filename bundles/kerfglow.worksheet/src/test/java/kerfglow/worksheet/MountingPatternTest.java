// SPDX-License-Identifier: Apache-2.0
package kerfglow.worksheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.time.Instant;
import java.util.List;
import kerfglow.api.UnitSystem;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Proof;
import kerfglow.api.proof.Role;
import kerfglow.host.JobSheet;
import kerfglow.host.Result;
import kerfglow.host.ShopSheet;
import kerfglow.testkit.CheckTester;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Polygon;

class MountingPatternTest {
    private static final Instant NOON = Instant.parse("2026-03-01T12:00:00Z");
    /** Ten dots a millimetre. */
    private static final int DOTS_PER_INCH = 254;
    private static final double DOTS_PER_MM = 10;

    private static Result result(UnitSystem units, Part... parts) {
        Proof proof = new Proof("plate.svg", "ab".repeat(32), 2000, 1000, 1, 0.02, List.of(), List.of());
        return new Result(proof, JobSheet.NONE, ShopSheet.NONE, units, List.of(parts), List.of(), List.of(), List.of(), List.of());
    }

    private static Part part(String id, Role role, String wkt) {
        return Part.builder(id, role, (Polygon) CheckTester.wkt(wkt)).build();
    }

    private static Result plate(UnitSystem units) {
        return result(units, part("p1", Role.FACE, "POLYGON ((100 100, 700 100, 700 400, 100 400, 100 100))"), part("h1", Role.HOLE, "POLYGON ((145 145, 155 145, 155 155, 145 155, 145 145))"));
    }

    private static PDDocument written(Result result, PatternMedia media) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        MountingPattern.write(result, media, NOON, out);
        return Loader.loadPDF(out.toByteArray());
    }

    private static boolean isDark(BufferedImage image, int x, int y) {
        int rgb = image.getRGB(x, y);
        return (rgb >> 16 & 0xff) < 120 && (rgb >> 8 & 0xff) < 120 && (rgb & 0xff) < 120;
    }

    @ParameterizedTest
    @CsvSource({"a4, 210, 297", "letter, 215.9, 279.4", "24 in x 36 in, 609.6, 914.4", "500 mm X 1 m, 500, 1000"})
    void sizes_are_read_as_people_write_them(String text, double width, double height) {
        PatternMedia media = PatternMedia.parse(text);
        assertEquals(width, media.widthMm(), 1e-9);
        assertEquals(height, media.heightMm(), 1e-9);
        assertThrows(IllegalArgumentException.class, () -> PatternMedia.parse(text + " x 3 mm"));
    }

    /** Every point of the area lies on a page, and neighbouring pages share the overlap. */
    @ParameterizedTest
    @CsvSource({"640, 340, a4", "2000, 300, a3", "100, 100, a4", "5000, 900, a0"})
    void pages_cover_the_area_and_overlap(double width, double height, String size) {
        Envelope area = new Envelope(50, 50 + width, 20, 20 + height);
        Tiling tiling = Tiling.of(area, PatternMedia.parse(size));
        Envelope covered = new Envelope();
        for (int row = 0; row < tiling.rows(); row++) {
            for (int column = 0; column < tiling.columns(); column++) {
                Envelope tile = tiling.tile(column, row);
                covered.expandToInclude(tile);
                if (column > 0) {
                    assertEquals(PatternMedia.OVERLAP_MM, tiling.tile(column - 1, row).getMaxX() - tile.getMinX(), 1e-9);
                    assertEquals((tile.getMinX() + tiling.tile(column - 1, row).getMaxX()) / 2, tiling.seamX(column - 1), 1e-9);
                }
            }
        }
        assertTrue(covered.contains(area), covered::toString);
    }

    @Test
    void a_page_of_a_roll_is_as_long_as_the_sign() throws IOException {
        try (PDDocument document = written(plate(UnitSystem.METRIC), PatternMedia.roll(610))) {
            assertEquals(2, document.getNumberOfPages(), "the plan and one piece");
            assertEquals((600 + 2 * 20 + 2 * PatternMedia.MARGIN_MM) * 72 / 25.4, document.getPage(1).getMediaBox().getWidth(), 0.01);
            assertEquals(610 * 72 / 25.4, document.getPage(1).getMediaBox().getHeight(), 0.01);
        }
    }

    /** Outline and hole at full size: the plate is 600 mm wide on paper, its hole stands 50 mm from both edges. */
    @Test
    void what_is_drawn_is_at_full_size() throws IOException {
        try (PDDocument document = written(plate(UnitSystem.METRIC), PatternMedia.roll(610))) {
            BufferedImage page = new PDFRenderer(document).renderImageWithDPI(1, DOTS_PER_INCH);
            double left = PatternMedia.MARGIN_MM + 20; // margin, then the border about the sign
            double top = PatternMedia.MARGIN_MM + 20;
            int quarter = (int) ((top + 75) * DOTS_PER_MM);
            assertEquals(left, edge(page, quarter, (int) ((left - 5) * DOTS_PER_MM), 1), 0.2);
            assertEquals(left + 600, edge(page, quarter, (int) ((left + 595) * DOTS_PER_MM), 1), 0.2);
            int hole = page.getRGB((int) ((left + 50) * DOTS_PER_MM), (int) ((top + 50) * DOTS_PER_MM));
            assertTrue((hole >> 16 & 0xff) > 120 && (hole & 0xff) < 120, "the red cross stands in the middle of the hole: " + Integer.toHexString(hole));
            double bar = PatternMedia.MARGIN_MM + 610 - PatternMedia.MARGIN_MM - PatternMedia.FOOT_MM + 5;
            int y = (int) Math.round((bar - 2) * DOTS_PER_MM); // the ends stand out above the bar
            double first = edge(page, y, (int) ((PatternMedia.MARGIN_MM - 2) * DOTS_PER_MM), 1);
            double last = edge(page, y, (int) ((first + 50) * DOTS_PER_MM), 1);
            assertEquals(100, last - first, 0.15, "the bar to measure");
        }
    }

    /** The middle of the first dark run on a line of dots, mm. */
    private static double edge(BufferedImage page, int y, int from, int step) {
        int x = from;
        while (!isDark(page, x, y)) {
            x += step;
        }
        int start = x;
        while (isDark(page, x, y)) {
            x += step;
        }
        return (start + x) / 2.0 / DOTS_PER_MM;
    }

    @Test
    void pages_have_names_marks_a_level_line_and_the_caution() throws IOException {
        try (PDDocument document = written(plate(UnitSystem.METRIC), PatternMedia.parse("a4"))) {
            String text = new PDFTextStripper().getText(document);
            for (String words : List.of("A1", "B1", "join", "level", "plumb", "100 mm: measure it before you drill", "hole 11.28 mm", "proof abababababab", "licensed engineer")) {
                assertTrue(text.contains(words), words);
            }
            Tiling tiling = Tiling.of(new Envelope(80, 720, 80, 420), PatternMedia.parse("a4"));
            assertEquals(1 + tiling.pages(), document.getNumberOfPages());
        }
        try (PDDocument document = written(plate(UnitSystem.INCH), PatternMedia.parse("letter"))) {
            assertTrue(new PDFTextStripper().getText(document).contains("4 in: measure it before you drill"));
        }
    }

    @Test
    void pages_on_which_nothing_is_drawn_are_left_out() throws IOException {
        Result large = result(UnitSystem.METRIC, part("p1", Role.PANEL, "POLYGON ((0 0, 1500 0, 1500 1200, 0 1200, 0 0))"));
        Tiling tiling = Tiling.of(new Envelope(-20, 1520, -20, 1220), PatternMedia.parse("a4"));
        try (PDDocument document = written(large, PatternMedia.parse("a4"))) {
            int around = 2 * (tiling.columns() + tiling.rows()) - 4;
            assertEquals(1 + around, document.getNumberOfPages(), "the plan and the pages along the edge of the panel");
        }
    }

    @Test
    void nothing_to_mount_is_an_error_in_words() {
        assertTrue(assertThrows(IOException.class, () -> written(result(UnitSystem.METRIC, part("v", Role.VINYL, "POLYGON ((0 0, 9 0, 9 9, 0 0))")), PatternMedia.parse("a4"))).getMessage().contains("nothing here is mounted"));
    }

    @Test
    void columns_have_letters_beyond_z() {
        assertEquals("A1", Tiling.name(0, 0));
        assertEquals("Z2", Tiling.name(25, 1));
        assertEquals("AA3", Tiling.name(26, 2));
    }
}
