// SPDX-License-Identifier: Apache-2.0
package kerfglow.fuzz;

import com.google.gson.JsonElement;
import com.google.gson.JsonParser;
import com.google.gson.Strictness;
import com.google.gson.stream.JsonReader;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.StringReader;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;
import javax.xml.XMLConstants;
import javax.xml.parsers.ParserConfigurationException;
import javax.xml.parsers.SAXParserFactory;
import kerfglow.api.Severity;
import kerfglow.host.Result;
import kerfglow.job.ReviewedResult;
import kerfglow.outlines.DxfOutlines;
import kerfglow.outlines.OutlineSet;
import kerfglow.outlines.SvgOutlines;
import kerfglow.papers.HtmlReport;
import kerfglow.papers.PdfReport;
import kerfglow.papers.Report;
import kerfglow.views.JsonView;
import kerfglow.views.JunitView;
import kerfglow.views.OverlayPicture;
import kerfglow.views.Review;
import kerfglow.views.SarifView;
import kerfglow.views.TextView;
import kerfglow.worksheet.Worksheet;
import kerfglow.worksheet.WorksheetCsv;
import kerfglow.worksheet.WorksheetJson;
import org.jsoup.parser.Parser;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;
import org.xml.sax.helpers.DefaultHandler;

/** What is written of a result, read again by a reader that did not write it: gson for JSON, the JDK for XML, jsoup for HTML. */
final class Forms {
    static final int COUNT = 11;
    private static final LocalDate DAY = LocalDate.of(2026, 1, 31);
    /** What a terminal takes for a command: the controls of ECMA-48 (C0 but tab and line feed, DEL, C1), and the characters that turn the direction of text (Unicode UAX #9). */
    private static final Pattern CONTROLS = Pattern.compile("[\\x00-\\x08\\x0b-\\x1f\\x7f-\\x9f\\u202a-\\u202e\\u2066-\\u2069]");
    private static final Pattern GROUP_CODE = Pattern.compile("\\s*\\d{1,4}");

    private Forms() {
    }

    static void requireReadable(int form, Result result) throws IOException, SAXException, ParserConfigurationException {
        ReviewedResult reviewed = ReviewedResult.undecided(result);
        StringWriter out = new StringWriter();
        switch (form) {
            case 0 -> requirePlain(TextView.of(reviewed, false));
            case 1 -> {
                JsonView.write(reviewed, out);
                requireJson(out.toString());
            }
            case 2 -> {
                SarifView.write(List.of(reviewed), List.of(), "1", out);
                requireJson(out.toString());
            }
            case 3 -> {
                JunitView.write(List.of(reviewed), List.of(), Severity.STOP, out);
                requireXml(out.toString());
            }
            case 4 -> requireXml(OverlayPicture.svg(result, List.of()));
            case 5 -> requireHtml(HtmlReport.of(report(reviewed)));
            case 6 -> {
                DxfOutlines.write(OutlineSet.of(result, Set.of()), out);
                requireDxf(out.toString());
            }
            case 7 -> {
                SvgOutlines.write(OutlineSet.of(result, Set.of()), out);
                requireXml(out.toString());
            }
            case 8 -> {
                WorksheetJson.write(Worksheet.of(reviewed, "B", DAY.toString()), out);
                requireJson(out.toString());
            }
            case 9 -> {
                WorksheetCsv.write(Worksheet.of(reviewed, "B", DAY.toString()), out);
                Guard.require(out.toString().endsWith("\r\n"), "the last line of the worksheet has no end");
            }
            default -> {
                ByteArrayOutputStream pdf = new ByteArrayOutputStream();
                PdfReport.write(report(reviewed), pdf);
                String text = pdf.toString(StandardCharsets.ISO_8859_1);
                Guard.require(text.startsWith("%PDF-") && text.strip().endsWith("%%EOF"), "no PDF");
            }
        }
    }

    private static Report report(ReviewedResult reviewed) {
        return new Report(reviewed.result(), Review.of(reviewed), List.of(), DAY);
    }

    static void requirePlain(String text) {
        Guard.require(!CONTROLS.matcher(text).find(), "control characters reach the terminal");
    }

    private static void requireJson(String text) throws IOException {
        JsonReader reader = new JsonReader(new StringReader(text));
        reader.setStrictness(Strictness.STRICT);
        JsonElement read = JsonParser.parseReader(reader);
        Guard.require(read.isJsonObject(), "the document is no object");
    }

    private static void requireXml(String text) throws IOException, SAXException, ParserConfigurationException {
        SAXParserFactory factory = SAXParserFactory.newDefaultInstance();
        factory.setNamespaceAware(true);
        factory.setFeature(XMLConstants.FEATURE_SECURE_PROCESSING, true);
        factory.newSAXParser().parse(new InputSource(new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8))), new DefaultHandler());
    }

    private static void requireHtml(String text) {
        Parser parser = Parser.htmlParser().setTrackErrors(5);
        parser.parseInput(text, "");
        Guard.require(parser.getErrors().isEmpty(), "HTML: " + parser.getErrors());
        Guard.require(!text.toLowerCase(java.util.Locale.ROOT).contains("<script"), "HTML with a script");
    }

    /** Pairs of a group code and a value, sections that end, an end of the file (DXF reference, "ASCII DXF files"). */
    private static void requireDxf(String text) {
        String[] lines = text.split("\r\n", -1);
        Guard.require(lines.length % 2 == 1 && lines[lines.length - 1].isEmpty(), "DXF: an odd number of lines");
        int open = 0;
        for (int i = 0; i + 1 < lines.length; i += 2) {
            Guard.require(GROUP_CODE.matcher(lines[i]).matches(), "DXF: line " + (i + 1) + " is no group code");
            requirePlain(lines[i + 1]);
            Guard.require(lines[i + 1].indexOf('\n') < 0, "DXF: a line feed in a value");
            open += lines[i].strip().equals("0") ? lines[i + 1].equals("SECTION") ? 1 : lines[i + 1].equals("ENDSEC") ? -1 : 0 : 0;
        }
        Guard.require(open == 0 && lines[lines.length - 2].equals("EOF"), "DXF: a section or the file does not end");
    }
}
