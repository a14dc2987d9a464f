// SPDX-License-Identifier: Apache-2.0
package kerfglow.svg;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintStream;
import java.io.RandomAccessFile;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Random;
import java.util.concurrent.CancellationException;
import java.util.zip.GZIPOutputStream;
import kerfglow.api.proof.ImportNote;
import kerfglow.api.proof.ImportNote.Kind;
import kerfglow.api.proof.ImportOptions;
import kerfglow.api.proof.Proof;
import kerfglow.api.proof.ProofException;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Files that are no usable proof end in one clear refusal; odd values in usable ones end in notes. Nothing is printed. */
class BadInputTest {
    private static final String OPEN = "<svg xmlns='http://www.w3.org/2000/svg' width='100mm' height='100mm' viewBox='0 0 100 100'>";
    private static final Duration LONGEST = Duration.ofSeconds(10);
    private final PrintStream before = System.err;
    private final ByteArrayOutputStream printed = new ByteArrayOutputStream();

    @TempDir
    private Path folder;

    @BeforeEach
    void listen() {
        System.setErr(new PrintStream(printed, true, StandardCharsets.UTF_8));
    }

    @AfterEach
    void nothing_was_printed() {
        System.setErr(before);
        assertEquals("", printed.toString(StandardCharsets.UTF_8));
    }

    @Test
    void missing_file() {
        refused(folder.resolve("nothing.svg"), "no such file");
    }

    @Test
    void folder_instead_of_file() {
        refused(folder, "folder");
    }

    @Test
    void empty_file() throws IOException {
        refused(file(""), "empty");
    }

    @Test
    void truncated_file_names_line_and_column() throws IOException {
        ProofException e = refused(file(OPEN + "\n<g>\n<path d='M0 0"), "XML");
        assertEquals(3, e.line());
        assertTrue(e.column() > 1);
        assertTrue(e.getMessage().startsWith("line 3, column "), e.getMessage());
        refused(file(OPEN + "<g>"), "ends too early");
    }

    @ParameterizedTest
    @ValueSource(strings = {"this is a letter", "%PDF-1.4", "{\"a\": 1}", "\0\0\0\1"})
    void not_xml(String text) throws IOException {
        refused(file(text), "not well-formed XML");
    }

    @Test
    void not_svg() throws IOException {
        refused(file("<html><body/></html>"), "no SVG file: its root element is html");
        refused(file("<svg width='1' height='1'/>"), "lacks xmlns=");
    }

    @Test
    void wrong_encoding() throws IOException {
        Path file = folder.resolve("latin.svg");
        Files.write(file, ("<?xml version='1.0' encoding='UTF-8'?>\n" + OPEN + "<g id='Stra\u00dfe'/></svg>").getBytes(StandardCharsets.ISO_8859_1));
        refused(file, "encoding");
        Files.write(file, ("<?xml version='1.0' encoding='KLINGON-7'?>\n" + OPEN + "</svg>").getBytes(StandardCharsets.US_ASCII));
        refused(file, "encoding");
    }

    @ParameterizedTest
    @ValueSource(strings = {"UTF-16", "UTF-8", "ISO-8859-1"})
    void declared_encodings_are_read(String encoding) throws IOException, ProofException {
        Path file = folder.resolve("encoded.svg");
        Files.write(file, ("<?xml version='1.0' encoding='" + encoding + "'?>" + OPEN + "<g id='Stra\u00dfe'><rect width='9' height='9'/></g></svg>")
                .getBytes(Charset.forName(encoding)));
        assertEquals("Stra\u00dfe", read(file).elements().get(0).layer());
    }

    @Test
    void billion_laughs() throws IOException {
        StringBuilder dtd = new StringBuilder("<!DOCTYPE svg [<!ENTITY a0 'ha'>");
        for (int i = 1; i < 40; i++) {
            dtd.append("<!ENTITY a").append(i).append(" '").append(("&a" + (i - 1) + ";").repeat(10)).append("'>");
        }
        refused(file(dtd + "]>" + OPEN + "<text>&a39;</text></svg>"), "entity a0");
    }

