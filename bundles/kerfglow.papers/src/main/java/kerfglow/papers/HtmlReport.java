// SPDX-License-Identifier: Apache-2.0
package kerfglow.papers;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Base64;
import java.util.List;
import javax.imageio.ImageIO;
import kerfglow.host.Result;
import kerfglow.views.CloseUps;
import kerfglow.views.OverlayPicture;
import kerfglow.views.PlainText;

/** A report as one web page that needs nothing else: style and pictures are inside, there is no script. HTML, living standard. */
public final class HtmlReport {
    /** A drawing with more text than this is slow on a phone, and goes in as an image. Assumed. */
    private static final int MOST_SVG_CHARACTERS = 3_000_000;

    private final Report report;
    private final CloseUps closeUps;
    private final StringBuilder out = new StringBuilder();

    private HtmlReport(Report report) {
        this.report = report;
        this.closeUps = new CloseUps(report.result());
    }

    /** The page. */
    public static String of(Report report) {
        HtmlReport page = new HtmlReport(report);
        page.head();
        page.overview();
        page.index();
        page.findings();
        page.decisions();
        page.run();
        page.out.append("</main>\n</body>\n</html>\n");
        return page.out.toString();
    }

    private void head() {
        out.append("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n")
                .append("<meta name=\"color-scheme\" content=\"light dark\">\n<meta name=\"generator\" content=\"Kerfglow\">\n<title>").append(text(report.title())).append("</title>\n<style>\n").append(style()).append("</style>\n</head>\n<body>\n")
                .append("<header>\n<h1>").append(text(report.title())).append("</h1>\n<p class=\"counts\">").append(text(report.counts())).append("</p>\n<p>").append(text(report.verdict()))
                .append("</p>\n<nav aria-label=\"Parts of the report\">").append("<a href=\"#picture\">Picture</a> <a href=\"#index\">Findings</a> <a href=\"#marks\">Marks</a> ")
                .append("<a href=\"#waivers\">Waivers</a> <a href=\"#sign-off\">Sign-off</a> <a href=\"#checks\">What ran</a> <a href=\"#settings\">Settings</a> <a href=\"#notes\">Notes</a></nav>\n")
                .append("</header>\n<main>\n");
    }

