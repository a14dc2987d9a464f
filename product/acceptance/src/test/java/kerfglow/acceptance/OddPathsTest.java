// SPDX-License-Identifier: Apache-2.0
package kerfglow.acceptance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicBoolean;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Names of files that are unusual, and what may stand under a name instead of a file. */
class OddPathsTest {
    /** A run takes seconds; what waits for a pipe would take for ever. */
    private static final double LIMIT_SECONDS = 60;
    private static final String SVG = "<svg xmlns='http://www.w3.org/2000/svg' width='900mm' height='600mm' viewBox='0 0 900 600'><rect id='r' width='500' height='400'/></svg>";
    private static final String JOB = "{\"type\":\"kerfglow:Job\",\"format\":1,\"proof\":{\"file\":\"sign.svg\",\"widthMm\":900,\"heightMm\":600,\"scale\":1},\"sheet\":{%s}}";
    @TempDir
    private Path folder;
    private Path sign;

    @BeforeEach
    void layOut() throws IOException {
        sign = Files.writeString(folder.resolve("sign.svg"), SVG);
    }

    private Path pipe(String name) throws Exception {
        Path pipe = folder.resolve(name);
        assertEquals(0, new ProcessBuilder("mkfifo", pipe.toString()).start().waitFor());
        return pipe;
    }

    private static Kerfglow.Ran ran(int status, String... words) throws Exception {
        Kerfglow.Ran ran = Kerfglow.run(words);
        assertEquals(status, ran.status(), ran::toString);
        assertTrue(ran.seconds() < LIMIT_SECONDS, ran.seconds() + " s");
        assertFalse(ran.err().contains("Exception") || ran.err().contains("defect of the program"), ran::err);
        return ran;
    }

    private static void assertTold(Kerfglow.Ran ran, String... lines) {
        List<String> told = ran.err().strip().lines().toList();
        assertEquals(lines.length, told.size(), ran::err);
        for (int i = 0; i < lines.length; i++) {
            String wanted = lines[i];
            String line = told.get(i);
            assertTrue(line.matches("kerfglow: .*" + wanted + ".*"), () -> wanted + " in " + line);
        }
    }

    @Test
    void names_with_blanks_of_any_writing_and_with_commands_are_read_and_shown() throws Exception {
        List<String> names = List.of("a sign.svg", "\u0437\u043d\u0430\u043a.svg", "\u770b\u677f \u05e9\u05dc\u05d8.svg", "caf\u00e9 \ud83d\ude00.svg", "-dash.svg", "100%n.svg", "two\nlines.svg", "red\u001b[31m.svg");
        for (String name : names) {
            Files.writeString(folder.resolve(name), SVG);
        }
        Kerfglow.Ran ran = ran(0, "check", "--only", "artwork", "--overlay", folder.resolve("out").toString(), folder.toString());
        assertEquals(names.size() + 1, ran.out().lines().filter(line -> line.matches(".* 0 stop, .*")).count() / 2, ran::out);
        assertTrue(ran.out().contains("\u770b\u677f \u05e9\u05dc\u05d8.svg") && !ran.out().contains("\u001b"), ran::out);
        for (String name : names) {
            assertTrue(Files.exists(folder.resolve("out").resolve(name.replace(".svg", ".overlay.svg"))), name);
        }
    }

    /** As scheduled jobs and containers run it. */
    @Test
    void names_of_any_writing_are_read_where_no_language_is_set() throws Exception {
        Path named = Files.writeString(folder.resolve("\u0437\u043d\u0430\u043a \u770b\u677f.svg"), SVG);
        ProcessBuilder builder = new ProcessBuilder("sh", "-c", "\"$1\" check --only artwork \"$2\"/*\u770b*.svg", "sh", Kerfglow.program().toString(), folder.toString()).redirectErrorStream(true);
        builder.environment().keySet().removeIf(name -> name.startsWith("LC_") || name.equals("LANG"));
        Process process = builder.start();
        process.getOutputStream().close();
        String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertEquals(0, process.waitFor(), said);
        assertTrue(said.contains(named.toString()), said);
    }

    @Test
    void what_is_no_file_is_refused_and_never_waited_for() throws Exception {
        Path empty = Files.createDirectory(folder.resolve("empty"));
        Path job = Files.createDirectory(folder.resolve("folder.kerfglow"));
        Kerfglow.Ran ran = ran(2, "check", pipe("pipe.svg").toString(), "/dev/zero", pipe("pipe.kerfglow").toString(), "/dev/null", folder.resolve("none.svg").toString(), empty.toString(), job.toString());
        assertTold(ran, "empty: there is no SVG file in this folder", "folder.kerfglow: there is no SVG file in this folder", "pipe.svg: .*a device or a pipe", "/dev/zero: .*a device or a pipe",
                "pipe.kerfglow: .*a device or a pipe", "/dev/null: .*a device or a pipe", "none.svg: .*no such file");
    }

