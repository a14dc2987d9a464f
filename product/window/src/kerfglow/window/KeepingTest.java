// SPDX-License-Identifier: Apache-2.0
package kerfglow.window;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import kerfglow.check.artwork.ArtworkCheck;
import kerfglow.job.JobFile;
import kerfglow.job.JobNames;
import kerfglow.job.Mark;
import kerfglow.job.MarkShape;
import kerfglow.job.PointMm;
import kerfglow.job.SmallDisk;
import org.eclipse.swt.widgets.Label;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a person is told of the job file and asked about it: held by another window, damaged, not to be written, a full disk, closing with what is not saved; and how files come in. */
class KeepingTest {
    private static final Path TESTDATA = Path.of(System.getProperty("testdata"));

    @TempDir
    Path folder;
    private Path proof;
    private Path job;

    @BeforeEach
    void copy() throws IOException {
        for (String name : List.of("faulty-letters.svg", "faulty-letters.job.yaml", "shop.yaml", "plain-letters.svg", "plain-letters.job.yaml")) {
            Files.copy(TESTDATA.resolve(name), folder.resolve(name));
        }
        proof = folder.resolve("faulty-letters.svg");
        job = folder.resolve("faulty-letters" + JobNames.ENDING);
    }

    private Window window() throws ReflectiveOperationException {
        return new Window(folder.resolve("state"), List.of(new ArtworkCheck()));
    }

    private static void mark(Window window, String text) {
        window.desk().job().orElseThrow().mark(new MarkShape.Note(new PointMm(10, 10)), text, "M. Reviewer");
    }

    private static List<String> marks(Window window) {
        return window.desk().job().orElseThrow().state().marks().stream().map(Mark::text).toList();
    }

    @Test
    void the_second_window_on_a_job_says_who_holds_it_and_loses_nothing() throws Exception {
        try (JobFile first = JobFile.open(job, JobFile.Options.of(problem -> { }))) {
            try (Window window = window()) {
                window.open(proof);
                assertTrue(window.notices().get(0).startsWith("faulty-letters.kerfglow cannot be saved here: another window has it open (" + System.getProperty("user.name")), window.notices()::toString);
                mark(window, "made in the second window");
                window.shot("20-held");
                window.answerNext(dialog -> {
                    assertTrue(window.control(dialog, Label.class, each -> true).getText().contains("held by"));
                    try {
                        window.shotAtOnce("21-held-not-saved");
                    } catch (Exception failed) {
                        throw new AssertionError(failed);
                    }
                    window.press(dialog, "Go on without saving");
                });
                window.menu("Save the job");
                assertFalse(Files.exists(job));
            }
        }
        try (Window window = window()) {
            window.open(proof);
            assertTrue(window.notices().get(0).contains("1 mark added"), window.notices()::toString);
            window.press(window.shell(), "Take it up");
            assertEquals(List.of("made in the second window"), marks(window));
            window.menu("Save the job");
            assertEquals(1, JobFile.read(job).state().marks().size());
        }
    }

    @Test
    void a_damaged_job_is_shown_as_far_as_it_can_be_read_and_the_original_is_kept() throws Exception {
        try (Window window = window()) {
            window.open(proof);
            mark(window, "first");
            mark(window, "second");
            window.menu("Save the job");
        }
        String whole = Files.readString(job);
        int cut = whole.indexOf("second");
        Files.writeString(job, whole.substring(0, cut)); // as a drive does that was pulled out
        try (Window window = window()) {
            window.open(job);
            assertEquals(List.of("first"), marks(window));
            String words = window.notices().get(0);
            assertTrue(words.startsWith("faulty-letters.kerfglow is damaged; what can be read of it is shown. What is wrong: "), words);
            assertTrue(words.matches("(?s).*line \\d+.*"), words);
            window.shot("22-damaged");
            Path kept = folder.resolve(words.replaceAll("(?s).*kept as (\\S+)\\.$", "$1"));
            assertEquals(whole.substring(0, cut), Files.readString(kept));
            mark(window, "third");
            window.menu("Save the job");
        }
        assertEquals(2, JobFile.readWhole(job).marks().size());
    }

    @Test
    void a_folder_that_may_only_be_read_is_told_and_nothing_is_lost() throws Exception {
        Path lock = Files.createDirectory(folder.resolve(".faulty-letters.kerfglow.lock")); // stops also who may write everywhere
        try (Window window = window()) {
            window.open(proof);
            assertTrue(window.notices().get(0).contains("nothing can be written in " + folder.toRealPath()), window.notices()::toString);
            mark(window, "where nothing can be written");
            window.shot("23-read-only");
            window.answerNext(dialog -> window.press(dialog, "Keep for the next start"));
            window.shell().close();
            assertTrue(window.shell().isDisposed(), "it closes");
        }
        Files.delete(lock);
        try (Window window = window()) {
            window.open(proof);
            window.press(window.shell(), "Take it up");
            assertEquals(List.of("where nothing can be written"), marks(window));
        }
    }

