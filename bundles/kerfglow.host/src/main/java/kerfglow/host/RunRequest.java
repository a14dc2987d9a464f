// SPDX-License-Identifier: Apache-2.0
package kerfglow.host;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/**
 * What to run.
 *
 * @param file the proof
 * @param job the job sheet where it is not a file, for instance while a person edits it
 * @param jobSheet the job sheet's file, used when {@code job} is empty; without one, {@code NAME.job.yaml} beside {@code NAME.svg} is used if it is there
 * @param shopSheet the shop sheet; without one, the one that the job sheet names
 * @param settings values from the command line, {@code KEY=VALUE} or {@code KEY[role=face]=VALUE}
 * @param only ids of the checks to run; empty for all
 */
public record RunRequest(Path file, Optional<JobSheet> job, Optional<Path> jobSheet, Optional<Path> shopSheet, List<String> settings, List<String> only) {
    public RunRequest {
        settings = List.copyOf(settings);
        only = List.copyOf(only);
    }

    /** A proof with sheets that are files. */
    public RunRequest(Path file, Optional<Path> jobSheet, Optional<Path> shopSheet, List<String> settings, List<String> only) {
        this(file, Optional.empty(), jobSheet, shopSheet, settings, only);
    }

    /** The proof with what lies beside it, all checks. */
    public static RunRequest of(Path file) {
        return new RunRequest(file, Optional.empty(), Optional.empty(), List.of(), List.of());
    }

    /** The proof with a job sheet that is at hand, all checks. */
    public static RunRequest of(Path file, JobSheet job) {
        return new RunRequest(file, Optional.of(job), Optional.empty(), Optional.empty(), List.of(), List.of());
    }
}
