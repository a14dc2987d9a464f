// SPDX-License-Identifier: Apache-2.0
package kerfglow.acceptance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.SocketTimeoutException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Every hostile or damaged file ends in one clear message and status 2, within 10 s and 1 GiB, or in findings where it can still be used. */
class BadInputTest {
    private static final double LIMIT_SECONDS = 10;
    private static final String HEAD = "<svg xmlns='http://www.w3.org/2000/svg' xmlns:xlink='http://www.w3.org/1999/xlink' width='100mm' height='100mm' viewBox='0 0 100 100'>";

    @TempDir
    private Path folder;

    private static Arguments bad(String name, String content, String words) {
        return Arguments.of(name, content.getBytes(StandardCharsets.UTF_8), words);
    }

    static Stream<Arguments> unusable() {
        StringBuilder bombs = new StringBuilder(HEAD + "<defs><rect id='u0' width='1' height='1'/>");
        for (int i = 1; i <= 7; i++) {
            bombs.append("<g id='u").append(i).append("'>").append(("<use href='#u" + (i - 1) + "'/>").repeat(10)).append("</g>");
        }
        return Stream.of(bad("empty", "", "empty"), bad("truncated", HEAD + "<rect width='10' height='1", "line 1"), bad("not xml", "This is a letter, not a drawing.", "line 1"),
                bad("not svg", "<html><body/></html>", "svg"), bad("entities", "<!DOCTYPE svg [<!ENTITY a 'aaaa'><!ENTITY b '&a;&a;&a;'>]>" + HEAD + "<text>&b;</text></svg>", "entity"),
                bad("entity of a file", "<!DOCTYPE svg [<!ENTITY f SYSTEM 'file:///etc/hostname'>]>" + HEAD + "<text>&f;</text></svg>", "entity"),
                Arguments.of("wrong encoding", ("<?xml version='1.0' encoding='UTF-8'?>" + HEAD + "<title>Caf\u00e9</title></svg>").getBytes(StandardCharsets.ISO_8859_1), "encoding"),
                bad("use of itself", HEAD + "<g id='a'><use href='#a'/></g></svg>", "use loop"), bad("million-fold use", bombs + "</defs><use href='#u7'/></svg>", "use"),
                bad("nested ten thousand deep", HEAD + "<g>".repeat(10_000) + "<rect width='9' height='9'/>" + "</g>".repeat(10_000) + "</svg>", "nest"),
                bad("no size", "<svg xmlns='http://www.w3.org/2000/svg' width='0' height='10mm'><rect width='9' height='9'/></svg>", "width of the proof"),
                bad("negative size", "<svg xmlns='http://www.w3.org/2000/svg' width='-5mm' height='10mm'><rect width='9' height='9'/></svg>", "width of the proof"),
                bad("infinite size", "<svg xmlns='http://www.w3.org/2000/svg' width='1e999mm' height='10mm'><rect width='9' height='9'/></svg>", "width of the proof"));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("unusable")
    void a_file_that_cannot_be_used_ends_in_one_message(String name, byte[] content, String words) throws Exception {
        assertRefused(Files.write(folder.resolve("bad.svg"), content), words);
    }

    private static void assertRefused(Path file, String words) throws Exception {
        Kerfglow.Ran ran = Kerfglow.run("check", file.toString());
        assertEquals(2, ran.status(), ran::toString);
        assertTrue(ran.seconds() < LIMIT_SECONDS, ran.seconds() + " s");
        assertTrue(ran.err().startsWith("kerfglow: " + file + ": ") && ran.err().strip().lines().count() == 1, ran::err);
        assertTrue(ran.err().toLowerCase(Locale.ROOT).contains(words), ran::err);
        assertFalse(ran.err().contains("Exception") || ran.err().contains("\tat "), ran::err);
        assertTrue(ran.out().isEmpty(), ran::out);
    }

    @Test
    void a_missing_file_and_a_folder_without_proofs_are_named() throws Exception {
        assertRefused(folder.resolve("none.svg"), "no such file");
        assertRefused(folder, "no svg file");
    }

    @Test
    void a_gigabyte_is_refused_by_its_size() throws Exception {
        Path huge = folder.resolve("huge.svg");
        try (RandomAccessFile sparse = new RandomAccessFile(huge.toFile(), "rw")) {
            sparse.write(HEAD.getBytes(StandardCharsets.UTF_8));
            sparse.setLength(1L << 30);
        }
        assertRefused(huge, "mb");
    }

    static Stream<Arguments> usable() {
        return Stream.of(bad("script", "<script>while(true);</script>", "artwork.not-taken-over"),
                bad("not a number", "<rect x='NaN' y='5' width='5' height='5'/>", "artwork.bad-value"), bad("infinite", "<path d='M0 0 L1e400 5 L5 5 Z'/>", "artwork.bad-value"),
                bad("negative width", "<rect x='5' y='5' width='-5' height='5'/>", "artwork.bad-value"), bad("external picture", "<image href='https://example.invalid/a.png' width='9' height='9'/>", "artwork.not-taken-over"));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("usable")
    void a_file_that_can_still_be_used_ends_in_findings(String name, byte[] content, String words) throws Exception {
        Path file = Files.writeString(folder.resolve("odd.svg"), HEAD + new String(content, StandardCharsets.UTF_8) + "<rect x='20' y='20' width='60' height='60'/></svg>");
        Kerfglow.Ran ran = Kerfglow.run("check", "--threshold", "info", "--only", "artwork", file.toString());
        assertEquals(1, ran.status(), ran::toString);
        assertTrue(ran.out().contains(words), ran::toString);
        assertTrue(ran.seconds() < LIMIT_SECONDS, ran.seconds() + " s");
    }

    @Test
    void no_network_is_touched() throws Exception {
        try (ServerSocket server = new ServerSocket(0, 50, InetAddress.getLoopbackAddress())) {
            server.setSoTimeout(1);
            String url = "http://127.0.0.1:" + server.getLocalPort() + "/";
            Path file = Files.writeString(folder.resolve("calls.svg"), "<?xml-stylesheet href='" + url + "a.css'?><!DOCTYPE svg PUBLIC 'x' '" + url + "x.dtd'>" + HEAD
                    + "<style>@import url('" + url + "b.css'); @font-face { font-family: F; src: url('" + url + "f.ttf') }</style>" + "<image xlink:href='" + url + "c.png' width='9' height='9'/>"
                    + "<use href='" + url + "d.svg#a'/><text font-family='F' x='5' y='50'>A</text><rect fill='url(" + url + "e.svg#g)' width='20' height='20'/></svg>");
            Kerfglow.Ran ran = Kerfglow.run("check", file.toString());
            assertTrue(ran.status() < 3, ran::toString);
            try {
                server.accept().close();
                throw new AssertionError("the program called " + url);
            } catch (SocketTimeoutException nobodyCalled) {
                assertTrue(ran.seconds() < LIMIT_SECONDS);
            }
        }
    }

    @Test
    void no_file_but_the_proof_is_read() throws IOException, InterruptedException {
        Path secret = Files.writeString(folder.resolve("secret.svg"), HEAD + "<rect id='a' width='50' height='50'/></svg>");
        Path file = Files.writeString(folder.resolve("nosy.svg"), HEAD + "<use href='" + secret.getFileName() + "#a'/><use href='" + secret.toUri() + "#a'/><rect width='1' height='1'/></svg>");
        Kerfglow.Ran ran = Kerfglow.run("check", "--format", "json", file.toString());
        assertFalse(ran.out().contains("2500"), "the square of the other file was read");
        assertTrue(ran.out().contains("\"areaMm2\" : 1.0"), ran::toString);
    }
}
