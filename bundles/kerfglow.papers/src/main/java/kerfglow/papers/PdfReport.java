// SPDX-License-Identifier: Apache-2.0
package kerfglow.papers;

import java.io.IOException;
import java.io.OutputStream;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import kerfglow.host.Result;
import kerfglow.views.CloseUp;
import kerfglow.views.CloseUps;
import kerfglow.views.FindingText;
import kerfglow.views.OverlayPicture;

/** A report on paper, A4 or, where inches are read, Letter. */
public final class PdfReport {
    /** A bookmark is no longer than this. */
    private static final int BOOKMARK_CHARACTERS = 70;
    /** Room for the lines above a close-up, so that they stay together. */
    private static final double ABOVE_MM = 14;

    private final Report report;
    private final CloseUps closeUps;
    private final Paper paper;

    private PdfReport(Report report, Paper paper) {
        this.report = report;
        this.closeUps = new CloseUps(report.result());
        this.paper = paper;
    }

    /** Writes the report as a PDF; the stream stays open. */
    public static void write(Report report, OutputStream out) throws IOException {
        Paper.Size size = Paper.Size.of(report.result().units());
        Paper.About about = new Paper.About(report.title(), "What was found on " + FindingText.fileName(report.result()), report.footer(), size, false,
                report.day().atStartOfDay(ZoneOffset.UTC).toInstant());
        try (Paper paper = new Paper(about)) {
            new PdfReport(report, paper).set();
            paper.write(out);
        }
    }

    private void set() throws IOException {
        paper.heading(1, report.title());
        paper.paragraph(report.counts(), Paper.Style.STRONG);
        paper.paragraph(report.verdict());
        paper.labelled(report.facts());
        picture();
        index();
        findings();
        table("Marks", List.of(new Paper.Column("", 0.5), new Paper.Column("What", 1.2), new Paper.Column("Who", 2), new Paper.Column("Text", 5), new Paper.Column("Settled", 2)),
                report.marks(), "No marks.");
        table("Waivers", List.of(new Paper.Column("Finding", 1), new Paper.Column("What was found", 4), new Paper.Column("Who", 2), new Paper.Column("Reason", 4)),
                report.waivers(), "Nothing is waived.");
        table("Sign-off", List.of(new Paper.Column("Who", 2), new Paper.Column("Holds", 3), new Paper.Column("Remark", 3), new Paper.Column("Open then", 5)),
                report.signOffs(), "Not signed off.");
        table("What ran and what did not", List.of(new Paper.Column("Check", 1.5), new Paper.Column("Looks for", 4), new Paper.Column("Ended", 1.5),
                new Paper.Column("What is missing", 5), new Paper.Column("Version", 1.5)), report.checks(), "No check ran.");
        table("Settings that differ from the shop sheet", List.of(new Paper.Column("Setting", 3), new Paper.Column("For", 2), new Paper.Column("Value", 2),
                new Paper.Column("From", 3), new Paper.Column("Shop sheet", 2)), report.otherSettings(), "None.");
        paper.heading(2, "Notes");
        for (String note : report.notes()) {
            paper.paragraph(note);
        }
        if (paper.lacksCharacters()) {
            paper.paragraph("A lozenge (◊) stands for a character that the font of this document does not have; the web page and the data have the character itself.");
        }
    }

    private void picture() throws IOException {
        OverlayPicture picture = OverlayPicture.inReport(report.result(), report.layers(), report.review());
        double width = Math.min(paper.widthMm(), paper.pageHeightMm() * picture.width() / picture.height());
        paper.space(3);
        paper.picture(width, width * picture.height() / picture.width(), picture.width(), picture::draw);
        int all = report.result().findings().size();
        if (picture.numbered() < all) {
            paper.paragraph("The picture numbers " + picture.numbered() + " of " + all + " findings; the others concern the whole proof, or are outlined without number.", Paper.Style.SMALL);
        }
    }

    private void index() throws IOException {
        List<List<String>> rows = report.groups().stream().map(group -> List.of(group.numbers(), group.example().severity().word(), group.check(), group.example().rule().summary(),
                Integer.toString(group.places()))).toList();
        table("Findings by weight and rule", List.of(new Paper.Column("No.", 1.2), new Paper.Column("Weight", 1.2), new Paper.Column("Check", 1.6), new Paper.Column("What", 7),
                new Paper.Column("Places", 1.2, true)), rows, "Nothing was found.");
    }

    private void findings() throws IOException {
        for (Report.Group group : report.groups()) {
            paper.together(ABOVE_MM + heightMm(group.example(), closeUps.of(group.example(), group.first())));
            paper.heading(2, group.example().rule().summary());
            for (int i = 0; i < group.findings().size(); i++) {
                finding(group.first() + i, group.findings().get(i));
            }
        }
    }

    private void finding(int number, Result.ReportedFinding finding) throws IOException {
        Optional<CloseUp> closeUp = closeUps.of(finding, number);
        paper.together(heightMm(finding, closeUp));
        paper.bookmark(3, shortened(number + ": " + finding.message()));
        String places = Report.places(finding);
        paper.numbered(number, finding.message() + (places.isEmpty() ? "" : " The picture shows " + places + "."), Paper.Style.STRONG);
        if (closeUp.isPresent()) {
            paper.beside(CloseUp.WIDTH_MM, CloseUp.HEIGHT_MM, CloseUp.WIDTH_MM, closeUp.get()::draw, report.details(finding));
        } else {
            paper.labelled(report.details(finding));
        }
        paper.space(2);
    }

    /** What a finding takes with the lines above it, so that these are not left alone at the foot of a page. */
    private double heightMm(Result.ReportedFinding finding, Optional<CloseUp> closeUp) {
        double details = paper.labelledHeightMm(closeUp.isPresent() ? CloseUp.WIDTH_MM : 0, report.details(finding));
        return ABOVE_MM + (closeUp.isPresent() ? Math.max(CloseUp.HEIGHT_MM, details) : details);
    }

    private static String shortened(String text) {
        return text.codePointCount(0, text.length()) <= BOOKMARK_CHARACTERS ? text : text.substring(0, text.offsetByCodePoints(0, BOOKMARK_CHARACTERS - 1)) + "…";
    }

    private void table(String heading, List<Paper.Column> columns, List<List<String>> rows, String none) throws IOException {
        paper.heading(2, heading);
        if (rows.isEmpty()) {
            paper.paragraph(none);
        } else {
            paper.table(columns, rows);
        }
    }
}