    private static String style() {
        try (InputStream in = HtmlReport.class.getResourceAsStream("report.css")) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException missing) {
            throw new UncheckedIOException(missing);
        }
    }

    private void overview() {
        section("picture", "The proof");
        labelled(report.facts());
        OverlayPicture picture = OverlayPicture.inReport(report.result(), report.layers(), report.review());
        String svg = picture.svg("o");
        out.append("<figure class=\"overview\">\n").append(svg.length() <= MOST_SVG_CHARACTERS ? svg : image(picture.image()));
        int all = report.result().findings().size();
        out.append("<figcaption>").append(picture.numbered() == all ? "Numbers are those of the findings below."
                : "Numbers are those of the findings below; " + (all - picture.numbered()) + " of " + all + " concern the whole proof, or are outlined without number.")
                .append("</figcaption>\n</figure>\n</section>\n");
    }

    private static String image(BufferedImage image) {
        ByteArrayOutputStream png = new ByteArrayOutputStream();
        try {
            ImageIO.write(image, "png", png);
        } catch (IOException impossible) { // it is written to memory
            throw new UncheckedIOException(impossible);
        }
        return "<img alt=\"The proof with its findings\" width=\"" + image.getWidth() + "\" height=\"" + image.getHeight() + "\" src=\"data:image/png;base64,"
                + Base64.getEncoder().encodeToString(png.toByteArray()) + "\">\n";
    }

    private void index() {
        section("index", "Findings by weight and rule");
        if (report.groups().isEmpty()) {
            out.append("<p>Nothing was found.</p>\n");
        } else {
            out.append("<div class=\"wide\"><table>\n<thead><tr><th>No.</th><th>Weight</th><th>Check</th><th>What</th><th>Places</th></tr></thead>\n<tbody>\n");
            for (Report.Group group : report.groups()) {
                String word = group.example().severity().word();
                out.append("<tr><td><a href=\"#f").append(group.first()).append("\">").append(group.numbers()).append("</a></td><td class=\"").append(word).append("\">").append(word)
                        .append("</td><td>").append(text(group.check())).append("</td><td>").append(text(group.example().rule().summary())).append("</td><td>").append(group.places())
                        .append("</td></tr>\n");
            }
            out.append("</tbody>\n</table></div>\n");
        }
        out.append("</section>\n");
    }

    private void findings() {
        for (Report.Group group : report.groups()) {
            section("r" + group.first(), group.example().rule().summary());
            for (int i = 0; i < group.findings().size(); i++) {
                finding(group.first() + i, group.findings().get(i));
            }
            out.append("<p class=\"up\"><a href=\"#index\">All findings</a></p>\n</section>\n");
        }
    }

    private void finding(int number, Result.ReportedFinding finding) {
        out.append("<article id=\"f").append(number).append("\" class=\"").append(finding.severity().word()).append(report.review().isWaived(finding) ? " waived" : "")
                .append("\">\n<h3><span class=\"badge\">").append(number).append("</span> ").append(text(finding.message())).append("</h3>\n<div class=\"pair\">\n");
        closeUps.of(finding, number).ifPresent(closeUp -> {
            String places = Report.places(finding);
            out.append("<figure class=\"close\">\n").append(closeUp.svg("f" + number, "Close-up of finding " + number + ", scale " + closeUp.scale()))
                    .append("<figcaption>Scale ").append(closeUp.scale()).append(" when printed at full size").append(places.isEmpty() ? "" : "; " + places)
                    .append("</figcaption>\n</figure>\n");
        });
        labelled(report.details(finding));
        out.append("</div>\n</article>\n");
    }

    private void decisions() {
        table("marks", "Marks", List.of("", "What", "Who", "Text", "Settled"), report.marks(), "No marks.");
        table("waivers", "Waivers", List.of("Finding", "What was found", "Who", "Reason"), report.waivers(), "Nothing is waived.");
        table("sign-off", "Sign-off", List.of("Who", "Holds", "Remark", "Open then"), report.signOffs(), "Not signed off.");
    }

    private void run() {
        table("checks", "What ran and what did not", List.of("Check", "Looks for", "Ended", "What is missing", "Version"), report.checks(), "No check ran.");
        table("settings", "Settings that differ from the shop sheet", List.of("Setting", "For", "Value", "From", "Shop sheet"), report.otherSettings(), "None.");
        section("notes", "Notes");
        report.notes().forEach(note -> out.append("<p>").append(text(note)).append("</p>\n"));
        out.append("</section>\n");
    }

    private void section(String id, String heading) {
        out.append("<section id=\"").append(id).append("\">\n<h2>").append(text(heading)).append("</h2>\n");
    }

    private void labelled(List<Paper.Labelled> texts) {
        out.append("<dl>\n");
        texts.forEach(each -> out.append("<dt>").append(text(each.label())).append("</dt><dd>").append(text(each.text())).append("</dd>\n"));
        out.append("</dl>\n");
    }

    private void table(String id, String heading, List<String> columns, List<List<String>> rows, String none) {
        section(id, heading);
        if (rows.isEmpty()) {
            out.append("<p>").append(text(none)).append("</p>\n</section>\n");
            return;
        }
        out.append("<div class=\"wide\"><table>\n<thead><tr>");
        columns.forEach(column -> out.append(column.isEmpty() ? "<td></td>" : "<th>" + text(column) + "</th>"));
        out.append("</tr></thead>\n<tbody>\n");
        for (List<String> row : rows) {
            out.append("<tr>");
            row.forEach(cell -> out.append("<td>").append(text(cell)).append("</td>"));
            out.append("</tr>\n");
        }
        out.append("</tbody>\n</table></div>\n</section>\n");
    }

    /** Text that stays text whatever is in it; line breaks are kept. */
    private static String text(String text) {
        StringBuilder safe = new StringBuilder(text.length());
        PlainText.of(text).codePoints().forEach(each -> {
            switch (each) {
                case '<' -> safe.append("&lt;");
                case '>' -> safe.append("&gt;");
                case '&' -> safe.append("&amp;");
                case '"' -> safe.append("&quot;");
                case '\n' -> safe.append("<br>");
                default -> safe.appendCodePoint(each);
            }
        });
        return safe.toString();
    }
}