    @Test
    void a_full_disk_is_told_and_work_goes_on() throws Exception {
        Path small = Files.createDirectory(folder.resolve("small"));
        try (SmallDisk disk = new SmallDisk(small); Window window = window()) {
            for (String name : List.of("faulty-letters.svg", "faulty-letters.job.yaml", "shop.yaml")) {
                Files.copy(folder.resolve(name), small.resolve(name));
            }
            window.open(small.resolve("faulty-letters.svg"));
            Path filler = disk.fill();
            mark(window, "on a full disk");
            window.await(() -> window.desk().work().problem().filter(told -> told.contains("the disk is full")).isPresent(), "the complaint");
            window.shot("24-full");
            window.answerNext(dialog -> window.press(dialog, "Save"));
            window.answerNext(dialog -> {
                assertTrue(window.control(dialog, Label.class, each -> true).getText().contains("the disk is full"));
                window.press(dialog, "Go on without saving");
            });
            window.shell().close();
            assertFalse(window.shell().isDisposed(), "not saved, so it stays");
            Files.delete(filler);
            window.menu("Save the job");
            assertEquals(1, JobFile.read(small.resolve("faulty-letters" + JobNames.ENDING)).state().marks().size());
        }
    }

    @Test
    void closing_with_what_is_not_saved_asks_and_does_what_is_answered() throws Exception {
        try (Window window = window()) {
            window.open(proof);
            mark(window, "kept");
            window.answerNext(dialog -> {
                try {
                    window.shotAtOnce("25-leaving");
                } catch (Exception failed) {
                    throw new AssertionError(failed);
                }
                window.press(dialog, "Stay");
            });
            window.shell().close();
            assertFalse(window.shell().isDisposed(), "stays");
            window.answerNext(dialog -> window.press(dialog, "Stay"));
            window.drop(folder.resolve("plain-letters.svg"));
            assertEquals(Optional.of(proof), window.desk().proofFile(), "another proof asks as well");
            window.answerNext(dialog -> window.press(dialog, "Keep for the next start"));
            window.drop(folder.resolve("plain-letters.svg"));
            window.await(() -> window.desk().proofFile().equals(Optional.of(folder.resolve("plain-letters.svg"))) && !window.desk().work().busy(), "the other proof");
            window.shell().close();
            assertTrue(window.shell().isDisposed(), "nothing is unsaved, so nothing is asked");
            assertFalse(Files.exists(folder.resolve(".plain-letters.kerfglow.lock")), "given back to others");
        }
        assertFalse(Files.exists(job), "it was not saved");
        try (Window window = window()) {
            window.open(proof);
            window.press(window.shell(), "Take it up");
            assertEquals(List.of("kept"), marks(window));
            window.answerNext(dialog -> window.press(dialog, "Save"));
            window.shell().close();
            assertTrue(window.shell().isDisposed());
        }
        assertEquals(1, JobFile.read(job).state().marks().size());
        try (Window window = window()) {
            window.open(proof);
            assertEquals(List.of(), window.notices());
            mark(window, "taken back");
            window.settle();
            window.desk().job().orElseThrow().undo();
        }
        try (Window window = window()) {
            window.open(proof);
            assertEquals(List.of(), window.notices(), "what was taken back is not offered");
        }
    }

    @Test
    void files_are_dropped_on_the_window() throws Exception {
        Path picture = Files.writeString(folder.resolve("photo.png"), "no proof");
        Path plain = folder.resolve("plain-letters.svg");
        try (Window window = window()) {
            window.drop(picture);
            window.await(() -> !window.notices().isEmpty(), "what is told");
            assertEquals(List.of("photo.png is neither a proof (.svg) nor a job file (.kerfglow); nothing is opened."), window.notices());
            window.press(window.shell(), "Read");
            window.drop(picture, proof, plain);
            window.await(() -> window.desk().result().isPresent() && !window.desk().work().busy(), "the proof");
            assertEquals(Optional.of(proof), window.desk().proofFile());
            assertEquals(List.of("One proof is opened at a time: faulty-letters.svg is, photo.png and 1 more are not."), window.notices());
            window.shot("26-dropped");
            window.press(window.shell(), "Read");
            mark(window, "kept");
            window.menu("Save the job");
            window.drop(plain);
            window.await(() -> window.desk().proofFile().equals(Optional.of(plain)) && !window.desk().work().busy(), "the other proof");
            window.drop(job);
            window.await(() -> window.desk().proofFile().equals(Optional.of(proof)) && !window.desk().work().busy(), "the proof of the job");
            assertEquals(List.of("kept"), marks(window));
            assertEquals(List.of(), window.notices());
        }
    }

    @Test
    void the_demo_that_is_open_stays_open() throws Exception {
        try (Window window = new Window(folder.resolve("state"), List.of(new ArtworkCheck()), Optional.of(proof))) {
            window.open(proof);
            mark(window, "not saved yet");
            window.menu("Open the demo");
            window.await(() -> !window.desk().work().busy(), "the run");
            assertEquals(List.of(), window.notices());
            assertEquals(List.of("not saved yet"), marks(window));
            assertTrue(window.desk().kept().file().orElseThrow().heldBy().isEmpty());
            window.menu("Save the job");
            assertEquals(1, JobFile.read(job).state().marks().size());
        }
    }

    @Test
    void saved_under_another_name_in_another_folder_it_still_finds_its_proof() throws Exception {
        Path elsewhere = Files.createDirectory(folder.resolve("elsewhere")).resolve("copy" + JobNames.ENDING);
        try (Window window = window()) {
            window.open(proof);
            mark(window, "moves along");
            window.desk().kept().saveIn(JobFile.open(elsewhere, JobFile.Options.of(problem -> { })));
            assertFalse(window.desk().job().orElseThrow().isChanged());
            window.menu("Undo");
            assertEquals(Optional.of(proof), window.desk().proofFile(), "what is taken back names it from the new folder too");
        }
        try (Window window = window()) {
            window.open(elsewhere);
            assertEquals(List.of("moves along"), marks(window));
        }
    }
}
