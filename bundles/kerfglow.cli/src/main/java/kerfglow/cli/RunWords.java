// SPDX-License-Identifier: Apache-2.0
package kerfglow.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import kerfglow.api.Severity;
import kerfglow.api.proof.ProofException;
import kerfglow.host.Result;
import kerfglow.host.RunRequest;
import kerfglow.host.Runner;
import kerfglow.host.SheetException;
import kerfglow.host.Watcher;
import kerfglow.job.JobFile;
import kerfglow.job.JobNames;
import kerfglow.job.JobState;
import kerfglow.job.ReviewedResult;
import picocli.CommandLine.Option;

/** The words that say how a proof is checked; every command that checks has them. */
final class RunWords {
    @Option(names = "--job", paramLabel = "SHEET", description = "Job sheet; else NAME.job.yaml beside the proof, if it is there.")
    private String job;
    @Option(names = "--shop", paramLabel = "SHEET", description = "Shop sheet; else the one that the job sheet names.")
    private String shop;
    @Option(names = "--set", paramLabel = "KEY=VALUE", description = "Gives a setting, or KEY[role=face]=VALUE for some parts. Repeat as needed.")
    private List<String> settings = List.of();
    @Option(names = "--only", paramLabel = "CHECK", split = ",", description = "Runs these checks alone.")
    private List<String> only = List.of();
    @Option(names = "--threshold", paramLabel = "SEVERITY", description = "Least severity that makes the exit status 1: stop, review or info. Default: stop.")
    private Severity threshold = Severity.STOP;
    @Option(names = "--replace", description = "Writes over files that are newer than what they are made from.")
    private boolean replace;

    /**
     * A proof that was checked.
     *
     * @param reviewed what was found and decided
     * @param inputs the files that it came from
     */
    record Checked(ReviewedResult reviewed, List<Path> inputs) {
    }

    /** What is wrong with the words, if anything. */
    Optional<String> wrong(List<Path> proofs) {
        for (String sheet : Arrays.asList(job, shop)) {
            if (sheet != null && !Targets.isPath(sheet)) {
                return Optional.of(sheet + ": this is not a file name");
            }
        }
        return job != null && proofs.stream().anyMatch(JobNames::isJobFile)
                ? Optional.of("--job " + job + ": a job file holds a job sheet of its own; leave one of them out") : Optional.empty();
    }

    Severity threshold() {
        return threshold;
    }

    boolean replace() {
        return replace;
    }

    /** Checks a proof, or the proof of a job file with what that holds. */
    Checked run(Path file, Runner runner, Watcher watcher) throws ProofException, SheetException, IOException, InterruptedException {
        Optional<Path> shopSheet = Optional.ofNullable(shop).map(Path::of);
        ReviewedResult reviewed;
        if (JobNames.isJobFile(file)) {
            JobState state = JobFile.readWhole(file);
            RunRequest request = new RunRequest(JobNames.proofFile(file, state), Optional.of(state.sheet()), Optional.empty(), shopSheet, settings, only);
            reviewed = ReviewedResult.of(state, runner.run(request, watcher));
        } else {
            reviewed = ReviewedResult.undecided(runner.run(new RunRequest(file, Optional.ofNullable(job).map(Path::of), shopSheet, settings, only), watcher));
        }
        return new Checked(reviewed, inputs(file, reviewed.result(), shopSheet));
    }

    private List<Path> inputs(Path file, Result result, Optional<Path> shopSheet) {
        List<Path> inputs = new ArrayList<>(List.of(file, Path.of(result.proof().file())));
        if (job != null) {
            inputs.add(Path.of(job));
        } else if (!result.job().from().isEmpty()) {
            inputs.add(file.resolveSibling(Path.of(result.job().from()).getFileName()));
        }
        shopSheet.or(() -> result.job().shopSheet()).ifPresent(inputs::add);
        return inputs;
    }

    /** What the exit status says about one result. */
    ExitStatus status(ReviewedResult result) {
        return result.isBroken() ? ExitStatus.BROKEN : result.has(threshold) ? ExitStatus.FOUND : ExitStatus.CLEAR;
    }
}
