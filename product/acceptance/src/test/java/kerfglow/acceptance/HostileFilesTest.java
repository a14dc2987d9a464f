// SPDX-License-Identifier: Apache-2.0
package kerfglow.acceptance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.StringReader;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.SocketTimeoutException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import java.util.zip.GZIPOutputStream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import javax.imageio.ImageIO;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.xml.sax.InputSource;

/**
 * A folder of files that mean harm, through every form that the program writes. Each that cannot be used is refused in one line; each that can be is in every
 * form; nobody is called, no other file is read, and what is written is read again by a program that is not ours.
 */
class HostileFilesTest {
    /** For all of them; the limit for one is 10 s (BadInputTest). */
    private static final double LIMIT_SECONDS = 100;
    private static final String SECRET = "a-secret-of-another-file";
    /** What a terminal takes for a command (ECMA-48), and what turns text (Unicode UAX #9). */
    private static final Pattern COMMANDS = Pattern.compile("[\\x00-\\x08\\x0b\\x0c\\x0e-\\x1f\\x7f-\\x9f\\u202a-\\u202e\\u2066-\\u2069]");
    private static final String SVG = "<svg xmlns='http://www.w3.org/2000/svg' xmlns:xlink='http://www.w3.org/1999/xlink' width='100mm' height='100mm' viewBox='0 0 100 100'>";
    private static final String SOUND = "<rect x='20' y='20' width='60' height='60'/></svg>";
    /** Through XML 1.1 controls come as references (its section 2.2). */
    private static final String NAME = "&#27;[2J&#x9b;31m\u202egvs]]&gt;&lt;script&gt;alert(1)&lt;/script&gt;&quot;&apos;--%n{0}[x](y)&#13;&#10;  0&#13;&#10;EOF";

    /** The checks that find something in these; all run for the text. */
    private static final String CHECKS = "artwork,router,fit,sheet";

    @TempDir
    private static Path folder;
    private static Path proofs;
    private static ServerSocket nobody;
    /** Name of each file that must be refused, and words of the refusal. */
    private static final Map<String, String> REFUSED = new LinkedHashMap<>();
    private static int usable;

    @BeforeAll
    static void layOut() throws Exception {
        proofs = Files.createDirectory(folder.resolve("proofs"));
        nobody = new ServerSocket(0, 50, InetAddress.getLoopbackAddress());
        String url = "http://127.0.0.1:" + nobody.getLocalPort() + "/";
        Path secret = Files.writeString(folder.resolve("secret.svg"), SVG + "<g id='" + SECRET + "'><rect id='a' width='50' height='50'/></g></svg>");
        Files.createDirectory(folder.resolve("a")); // what path traversal would have to pass through
        harmful(url, secret);
        odd(url, secret);
    }

    @AfterAll
    static void nobodyWasCalled() throws IOException {
        nobody.setSoTimeout(1);
        try {
            nobody.accept().close();
            throw new AssertionError("the program called " + nobody.getLocalPort());
        } catch (SocketTimeoutException silent) {
            nobody.close();
        }
    }

    private static void refused(String name, byte[] content, String words) throws IOException {
        Files.write(proofs.resolve(name + ".svg"), content);
        REFUSED.put(name + ".svg", words);
    }

    private static void refused(String name, String content, String words) throws IOException {
        refused(name, content.getBytes(StandardCharsets.UTF_8), words);
    }

