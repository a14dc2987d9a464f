// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.desk;

import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import kerfglow.job.ReviewedResult;
import kerfglow.outlines.DxfOutlines;
import kerfglow.outlines.OutlineSet;
import kerfglow.outlines.SvgOutlines;
import kerfglow.papers.HtmlReport;
import kerfglow.papers.Paper;
import kerfglow.papers.PdfReport;
import kerfglow.papers.Report;
import kerfglow.views.Review;
import kerfglow.worksheet.MountingPattern;
import kerfglow.worksheet.PatternMedia;
import kerfglow.worksheet.Worksheet;
import kerfglow.worksheet.WorksheetCsv;
import kerfglow.worksheet.WorksheetJson;
import kerfglow.worksheet.WorksheetPdf;

/** What can be handed on from the result that is shown: to the customer, to the floor, to CAD, to the wall. */
public enum FloorFile {
    /** For the customer and the next reviewer. */
    REPORT("re&port", List.of(new Form("PDF", ".pdf", (result, now, out) -> PdfReport.write(report(result, now), out)),
            new Form("Web page", ".html", (result, now, out) -> out.write(HtmlReport.of(report(result, now)).getBytes(StandardCharsets.UTF_8))))),
    /** For the floor. */
    WORKSHEET("&worksheet", List.of(new Form("PDF", ".pdf", (result, now, out) -> WorksheetPdf.write(worksheet(result, now), Paper.Size.of(result.result().units()), now, out)),
            new Form("Table", ".csv", (result, now, out) -> WorksheetCsv.write(worksheet(result, now), utf8(out))),
            new Form("JSON", ".json", (result, now, out) -> WorksheetJson.write(worksheet(result, now), utf8(out))))),
    /** For CAD. */
    OUTLINES("o&utlines", List.of(new Form("DXF", ".dxf", (result, now, out) -> DxfOutlines.write(outlines(result), utf8(out))),
            new Form("SVG", ".svg", (result, now, out) -> SvgOutlines.write(outlines(result), utf8(out))))),
    /** For the wall. */
    PATTERN("moun&ting pattern", List.of(pattern("Pages of A4", PatternMedia.parse("a4")), pattern("Pages of A3", PatternMedia.parse("a3")), pattern("Letter pages", PatternMedia.parse("letter")),
            pattern("Roll of 610 mm", PatternMedia.roll(610)), pattern("Roll of 914 mm", PatternMedia.roll(914))));

    private final String menuWords;
    private final List<Form> forms;

    FloorFile(String menuWords, List<Form> forms) {
        this.menuWords = menuWords;
        this.forms = forms;
    }

    /** Writes one file of a result. */
    interface Content {
        void write(ReviewedResult result, Instant now, OutputStream out) throws IOException;
    }

    /**
     * One form that it comes in.
     *
     * @param name for a person
     * @param ending of its file, with the point
     * @param content writes it
     */
    public record Form(String name, String ending, Content content) {
        /** Writes; the stream stays open. */
        public void write(ReviewedResult result, Instant now, OutputStream out) throws IOException {
            content.write(result, now, out);
        }

        /** The file with this form's ending, which is added where another stands or none. */
        public Path named(Path file) {
            return file.toString().toLowerCase(Locale.ROOT).endsWith(ending) ? file : Path.of(file + ending);
        }
    }

    /** What it is called, in small letters. */
    public String title() {
        return menuWords.replace("&", "");
    }

    /** The same, with a mark before the letter that picks it in the menu of the job. */
    public String menuWords() {
        return menuWords;
    }

    /** In which forms it comes, the usual one first. */
    public List<Form> forms() {
        return forms;
    }

    /** A name for it beside the proof, without ending. */
    public String nameFor(Path proof) {
        return proof.getFileName().toString().replaceFirst("\\.[^.]*$", "") + "." + title().replace(' ', '-');
    }

    /** The form that was meant: the one whose ending the name has, else the one that was picked from the list. */
    public Form formOf(Path file, int picked) {
        Form listed = forms.get(Math.max(0, Math.min(picked, forms.size() - 1)));
        String name = file.toString().toLowerCase(Locale.ROOT);
        Optional<Form> byEnding = name.endsWith(listed.ending()) ? Optional.empty() : forms.stream().filter(form -> name.endsWith(form.ending())).findFirst();
        return byEnding.orElse(listed);
    }

    private static Form pattern(String name, PatternMedia media) {
        return new Form(name, ".pdf", (result, now, out) -> MountingPattern.write(result.result(), media, now, out));
    }

    private static Report report(ReviewedResult result, Instant now) {
        return new Report(result.result(), Review.of(result), List.of(), day(now));
    }

    private static Worksheet worksheet(ReviewedResult result, Instant now) {
        return Worksheet.of(result, "", day(now).toString());
    }

    private static OutlineSet outlines(ReviewedResult result) {
        return OutlineSet.of(result.result(), Set.of());
    }

    private static LocalDate day(Instant now) {
        return LocalDate.ofInstant(now, ZoneOffset.UTC);
    }


    private static Writer utf8(OutputStream out) {
        return new OutputStreamWriter(out, StandardCharsets.UTF_8);
    }
}
