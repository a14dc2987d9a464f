// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.desk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import kerfglow.host.CheckCatalogue;
import kerfglow.host.Runner;
import kerfglow.job.JobFile;
import kerfglow.svg.SvgImporter;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** What a person may open in the window that means harm, or is no file at all: a sentence says what is wrong, and the next file opens. */
class HostileOpeningTest {
    private static final Duration LONGEST = Duration.ofSeconds(20);
    private static final String SVG = "<svg xmlns='http://www.w3.org/2000/svg' width='90mm' height='60mm' viewBox='0 0 90 60'>";
    private static final String SOUND = SVG + "<rect id='r' width='50' height='40'/></svg>";
    @TempDir
    private Path folder;
    private final BlockingQueue<Runnable> turns = new LinkedBlockingQueue<>();
    private final Desk desk = new Desk();
    private final Worker worker = new Worker(desk, new Runner(new SvgImporter(), new CheckCatalogue()), JobFile.Options.of(problem -> { }), turns::add);

    /** Opens, and takes the window's turns until the work has ended. */
    private Optional<String> open(Path file) {
        worker.open(file);
        return assertTimeoutPreemptively(LONGEST, () -> {
            boolean begun = false;
            while (!begun || desk.work().busy()) {
                turns.poll(LONGEST.toSeconds(), TimeUnit.SECONDS).run();
                begun |= desk.work().busy();
            }
            return desk.work().problem();
        });
    }

    static Stream<Arguments> texts() {
        StringBuilder uses = new StringBuilder(SVG + "<defs><rect id='r0' width='1' height='1'/>");
        for (int i = 1; i < 30; i++) {
            uses.append("<g id='r").append(i).append("'>").append(("<use href='#r" + (i - 1) + "'/>").repeat(10)).append("</g>");
        }
        return Map.of("empty", "", "truncated", SVG + "<rect", "entities", "<!DOCTYPE svg [<!ENTITY a 'aaaa'>]>" + SVG + "&a;</svg>", "entity of a file", "<!DOCTYPE svg [<!ENTITY a SYSTEM 'file:///etc/hostname'>]>" + SVG + "&a;</svg>",
                "uses", uses + "</defs><use href='#r29'/></svg>", "deep", SVG + "<g>".repeat(50_000), "null", SVG + "\0</svg>", "archive", "PK\3\4", "no size", SVG.replace("90mm", "1e999mm") + "</svg>")
                .entrySet().stream().map(each -> Arguments.of(each.getKey(), each.getValue()));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("texts")
    void a_file_that_cannot_be_used_is_told_and_the_next_one_opens(String name, String text) throws IOException {
        Path bad = Files.writeString(folder.resolve("bad.svg"), text, StandardCharsets.UTF_8);
        String told = open(bad).orElseThrow();
        assertTrue(told.contains("bad.svg"), told);
        assertFalse(told.contains("Exception") || told.contains("the program failed"), told);
        assertTrue(told.length() < 1000, told);
        assertEquals(Optional.empty(), open(Files.writeString(folder.resolve("good.svg"), SOUND)));
        assertEquals(1, desk.result().orElseThrow().parts().size());
    }

    @Test
    void what_is_no_file_is_told_and_nothing_is_made_beside_it() throws Exception {
        for (String pipe : new String[] {"pipe.svg", "pipe.kerfglow"}) {
            assertEquals(0, new ProcessBuilder("mkfifo", folder.resolve(pipe).toString()).start().waitFor());
        }
        Path deep = Files.createDirectory(folder.resolve("folder.svg"));
        for (Path odd : new Path[] {folder.resolve("pipe.svg"), folder.resolve("pipe.kerfglow"), Path.of("/dev/zero"), Path.of("/"), folder, deep}) {
            String told = open(odd).orElseThrow();
            assertTrue(told.contains("this is a device or a pipe, not a proof") || told.contains("this is a folder, not a proof"), told);
        }
        try (Stream<Path> list = Files.list(folder)) {
            assertEquals(3, list.count(), "two pipes and a folder");
        }
        assertTrue(open(folder.resolve("none.svg")).orElseThrow().contains("no such file"));
    }

    @Test
    void a_hostile_job_file_is_told_in_plain_words() throws IOException {
        Files.writeString(folder.resolve("sign.svg"), SOUND);
        Path job = Files.writeString(folder.resolve("sign.kerfglow"), "{\"type\":\"kerfglow:Job\",\"format\":1,\"proof\":{\"file\":\"/dev/zero\",\"widthMm\":90,\"heightMm\":60,\"scale\":1},\"sheet\":{}}");
        assertTrue(open(job).orElseThrow().contains("a device or a pipe"));
        Files.writeString(job, "[".repeat(5_000_000));
        open(job).ifPresent(told -> assertFalse(told.contains("the program failed"), told));
        assertEquals("[".repeat(5_000_000), Files.readString(job), "what was there is as it was");
    }

    @Test
    void names_turn_no_words_of_the_window() throws IOException {
        String told = open(Files.writeString(folder.resolve("a\u202egvs\u001b.svg"), "")).orElseThrow();
        assertTrue(told.contains("a?gvs?.svg") && told.contains("empty"), told);
    }

    @Test
    void remembered_names_that_are_none_cost_themselves_alone() throws IOException {
        Path file = Files.writeString(folder.resolve("habits"), "recent.0=a\\u0000b\nrecent.1=/sign.svg\nscreen.pixels-per-mm=NaN\n");
        Habits habits = new Habits(file);
        assertEquals(List.of(Path.of("/sign.svg")), habits.recent());
        assertEquals(Optional.empty(), habits.screen());
    }
}