    @Test
    void sheets_that_are_no_files_are_refused_and_never_waited_for() throws Exception {
        String pipe = pipe("pipe.yaml").toString();
        assertTold(ran(2, "check", "--job", pipe, sign.toString()), "pipe.yaml: cannot be read: this is a device or a pipe, not a sheet");
        assertTold(ran(2, "check", "--shop", "/dev/zero", sign.toString()), "/dev/zero: cannot be read: this is a device or a pipe, not a sheet");
        assertTold(ran(2, "check", "--job", folder.toString(), sign.toString()), "this is a folder, not a sheet");
        Path job = Files.writeString(folder.resolve("sign.kerfglow"), JOB.formatted("\"shop\":\"pipe.yaml\""));
        assertTold(ran(2, "check", job.toString()), "pipe.yaml: cannot be read: this is a device or a pipe, not a sheet");
    }

    @Test
    void a_job_file_full_of_commands_and_large_numbers_is_told_in_plain_words() throws Exception {
        Path job = Files.writeString(folder.resolve("sign.kerfglow"), JOB.formatted("\"title\":\"\\u001b[2J\\u009b1m\\u202e</title>\",\"scale\":\"1e999\""));
        Kerfglow.Ran damaged = ran(2, "check", job.toString());
        assertTold(damaged, "sign.kerfglow: the job file is damaged: .*scale.*");
        Files.writeString(job, JOB.formatted("\"title\":\"\\u001b[2J\\u009b1m\\u202e</title>\""));
        Kerfglow.Ran ran = ran(0, "check", "--only", "artwork", job.toString());
        assertTrue(ran.out().contains("?[2J?1m?</title>") && !ran.out().contains("\u001b"), ran::out);
    }

    /** The administrator may read anything, so the program runs as somebody else. */
    @Test
    void files_and_folders_without_the_right_to_read_are_told() throws Exception {
        Files.setPosixFilePermissions(folder, PosixFilePermissions.fromString("rwxr-xr-x"));
        Path closed = Files.writeString(folder.resolve("closed.svg"), SVG);
        Path shut = Files.createDirectory(folder.resolve("shut"));
        Files.writeString(shut.resolve("in.svg"), SVG);
        Files.setPosixFilePermissions(Files.createDirectory(folder.resolve("state")), PosixFilePermissions.fromString("rwxrwxrwx"));
        assumeTrue(asSomebody("--version").startsWith("0 ") && asSomebody("check", "--only", "artwork", sign.toString()).startsWith("0 "), "this machine lets nobody else run the program");
        Files.setPosixFilePermissions(closed, PosixFilePermissions.fromString("---------"));
        Files.setPosixFilePermissions(shut, PosixFilePermissions.fromString("---------"));
        String said = asSomebody("check", "--only", "artwork", closed.toString(), folder.toString());
        assertTrue(said.startsWith("2 "), said);
        assertTrue(said.contains("closed.svg: the file may not be read; check its permissions"), said);
        assertTrue(said.contains(folder + ": a folder in it cannot be read") && !said.contains("Exception"), said);
        Files.setPosixFilePermissions(shut, PosixFilePermissions.fromString("rwx------"));
    }

    /** Exit status and what was said. */
    private String asSomebody(String... words) throws Exception {
        List<String> command = new ArrayList<>(List.of("setpriv", "--reuid=65534", "--clear-groups", Kerfglow.program().toString()));
        command.addAll(List.of(words));
        ProcessBuilder builder = new ProcessBuilder(command).redirectErrorStream(true);
        builder.environment().put("HOME", "/nonexistent");
        builder.environment().put("KERFGLOW_STATE", folder.resolve("state").toString());
        Process process = builder.start();
        process.getOutputStream().close();
        String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        return process.waitFor() + " " + said;
    }

    /** Another program saves again and again, once in place and once as a new file. Each run sees some state, whole or cut, and says so. */
    @Test
    void a_file_that_changes_while_it_is_read_ends_in_a_result_or_a_refusal() throws Exception {
        String large = SVG.replace("<rect", "<!--" + "x".repeat(3_000_000) + "--><rect");
        AtomicBoolean over = new AtomicBoolean();
        Thread saver = new Thread(() -> {
            try {
                while (!over.get()) {
                    Files.writeString(sign, large);
                    Files.move(Files.writeString(folder.resolve("new"), SVG), sign, StandardCopyOption.REPLACE_EXISTING, StandardCopyOption.ATOMIC_MOVE);
                    Thread.sleep(1);
                }
            } catch (IOException | InterruptedException unwritable) {
                over.set(true);
            }
        });
        saver.start();
        try {
            Kerfglow.Ran ran = Kerfglow.run("check", "--only", "artwork", sign.toString(), sign.toString(), sign.toString(), sign.toString());
            assertTrue(ran.status() == 0 || ran.status() == 2, ran::toString);
            assertFalse(ran.err().contains("Exception") || ran.err().contains("defect of the program"), ran::err);
            assertFalse(over.get(), "the other program must have saved all the time");
        } finally {
            over.set(true);
            saver.join();
        }
    }
}
