// SPDX-License-Identifier: Apache-2.0
package kerfglow.acceptance;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.util.List;
import javax.imageio.ImageIO;
import javax.xml.XMLConstants;
import javax.xml.transform.stream.StreamSource;
import javax.xml.validation.SchemaFactory;
import nu.validator.messages.MessageEmitterAdapter;
import nu.validator.messages.TextMessageEmitter;
import nu.validator.validation.SimpleDocumentValidator;
import nu.validator.xml.SystemErrErrorHandler;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.verapdf.gf.foundry.VeraGreenfieldFoundryProvider;
import org.verapdf.pdfa.Foundries;
import org.verapdf.pdfa.PDFAParser;
import org.verapdf.pdfa.flavours.PDFAFlavour;
import org.verapdf.pdfa.results.ValidationResult;

/** What leaves the program, held by programs and schemas of others. */
class ReportCommandTest {
    private static final Path FAULTY = Kerfglow.TESTDATA.resolve("faulty-letters.svg");

    @TempDir
    private static Path folder;
    private static Path html;
    private static Path pdf;
    private static Kerfglow.Ran ran;

    @BeforeAll
    static void report() throws Exception {
        html = folder.resolve("out/faulty.html");
        pdf = folder.resolve("out/faulty.pdf");
        ran = Kerfglow.run("report", "--to", html.toString(), "--to", pdf.toString(), "--set", "router.least-stroke=3mm", "--layers", "router.uncut", FAULTY.toString());
    }

    private static String tool(String... command) throws IOException, InterruptedException {
        Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
        process.getOutputStream().close();
        String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertEquals(0, process.waitFor(), said);
        return said;
    }

    @Test
    void both_are_written_and_the_status_is_that_of_the_check() {
        assertEquals(1, ran.status(), ran::toString);
        assertTrue(ran.out().contains(html.toString()) && ran.out().contains(pdf.toString()), ran::toString);
        assertTrue(ran.err().isEmpty(), ran::err);
    }

    /** ISO 19005-2, level U, by veraPDF. */
    @Test
    void the_pdf_is_pdf_a() throws Exception {
        VeraGreenfieldFoundryProvider.initialise();
        try (InputStream in = Files.newInputStream(pdf); PDFAParser parser = Foundries.defaultInstance().createParser(in, PDFAFlavour.PDFA_2_U)) {
            ValidationResult result = Foundries.defaultInstance().createValidator(PDFAFlavour.PDFA_2_U, false).validate(parser);
            assertTrue(result.isCompliant(), () -> result.getTestAssertions().toString());
            assertTrue(result.getTotalAssertions() > 1000);
        }
    }

    /** Read back by poppler, which shares nothing with what wrote it. */
    @Test
    void the_pdf_reads_back_as_text_in_one_embedded_font_with_numbered_pages() throws Exception {
        String text = tool("pdftotext", "-enc", "UTF-8", pdf.toString(), "-").replaceAll("\\s+", " ");
        for (String words : List.of("Letters with one fault each", "The same outline is drawn twice", "measured", "required", "why", "The machine runs the line once for each copy", "do", "source",
                "scale 1:", "router.least-stroke", "3 mm", "command line", "Not signed off.", "local building code")) {
            assertTrue(text.contains(words), words + "\n" + text);
        }
        List<String> fonts = tool("pdffonts", pdf.toString()).lines().skip(2).toList();
        assertEquals(1, fonts.size(), fonts::toString);
        assertTrue(fonts.get(0).contains("LiberationSans") && fonts.get(0).matches(".* yes yes yes .*"), fonts.get(0) + ": embedded, a subset, with a map to Unicode");
        String info = tool("pdfinfo", pdf.toString());
        int pages = Integer.parseInt(info.lines().filter(line -> line.startsWith("Pages:")).findFirst().orElseThrow().replaceAll("\\D", ""));
        assertTrue(info.contains("612 x 792 pts (letter)"), "inches are read here, so it is Letter: " + info);
        assertTrue(pages > 2 && text.contains("page 1 of " + pages) && text.contains("page " + pages + " of " + pages), info);
    }

    /** The area in the colour of the letters says that the picture is there, in the size that fits the page. */
    @Test
    void the_pdf_shows_the_proof_as_a_picture() throws Exception {
        Path page = folder.resolve("page");
        tool("pdftoppm", "-r", "100", "-f", "1", "-l", "1", "-png", "-singlefile", pdf.toString(), page.toString());
        BufferedImage image = ImageIO.read(folder.resolve("page.png").toFile());
        assertEquals(850, image.getWidth());
        int rgb = Integer.parseInt(Files.readString(FAULTY).replaceAll("(?s).*fill[=:]\"?#([0-9a-fA-F]{6}).*", "$1"), 16);
        int count = 0;
        for (int y = 0; y < image.getHeight(); y++) {
            for (int x = 0; x < image.getWidth(); x++) {
                count += (image.getRGB(x, y) & 0xffffff) == rgb ? 1 : 0;
            }
        }
        assertTrue(count > 5000, "dots in the colour of the letters: " + count);
    }

