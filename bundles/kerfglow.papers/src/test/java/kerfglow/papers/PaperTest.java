// SPDX-License-Identifier: Apache-2.0
package kerfglow.papers;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import kerfglow.testkit.CheckTester;
import kerfglow.views.Canvas;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDOutlineItem;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;

class PaperTest {
    private static final Instant NOON = Instant.parse("2026-03-01T12:00:00Z");
    private static final double DOTS_PER_INCH = 254; // ten dots a millimetre
    private static final int DOTS_PER_MM = 10;

    private static Paper.About about(boolean landscape) {
        return new Paper.About("Harbour & <Lights>", "A trial", "For planning only.", Paper.Size.A4, landscape, NOON);
    }

    /** Something that sets a paper. */
    private interface Setting {
        void on(Paper paper) throws IOException;
    }

    private static byte[] written(boolean landscape, Setting setting) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (Paper paper = new Paper(about(landscape))) {
            setting.on(paper);
            paper.write(out);
        }
        return out.toByteArray();
    }

    private static String text(byte[] pdf) throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            return new PDFTextStripper().getText(document);
        }
    }

    @Test
    void text_is_text_in_one_embedded_font() throws IOException {
        byte[] pdf = written(false, paper -> {
            paper.heading(1, "Findings");
            paper.paragraph("Fläche 12.5 mm² – ½ in × 3, efficient fit.");
        });
        assertTrue(text(pdf).contains("Fläche 12.5 mm² – ½ in × 3, efficient fit."), () -> "read back");
        try (PDDocument document = Loader.loadPDF(pdf)) {
            int fonts = 0;
            for (PDPage page : document.getPages()) {
                for (COSName name : page.getResources().getFontNames()) {
                    fonts++;
                    assertTrue(page.getResources().getFont(name).isEmbedded());
                    assertTrue(page.getResources().getFont(name).getName().endsWith("+LiberationSans"), page.getResources().getFont(name)::getName);
                }
            }
            assertEquals(1, fonts);
            assertEquals("Harbour & <Lights>", document.getDocumentInformation().getTitle());
            assertEquals("en", document.getDocumentCatalog().getLanguage());
        }
        assertTrue(pdf.length < 60_000, "the font is cut down to the letters used: " + pdf.length);
    }

    @Test
    void every_page_has_its_number_title_and_foot() throws IOException {
        byte[] pdf = written(false, paper -> {
            for (int i = 0; i < 120; i++) {
                paper.paragraph("Line " + i);
            }
        });
        try (PDDocument document = Loader.loadPDF(pdf)) {
            int pages = document.getNumberOfPages();
            assertTrue(pages > 1);
            for (int page = 1; page <= pages; page++) {
                PDFTextStripper stripper = new PDFTextStripper();
                stripper.setStartPage(page);
                stripper.setEndPage(page);
                String text = stripper.getText(document);
                assertTrue(text.contains("page " + page + " of " + pages) && text.contains("Harbour & <Lights>") && text.contains("For planning only."), text);
            }
        }
        String text = text(pdf);
        IntStream.range(0, 120).forEach(i -> assertTrue(text.contains("Line " + i + System.lineSeparator()), "line " + i));
    }

    @Test
    void bookmarks_nest_as_headings_do() throws IOException {
        byte[] pdf = written(false, paper -> {
            paper.heading(1, "One");
            paper.heading(2, "One and a half");
            paper.newPage();
            paper.heading(1, "Two");
        });
        try (PDDocument document = Loader.loadPDF(pdf)) {
            PDOutlineItem one = document.getDocumentCatalog().getDocumentOutline().getFirstChild();
            assertEquals("One", one.getTitle());
            assertEquals("One and a half", one.getFirstChild().getTitle());
            assertEquals("Two", one.getNextSibling().getTitle());
            assertEquals(document.getPage(1), one.getNextSibling().findDestinationPage(document));
        }
    }

    @Test
    void long_rows_and_words_run_over_lines_and_pages_and_nothing_is_lost() throws IOException {
        String word = "x".repeat(400) + "end";
        List<List<String>> rows = new ArrayList<>();
        for (int i = 0; i < 90; i++) {
            rows.add(List.of("row" + i, "2.50"));
        }
        rows.add(List.of(IntStream.range(0, 1500).mapToObj(i -> "w" + i).reduce("", (a, b) -> a + " " + b), word));
        byte[] pdf = written(true, paper -> paper.table(List.of(new Paper.Column("Name", 3), new Paper.Column("Value", 1, true)), rows));
        String text = text(pdf);
        for (int i = 0; i < 90; i++) {
            assertTrue(text.contains("row" + i + " "), "row " + i);
        }
        assertTrue(IntStream.range(0, 1500).allMatch(i -> text.matches("(?s).*\\bw" + i + "\\b.*")));
        assertTrue(text.contains("end"));
        try (PDDocument document = Loader.loadPDF(pdf)) {
            assertTrue(document.getPage(0).getMediaBox().getWidth() > document.getPage(0).getMediaBox().getHeight());
            assertEquals(document.getNumberOfPages(), text.split("Name Value", -1).length - 1, "a head on every page");
        }
    }

    @Test
    void halves_are_filled_from_top_to_bottom_and_hold_every_row_once() throws IOException {
        List<List<String>> rows = IntStream.range(0, 100).mapToObj(i -> List.of("row" + i, i + ".5")).toList();
        byte[] pdf = written(true, paper -> paper.tableInHalves(List.of(new Paper.Column("Name", 3), new Paper.Column("Value", 1, true)), rows));
        String text = text(pdf);
        int last = -1;
        for (int i = 0; i < 100; i++) {
            int at = text.indexOf("row" + i + " " + i + ".5");
            assertTrue(at > last, "row " + i + " after the one before it");
            assertEquals(at, text.lastIndexOf("row" + i + " "), "once");
            last = at;
        }
        try (PDDocument document = Loader.loadPDF(pdf)) {
            int heads = text.split("Name Value", -1).length - 1;
            assertEquals(2 * document.getNumberOfPages(), heads, "a head over each half");
            PDFTextStripper stripper = new PDFTextStripper();
            stripper.setSortByPosition(true);
            stripper.setEndPage(1);
            String lines = stripper.getText(document);
            assertTrue(lines.contains("Name Value Name Value"), "side by side: " + lines);
        }
    }

    @Test
    void what_the_font_lacks_is_a_lozenge_and_is_told() throws IOException {
        try (Paper paper = new Paper(about(false))) {
            paper.paragraph("Ω and ж are there");
            assertFalse(paper.lacksCharacters());
            paper.paragraph("漢 \uD83D\uDE00 \u0007 are not");
            assertTrue(paper.lacksCharacters());
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            paper.write(out);
            assertTrue(text(out.toByteArray()).contains("◊ ◊"), () -> "lozenges");
        }
    }

    @Test
    void two_runs_agree() throws IOException {
        Setting setting = paper -> paper.paragraph("The same");
        assertArrayEquals(written(false, setting), written(false, setting));
    }

    /** A square of 20 mm with a hole of 10 mm, drawn at half a millimetre a unit: its area on the page says that the scale is kept. */
    @Test
    void pictures_are_paths_at_the_scale_that_was_asked_for() throws IOException {
        byte[] pdf = written(false, paper -> paper.picture(100, 50, 200, canvas -> {
            canvas.area(CheckTester.wkt("POLYGON ((10 10, 50 10, 50 50, 10 50, 10 10), (20 20, 40 20, 40 40, 20 40, 20 20))"), 0xff0000, 1);
            canvas.rectangle(190, 0, 100, 20, 0x00ff00, 0, 0); // reaches out of the picture by nine tenths
            canvas.text("upright", 60, 60, 20, true, Canvas.Anchor.START, 0);
            canvas.image(2, new int[] {0xff0000ff, 0, 0, 0xff0000ff}, 100, 80, 20);
        }));
        try (PDDocument document = Loader.loadPDF(pdf)) {
            BufferedImage page = new PDFRenderer(document).renderImageWithDPI(0, (float) DOTS_PER_INCH);
            double dots = DOTS_PER_MM * DOTS_PER_MM;
            assertEquals(20 * 20 - 10 * 10, count(page, 0xff0000) / dots, 3);
            assertEquals(5 * 10, count(page, 0x00ff00) / dots, 1);
            assertEquals(2 * 5 * 5, count(page, 0x0000ff) / dots, 2);
        }
        assertTrue(text(pdf).contains("upright"));
    }

    private static int count(BufferedImage image, int rgb) {
        int count = 0;
        for (int y = 0; y < image.getHeight(); y++) {
            for (int x = 0; x < image.getWidth(); x++) {
                count += (image.getRGB(x, y) & 0xffffff) == rgb ? 1 : 0;
            }
        }
        return count;
    }
}
