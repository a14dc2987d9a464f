// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.desk;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import kerfglow.host.JobSheet;
import kerfglow.job.JobFile;
import kerfglow.job.JobNames;
import kerfglow.job.JobState;
import kerfglow.job.ProofRef;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class FirstFileTest {
    @TempDir
    Path folder;
    private Path demo;
    private Path one;
    private Path two;

    @BeforeEach
    void files() throws IOException {
        demo = Files.writeString(folder.resolve("demo.svg"), "");
        one = Files.writeString(folder.resolve("one.svg"), "");
        two = Files.writeString(folder.resolve("two.svg"), "");
    }

    private Path own() {
        return folder.resolve("own");
    }

    private void leave(Path proof, String at) throws IOException {
        JobFile file = JobFile.open(JobNames.beside(proof), JobFile.Options.of(problem -> { }));
        file.keep(JobState.of(ProofRef.of(proof.getFileName().toString()), JobSheet.NONE));
        file.close();
        Files.setLastModifiedTime(folder.resolve("." + proof.getFileName().toString().replace(".svg", JobNames.ENDING) + ".unsaved"), FileTime.from(Instant.parse(at)));
    }

    @Test
    void a_start_without_words_shows_the_demo_or_what_was_left_unsaved_last() throws IOException {
        List<Path> recent = List.of(one, two, folder.resolve("gone.svg"));
        assertEquals(Optional.of(demo), FirstFile.of(recent, Optional.of(demo), own()));
        assertEquals(Optional.empty(), FirstFile.of(recent, Optional.empty(), own()));
        leave(one, "2026-03-01T10:00:00Z");
        leave(two, "2026-03-02T10:00:00Z");
        assertEquals(Optional.of(two), FirstFile.of(recent, Optional.of(demo), own()), "the later one");
        try (JobFile held = JobFile.open(JobNames.beside(two), JobFile.Options.of(problem -> { }))) {
            assertEquals(Optional.of(one), FirstFile.of(recent, Optional.of(demo), own()), "another window is at work on that one: " + held.file());
        }
    }

    @Test
    void of_dropped_files_the_first_that_is_a_proof_or_a_job_is_opened_and_the_rest_is_told() throws IOException {
        Path job = Files.writeString(folder.resolve("one.kerfglow"), "");
        Path photo = Files.writeString(folder.resolve("photo.jpg"), "");
        assertEquals(new Dropped(Optional.of(one), ""), Dropped.of(List.of(one)));
        assertEquals(new Dropped(Optional.of(job), ""), Dropped.of(List.of(job, one)), "a proof and its job are one");
        assertEquals(new Dropped(Optional.of(one), "One proof is opened at a time: one.svg is, two.svg is not."), Dropped.of(List.of(one, two)));
        assertEquals(new Dropped(Optional.empty(), "photo.jpg is neither a proof (.svg) nor a job file (.kerfglow); nothing is opened."), Dropped.of(List.of(photo)));
        assertEquals(new Dropped(Optional.empty(), "None of the 2 files is a proof (.svg) or a job file (.kerfglow); nothing is opened."), Dropped.of(List.of(photo, folder)));
        assertEquals(new Dropped(Optional.empty(), ""), Dropped.of(List.of()));
    }
}
