// SPDX-License-Identifier: Apache-2.0
package kerfglow.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import kerfglow.api.proof.ProofException;
import kerfglow.host.RunRequest;
import kerfglow.host.Runner;
import kerfglow.host.SheetException;
import kerfglow.host.Watcher;
import kerfglow.job.JobFile;
import kerfglow.job.JobState;
import kerfglow.job.ReviewedResult;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** The words that say what to run, shared by the commands that make files for the floor. */
final class RunArguments {
    @Parameters(paramLabel = "FILE", description = "A proof (SVG), or a job file (.kerfglow).")
    private Path file;
    @Option(names = "--job", paramLabel = "SHEET", description = "Job sheet; else NAME.job.yaml beside the proof, if it is there.")
    private Path job;
    @Option(names = "--shop", paramLabel = "SHEET", description = "Shop sheet; else the one that the job sheet names.")
    private Path shop;
    @Option(names = "--set", paramLabel = "KEY=VALUE", description = "Gives a setting, or KEY[role=face]=VALUE for some parts. Repeat as needed.")
    private List<String> settings = List.of();
    @Option(names = "--replace", description = "Writes over a file that is newer than what this is made from.")
    private boolean replace;

    Path file() {
        return file;
    }

    boolean replaces() {
        return replace;
    }

    /** The file's name without its ending, beside it, with another ending. */
    Path beside(String ending) {
        return file.resolveSibling(file.getFileName().toString().replaceFirst("\\.[^.]*$", "") + ending);
    }

    /** What is wrong with the words, if anything; told before any work is done. */
    Optional<String> wrong() {
        return job != null && JobFile.isJobFile(file) ? Optional.of("--job " + job + ": a job file holds a job sheet of its own; leave one of them out") : Optional.empty();
    }

    /** Runs all checks; a job file brings its proof, its job sheet and what was decided. */
    ReviewedResult run(Runner runner, Watcher watcher) throws IOException, ProofException, SheetException, InterruptedException {
        if (JobFile.isJobFile(file)) {
            JobState state = JobFile.readWhole(file);
            return ReviewedResult.of(state, runner.run(new RunRequest(JobFile.proofFile(file, state), Optional.of(state.sheet()), Optional.empty(), Optional.ofNullable(shop), settings, List.of()), watcher));
        }
        return ReviewedResult.undecided(runner.run(new RunRequest(file, Optional.ofNullable(job), Optional.ofNullable(shop), settings, List.of()), watcher));
    }

    /** The files that a result was made from; something newer than the youngest of them is not written over untold. */
    List<Path> inputs(ReviewedResult reviewed) {
        List<Path> inputs = new ArrayList<>(List.of(file, Path.of(reviewed.result().proof().file())));
        Optional.ofNullable(job).ifPresent(inputs::add);
        Optional.ofNullable(shop).ifPresent(inputs::add);
        reviewed.result().job().shopSheet().ifPresent(inputs::add);
        return inputs;
    }
}
