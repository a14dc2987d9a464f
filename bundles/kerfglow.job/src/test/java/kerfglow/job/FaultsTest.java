// SPDX-License-Identifier: Apache-2.0
package kerfglow.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import kerfglow.host.SafeFile;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A disk that is full or read-only, a clock that is set back, two processes on one job: what was saved stays, what is open can still be saved. */
class FaultsTest {
    private static final Duration SOON = Duration.ofMillis(20);
    private static final int WAIT_MILLIS = 20_000;

    @TempDir
    private Path folder;
    private final List<String> told = Collections.synchronizedList(new ArrayList<>());

    private JobFile open(Path path) throws IOException {
        return JobFile.open(path, new JobFile.Options(Clock.systemUTC(), SOON, told::add, Optional.empty()));
    }

    private static JobState named(String title) throws IOException {
        JobState state = JobFileTest.full();
        return state.withSheet(SheetEdits.withTitle(state.sheet(), title));
    }

    private static String title(Path path) throws IOException {
        return JobFile.readWhole(path).sheet().title();
    }

    private interface Condition {
        boolean holds() throws IOException;
    }

    private static void await(Condition condition, String what) throws Exception {
        long start = System.nanoTime();
        while (!condition.holds()) {
            assertTrue((System.nanoTime() - start) / 1e6 < WAIT_MILLIS, what);
            Thread.sleep(5);
        }
    }

    @Test
    void on_a_full_disk_the_old_job_stays_and_the_new_one_is_written_once_there_is_room() throws Exception {
        try (SmallDisk disk = new SmallDisk(folder)) {
            Path path = folder.resolve("sign.kerfglow");
            Path side = folder.resolve(".sign.kerfglow.unsaved");
            try (JobFile file = open(path)) {
                file.save(named("old"), false);
                Path filler = disk.fill();
                JobState larger = named("new").plus(Mark.of(new MarkShape.Note(new PointMm(1, 1)), "word ".repeat(2000), "Rhea", Samples.NOON, ""));
                JobFileException refused = assertThrows(JobFileException.class, () -> file.save(larger, false));
                assertEquals(JobFileException.Kind.UNWRITABLE, refused.kind());
                assertTrue(refused.getMessage().contains("what is there is unchanged. Make room"), refused::getMessage);
                assertEquals("old", title(path));
                await(() -> !told.isEmpty(), "autosave that cannot write says so");
                Thread.sleep(5 * SOON.toMillis());
                assertEquals(1, told.size(), "once: " + told);
                assertEquals("old", title(path));
                try (Stream<Path> files = Files.list(folder)) {
                    assertTrue(files.noneMatch(each -> each.toString().endsWith(".half")), "half a file would take the room that is left");
                }
                IOException report = assertThrows(IOException.class, () -> SafeFile.write(folder.resolve("report.html"), out -> out.write(new byte[1 << 16])));
                assertTrue(report.getMessage().contains("the disk is full; make room"), report::getMessage);
                Files.delete(filler);
                await(() -> Files.exists(side), "what could not be saved is kept as soon as there is room, without another change");
                await(() -> told.size() == 2, "and that is told");
                assertTrue(told.get(1).contains("kept again"), told.get(1));
            }
            try (JobFile again = open(path)) { // as after a kill: nobody saved since
                assertEquals("new", again.unsaved().orElseThrow().state().sheet().title());
                again.save(again.takeUnsaved(), false);
            }
            assertEquals("new", title(path));
        }
    }

    @Test
    void a_job_opens_on_a_full_disk_and_says_that_it_cannot_be_saved_there() throws Exception {
        try (SmallDisk disk = new SmallDisk(folder)) {
            Path path = folder.resolve("sign.kerfglow");
            try (JobFile file = open(path)) {
                file.save(named("old"), false);
            }
            disk.fill();
            try (JobFile file = open(path)) {
                assertEquals("old", file.contents().state().sheet().title());
                JobFileException refused = assertThrows(JobFileException.class, () -> file.save(named("new"), false));
                assertTrue(refused.getMessage().contains("cannot be saved"), refused::getMessage);
            }
            assertEquals("old", title(path));
        }
    }