    @Test
    void entities_outside_the_file() throws IOException {
        Path secret = Files.writeString(folder.resolve("secret"), "secret");
        refused(file("<!DOCTYPE svg [<!ENTITY x SYSTEM '" + secret.toUri() + "'>]>" + OPEN + "<text>&x;</text></svg>"), "entity x outside itself");
        refused(file("<!DOCTYPE svg [<!ENTITY % x SYSTEM '" + secret.toUri() + "'> %x;]>" + OPEN + "</svg>"), "outside itself");
    }

    @Test
    void plain_doctype_and_names_of_namespaces_are_taken() throws IOException, ProofException {
        String rect = "<rect width='9' height='9'/></svg>";
        assertEquals(1, read(file("<!DOCTYPE svg PUBLIC \"-//W3C//DTD SVG 1.1//EN\" \"http://www.w3.org/Graphics/SVG/1.1/DTD/svg11.dtd\">"
                + OPEN + rect)).elements().size());
        assertEquals(1, read(file("<!DOCTYPE svg [<!ENTITY ns_svg \"http://www.w3.org/2000/svg\">]>"
                + "<svg xmlns='&ns_svg;' width='9mm' height='9mm'>" + rect)).elements().size());
    }

    @Test
    void a_namespace_name_used_too_often() throws IOException {
        refused(file("<!DOCTYPE svg [<!ENTITY n 'http://example.com/'>]>" + OPEN + "<text>" + "&n;".repeat(20_000) + "</text></svg>"),
                "limit on entities");
    }

    @Test
    void use_loop() throws IOException {
        refused(file(OPEN + "\n<g id='a'><use href='#b'/></g><g id='b'><use href='#a'/></g></svg>"), "use loop");
        refused(file(OPEN + "<g id='a'>\n<use id='u' href='#u'/></g></svg>"), "use loop");
    }

    @Test
    void use_that_multiplies_a_million_fold() throws IOException {
        StringBuilder svg = new StringBuilder(OPEN + "<defs><rect id='r0' width='1' height='1'/>");
        for (int i = 1; i <= 60; i++) {
            svg.append("<g id='r").append(i).append("'>").append(("<use href='#r" + (i - 1) + "'/>").repeat(10)).append("</g>");
        }
        refused(file(svg + "</defs><use href='#r6'/></svg>"), "limit on use expansion");
        refused(file(svg + "</defs><use href='#r60'/></svg>"), "limit on use expansion");
    }

    @Test
    void use_in_a_long_chain() throws IOException {
        StringBuilder svg = new StringBuilder(OPEN);
        for (int i = 0; i < 50_000; i++) {
            svg.append("<use id='u").append(i).append("' href='#u").append(i + 1).append("'/>");
        }
        refused(file(svg + "<rect id='u50000' width='1' height='1'/></svg>"), "limit on nesting");
    }

    @Test
    void clips_that_multiply() throws IOException {
        StringBuilder svg = new StringBuilder(OPEN + "<clipPath id='c0'><rect width='50' height='50'/></clipPath>");
        for (int i = 1; i <= 12; i++) {
            svg.append("<clipPath id='c").append(i).append("'>");
            for (int k = 0; k < 10; k++) {
                // each at a scale of its own, so that none can be remembered
                svg.append("<rect width='60' height='70' transform='scale(1.").append(k).append(k + i).append(")' clip-path='url(#c").append(i - 1).append(")'/>");
            }
            svg.append("</clipPath>");
        }
        refused(file(svg + "<rect width='99' height='99' clip-path='url(#c12)'/></svg>"), "limit on clip shapes");
    }

