// SPDX-License-Identifier: Apache-2.0
package kerfglow.papers;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import kerfglow.host.Result;
import kerfglow.testkit.CheckTester;
import kerfglow.views.Layers;
import kerfglow.views.Review;
import kerfglow.views.Sample;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDOutlineItem;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;

class ReportTest {
    private static final LocalDate DAY = LocalDate.of(2026, 3, 1);
    private static final Review.Ruling WAIVED = new Review.Ruling("Rhea", LocalDate.of(2026, 2, 1), "hidden <behind> the frame", "");
    private static final Review REVIEW = new Review(Map.of("00000001", WAIVED, "00000002", new Review.Ruling("Rhea", DAY, "looks fine", "it misses by more now")),
            Map.of("late", WAIVED),
            List.of(new Review.MarkLine("A", "ring", CheckTester.wkt("POLYGON ((40 20, 60 20, 60 30, 40 20))"), CheckTester.wkt("POINT (50 20)").getCoordinate(), "is this right?", "Tomas", DAY,
                    List.of("Rhea, 2026-03-01: yes"), "settled by Tomas, 2026-03-01")),
            List.of(new Review.SignOffLine("Olu", DAY, "for Monday", List.of("review trial.decide: look"), List.of())), true);

    private static Report report() {
        return new Report(Sample.result(), REVIEW, Layers.named(Sample.result(), List.of("trial.map")), DAY);
    }

