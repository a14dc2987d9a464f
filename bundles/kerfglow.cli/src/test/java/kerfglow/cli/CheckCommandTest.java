// SPDX-License-Identifier: Apache-2.0
package kerfglow.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import kerfglow.api.Check;
import kerfglow.api.CheckInfo;
import kerfglow.api.Finding;
import kerfglow.api.Inspection;
import kerfglow.api.Outcome;
import kerfglow.api.Rule;
import kerfglow.api.Severity;
import kerfglow.api.proof.Element;
import kerfglow.api.proof.Paint;
import kerfglow.api.proof.Proof;
import kerfglow.api.proof.ProofImporter;
import kerfglow.host.CheckCatalogue;
import kerfglow.host.JobSheet;
import kerfglow.host.RunRequest;
import kerfglow.host.Runner;
import kerfglow.host.Watcher;
import kerfglow.job.Job;
import kerfglow.job.JobFile;
import kerfglow.job.JobNames;
import kerfglow.job.JobState;
import kerfglow.job.ProofRef;
import kerfglow.testkit.CheckTester;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;

class CheckCommandTest {
    private static final String CONTENT = "what the customer sent";
    @TempDir
    private Path folder;
    private final ByteArrayOutputStream said = new ByteArrayOutputStream();

    private final ProofImporter importer = (file, options) -> new Proof(file.toString(), "0".repeat(64), 100, 100, 1, options.chordErrorMm(),
            List.of(Element.builder("bar").layer("L").fill(Paint.colour(0)).fillArea(CheckTester.wkt("POLYGON ((0 0, 40 0, 40 20, 0 20, 0 0))")).build()), List.of());

    private int check(String... words) {
        PrintStream stream = new PrintStream(said, true, StandardCharsets.UTF_8);
        return new CommandLine(new CheckCommand(new Runner(importer, new CheckCatalogue()), stream, stream, Terminal.NONE)).execute(words);
    }

    private Path proof(String name) throws IOException {
        Path proof = folder.resolve(name);
        Files.createDirectories(proof.getParent());
        return Files.writeString(proof, CONTENT);
    }

    @Test
    void an_overlay_never_takes_the_place_of_the_proof() throws IOException {
        Path proof = proof("sign.svg");
        assertEquals(2, check(proof.toString(), "--overlay", folder.resolve("./sign.svg").toString()));
        assertTrue(said.toString(StandardCharsets.UTF_8).contains("the proof itself"), said::toString);
        assertEquals(CONTENT, Files.readString(proof));
        assertEquals(0, check(proof.toString(), "--overlay", folder.resolve("marked.svg").toString()));
        assertTrue(Files.readString(folder.resolve("marked.svg")).contains("<svg"));
        assertEquals(CONTENT, Files.readString(proof));
    }

    @Test
    void a_word_that_is_empty_or_no_name_is_refused_and_means_no_folder() throws IOException {
        Path proof = proof("sign.svg");
        for (String[] words : new String[][] {{""}, {"a\0b"}, {proof.toString(), "--overlay", ""}, {proof.toString(), "--job", "a\0b"}, {proof.toString(), "--shop", ""}, {proof.toString(), "--overlay", "a\0.svg"}}) {
            said.reset();
            assertEquals(2, check(words), said::toString);
            assertTrue(said.toString(StandardCharsets.UTF_8).contains("this is not a file name"), said::toString);
        }
    }

    @Test
    void a_folder_for_overlays_may_have_points_in_its_path() throws IOException {
        Path proof = proof("sign.svg");
        Path target = folder.resolve("v1.2/./out");
        assertEquals(0, check(proof.toString(), "--overlay", target.toString()), said::toString);
        assertTrue(Files.exists(folder.resolve("v1.2/out/sign.overlay.png")));
        assertEquals(2, check(proof.toString(), "--overlay", folder.resolve("x.gif").toString()));
    }