    private static void harmful(String url, Path secret) throws IOException {
        StringBuilder bomb = new StringBuilder("<!DOCTYPE svg [<!ENTITY a0 'ha'>");
        StringBuilder uses = new StringBuilder(SVG + "<defs><rect id='r0' width='1' height='1'/>");
        for (int i = 1; i < 30; i++) {
            bomb.append("<!ENTITY a").append(i).append(" '").append(("&a" + (i - 1) + ";").repeat(10)).append("'>");
            uses.append("<g id='r").append(i).append("'>").append(("<use href='#r" + (i - 1) + "'/>").repeat(10)).append("</g>");
        }
        refused("entities", bomb + "]>" + SVG + "<text>&a29;</text></svg>", "entity");
        refused("entity-file", "<!DOCTYPE svg [<!ENTITY x SYSTEM '" + secret.toUri() + "'>]>" + SVG + "&x;</svg>", "outside");
        refused("entity-call", "<!DOCTYPE svg [<!ENTITY % x SYSTEM '" + url + "x.dtd'> %x;]>" + SVG + "</svg>", "outside");
        refused("uses", uses + "</defs><use href='#r29'/></svg>", "limit on use expansion");
        refused("use-circle", SVG + "<g id='a'><use href='#b'/></g><g id='b'><use href='#a'/></g></svg>", "use loop");
        refused("deep", SVG + "<g>".repeat(100_000) + "</g>".repeat(100_000) + "</svg>", "limit on nesting");
        refused("many", SVG + "<g/>".repeat(300_000) + "</svg>", "limit on elements");
        refused("long-path", SVG + "<path d='M0 0" + "L1 1".repeat(4_500_000) + "'/></svg>", "limit on");
        refused("truncated", SVG + "<g><rect width='1", "line 1");
        refused("null", SVG + "<rect id='\0' width='1' height='1'/></svg>", "line 1");
        refused("latin", (SVG + "<title>Caf\u00e9</title></svg>").getBytes(StandardCharsets.ISO_8859_1), "encoding");
        refused("no-encoding", "<?xml version='1.0' encoding='x-none'?>" + SVG + SOUND, "encoding");
        refused("packed-bomb", packed(new byte[200 << 20]), "limit on file size");
        byte[] whole = packed((SVG + SOUND).getBytes(StandardCharsets.UTF_8));
        refused("packed-cut", Arrays.copyOf(whole, whole.length - 10), "packed file");
        refused("archive", zipped(), "line 1");
        refused("huge-size", "<svg xmlns='http://www.w3.org/2000/svg' width='1e999mm' height='1mm'>" + SOUND, "width of the proof");
        refused("huge-circle", SVG + "<circle r='1e30'/>" + SOUND, "limit on flattened points");
        refused("elements-of-others", "<html xmlns='http://www.w3.org/1999/xhtml'><script>" + "x".repeat(1000) + "</script></html>", "svg");
        Files.createSymbolicLink(proofs.resolve("circle.svg"), proofs.resolve("circle.svg")); // no file, so a folder that holds it has none more
    }

    private static void usable(String name, byte[] content) throws IOException {
        Files.write(proofs.resolve(name + ".svg"), content);
        usable++;
    }

    private static void usable(String name, String content) throws IOException {
        usable(name, content.getBytes(StandardCharsets.UTF_8));
    }

