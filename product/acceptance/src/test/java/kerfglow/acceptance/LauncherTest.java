// SPDX-License-Identifier: Apache-2.0
package kerfglow.acceptance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.jar.JarFile;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What the launcher puts before the framework so that it starts sooner. */
class LauncherTest {
    private static final String TABLES = "org/eclipse/osgi/internal/framework/";

    /** The framework's own tables are the standard here: each of our lines must be one of its lines, in its words. */
    @ParameterizedTest
    @ValueSource(strings = {"osname.aliases", "processor.aliases"})
    void our_tables_of_names_say_what_the_frameworks_own_say(String table) throws IOException {
        List<String> ours = lines(Files.readString(Kerfglow.program().resolveSibling("boot").resolve(TABLES + table), StandardCharsets.UTF_8));
        List<String> theirs;
        try (JarFile jar = new JarFile(framework().toFile()); InputStream in = jar.getInputStream(jar.getEntry(TABLES + table))) {
            theirs = lines(new String(in.readAllBytes(), StandardCharsets.UTF_8));
        }
        assertFalse(ours.isEmpty());
        for (String line : ours) {
            assertTrue(theirs.contains(line), line + " is not among " + theirs);
        }
    }

    @Test
    void the_tiny_proof_that_is_read_ahead_is_one_that_can_be_read() throws Exception {
        Kerfglow.Ran ran = Kerfglow.run("check", "--only=artwork", Kerfglow.program().resolveSibling("boot").resolve("first.svg").toString());
        assertTrue(ran.status() == 0 || ran.status() == 1, ran.err());
        assertTrue(ran.out().contains("is live text"), "its text loads what text needs: " + ran.out());
    }

    /** A heap smaller than what the launcher asks for new objects alone: Java takes less, and must not say so in the middle of a document. */
    @Test
    void where_memory_is_short_java_says_nothing_on_the_output() throws Exception {
        Path said = Files.createTempFile("kerfglow", ".out");
        ProcessBuilder builder = new ProcessBuilder(Kerfglow.program().toString(), "check", "--only=artwork", "--format=json",
                Kerfglow.TESTDATA.resolve("plain-letters.svg").toString()).redirectOutput(said.toFile());
        builder.environment().put("KERFGLOW_VMARGS", "-Xmx16m");
        int status = builder.start().waitFor();
        String words = Files.readString(said, StandardCharsets.UTF_8);
        Files.delete(said);
        assertTrue(status == 0 || status == 1, status + ": " + words);
        assertTrue(words.startsWith("{"), words.lines().findFirst().orElse(""));
    }

    /** The folder that a person is in holds proofs of anybody: nothing in it may be taken for a part of the program. */
    @Test
    void no_class_or_service_is_taken_from_the_folder_that_a_person_is_in() throws Exception {
        Path folder = Files.createTempDirectory("kerfglow-proofs");
        Path service = Files.createDirectories(folder.resolve("META-INF/services")).resolve("javax.xml.parsers.SAXParserFactory");
        Files.writeString(service, "nobody.Knows\n");
        Path main = Files.createDirectories(folder.resolve("org/eclipse/equinox/launcher")).resolve("Main.class");
        Files.writeString(main, "no class");
        Path said = folder.resolve("said");
        Process process = new ProcessBuilder(Kerfglow.program().toString(), "check", Kerfglow.TESTDATA.resolve("plain-letters.svg").toString())
                .directory(folder.toFile()).redirectErrorStream(true).redirectOutput(said.toFile()).start();
        int status = process.waitFor();
        String words = Files.readString(said, StandardCharsets.UTF_8);
        for (Path made : List.of(service, main, said)) {
            Files.delete(made);
        }
        assertTrue(status == 0 || status == 1, status + ": " + words);
        assertFalse(words.contains("nobody.Knows"), words);
        assertEquals(1, words.lines().filter(line -> line.contains("plain-letters.svg:")).count(), words);
    }

    private static Path framework() throws IOException {
        try (DirectoryStream<Path> jars = Files.newDirectoryStream(Kerfglow.program().resolveSibling("plugins"), "org.eclipse.osgi_*.jar")) {
            return jars.iterator().next();
        }
    }

    private static List<String> lines(String text) {
        List<String> lines = new ArrayList<>();
        for (String line : text.lines().toList()) {
            String words = line.replaceAll("#.*", "").strip().replaceAll("\\s+", " ");
            if (!words.isEmpty()) {
                lines.add(words);
            }
        }
        return lines;
    }
}
