// SPDX-License-Identifier: Apache-2.0
package kerfglow.worksheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.StringWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;
import javax.xml.parsers.DocumentBuilderFactory;
import kerfglow.api.Severity;
import kerfglow.job.ReviewedResult;
import kerfglow.outlines.DxfOutlines;
import kerfglow.outlines.OutlineSet;
import kerfglow.outlines.SvgOutlines;
import kerfglow.papers.HtmlReport;
import kerfglow.papers.Report;
import kerfglow.views.JsonView;
import kerfglow.views.JunitView;
import kerfglow.views.OverlayPicture;
import kerfglow.views.Review;
import kerfglow.views.SarifView;
import kerfglow.views.TextView;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Names of layers, elements, sheets and titles that try to break out of every form in which a result is written. */
class HostileNamesTest {
    /** C0 but tab, line feed and carriage return; DEL; C1 (ECMA-48); overrides and isolates (Unicode UAX #9). */
    private static final Pattern COMMANDS = Pattern.compile("[\\x00-\\x08\\x0b\\x0c\\x0e-\\x1f\\x7f-\\x9f\\u202a-\\u202e\\u2066-\\u2069]");
    /** XML 1.1 lets controls through as references (its section 2.2); C1 and overrides come through 1.0 too. */
    private static final String NAME = "a&#27;[2J&#x9b;31m\u202egvs]]&gt;&lt;script&gt;alert(1)&lt;/script&gt;&quot;'--%n{0}[x](y)\\U+0041&#10;  0&#13;&#10;EOF";
    @TempDir
    private Path folder;
    private ReviewedResult reviewed;

    private interface Writing {
        void to(Writer out) throws IOException;
    }

    @BeforeEach
    void check() throws Exception {
        Path proof = folder.resolve("sign.svg");
        Files.writeString(proof, "<?xml version='1.1'?><svg xmlns='http://www.w3.org/2000/svg' width='90mm' height='60mm' viewBox='0 0 90 60'><title>" + NAME + "</title><g id='" + NAME.replace("'", "")
                + "'><path id='" + NAME.replace("'", "") + "b' d='M5 5h30v40h-1v-30h-29z'/><path data-part='" + NAME.replace("'", "") + "' d='M45 5h30v1h-30z' onclick='x'/></g></svg>");
        Files.writeString(folder.resolve("sign.job.yaml"), "title: \"t\\e[2J\\u009b\\u202e</title>\\r\\n  0\\r\\nEOF\"\nroles: [{layer: \"*\", role: face}]\n");
        reviewed = DemoRun.of(proof, List.of("artwork", "router", "fit", "sheet"));
        assertFalse(reviewed.result().findings().isEmpty(), "the names must stand in findings");
    }

    private static String written(Writing writing) throws IOException {
        StringWriter out = new StringWriter();
        writing.to(out);
        String text = out.toString();
        assertFalse(COMMANDS.matcher(text).find(), () -> "a command for a terminal in " + COMMANDS.matcher(text).replaceAll("<HERE>"));
        return text;
    }

    private static void requireXml(String text) throws Exception {
        DocumentBuilderFactory.newDefaultInstance().newDocumentBuilder().parse(new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8)));
    }

    private static void requireJson(String text) throws IOException {
        assertTrue(new ObjectMapper().readTree(text).isObject());
    }

    private Report report() {
        return new Report(reviewed.result(), Review.of(reviewed), List.of(), LocalDate.of(2026, 1, 31));
    }

    @Test
    void text_commands_no_terminal() throws IOException {
        String text = written(out -> out.write(TextView.of(reviewed, false)));
        assertTrue(text.contains("a?[2J"), text);
        String coloured = TextView.of(reviewed, true);
        assertFalse(COMMANDS.matcher(coloured.replaceAll("\u001b\\[[0-9;]*m", "")).find(), "colours are the only commands");
    }

    @Test
    void documents_stay_whole() throws Exception {
        requireJson(written(out -> JsonView.write(reviewed, out)));
        requireJson(written(out -> SarifView.write(List.of(reviewed), List.of(new JsonView.Unusable("\u001b[2J", "\u009b")), "1", out)));
        requireJson(written(out -> WorksheetJson.write(Worksheet.of(reviewed, "B", "2026-01-31"), out)));
        requireXml(written(out -> JunitView.write(List.of(reviewed), List.of(new JsonView.Unusable("\u001b[2J", "\uffff")), Severity.INFO, out)));
        requireXml(written(out -> out.write(OverlayPicture.svg(reviewed.result(), List.of()))));
        requireXml(written(out -> SvgOutlines.write(OutlineSet.of(reviewed.result(), Set.of()), out)));
        written(out -> WorksheetCsv.write(Worksheet.of(reviewed, "B", "2026-01-31"), out));
    }

    @Test
    void a_worksheet_runs_no_formula() throws Exception {
        Path proof = Files.writeString(folder.resolve("formula.svg"), "<svg xmlns='http://www.w3.org/2000/svg' width='90mm' height='60mm' viewBox='0 0 90 60'><rect id='=1+1' width='30' height='30'/></svg>");
        Files.writeString(folder.resolve("formula.job.yaml"), "title: '=HYPERLINK(\"http://127.0.0.1/\")'\nroles: [{layer: \"*\", role: face}]\n");
        ReviewedResult odd = DemoRun.of(proof, List.of("router", "sheet"));
        String csv = written(out -> WorksheetCsv.write(Worksheet.of(odd, "-2+3", "2026-01-31"), out));
        assertTrue(csv.contains("\"'=HYPERLINK(\"\"http") && csv.contains(",'-2+3,"), csv);
        assertFalse(Pattern.compile("(^|,)\"?[=@+]", Pattern.MULTILINE).matcher(csv).find(), csv);
    }

    @Test
    void the_page_holds_no_script() throws IOException {
        String page = written(out -> out.write(HtmlReport.of(report())));
        assertFalse(page.contains("<script"), "a name became an element");
        assertTrue(page.contains("&lt;script&gt;"), "the name is not shown");
    }

    @Test
    void a_drawing_for_cad_ends_where_it_ends() throws IOException {
        String dxf = written(out -> DxfOutlines.write(OutlineSet.of(reviewed.result(), Set.of()), out));
        String[] lines = dxf.split("\r\n", -1);
        assertEquals(1, List.of(lines).stream().filter("EOF"::equals).count());
        for (int i = 0; i + 1 < lines.length; i += 2) {
            assertTrue(lines[i].strip().matches("\\d{1,4}"), lines[i] + " is no group code");
        }
    }
}