    @Test
    void style_rules_that_try_everything() throws IOException {
        refused(file(OPEN + "<style>x" + " g".repeat(9) + " rect{fill:red}</style>" + "<g>".repeat(200) + "<rect width='1' height='1'/>"
                + "</g>".repeat(200) + "</svg>"), "limit on style matches");
        refused(file(OPEN + "<style>" + "g ".repeat(50_000) + "{fill:red}</style><g/></svg>"), "limit on style matches");
        refused(file(OPEN + "<style>" + ".a{fill:red}".repeat(20_000) + "</style>" + "<rect class='b' width='1' height='1'/>".repeat(50_000)
                + "</svg>"), "limit on style matches");
    }

    @Test
    void style_sheets_without_end() throws IOException, ProofException {
        String rect = "<rect width='1' height='1'/></svg>";
        for (String sheet : List.of("@media all{".repeat(100_000), "rect{fill:red", "/* ", "a".repeat(100_000), "}}}}", "rect{font:" + "a ".repeat(50_000) + "}",
                "rect{fill:" + "(".repeat(100_000) + "}", "rect" + ":not(".repeat(1000) + "{fill:red}")) {
            assertEquals(1, assertTimeoutPreemptively(LONGEST, () -> read(file(OPEN + "<style>" + sheet + "</style>" + rect))).elements().size());
        }
    }

