// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.desk;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import kerfglow.job.JobFile;
import kerfglow.job.JobNames;

/** Which file a start without words shows: the one whose work was left unsaved last, so that it is offered; else the demo. */
public final class FirstFile {
    private record Left(Path file, Instant at) {
    }

    private FirstFile() {
    }

    /**
     * The file.
     *
     * @param recent files opened last
     * @param demo the demo, if there is one
     * @param ownFolder where the window keeps what could not be kept beside a job
     */
    public static Optional<Path> of(List<Path> recent, Optional<Path> demo, Path ownFolder) {
        return Stream.concat(recent.stream(), demo.stream()).filter(Files::isRegularFile)
                .flatMap(file -> JobFile.leftUnsaved(jobOf(file), Optional.of(ownFolder)).map(at -> new Left(file, at)).stream())
                .sorted(Comparator.comparing(Left::at).reversed()).map(Left::file).filter(file -> !JobFile.isHeld(jobOf(file))).findFirst().or(() -> demo);
    }

    /** The job file that a file is or belongs to. */
    public static Path jobOf(Path file) {
        Path whole = file.toAbsolutePath().normalize();
        return JobNames.isJobFile(whole) ? whole : JobNames.beside(whole);
    }
}
