// SPDX-License-Identifier: Apache-2.0
package kerfglow.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import kerfglow.host.Result;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class JobFileTest {
    private static final Duration SOON = Duration.ofMillis(30);

    @TempDir
    private Path folder;
    private Path path;
    private final List<String> told = Collections.synchronizedList(new ArrayList<>());

    @BeforeEach
    void name() {
        path = folder.resolve("sign.kerfglow");
    }

    private JobFile open() throws IOException {
        return JobFile.open(path, new JobFile.Options(Samples.CLOCK, SOON, told::add, Optional.empty()));
    }

    /** A job with one of everything. */
    static JobState full() {
        Result result = Samples.result("one", Samples.letters(), List.of(Samples.finding("00000001", Samples.GAP, 2, 3, "LINESTRING (20 50, 22 50)")));
        Job job = new Job(Samples.state(), Samples.CLOCK);
        job.show(Samples.with(result, List.of(Samples.row("router", Result.Status.FINDINGS), Samples.row("fit", Result.Status.TIMED_OUT))));
        job.mark(new MarkShape.Note(new PointMm(1.25, 2)), "A note: \"quoted\" <&> ünïcode 🙂\nsecond line", "Rhea");
        job.mark(new MarkShape.Arrow(new PointMm(0, 0), new PointMm(10, 5)), "", "Rhea");
        job.mark(new MarkShape.Line(List.of(new PointMm(0, 0), new PointMm(1, 2), new PointMm(-3, 4.0625))), "line", "Rhea");
        String ring = job.mark(new MarkShape.Ring(new PointMm(50, 50), 10, 5), "ring", "Rhea");
        job.mark(new MarkShape.Box(new PointMm(5, 6), 7, 8), "box", "Rhea");
        job.mark(new MarkShape.Dimension(new PointMm(0, 0), new PointMm(3, 4)), "dim", "Rhea");
        job.answerMark(ring, "An answer", "Odo");
        job.settleMark(ring, "Odo");
        job.waive(job.reviewed().orElseThrow().result().findings().get(0), "The joint is hidden", "Rhea");
        job.waive(job.reviewed().orElseThrow().result().checks().get(1), "Backs are bought in", "Rhea");
        assertEquals(List.of(), job.signOff("Rhea", "for the first sheet"));
        return job.state();
    }

    private static JobState named(String title) {
        return Samples.state().withSheet(SheetEdits.withTitle(Samples.state().sheet(), title));
    }

    @Test
    void everything_comes_back_as_it_was_saved() throws IOException {
        JobState state = full();
        try (JobFile file = open()) {
            assertTrue(file.contents().isNew());
            file.save(state, false);
        }
        JobFile.Contents read = JobFile.read(path);
        assertEquals(List.of(), read.problems());
        assertEquals(state.marks(), read.state().marks());
        assertEquals(state.waivers(), read.state().waivers());
        assertEquals(state.signOffs(), read.state().signOffs());
        assertEquals(state.proof(), read.state().proof());
        assertEquals(state.seen().findings(), read.state().seen().findings());
        assertEquals(state.seen().outlines(), read.state().seen().outlines(), "squares lose nothing");
    }

    @Test
    void nothing_else_is_left_in_the_folder() throws IOException {
        try (JobFile file = open()) {
            file.changed(named("a"));
            file.save(named("b"), false);
        }
        try (Stream<Path> files = Files.list(folder)) {
            assertEquals(List.of(path), files.toList());
        }
    }

    @Test
    void what_was_not_saved_is_offered_next_time_and_is_gone_after_saving() throws IOException {
        try (JobFile file = open()) {
            file.save(named("saved"), false);
            file.changed(named("entered"));
        }
        try (JobFile file = open()) {
            assertEquals("saved", file.contents().state().sheet().title());
            JobFile.Unsaved unsaved = file.unsaved().orElseThrow();
            assertEquals("entered", unsaved.state().sheet().title());
            assertTrue(unsaved.fitsFile());
            assertTrue(JobFile.leftUnsaved(path, Optional.empty()).isPresent());
            file.save(file.takeUnsaved(), false);
        }
        assertTrue(JobFile.leftUnsaved(path, Optional.empty()).isEmpty());
        try (Stream<Path> files = Files.list(folder)) {
            assertEquals(List.of(path), files.toList());
        }
        try (JobFile file = open()) {
            assertTrue(file.unsaved().isEmpty());
            assertEquals("entered", file.contents().state().sheet().title());
        }
    }

    @Test
    void unsaved_work_on_a_file_that_was_saved_by_somebody_since_says_so() throws IOException {
        try (JobFile file = open()) {
            file.save(named("saved"), false);
            file.changed(named("entered"));
        }
        Files.writeString(path, Files.readString(path).replace("\"saved\"", "\"elsewhere\""));
        try (JobFile file = open()) {
            assertFalse(file.unsaved().orElseThrow().fitsFile());
            JobState taken = file.takeUnsaved();
            assertEquals(JobFileException.Kind.CHANGED_ON_DISK, assertThrows(JobFileException.class, () -> file.save(taken, false)).kind());
            assertEquals("elsewhere", JobFile.read(path).state().sheet().title());
            file.unchanged(); // taken back
        }
        try (JobFile file = open()) {
            assertTrue(file.unsaved().isEmpty());
        }
    }

    @Test
    void an_offer_is_set_aside_as_a_job_file_of_its_own_and_not_offered_again() throws IOException {
        try (JobFile file = open()) {
            file.changed(named("entered"));
        }
        try (JobFile file = open()) {
            file.unchanged();
            assertTrue(file.isUndecided(), "what nobody answered stays, whatever is taken back");
            Path kept = file.setUnsavedAside().orElseThrow();
            assertEquals("entered", JobFile.read(kept).state().sheet().title());
            assertFalse(file.isUndecided());
        }
        try (JobFile file = open()) {
            assertTrue(file.unsaved().isEmpty());
        }
    }

    @Test
    void what_is_entered_into_a_job_that_another_holds_is_kept_in_ones_own_folder_and_offered() throws IOException {
        Path own = folder.resolve("own");
        JobFile.Options options = new JobFile.Options(Samples.CLOCK, SOON, told::add, Optional.of(own));
        try (JobFile first = open()) {
            first.save(named("one"), false);
            try (JobFile second = JobFile.open(path, options)) {
                assertTrue(second.heldBy().isPresent());
                second.changed(named("two"));
            }
            assertTrue(JobFile.leftUnsaved(path, Optional.of(own)).isPresent());
            assertTrue(JobFile.isHeld(path));
        }
        assertFalse(JobFile.isHeld(path));
        try (JobFile third = JobFile.open(path, options)) {
            assertEquals("two", third.takeUnsaved().sheet().title());
            third.save(named("two and more"), false);
        }
        assertTrue(JobFile.leftUnsaved(path, Optional.of(own)).isEmpty(), "saved, so that nothing is offered");
        try (Stream<Path> files = Files.list(own)) {
            assertEquals(List.of(), files.toList());
        }
    }

    /** A folder in the place of the lock file stops everyone, also who may write everywhere. */
    @Test
    void a_folder_that_may_not_be_written_to_is_told_and_what_is_entered_is_kept_elsewhere() throws IOException {
        Path own = folder.resolve("own");
        JobFile.Options options = new JobFile.Options(Samples.CLOCK, SOON, told::add, Optional.of(own));
        try (JobFile file = open()) {
            file.save(named("one"), false);
        }
        Files.createDirectory(folder.resolve(".sign.kerfglow.lock"));
        try (JobFile file = JobFile.open(path, options)) {
            assertTrue(file.heldBy().isEmpty(), "nobody holds it");
            assertTrue(file.readOnly().orElseThrow().contains(folder.getFileName().toString()));
            assertEquals(JobFileException.Kind.UNWRITABLE, assertThrows(JobFileException.class, () -> file.save(named("two"), true)).kind());
            file.keep(named("two"));
        }
        try (JobFile file = JobFile.open(path, options)) {
            assertEquals("two", file.unsaved().orElseThrow().state().sheet().title());
            assertEquals("two", JobFile.read(file.setUnsavedAside().orElseThrow()).state().sheet().title());
        }
        assertEquals("one", JobFile.read(path).state().sheet().title());
    }

    @Test
    void the_difference_of_two_states_is_told_in_words() {
        JobState from = Samples.state();
        Mark mark = Mark.of(new MarkShape.Note(new PointMm(1, 2)), "wider?", "Rhea", Samples.CLOCK.instant(), "");
        JobState to = from.plus(mark).withSheet(SheetEdits.withTitle(from.sheet(), "another"));
        assertEquals(List.of(), JobDifference.words(from, from));
        assertEquals(List.of("1 mark added", "the job sheet changed"), JobDifference.words(from, to));
        assertEquals(List.of("1 mark changed"), JobDifference.words(to, to.changed(mark.id(), each -> each.withText("narrower?", Samples.CLOCK.instant()))));
        assertEquals(List.of("1 mark taken out", "another file for the proof, b.svg"),
                JobDifference.words(to, to.without(mark.id()).withProof(from.proof().withFile("b.svg"))));
    }

    @Test
    void an_offer_that_nobody_answered_is_not_written_over() throws IOException {
        try (JobFile file = open()) {
            file.changed(named("entered"));
        }
        try (JobFile file = open()) {
            file.save(named("something else"), false);
        }
        try (Stream<Path> files = Files.list(folder)) {
            Path kept = files.filter(each -> each.getFileName().toString().startsWith("sign.unsaved-")).findFirst().orElseThrow();
            assertEquals("entered", JobFile.read(kept).state().sheet().title());
        }
    }

    @Test
    void a_job_goes_to_another_folder_and_still_finds_its_proof() {
        JobState state = Samples.state().withProof(ProofRef.of("art/sign.svg"));
        Path elsewhere = folder.resolve("other/deep/copy.kerfglow");
        JobState moved = JobNames.relocated(state, path, elsewhere);
        assertEquals("../../art/sign.svg", moved.proof().file());
        assertEquals(JobNames.proofFile(path, state), JobNames.proofFile(elsewhere, moved));
        assertEquals(folder.resolve("art/sign.kerfglow"), JobNames.beside(folder.resolve("art/sign.svg")));
    }

    @Test
    void changes_are_on_the_disk_soon_even_while_more_are_made() throws Exception {
        try (JobFile file = open()) {
            file.save(named("saved"), false);
            long end = System.nanoTime() + Duration.ofSeconds(20).toNanos();
            Path side = folder.resolve(".sign.kerfglow.unsaved");
            for (int i = 0; !Files.exists(side); i++) {
                assertTrue(System.nanoTime() < end, "autosave must not wait for a pause");
                file.changed(named("entered " + i));
                Thread.sleep(1);
            }
        }
        assertEquals(List.of(), told);
    }

    @Test
    void a_file_that_changed_on_the_disk_is_not_written_over_unless_told() throws IOException {
        try (JobFile file = open()) {
            file.save(named("one"), false);
            String other = Files.readString(path).replace("\"one\"", "\"two\"");
            Files.writeString(path, other);
            JobFileException refused = assertThrows(JobFileException.class, () -> file.save(named("three"), false));
            assertEquals(JobFileException.Kind.CHANGED_ON_DISK, refused.kind());
            assertTrue(refused.getMessage().contains("sign.kerfglow"), refused.getMessage());
            assertEquals(other, Files.readString(path));
            file.save(named("three"), true);
        }
        assertEquals("three", JobFile.read(path).state().sheet().title());
    }

    @Test
    void the_second_opener_is_told_who_holds_the_job_and_cannot_save() throws IOException {
        try (JobFile first = open()) {
            first.save(named("one"), false);
            try (JobFile second = open()) {
                String holder = second.heldBy().orElseThrow();
                assertTrue(holder.contains("process " + ProcessHandle.current().pid()), holder);
                assertEquals("one", second.contents().state().sheet().title());
                assertEquals(JobFileException.Kind.HELD, assertThrows(JobFileException.class, () -> second.save(named("two"), true)).kind());
                second.changed(named("two"));
            }
            try (JobFile again = open()) {
                assertTrue(again.heldBy().isPresent(), "that the second was closed changes nothing");
            }
            first.save(named("three"), false);
        }
        try (JobFile third = open()) {
            assertTrue(third.heldBy().isEmpty(), "closed, so nobody holds it");
            assertTrue(third.unsaved().isEmpty(), "the second window writes nothing");
        }
    }

    @Test
    void links_are_followed_and_permissions_kept() throws IOException {
        Path real = Files.createDirectory(folder.resolve("real")).resolve("job.kerfglow");
        try (JobFile file = JobFile.open(real, new JobFile.Options(Samples.CLOCK, SOON, told::add, Optional.empty()))) {
            file.save(named("one"), false);
        }
        Files.setPosixFilePermissions(real, PosixFilePermissions.fromString("rw-r-----"));
        Files.createSymbolicLink(path, Path.of("real", "job.kerfglow"));
        try (JobFile file = open()) {
            file.save(named("two"), false);
        }
        assertTrue(Files.isSymbolicLink(path));
        assertEquals("two", JobFile.read(real).state().sheet().title());
        assertEquals("rw-r-----", PosixFilePermissions.toString(Files.getPosixFilePermissions(real)));
    }

    @Test
    void a_newer_format_is_refused_and_left_alone() throws IOException {
        try (JobFile file = open()) {
            file.save(named("one"), false);
        }
        String newer = Files.readString(path).replace("\"format\" : 1", "\"format\" : 2");
        Files.writeString(path, newer);
        assertEquals(JobFileException.Kind.NEWER, assertThrows(JobFileException.class, this::open).kind());
        assertEquals(newer, Files.readString(path));
    }

    @Test
    void saving_that_fails_leaves_what_is_there() throws IOException {
        try (JobFile file = open()) {
            file.save(named("one"), false);
            Path inTheWay = Files.createDirectories(folder.resolve(".sign.kerfglow.unsaved.half/in-the-way"));
            JobFileException failed = assertThrows(JobFileException.class, () -> file.save(named("two"), false));
            assertEquals(JobFileException.Kind.UNWRITABLE, failed.kind());
            assertEquals("one", JobFile.read(path).state().sheet().title());
            Files.delete(inTheWay);
            Files.delete(inTheWay.getParent());
            file.save(named("three"), false);
        }
        assertEquals("three", JobFile.read(path).state().sheet().title());
    }

    @Test
    void autosave_that_fails_is_told() throws Exception {
        JobFile file = open();
        file.save(named("one"), false);
        Files.createDirectories(folder.resolve(".sign.kerfglow.unsaved.half/in-the-way"));
        file.changed(named("two"));
        file.close();
        assertEquals(1, told.size(), told::toString);
        assertTrue(told.get(0).contains("save it elsewhere"), told.get(0));
    }
}