    /** By the W3C's validator, with its own schema for HTML. */
    @Test
    void the_web_page_is_valid_html() throws Exception {
        ByteArrayOutputStream said = new ByteArrayOutputStream();
        SimpleDocumentValidator validator = new SimpleDocumentValidator();
        MessageEmitterAdapter messages = new MessageEmitterAdapter(null, validator.getSourceCode(), false, null, 0, true, new TextMessageEmitter(said, true));
        messages.setErrorsOnly(true);
        validator.setUpMainSchema("http://s.validator.nu/html5-all.rnc", new SystemErrErrorHandler());
        validator.setUpValidatorAndParsers(messages, true, false);
        messages.start(null);
        validator.checkHtmlFile(html.toFile(), true);
        messages.end("", "", "");
        assertEquals(0, messages.getErrors() + messages.getFatalErrors(), () -> said.toString(StandardCharsets.UTF_8));
        String page = Files.readString(html);
        assertTrue(page.contains("<h1>Letters with one fault each</h1>") && page.contains("What the bit leaves uncut"), "the layer's title stands in the legend");
    }

    /** Against the schema of OASIS for SARIF 2.1.0. */
    @Test
    void sarif_keeps_to_the_published_schema() throws Exception {
        Kerfglow.Ran check = Kerfglow.run("check", "--format", "sarif", FAULTY.toString(), folder.resolve("none.svg").toString());
        assertEquals(2, check.status(), check::toString);
        JsonNode log = new ObjectMapper().readTree(check.out());
        try (InputStream schema = ReportCommandTest.class.getResourceAsStream("/schema/sarif-schema-2.1.0.json")) {
            assertEquals(List.of(), List.copyOf(JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V7).getSchema(schema).validate(log)));
        }
        assertEquals(2, log.get("runs").size());
        assertTrue(log.get("runs").get(0).get("results").size() > 5);
    }

    @Test
    void junit_keeps_to_its_schema_and_fails_where_the_status_does() throws Exception {
        Kerfglow.Ran check = Kerfglow.run("check", "--format", "junit", FAULTY.toString());
        assertEquals(1, check.status());
        SchemaFactory.newInstance(XMLConstants.W3C_XML_SCHEMA_NS_URI).newSchema(Kerfglow.TOP.resolve("bundles/kerfglow.views/src/main/resources/kerfglow/views/junit.xsd").toFile())
                .newValidator().validate(new StreamSource(new StringReader(check.out())));
        assertTrue(check.out().contains("<failure type=\"stop\""), check::out);
    }

    @Test
    void something_newer_is_kept_until_the_person_says_so() throws Exception {
        Path target = Files.writeString(folder.resolve("kept.html"), "an hour of work");
        Kerfglow.Ran refused = Kerfglow.run("report", "--to", target.toString(), FAULTY.toString());
        assertEquals(2, refused.status());
        assertTrue(refused.err().contains("kept.html") && refused.err().contains("--replace"), refused::err);
        assertEquals("an hour of work", Files.readString(target));
        assertEquals(1, Kerfglow.run("report", "--replace", "--to", target.toString(), FAULTY.toString()).status());
        byte[] first = Files.readAllBytes(target);
        FileTime time = Files.getLastModifiedTime(target);
        assertEquals(1, Kerfglow.run("report", "--to", target.toString(), FAULTY.toString()).status(), "the same again is no complaint");
        assertArrayEquals(first, Files.readAllBytes(target));
        assertEquals(time, Files.getLastModifiedTime(target));
    }

    @Test
    void wrong_words_are_told_with_what_would_be_right() throws Exception {
        refused("ends in .html or .pdf", "report", "--to", folder.resolve("x.doc").toString(), FAULTY.toString());
        refused("there is no layer nothing", "report", "--to", folder.resolve("x.html").toString(), "--layers", "nothing", FAULTY.toString());
        refused("--to", "report", FAULTY.toString());
        assertFalse(Files.exists(folder.resolve("x.doc")) || Files.exists(folder.resolve("x.html")));
    }

    private static void refused(String why, String... words) throws Exception {
        Kerfglow.Ran wrong = Kerfglow.run(words);
        assertEquals(2, wrong.status(), wrong::toString);
        assertTrue(wrong.err().contains(why) && !wrong.err().contains("\tat "), wrong::err);
    }

    /** A file system of its own, mounted in a name space of its own, so that it is gone with the process. */
    private static String onDisk(String options, String before) throws IOException, InterruptedException {
        assumeTrue(new ProcessBuilder("unshare", "-m", "true").start().waitFor() == 0, "this machine lets nobody mount a file system to fill");
        Path disk = Files.createDirectories(folder.resolve("disk"));
        String script = "mount -t tmpfs -o size=64k tmpfs \"$1\" && printf old >\"$1/report.pdf\" && touch -d 2000-01-01 \"$1/report.pdf\" && " + before + " mount -o remount," + options + " \"$1\" || exit 99\n"
                + "\"$2\" report --to \"$1/report.pdf\" \"$3\" 2>&1; echo \"status $?\"; ls -A \"$1\"; cat \"$1/report.pdf\"";
        return tool("unshare", "-m", "sh", "-c", script, "sh", disk.toString(), Kerfglow.program().toString(), FAULTY.toString());
    }

    @Test
    void a_full_disk_is_told_and_what_was_there_stays() throws Exception {
        String said = onDisk("rw", "head -c 45000 /dev/zero >\"$1/fill\" &&");
        assertTrue(said.contains("report.pdf cannot be written: the disk is full") && said.contains("status 2\nfill\nreport.pdf\nold"), said);
    }

    @Test
    void a_folder_that_may_only_be_read_is_told_and_what_was_there_stays() throws Exception {
        String said = onDisk("ro", "");
        assertTrue(said.contains("report.pdf cannot be written: ") && said.contains("may only be read") && said.contains("status 2\nreport.pdf\nold"), said);
    }
}
