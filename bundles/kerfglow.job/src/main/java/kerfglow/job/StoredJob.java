// SPDX-License-Identifier: Apache-2.0
package kerfglow.job;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import kerfglow.host.InputFile;
import kerfglow.host.JobSheet;

/**
 * A job file as it lies on the disk; both parts empty when there is none.
 *
 * @param bytes its content; not to be changed
 * @param digest SHA-256 of it
 */
record StoredJob(byte[] bytes, String digest) {
    /** Assumed: the job of a proof of 2,000 letters with some thousand findings has a few MB; read, a job takes up to twenty times its bytes. */
    static final long MOST_BYTES = 16L << 20;

    static StoredJob read(Path file) throws IOException {
        try {
            byte[] bytes = InputFile.read(file, MOST_BYTES, "a job file");
            return new StoredJob(bytes, DiskFile.digest(bytes));
        } catch (NoSuchFileException missing) {
            return new StoredJob(new byte[0], "");
        } catch (IOException unreadable) {
            throw new JobFileException(JobFileException.Kind.UNREADABLE, file + ": cannot be read: " + unreadable.getMessage(), unreadable);
        }
    }

    /** Reads; a damaged file is copied beside itself first when that is allowed. */
    JobFile.Contents contents(Path file, boolean mayWrite) throws IOException {
        String name = String.valueOf(file.getFileName());
        if (digest.isEmpty()) {
            return new JobFile.Contents(JobState.of(ProofRef.of(JobNames.bare(name) + ".svg"), JobSheet.NONE), List.of(), Optional.empty(), true);
        }
        JobReader.Read read = JobReader.read(name, bytes, file.getParent());
        if (read.format() > JobJson.FORMAT) {
            throw new JobFileException(JobFileException.Kind.NEWER, file + ": written by a newer version of the program (format " + read.format() + ", this one reads "
                    + JobJson.FORMAT + "); open it there", null);
        }
        if (read.problems().isEmpty() || !mayWrite) {
            return new JobFile.Contents(read.state(), read.problems(), Optional.empty(), false);
        }
        Path copy = JobNames.named(file, "damaged", digest);
        if (!Files.exists(copy)) {
            DiskFile.write(copy, bytes, file);
        }
        return new JobFile.Contents(read.state(), read.problems(), Optional.of(copy), false);
    }
}