    @Test
    void proofs_of_one_name_keep_pictures_of_their_own() throws IOException {
        proof("a/sign.svg");
        proof("b/sign.svg");
        assertEquals(0, check(folder.resolve("a").toString(), folder.resolve("b").toString(), "--overlay", folder.resolve("out").toString()));
        assertTrue(Files.exists(folder.resolve("out/sign.overlay.svg")) && Files.exists(folder.resolve("out/sign-2.overlay.svg")));
    }

    /** A check that always finds the same stop, and a runner that has it. */
    private Runner finding() {
        Rule rule = new Rule("trial.stop", Severity.STOP, "A stop", "why", "fix", "geometry");
        CheckInfo info = new CheckInfo("trial", "trial", List.of(rule), List.of(), List.of(), List.of(), "## trial.stop\n");
        CheckCatalogue catalogue = new CheckCatalogue();
        catalogue.add(new Check() {
            @Override
            public CheckInfo info() {
                return info;
            }

            @Override
            public Outcome inspect(Inspection inspection) {
                return Outcome.of(List.of(Finding.of(rule, "Found").place(CheckTester.wkt("POINT (10 10)")).parts(inspection.parts().get(0).id()).build()));
            }
        }, "bundle", "1.0.0");
        return new Runner(importer, catalogue);
    }

    private int check(Runner runner, String... words) {
        PrintStream stream = new PrintStream(said, true, StandardCharsets.UTF_8);
        return new CommandLine(new CheckCommand(runner, stream, stream, Terminal.NONE)).execute(words);
    }

    /** A job file in which the stop is waived. */
    private Path waived(Runner runner) throws Exception {
        Path proof = proof("art/sign.svg");
        Path path = folder.resolve("jobs/sign.kerfglow");
        Files.createDirectories(path.getParent());
        Job job = new Job(JobState.of(ProofRef.of(JobNames.proofName(path, proof)), JobSheet.NONE), Clock.systemUTC());
        job.show(runner.run(RunRequest.of(proof, JobSheet.NONE), Watcher.NONE));
        job.waive(job.reviewed().orElseThrow().result().findings().get(0), "hidden", "Rhea");
        try (JobFile file = JobFile.open(path, JobFile.Options.of(problem -> { }))) {
            file.save(job.state(), false);
        }
        return path;
    }

    @Test
    void what_is_waived_in_a_job_file_does_not_count_in_the_exit_status() throws Exception {
        Runner runner = finding();
        Path job = waived(runner);
        assertEquals(1, check(runner, folder.resolve("art/sign.svg").toString()), said::toString);
        said.reset();
        assertEquals(0, check(runner, job.toString()), said::toString);
        assertTrue(said.toString(StandardCharsets.UTF_8).contains("waived by Rhea: hidden"), said::toString);
        said.reset();
        assertEquals(0, check(runner, "--format", "json", job.toString()), said::toString);
        assertTrue(said.toString(StandardCharsets.UTF_8).contains("\"reason\" : \"hidden\""), said::toString);
    }

    @Test
    void a_job_file_brings_its_sheet_and_protects_its_proof() throws Exception {
        Runner runner = finding();
        Path job = waived(runner);
        assertEquals(2, check(runner, job.toString(), "--job", "other.yaml"));
        assertTrue(said.toString(StandardCharsets.UTF_8).contains("a job sheet of its own"), said::toString);
        assertEquals(2, check(runner, job.toString(), "--overlay", folder.resolve("art/sign.svg").toString()));
        assertEquals(CONTENT, Files.readString(folder.resolve("art/sign.svg")));
    }

    @Test
    void a_damaged_or_missing_job_file_is_an_input_at_fault() throws Exception {
        Runner runner = finding();
        Path job = waived(runner);
        String text = Files.readString(job);
        Files.writeString(job, text.substring(0, text.length() / 2));
        assertEquals(2, check(runner, job.toString()));
        assertTrue(said.toString(StandardCharsets.UTF_8).contains("damaged: line "), said::toString);
        assertEquals(2, check(runner, folder.resolve("none.kerfglow").toString()));
        assertTrue(said.toString(StandardCharsets.UTF_8).contains("there is no such file"), said::toString);
        assertEquals(text.substring(0, text.length() / 2), Files.readString(job), "the command line writes nothing");
    }
}
