// SPDX-License-Identifier: Apache-2.0
package kerfglow.fuzz;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import kerfglow.job.JobFile;
import kerfglow.job.JobFileException;
import kerfglow.job.JobState;

/** Any bytes as a job file: refused in words, or read; what was read is then saved, and read back and saved the same. */
public final class JobFileBytes {
    private static final Path FOLDER = Bench.folder("job-file");

    private JobFileBytes() {
    }

    public static void fuzzerTestOneInput(byte[] bytes) throws IOException {
        Path file = Bench.write(FOLDER.resolve("sign.kerfglow"), bytes);
        Path again = FOLDER.resolve("again.kerfglow");
        Files.deleteIfExists(again);
        Guard.over(FOLDER.toString(), () -> {
            String once = saved(JobFile.read(file).state(), again);
            JobFile.Contents back = JobFile.read(again);
            Guard.require(back.problems().isEmpty(), "what was saved cannot be read: " + back.problems());
            Guard.require(saved(back.state(), again).equals(once), "what was saved reads differently");
        }, List.of(JobFileException.class));
    }

    /** Saves; returns what then stands in the file, but for the lines that differ each time. */
    private static String saved(JobState state, Path to) throws IOException {
        try (JobFile file = JobFile.open(to, JobFile.Options.of(problem -> { }))) {
            file.save(state, false);
        }
        return Files.readString(to).replaceAll("\"(saved|previous)\" : \"[^\"]*\"", "");
    }
}
