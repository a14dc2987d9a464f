// SPDX-License-Identifier: Apache-2.0
package kerfglow.job;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import kerfglow.host.SafeFile;

/**
 * Where what was entered and not saved is kept: beside the job file, or, while another window holds the job or nothing can be written there, in a
 * folder of the person's own. What an earlier start left in either place is offered once, and never written over.
 */
final class UnsavedPlace implements AutoCloseable {
    private static final int SHORT_DIGEST = 8;

    private final Path file;
    private final Optional<Path> side;
    private final Optional<JobLock> ownLock;
    private Optional<Path> offered;
    private Optional<Path> taken = Optional.empty();
    private Optional<Path> aside = Optional.empty();

    private UnsavedPlace(Path file, Optional<Path> side, Optional<JobLock> ownLock, Optional<Path> offered) {
        this.file = file;
        this.side = side;
        this.ownLock = ownLock;
        this.offered = offered;
    }

    /**
     * Finds the place.
     *
     * @param file the job file
     * @param holds true when this window holds the job, so that it may write beside it
     * @param ownFolder where to keep what may not be kept there; absent for nowhere
     */
    static UnsavedPlace of(Path file, boolean holds, Optional<Path> ownFolder, Instant now) throws IOException {
        Path beside = beside(file);
        Optional<Path> own = ownFolder.map(folder -> own(folder, file));
        Optional<JobLock> ownLock = own.filter(each -> !holds || Files.exists(each)).flatMap(each -> lock(each, now));
        List<Path> mine = new ArrayList<>();
        if (holds) {
            mine.add(beside);
        }
        if (ownLock.isPresent()) {
            mine.add(own.orElseThrow());
        }
        for (Path each : mine) {
            DiskFile.delete(half(each));
        }
        return new UnsavedPlace(file, mine.stream().findFirst(), ownLock, mine.stream().filter(UnsavedPlace::isOurs).findFirst());
    }

    private static Optional<JobLock> lock(Path own, Instant now) {
        try {
            Files.createDirectories(own.getParent());
            return JobLock.take(own.resolveSibling(own.getFileName() + ".lock"), own.resolveSibling(own.getFileName() + ".holder"), now);
        } catch (IOException unwritable) {
            return Optional.empty();
        }
    }

    /** When something was left last that a start would offer for this job file; nothing while another window has it open. */
    static Optional<Instant> left(Path file, Optional<Path> ownFolder) {
        return Stream.concat(Stream.of(beside(file)), ownFolder.map(folder -> own(folder, file)).stream()).filter(UnsavedPlace::isOurs).flatMap(each -> changed(each).stream())
                .max(Instant::compareTo);
    }

    private static Optional<Instant> changed(Path side) {
        try {
            return Optional.of(Files.getLastModifiedTime(side)).map(FileTime::toInstant);
        } catch (IOException gone) {
            return Optional.empty();
        }
    }

    /** A link or a pipe of the name was put there by somebody else. */
    private static boolean isOurs(Path side) {
        return Files.isRegularFile(side, LinkOption.NOFOLLOW_LINKS);
    }

    private static Path beside(Path file) {
        return file.resolveSibling("." + file.getFileName() + ".unsaved");
    }

    /** Jobs of one name lie in many folders. */
    private static Path own(Path folder, Path file) {
        return folder.resolve(JobNames.bare(String.valueOf(file.getFileName())) + "-" + DiskFile.digest(file.toString().getBytes(StandardCharsets.UTF_8)).substring(0, SHORT_DIGEST) + ".unsaved");
    }

    private static Path half(Path side) {
        return side.resolveSibling(side.getFileName() + ".half");
    }

    /** Where it is kept; absent when nothing can be kept at all. */
    Optional<Path> side() {
        return side;
    }

    /** What an earlier start left and nobody decided about yet. */
    Optional<Path> offered() {
        return offered;
    }

    /** The person goes on from it: it stays until what follows is on the disk. */
    void take() {
        taken = offered;
        offered = Optional.empty();
    }

    /** The person does not go on from it: it is kept under a name of its own, which is returned, also when it was set aside before. */
    Optional<Path> setAside() throws IOException {
        Optional<Path> from = offered.filter(UnsavedPlace::isOurs);
        if (from.isEmpty()) {
            return aside;
        }
        Path besideJob = JobNames.named(file, "unsaved", DiskFile.digest(from.get()));
        Path to = side.filter(beside(file)::equals).isPresent() ? besideJob : from.get().resolveSibling(besideJob.getFileName());
        SafeFile.move(from.get(), to);
        offered = Optional.empty();
        aside = Optional.of(to);
        return aside;
    }

    /** Writes, whole or not at all; what was left and not decided about is set aside first. */
    void write(byte[] bytes) throws IOException {
        setAside();
        Path to = side.orElseThrow(() -> new IOException("there is no place for it"));
        try {
            DiskFile.write(half(to), bytes, file);
            SafeFile.move(half(to), to);
        } catch (IOException failed) {
            if (isOurs(half(to))) {
                DiskFile.discard(half(to)); // on a full disk half a file is in the way
            }
            throw failed;
        }
        for (Path old : taken.filter(each -> !each.equals(to)).stream().toList()) {
            DiskFile.delete(old);
        }
        taken = Optional.empty();
    }

    /** What is there is on the disk elsewhere. */
    void clear() throws IOException {
        for (Path each : Stream.concat(side.stream(), taken.stream()).toList()) {
            if (!offered.equals(Optional.of(each))) {
                DiskFile.delete(each);
            }
        }
        taken = Optional.empty();
    }

    @Override
    public void close() throws IOException {
        if (ownLock.isPresent()) {
            ownLock.get().close();
        }
    }
}