    private static byte[] pdf(Report report) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        PdfReport.write(report, out);
        return out.toByteArray();
    }

    private static String text(byte[] pdf) throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            return new PDFTextStripper().getText(document).replaceAll("\\s+", " ");
        }
    }

    /** What both must say: measured, required, why, what to do, source, decisions, what did not run, other settings, and the caution. */
    private static final List<String> SAID = List.of("1 stop (1 waived), 1 review, 1 info", "No stop is open.", "1 check could not measure.", "Signed off by Olu on 2026-03-01.",
            "bar & co.svg, SHA-256 abab", "2.5 mm", "It breaks.", "Widen it.", "geometry", "waived by Rhea on 2026-02-01: hidden <behind> the frame", "to be decided again, it misses by more now",
            "2.9999 mm", "is this right?", "Rhea, 2026-03-01: yes", "settled by Tomas", "for Monday", "review trial.decide: look", "timed out", "Took longer than 60 s.", "No thickness.",
            "trial.depth", "4.5 mm", "command line", "A remark.", "The proof was changed since the job was saved", "local building code", "Map of <levels>", "100 cd/m²", "scale 5:1");

    @Test
    void web_page_and_paper_say_the_same() throws IOException {
        String paper = text(pdf(report()));
        String page = plain(HtmlReport.of(report()));
        for (String words : SAID) {
            assertTrue(paper.contains(words), words + "\n" + paper);
            assertTrue(page.contains(words), words + "\n" + page);
        }
        assertFalse(paper.contains("some folder") || page.contains("some folder"), "the folder of this machine is nobody's business");
    }

    private static String plain(String html) {
        return html.replaceAll("<style>(?s:.*?)</style>", "").replaceAll("<[^>]*>", " ").replace("&lt;", "<").replace("&gt;", ">").replace("&quot;", "\"").replace("&amp;", "&").replaceAll("\\s+", " ");
    }

    @Test
    void the_web_page_needs_nothing_else_and_runs_nothing() {
        String html = HtmlReport.of(report());
        assertFalse(html.contains("<script") || html.contains("@import") || html.contains("javascript:"), "no script, no import");
        Matcher links = Pattern.compile("(?:href|src|url)\\s*[=(]\\s*[\"']?([^\"')>]*)").matcher(html);
        int own = 0;
        while (links.find()) {
            assertTrue(links.group(1).startsWith("#") || links.group(1).startsWith("data:image/png;base64,"), links::group);
            own++;
        }
        assertTrue(own > 5);
        assertFalse(html.contains("<b>"), "text from outside stays text");
        assertTrue(html.contains("&lt;b&gt;&quot;thin&quot;&lt;/b&gt;"));
    }

    @Test
    void every_id_is_there_once_and_every_link_leads_somewhere() {
        String html = HtmlReport.of(report());
        Set<String> ids = new HashSet<>();
        Matcher id = Pattern.compile("\\bid=\"([^\"]*)\"").matcher(html);
        while (id.find()) {
            assertTrue(ids.add(id.group(1)), id.group(1));
        }
        Matcher link = Pattern.compile("(?:href=\"#|url\\(#)([^\")]*)").matcher(html);
        while (link.find()) {
            assertTrue(ids.contains(link.group(1)), link.group(1));
        }
    }

    @Test
    void bookmarks_lead_to_every_finding() throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf(report()))) {
            List<String> titles = new ArrayList<>();
            PDOutlineItem top = document.getDocumentCatalog().getDocumentOutline().getFirstChild();
            top.children().forEach(chapter -> {
                titles.add(chapter.getTitle());
                chapter.children().forEach(each -> titles.add(each.getTitle()));
            });
            assertTrue(titles.containsAll(List.of("1: Part p1 is narrow.", "2: Part p1 is narrow.", "3: Part p1 is narrow.", "Waivers", "Marks", "Sign-off", "What ran and what did not")), titles::toString);
        }
    }

    @Test
    void five_hundred_findings_stay_usable() throws IOException {
        List<Result.ReportedFinding> many = new ArrayList<>();
        for (int i = 0; i < 500; i++) {
            many.add(Sample.finding(String.format("%08x", i), i < 300 ? Sample.NARROW : Sample.DECIDE, 1 + i / 1000.0, (i % 100) + " " + i / 10));
        }
        Report report = new Report(Sample.result(many), Review.NONE, List.of(), DAY);
        String html = HtmlReport.of(report);
        assertTrue(html.contains("<a href=\"#f1\">1–300</a>") && html.contains("<a href=\"#f301\">301–500</a>"), "one line of the index for each rule");
        assertEquals(500, html.split("<figure class=\"close\">", -1).length - 1);
        assertTrue(html.length() < 2_000_000, "characters: " + html.length());
        byte[] pdf = pdf(report);
        assertTrue(pdf.length < 2_000_000, "bytes: " + pdf.length);
        assertTrue(text(pdf).contains("500 Part p1 is narrow."));
    }

    @Test
    void no_heading_and_no_message_is_left_alone_at_the_foot_of_a_page() throws IOException {
        for (int before = 0; before < 12; before++) { // findings without a place, so that the page breaks elsewhere each time
            List<Result.ReportedFinding> findings = new ArrayList<>();
            for (int i = 0; i <= before; i++) {
                findings.add(Sample.finding(String.format("%08x", i), Sample.NARROW, 1 + i / 1000.0));
            }
            findings.add(Sample.finding("abcdef01", Sample.DECIDE, 1));
            try (PDDocument document = Loader.loadPDF(pdf(new Report(Sample.result(findings), Review.NONE, List.of(), DAY)))) {
                PDFTextStripper stripper = new PDFTextStripper();
                for (int page = 1; page <= document.getNumberOfPages(); page++) {
                    stripper.setStartPage(page);
                    stripper.setEndPage(page);
                    String text = stripper.getText(document);
                    assertEquals(text.split("is narrow\\.", -1).length, text.split("trial\\.(narrow|decide)\\R", -1).length, () -> "message and details apart: " + text);
                }
            }
        }
    }

    @Test
    void nothing_found_is_said() throws IOException {
        Report report = new Report(Sample.result(List.of()), Review.NONE, List.of(), DAY);
        assertTrue(text(pdf(report)).contains("Nothing was found.") && HtmlReport.of(report).contains("Nothing was found."));
        assertTrue(text(pdf(report)).contains("Not signed off.") && text(pdf(report)).contains("The result is not whole: late timed out."));
    }
}
