// SPDX-License-Identifier: Apache-2.0
package kerfglow.host;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import kerfglow.api.proof.Proof;
import kerfglow.api.proof.ProofImporter;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What somebody may put where a sheet or a job file is looked for. */
class InputFileTest {
    private static final Duration AT_ONCE = Duration.ofSeconds(10);
    @TempDir
    private Path folder;

    private Path pipe() throws Exception {
        Path pipe = folder.resolve("pipe");
        assertEquals(0, new ProcessBuilder("mkfifo", pipe.toString()).start().waitFor());
        return pipe;
    }

    private static String refused(Path file) {
        return assertTimeoutPreemptively(AT_ONCE, () -> assertThrows(IOException.class, () -> InputFile.read(file, 100, "a sheet"))).getMessage();
    }

    @Test
    void a_file_is_read_up_to_the_limit_and_no_further() throws IOException {
        Path file = Files.write(folder.resolve("full"), new byte[100]);
        assertArrayEquals(new byte[100], InputFile.read(file, 100, "a sheet"));
        Files.write(file, new byte[101]);
        assertTrue(refused(file).contains("larger than 100 bytes (limit on file size)"));
        assertThrows(NoSuchFileException.class, () -> InputFile.read(folder.resolve("none"), 100, "a sheet"));
    }

    @Test
    void what_may_never_end_is_not_begun() throws Exception {
        assertEquals("this is a device or a pipe, not a sheet", refused(pipe()));
        assertEquals("this is a device or a pipe, not a sheet", refused(Path.of("/dev/zero")));
        assertEquals("this is a folder, not a sheet", refused(folder));
        assertTrue(refused(Path.of("/proc/self/maps")).contains("limit on file size"), "says that it has no bytes, and goes on"); // proc(5)
    }

    @Test
    void sheets_are_read_so() throws Exception {
        Path pipe = pipe();
        for (Path odd : new Path[] {pipe, Path.of("/dev/zero"), folder}) {
            SheetException job = assertTimeoutPreemptively(AT_ONCE, () -> assertThrows(SheetException.class, () -> JobSheet.read(odd)));
            SheetException shop = assertTimeoutPreemptively(AT_ONCE, () -> assertThrows(SheetException.class, () -> ShopSheet.read(odd)));
            assertTrue(job.getMessage().startsWith(odd + ": cannot be read: this is a "), job::getMessage);
            assertTrue(shop.getMessage().startsWith(odd + ": cannot be read: this is a "), shop::getMessage);
        }
    }

    /** Some hundred thousand characters where a word is wanted. */
    @ParameterizedTest
    @ValueSource(strings = {"units: %s", "scale: %s", "build: %s", "%s: 1", "knock-out: \"%s\"", "roles: [{layer: a, role: %s}]", "modules: [{x: %s, y: 1 mm}]", "materials: [{%s: a}]", "settings: {a: {role: %s, value: 1}}"})
    void a_complaint_about_a_long_value_is_short(String sheet) {
        SheetException wrong = assertTimeoutPreemptively(AT_ONCE, () -> assertThrows(SheetException.class, () -> JobSheet.parse("job.yaml", sheet.formatted("9".repeat(300_000)), folder)));
        assertTrue(wrong.getMessage().length() < 2000, () -> wrong.getMessage().length() + " characters");
        assertTrue(wrong.getMessage().startsWith("job.yaml, line 1"), wrong::getMessage);
    }

    /** The import sees the second state of the file; the next run must not take it for the first. */
    @Test
    void a_proof_that_changes_while_it_is_read_is_read_again() throws Exception {
        Path file = Files.writeString(folder.resolve("sign.svg"), "first");
        int[] reads = {0};
        ProofImporter importer = (path, options) -> {
            reads[0]++;
            try {
                Files.writeString(file, reads[0] == 1 ? "second" : "first");
            } catch (IOException unwritable) {
                throw new AssertionError(unwritable);
            }
            return new Proof(path.toString(), "0".repeat(64), 1, 1, 1, options.chordErrorMm(), List.of(), List.of());
        };
        Session session = new Runner(importer, new CheckCatalogue()).session();
        session.run(RunRequest.of(file), Watcher.NONE);
        Files.writeString(file, "first");
        session.run(RunRequest.of(file), Watcher.NONE);
        assertEquals(2, reads[0]);
        session.run(RunRequest.of(file), Watcher.NONE);
        assertEquals(2, reads[0], "one that stays as it is is read once");
    }
}