    /** Bytes of a sound proof lost, doubled or changed: each ends in a proof or in a refusal, never in another exception. */
    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3})
    void damaged_at_random(long seed) throws IOException {
        Random random = new Random(seed);
        byte[] sound = (OPEN + "<style>.a > rect, #b{fill:rgb(1,2,3);stroke:url(#g) red;transform:rotate(5deg)}</style><defs><linearGradient id='g'>"
                + "<stop offset='0' stop-color='#123'/></linearGradient><clipPath id='c' clipPathUnits='objectBoundingBox'><circle r='.5'/></clipPath>"
                + "<symbol id='s' viewBox='0 0 9 9'><path d='M1 1a5 3 20 1 0 5 5q1 2 3 4t5 5z'/></symbol></defs><g class='a' clip-path='url(#c)'>"
                + "<rect width='20%' height='5mm' rx='1' stroke-dasharray='1 2 3'/></g><use href='#s' width='9' height='9'/><polygon id='b' "
                + "points='0,0 5,5 9,1' stroke-width='2' style='stroke-linejoin:round'/><svg width='9' height='9' viewBox='1 2 3 4'><text y='5' "
                + "font-family='Liberation Sans'>Ab<tspan dx='1'>c</tspan></text></svg></svg>").getBytes(StandardCharsets.UTF_8);
        int usable = 0;
        for (int i = 0; i < 150; i++) {
            byte[] damaged = sound.clone();
            for (int k = 0; k <= random.nextInt(3); k++) {
                int at = OPEN.length() + random.nextInt(sound.length - OPEN.length());
                damaged[at] = sound[OPEN.length() + random.nextInt(sound.length - OPEN.length())];
            }
            Path file = Files.write(folder.resolve("damaged.svg"), damaged);
            try {
                assertTrue(read(file).elements().stream().allMatch(e -> e.fillArea().isValid() && e.strokeArea().isValid()));
                usable++;
            } catch (ProofException e) {
                assertTrue(e.getMessage().length() > 10);
            }
        }
        assertTrue(usable > 15 && usable < 145, usable + " of 150 usable: the damage must reach both the XML and the values");
    }

    @Test
    void text_nested_to_the_limit() throws IOException, ProofException {
        Proof proof = read(file(OPEN + "<text y='50'>" + "<tspan>".repeat(240) + "A" + "</tspan>".repeat(240) + "</text></svg>"));
        assertEquals(1, proof.elements().size(), proof.notes()::toString);
    }

    @Test
    void nested_ten_thousand_deep() throws IOException {
        refused(file(OPEN + "<g>".repeat(10_000) + "</g>".repeat(10_000) + "</svg>"), "limit on nesting");
    }

    @Test
    void too_many_elements() throws IOException {
        refused(file(OPEN + "<g/>".repeat(250_000) + "</svg>"), "limit on elements");
    }

    @Test
    void gigabyte_file_is_refused_before_reading() throws IOException {
        Path file = folder.resolve("huge.svg");
        try (RandomAccessFile sparse = new RandomAccessFile(file.toFile(), "rw")) {
            sparse.setLength(1L << 30);
        }
        long start = System.nanoTime();
        refused(file, "limit on file size");
        assertTrue(System.nanoTime() - start < Duration.ofSeconds(1).toNanos());
    }

    @Test
    void packed_files() throws IOException, ProofException {
        Path file = folder.resolve("proof.svgz");
        try (OutputStream out = new GZIPOutputStream(Files.newOutputStream(file))) {
            out.write((OPEN + "<rect width='9' height='9'/></svg>").getBytes(StandardCharsets.UTF_8));
        }
        assertEquals(1, read(file).elements().size());
        byte[] whole = Files.readAllBytes(file);
        Files.write(file, java.util.Arrays.copyOf(whole, whole.length - 12));
        refused(file, "packed file");
        try (OutputStream out = new GZIPOutputStream(Files.newOutputStream(file))) {
            byte[] spaces = new byte[1 << 20];
            for (int i = 0; i < 100; i++) {
                out.write(spaces);
            }
        }
        refused(file, "limit on file size");
    }

    @ParameterizedTest
    @ValueSource(strings = {"width='0' height='10'", "width='-5mm' height='10'", "width='wide' height='10'", "width='1e999' height='1'",
        "width='10' height='10' viewBox='0 0 0 10'", "width='10' height='10' viewBox='0 0 -1 10'", "width='10' height='10' viewBox='0 0 NaN 1'",
        "width='10' height='10' viewBox='0 0 10'"})
    void impossible_sizes_of_the_proof(String attributes) throws IOException {
        refused(file("\n<svg xmlns='http://www.w3.org/2000/svg' " + attributes + "><rect width='1' height='1'/></svg>"), "of the proof");
    }

    @ParameterizedTest
    @ValueSource(strings = {"<path d='M0 0 L NaN 5 L 5 5'/>", "<path d='M0 0 L 1e999 5'/>", "<rect width='-1' height='1'/>",
        "<circle r='NaN'/>", "<circle r='-2'/>", "<polygon points='0,0 1,1 2'/>", "<rect width='1' height='1' transform='rotate(banana)'/>",
        "<rect width='1' height='1' transform='translate(1e308,1e308) scale(1e308)'/>", "<rect width='1e300' height='1e300'/>",
        "<rect width='1' height='1' stroke='red' stroke-width='-1'/>",
        "<rect width='1' height='1' stroke='red' stroke-width='1e300'/>", "<path d='M0 0h9' stroke='red' stroke-dasharray='1' pathLength='0'/>",
        "<image width='1e300' height='1' href='data:,'/>", "<rect width='1' height='1' fill='octarine'/>",
        "<rect width='1' height='1' fill='url(#nothing)'/>", "<use href='#nothing'/>", "<rect width='1' height='1' clip-path='url(#nothing)'/>",
        "<rect width='1' height='1' stroke='red' stroke-dasharray='1 -1'/>", "<ellipse rx='5' ry='0'/>"})
    void values_that_cannot_be_used_are_noted(String content) throws IOException, ProofException {
        Proof proof = read(file(OPEN + "\n\n" + content + "<rect id='sound' width='9' height='9'/></svg>"));
        assertEquals(81, Svg.byId(proof, "sound").fillArea().getArea(), 1e-9);
        List<ImportNote> notes = proof.notes();
        assertTrue(notes.stream().anyMatch(n -> n.kind() == Kind.BAD_VALUE && n.line() == 3), notes::toString);
        proof.elements().forEach(e -> assertTrue(e.fillArea().isValid() && e.strokeArea().isValid()));
    }

    @Test
    void a_number_that_is_too_large_is_quoted_alone() throws IOException, ProofException {
        List<ImportNote> notes = read(file(OPEN + "<path d='M1e400 0 L 10 10'/></svg>")).notes();
        assertTrue(notes.get(0).message().contains("has the number 1e400 at character 2,"), notes::toString);
    }

    @ParameterizedTest
    @ValueSource(strings = {"SCRIPT|<script>alert(1)</script>", "SCRIPT|<rect width='1' height='1' onclick='x()'/>",
        "ANIMATION|<rect width='1' height='1'><animate attributeName='x' to='5'/></rect>", "UNSUPPORTED|<foreignObject width='5' height='5'/>",
        "UNSUPPORTED|<wobble/>", "REFUSED_REFERENCE|<image href='http://example.com/a.png' width='5' height='5'/>",
        "REFUSED_REFERENCE|<use href='other.svg#a'/>", "REFUSED_REFERENCE|<style>@import url(http://example.com/a.css);</style>",
        "REFUSED_REFERENCE|<rect width='1' height='1' fill='url(other.svg#a)'/>", "UNSUPPORTED|<style>@supports (a:b) {}</style>",
        "REFUSED_REFERENCE|<style>@font-face{font-family:a;src:url(a.ttf)}</style>", "UNSUPPORTED|<rect width='1' height='1' style='rotate:45deg'/>",
        "UNSUPPORTED|<rect width='1' height='1' style='clip-path:circle(5px)'/>", "ANIMATION|<style>@keyframes a {from {x:0}}</style>"})
    void what_is_not_taken_over_is_noted(String row) throws IOException, ProofException {
        String[] expected = row.split("\\|", 2);
        List<ImportNote> notes = read(file(OPEN + "\n" + expected[1] + "</svg>")).notes();
        assertTrue(notes.stream().anyMatch(n -> n.kind() == Kind.valueOf(expected[0]) && n.line() == 2), notes::toString);
    }

    @Test
    void outlines_with_too_many_points() throws IOException {
        refused(file(OPEN + "<g transform='scale(1e5)'>" + "<circle r='50'/>".repeat(2000) + "</g></svg>"), "limit on flattened points");
    }

    @Test
    void outlines_that_cross_without_end() throws IOException {
        Random random = new Random(1);
        StringBuilder d = new StringBuilder("M0 0");
        for (int i = 0; i < 3000; i++) {
            d.append('L').append(random.nextInt(4000)).append(' ').append(random.nextInt(100));
        }
        refused(file(OPEN + "<path d='" + d + "z'/></svg>"), "limit on crossings");
    }

    @Test
    void dashes_without_end_are_drawn_whole_and_noted() throws IOException, ProofException {
        Proof proof = read(file(OPEN + "<path d='M0 5H1e6' stroke='red' stroke-dasharray='1e-6'/></svg>"));
        assertTrue(proof.notes().stream().anyMatch(n -> n.message().contains("limit on dashes")), proof.notes()::toString);
        assertEquals(1e6, proof.elements().get(0).strokeArea().getArea(), 1);
    }

    @Test
    void cancelling_stops_the_import() throws IOException {
        Path file = file(OPEN + "<rect width='1' height='1'/>".repeat(500) + "</svg>");
        ImportOptions options = ImportOptions.defaults().withProgress(done -> {
            throw new CancellationException();
        });
        assertThrows(CancellationException.class, () -> new SvgImporter().read(file, options));
    }

    private Path file(String text) throws IOException {
        return Files.writeString(folder.resolve("proof.svg"), text);
    }

    private static Proof read(Path file) throws ProofException {
        return new SvgImporter().read(file, ImportOptions.defaults());
    }

    private static ProofException refused(Path file, String because) {
        ProofException e = assertTimeoutPreemptively(LONGEST, () -> assertThrows(ProofException.class, () -> read(file)));
        assertTrue(e.getMessage().contains(because), () -> "expected \"" + because + "\" in: " + e.getMessage());
        return e;
    }
}