    private static void odd(String url, Path secret) throws IOException {
        usable("names", "<?xml version='1.1'?>" + SVG + "<title>" + NAME + "</title><g id='" + NAME + "'><path id='" + NAME + "2' data-part='" + NAME + "' d='M5 5h30v40h-1v-30h-29z' onclick='x'/></g>" + SOUND);
        usable("long-name", SVG + "<g id='" + "n".repeat(100_000) + "'><path d='M5 5h30v40h-1v-30h-29z'/></g>" + SOUND);
        usable("traversal", SVG + "<g id='../../../../etc/passwd'><rect id='..\\..\\x' width='9' height='9'/></g><use href='../secret.svg#a'/><use xlink:href='" + secret.toUri() + "#a'/>"
                + "<image href='" + secret.toUri() + "' width='9' height='9'/>" + SOUND);
        usable("calls", "<?xml-stylesheet href='" + url + "a.css'?><!DOCTYPE svg PUBLIC 'x' '" + url + "x.dtd'>" + SVG + "<style>@import url('" + url + "b.css');@font-face{font-family:F;src:url('" + url
                + "f.ttf')}</style><image xlink:href='" + url + "c.png' width='9' height='9'/><text font-family='F' x='5' y='50'>A</text><rect fill='url(" + url + "e.svg#g)' width='20' height='20'/>" + SOUND);
        usable("data", SVG + "<image href='data:image/png;base64,iVBORw0KGgoAAAANSUhEUv////////8=' width='9' height='9'/><image href='data:image/svg+xml,%3Csvg/%3E' width='9' height='9'/>" + SOUND);
        usable("numbers", SVG + "<path d='M1e308 1e308L-1e308 0L1e-320 5z'/><rect x='NaN' width='1' height='1'/><rect width='Infinity' height='1'/><rect width='1' height='1' transform='scale(1e200)'/>" + SOUND);
        usable("dashes", SVG + "<path d='M0 5H90' stroke='red' stroke-dasharray='1e-7'/><path d='M0 9H90' stroke='red' stroke-dasharray='" + "1 ".repeat(20_000) + "'/>" + SOUND);
        usable("strokes", SVG + "<path d='M0 0H9' stroke='red' stroke-width='1e300'/><path d='M0 0H9V9' stroke='red' stroke-width='1e5'/>"
                + "<path d='M5 5h9v9' fill='none' stroke='red'/>".repeat(500) + SOUND);
        usable("script", SVG + "<script>while(true);</script><rect onload='x()' width='9' height='9'/><foreignObject width='9' height='9'><body xmlns='http://www.w3.org/1999/xhtml'><script>x()</script></body></foreignObject>" + SOUND);
        usable("marked", "\ufeff" + SVG + SOUND);
        usable("wide", ("\ufeff" + SVG + SOUND).getBytes(StandardCharsets.UTF_16LE));
        usable("packed", packed((SVG + SOUND).getBytes(StandardCharsets.UTF_8)));
        Files.createDirectories(proofs.resolve("below/deeper"));
        Files.writeString(proofs.resolve("below/deeper/a name with \u05d0\u4e2d and blanks.svg"), SVG + SOUND);
        usable++;
        Files.createSymbolicLink(proofs.resolve("below/up"), proofs); // a walk that followed it would not end
    }