    @Test
    void a_folder_that_becomes_read_only_costs_nothing_that_was_saved() throws Exception {
        try (SmallDisk disk = new SmallDisk(folder)) {
            Path path = folder.resolve("sign.kerfglow");
            try (JobFile file = open(path)) {
                file.save(named("old"), false);
                disk.readOnly(true);
                assertEquals(JobFileException.Kind.UNWRITABLE, assertThrows(JobFileException.class, () -> file.save(named("new"), false)).kind());
                IOException report = assertThrows(IOException.class, () -> SafeFile.write(folder.resolve("report.html"), out -> out.write(1)));
                assertTrue(report.getMessage().contains("may only be read; choose another folder"), report::getMessage);
                try (JobFile elsewhere = open(path)) {
                    assertTrue(elsewhere.heldBy().isPresent());
                    assertEquals("old", elsewhere.contents().state().sheet().title());
                }
                disk.readOnly(false);
                file.save(named("new"), false);
            }
            assertEquals("new", title(path));
            disk.readOnly(true);
            try (JobFile file = open(path)) {
                assertTrue(file.readOnly().orElseThrow().contains("nothing can be written"), file.readOnly()::toString);
                assertEquals(JobFileException.Kind.UNWRITABLE, assertThrows(JobFileException.class, () -> file.save(named("third"), true)).kind());
            }
            disk.readOnly(false);
        }
    }

    /** A clock that goes back a day at every look. */
    private static Clock backwards() {
        return new Clock() {
            private Instant now = Samples.NOON;

            @Override
            public Instant instant() {
                now = now.minus(Duration.ofDays(1));
                return now;
            }

            @Override
            public ZoneOffset getZone() {
                return ZoneOffset.UTC;
            }

            @Override
            public Clock withZone(ZoneId zone) {
                return this;
            }
        };
    }

    @Test
    void a_clock_that_is_set_back_changes_no_order_and_loses_nothing() throws Exception {
        Path path = folder.resolve("sign.kerfglow");
        Job job = new Job(named("one"), backwards());
        int before = job.state().marks().size();
        for (String text : List.of("first", "second", "third")) {
            job.mark(new MarkShape.Note(new PointMm(1, 1)), text, "Rhea");
        }
        try (JobFile file = JobFile.open(path, new JobFile.Options(backwards(), SOON, told::add, Optional.empty()))) {
            file.save(job.state(), false);
            file.save(job.state(), false);
            job.mark(new MarkShape.Note(new PointMm(1, 1)), "fourth", "Rhea");
            file.changed(job.state());
            await(() -> JobFile.leftUnsaved(path, Optional.empty()).isPresent(), "autosave goes on");
        }
        try (JobFile file = open(path)) {
            List<Mark> marks = file.unsaved().orElseThrow().state().marks();
            assertEquals(List.of("first", "second", "third", "fourth"), marks.subList(before, marks.size()).stream().map(Mark::text).toList());
            assertTrue(file.unsaved().orElseThrow().fitsFile(), "newer is what builds on the file, whatever its date");
        }
        while (job.undoName().isPresent()) {
            job.undo();
        }
        assertEquals(before, job.state().marks().size());
        assertEquals(List.of(), told);
    }

    /** Opens, adds one and saves, again and again, whenever it holds the job; prints how often. */
    public static final class Counter {
        private Counter() {
        }

        /** @param arguments the job file, how often to open it */
        public static void main(String[] arguments) throws Exception {
            int added = 0;
            for (int i = 0; i < Integer.parseInt(arguments[1]); i++) {
                try (JobFile file = JobFile.open(Path.of(arguments[0]), JobFile.Options.of(problem -> { }))) {
                    if (file.heldBy().isEmpty()) {
                        JobState state = file.contents().state();
                        file.save(state.withSheet(SheetEdits.withTitle(state.sheet(), String.valueOf(Integer.parseInt(state.sheet().title()) + 1))), false);
                        added++;
                    }
                }
            }
            System.out.println(added);
        }
    }

    @Test
    void of_several_processes_on_one_job_none_undoes_what_another_saved() throws Exception {
        Path path = folder.resolve("sign.kerfglow");
        try (JobFile file = open(path)) {
            file.save(named("0"), false);
        }
        List<Process> processes = new ArrayList<>();
        for (int i = 0; i < 4; i++) {
            processes.add(new ProcessBuilder(Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-Xmx100m", "-XX:+UseSerialGC", "-XX:TieredStopAtLevel=1", "-cp",
                    System.getProperty("java.class.path"), Counter.class.getName(), path.toString(), "40").redirectError(ProcessBuilder.Redirect.INHERIT).start());
        }
        int added = 0;
        for (Process process : processes) {
            added += Integer.parseInt(new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8).strip());
            assertEquals(0, process.waitFor());
        }
        assertTrue(added > 10, "saved " + added);
        assertEquals(String.valueOf(added), title(path));
    }
}
