// SPDX-License-Identifier: Apache-2.0
package kerfglow.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.concurrent.Callable;
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
import kerfglow.job.MarkShape;
import kerfglow.job.PointMm;
import kerfglow.job.ProofRef;
import kerfglow.testkit.CheckTester;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;

class ReportCommandTest {
    @TempDir
    private Path folder;
    private final ByteArrayOutputStream said = new ByteArrayOutputStream();
    private final PrintStream stream = new PrintStream(said, true, StandardCharsets.UTF_8);
    private final ProofImporter importer = (file, options) -> new Proof(file.toString(), "0".repeat(64), 100, 100, 1, options.chordErrorMm(),
            List.of(Element.builder("bar").layer("L").fill(Paint.colour(0)).fillArea(CheckTester.wkt("POLYGON ((0 0, 40 0, 40 20, 0 20, 0 0))")).build()), List.of());
    private final Runner runner = new Runner(importer, new CheckCatalogue());

    private int run(Callable<Integer> command, String... words) {
        return new CommandLine(command).execute(words);
    }

    private int report(String... words) {
        return run(new ReportCommand(runner, stream, stream, Terminal.NONE), words);
    }

    private Path proof(String name) throws IOException {
        Path proof = folder.resolve(name);
        Files.createDirectories(proof.getParent());
        return Files.writeString(proof, "what the customer sent");
    }

    private String said() {
        return said.toString(StandardCharsets.UTF_8);
    }

    @Test
    void a_folder_gets_both_kinds_for_each_proof() throws IOException {
        proof("a/sign.svg");
        proof("b/sign.svg");
        assertEquals(0, report(folder.resolve("a").toString(), folder.resolve("b").toString(), "--to", folder.resolve("out").toString()), this::said);
        for (String name : List.of("sign.report.html", "sign.report.pdf", "sign-2.report.html", "sign-2.report.pdf")) {
            assertTrue(Files.size(folder.resolve("out").resolve(name)) > 1000, name);
        }
    }

    @Test
    void several_proofs_do_not_go_into_one_file() throws IOException {
        assertEquals(2, report(proof("a.svg").toString(), proof("b.svg").toString(), "--to", folder.resolve("out.pdf").toString()));
        assertTrue(said().contains("several proofs"), this::said);
    }

    @Test
    void a_job_file_brings_marks_and_is_never_written_over() throws Exception {
        Path proof = proof("art/sign.svg");
        Path path = Files.createDirectories(folder.resolve("jobs")).resolve("sign.kerfglow");
        Job job = new Job(JobState.of(ProofRef.of(JobNames.proofName(path, proof)), JobSheet.NONE), Clock.systemUTC());
        job.show(runner.run(RunRequest.of(proof, JobSheet.NONE), Watcher.NONE));
        job.mark(new MarkShape.Note(new PointMm(10, 10)), "is this & that right?", "Tomas");
        try (JobFile file = JobFile.open(path, JobFile.Options.of(problem -> { }))) {
            file.save(job.state(), false);
        }
        Path html = folder.resolve("sign.html");
        assertEquals(0, report(path.toString(), "--to", html.toString()), this::said);
        assertTrue(Files.readString(html).contains("is this &amp; that right?"));
        assertEquals(2, report(path.toString(), "--job", "x.yaml", "--to", html.toString()));
        assertTrue(said().contains("a job sheet of its own"), this::said);
    }

    @Test
    void layers_without_a_picture_are_told() throws IOException {
        assertEquals(2, run(new CheckCommand(runner, stream, stream, Terminal.NONE), proof("a.svg").toString(), "--layers", "all"));
        assertTrue(said().contains("add --overlay"), this::said);
        assertFalse(Files.exists(folder.resolve("a.overlay.svg")));
    }
}