    private static byte[] packed(byte[] bytes) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (GZIPOutputStream gzip = new GZIPOutputStream(out)) {
            gzip.write(bytes);
        }
        return out.toByteArray();
    }

    private static byte[] zipped() throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (ZipOutputStream zip = new ZipOutputStream(out)) {
            zip.putNextEntry(new ZipEntry("../../escaped.svg"));
            zip.write((SVG + SOUND).getBytes(StandardCharsets.UTF_8));
        }
        return out.toByteArray();
    }

    /** Runs a command on the folder; holds the words to what is promised for every form. */
    private static Kerfglow.Ran ran(String... words) throws Exception {
        Kerfglow.Ran ran = Kerfglow.run(words);
        assertEquals(2, ran.status(), ran::err);
        assertTrue(ran.seconds() < LIMIT_SECONDS, ran.seconds() + " s");
        List<String> told = ran.err().strip().lines().toList();
        assertEquals(REFUSED.size(), told.size(), ran::err);
        REFUSED.forEach((file, why) -> assertTrue(told.stream().anyMatch(line -> line.startsWith("kerfglow: " + proofs.resolve(file) + ": ") && line.contains(why)), () -> file + ": " + why + " in\n" + ran.err()));
        assertFalse(ran.err().contains("Exception") || ran.err().contains("\tat ") || ran.err().contains("defect of the program"), ran::err);
        assertTrue(told.stream().allMatch(line -> line.length() < 1000), ran::err);
        requirePlain(ran.err());
        requirePlain(ran.out());
        assertFalse((ran.out() + ran.err()).contains(SECRET), "another file was read");
        assertFalse(Files.exists(folder.resolve("escaped.svg")) || Files.exists(folder.getParent().resolve("escaped.svg")));
        return ran;
    }

    private static void requirePlain(String text) {
        assertFalse(COMMANDS.matcher(text).find(), () -> "a command for a terminal: " + COMMANDS.matcher(text.substring(0, Math.min(text.length(), 100_000))).replaceAll("<HERE>"));
    }

    private static void requireXml(String text) throws Exception {
        DocumentBuilderFactory.newDefaultInstance().newDocumentBuilder().parse(new InputSource(new StringReader(text)));
    }

    private static List<Path> written(String ending) throws IOException {
        try (Stream<Path> list = Files.list(folder.resolve("out"))) {
            List<Path> files = list.filter(path -> path.toString().endsWith(ending)).sorted().toList();
            assertEquals(usable, files.size(), files::toString);
            return files;
        }
    }

    private static String tool(String... command) throws Exception {
        Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
        process.getOutputStream().close();
        String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertEquals(0, process.waitFor(), said);
        return said;
    }

    @Test
    void as_text() throws Exception {
        Kerfglow.Ran ran = ran("check", proofs.toString());
        assertEquals(usable, ran.out().lines().filter(line -> line.matches(".*\\.svg: \\d+ stop, .*")).count() / 2, "each has its text and its line of the summary");
        assertFalse(ran.out().contains("failed") || ran.out().contains("timed out"), ran::out);
    }

    @ParameterizedTest
    @ValueSource(strings = {"json", "sarif"})
    void as_data(String format) throws Exception {
        JsonNode read = new ObjectMapper().readTree(ran("check", "--only", CHECKS, "--format", format, proofs.toString()).out());
        assertEquals(usable + (format.equals("json") ? 0 : REFUSED.size()), read.get(format.equals("json") ? "results" : "runs").size());
    }

    @Test
    void as_junit_xml_and_pictures() throws Exception {
        requireXml(ran("check", "--only", CHECKS, "--format", "junit", "--overlay", folder.resolve("out").toString(), proofs.toString()).out());
        for (Path picture : written(".overlay.svg")) {
            requireXml(Files.readString(picture));
        }
        for (Path picture : written(".overlay.png")) {
            assertTrue(ImageIO.read(picture.toFile()).getWidth() > 0);
        }
    }

    /** Held by poppler. */
    @Test
    void as_reports() throws Exception {
        ran("report", "--only", CHECKS, "--to", folder.resolve("out").toString(), proofs.toString());
        for (Path page : written(".report.html")) {
            String text = Files.readString(page);
            assertFalse(text.contains("<script") || text.contains(SECRET), page::toString);
            requirePlain(text);
        }
        for (Path pdf : written(".report.pdf")) {
            assertFalse(tool("pdftotext", pdf.toString(), "-").contains(SECRET));
        }
    }

    /** Held by ezdxf, poppler and the JDK's XML reader. */
    @Test
    void as_outlines_worksheet_and_pattern() throws Exception {
        Path out = folder.resolve("out");
        ran("outlines", "--only", CHECKS, "--to", out.toString(), proofs.toString());
        for (Path drawing : written(".outlines.dxf")) {
            tool("/usr/bin/python3", "-c", "import sys, ezdxf; sys.exit(len(ezdxf.readfile(sys.argv[1]).audit().errors))", drawing.toString());
        }
        for (Path drawing : written(".outlines.svg")) {
            requireXml(Files.readString(drawing));
        }
        ran("worksheet", "--only", CHECKS, "--to", out.toString(), proofs.toString());
        for (Path sheet : written(".worksheet.json")) {
            new ObjectMapper().readTree(sheet.toFile());
        }
        for (Path sheet : written(".worksheet.csv")) {
            requirePlain(Files.readString(sheet));
        }
        ran("pattern", "--only", CHECKS, "--roll", "610 mm", "--to", out.toString(), proofs.toString());
        for (Path pattern : written(".pattern.pdf")) {
            tool("pdftotext", pattern.toString(), "-");
        }
        for (Path sheet : written(".worksheet.pdf")) {
            tool("pdftotext", sheet.toString(), "-");
        }
    }
}
