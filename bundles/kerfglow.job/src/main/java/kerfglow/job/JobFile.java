// SPDX-License-Identifier: Apache-2.0
package kerfglow.job;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import kerfglow.host.SafeFile;

/**
 * A job file that is open in one window: lock, reading, saving, autosave.
 *
 * <p>Saving writes the whole job to the side file {@code .NAME.unsaved}, forces it to the disk and renames it to the job file, so that
 * at every moment the job file is the old or the new one. Autosave writes the same side file and leaves it there; the next start offers it.
 * A second opener is told who holds the job and cannot save to it; what is entered there is kept in a folder of the person's own
 * ({@link UnsavedPlace}). Links are followed.
 */
public final class JobFile implements AutoCloseable {
    /** What is entered is on the disk this long after it at the latest, but for the time of writing; the promise is 5 s. */
    public static final Duration AUTOSAVE_DELAY = Duration.ofSeconds(2);

    private final Path file;
    private final Optional<JobLock> lock;
    private final Optional<String> heldBy;
    private final Optional<String> readOnly;
    private final UnsavedPlace place;
    private final Clock clock;
    private final Contents contents;
    private final Optional<Unsaved> unsaved;
    private final Autosave autosave;
    private String digest;

    /**
     * What was read of a job file.
     *
     * @param state the job
     * @param problems what could not be read, one sentence each; empty for a whole file
     * @param kept where the damaged original is kept; absent for a whole file, or when nothing may be written
     * @param isNew true when there is no such file yet
     */
    public record Contents(JobState state, List<String> problems, Optional<Path> kept, boolean isNew) {
    }

    /**
     * What was entered but not saved before the process ended.
     *
     * @param state the job as it was then
     * @param at when it was last written
     * @param fitsFile true when the job file is still the one that it builds on; false when that was saved by somebody since
     * @param previous digest of the file that it builds on
     */
    public record Unsaved(JobState state, Instant at, boolean fitsFile, String previous) {
    }

    /**
     * How a file is opened.
     *
     * @param autosaveDelay {@link #AUTOSAVE_DELAY} but for tests
     * @param onProblem told when autosave fails, and when it works again, in a thread of its own
     * @param ownFolder where to keep what is entered into a job that somebody else holds, or that lies where nothing can be written; absent for nowhere
     */
    public record Options(Clock clock, Duration autosaveDelay, Consumer<String> onProblem, Optional<Path> ownFolder) {
        /** The clock of the system, autosave after {@link #AUTOSAVE_DELAY}, no folder of one's own. */
        public static Options of(Consumer<String> onProblem) {
            return new Options(Clock.systemUTC(), AUTOSAVE_DELAY, onProblem, Optional.empty());
        }

        public Options withOwnFolder(Path folder) {
            return new Options(clock, autosaveDelay, onProblem, Optional.of(folder));
        }
    }

    private JobFile(Path file, Options options, Optional<JobLock> lock, Optional<String> heldBy, Optional<String> readOnly, StoredJob stored) throws IOException {
        this.file = file;
        this.clock = options.clock();
        this.lock = lock;
        this.heldBy = heldBy;
        this.readOnly = readOnly;
        this.digest = stored.digest();
        this.contents = stored.contents(file, lock.isPresent());
        this.place = UnsavedPlace.of(file, lock.isPresent(), options.ownFolder(), options.clock().instant());
        this.unsaved = readUnsaved();
        this.autosave = new Autosave(options.autosaveDelay(), place, this::autosave, options.onProblem());
    }

    /**
     * Opens a job file for changes, or makes ready for a new one when there is none. When somebody else holds it, it is opened all the
     * same, but {@link #heldBy} says who does, and {@link #save} refuses.
     *
     * @throws JobFileException when it cannot be read, is no job file at all, or was written by a newer program
     */
    public static JobFile open(Path path, Options options) throws IOException {
        Path file = target(path);
        Optional<JobLock> lock;
        Optional<String> heldBy = Optional.empty();
        Optional<String> readOnly = Optional.empty();
        try {
            lock = lock(file, options.clock().instant());
            if (lock.isEmpty()) {
                heldBy = Optional.of(JobLock.holder(holder(file)));
            }
        } catch (IOException unwritable) {
            lock = Optional.empty();
            readOnly = Optional.of("nothing can be written in " + file.getParent() + " (" + SafeFile.reason(unwritable) + ")");
        }
        try {
            return new JobFile(file, options, lock, heldBy, readOnly, StoredJob.read(file));
        } catch (IOException | RuntimeException failed) {
            if (lock.isPresent()) {
                lock.get().close();
            }
            throw failed;
        }
    }

    private static Optional<JobLock> lock(Path file, Instant now) throws IOException {
        return JobLock.take(sibling(file, "." + file.getFileName() + ".lock"), holder(file), now);
    }

    private static Path holder(Path file) {
        return sibling(file, "." + file.getFileName() + ".holder");
    }

    /**
     * Reads a job file without holding or writing anything.
     *
     * @throws JobFileException when it cannot be read, is no job file at all, or was written by a newer program
     */
    public static Contents read(Path path) throws IOException {
        Path file = target(path);
        StoredJob stored = StoredJob.read(file);
        if (stored.digest().isEmpty()) {
            throw new JobFileException(JobFileException.Kind.UNREADABLE, path + ": there is no such file", null);
        }
        return stored.contents(file, false);
    }

    /**
     * Reads a job file that must be whole, without holding or writing anything.
     *
     * @throws JobFileException as {@link #read}, and when anything in it cannot be read
     */
    public static JobState readWhole(Path path) throws IOException {
        Contents contents = read(path);
        if (!contents.problems().isEmpty()) {
            throw new JobFileException(JobFileException.Kind.DAMAGED, path + ": the job file is damaged: " + String.join("; ", contents.problems())
                    + ". Open it in the window, which keeps the original and goes on with what can be read", null);
        }
        return contents.state();
    }

    /** The file itself, links followed. */
    public Path file() {
        return file;
    }

    /** Who holds the job so that it cannot be saved here; absent when this window does. */
    public Optional<String> heldBy() {
        return heldBy;
    }

    /** Why nothing can be written where the job lies; absent when it can. */
    public Optional<String> readOnly() {
        return readOnly;
    }

    /** True when what is entered and not saved is kept somewhere until the next start. */
    public boolean keepsUnsaved() {
        return place.side().isPresent();
    }

    /** What was read. */
    public Contents contents() {
        return contents;
    }

    /**
     * What was entered before the process ended last time; to be offered to the person. Until it is taken or discarded nothing is written over it:
     * work that goes on without an answer keeps it under the name {@code NAME.unsaved-DIGEST.kerfglow}.
     */
    public Optional<Unsaved> unsaved() {
        return unsaved;
    }

    /** The person goes on from what was not saved. Where somebody saved the job since, saving asks before it writes over that. */
    public JobState takeUnsaved() {
        Unsaved taken = unsaved.orElseThrow();
        synchronized (place) {
            place.take();
            if (lock.isPresent()) {
                digest = taken.previous();
            }
        }
        return taken.state();
    }

    /** The person does not go on from what was not saved; it is kept as a job file of its own, which is returned. */
    public Optional<Path> setUnsavedAside() throws IOException {
        synchronized (place) {
            return place.setAside();
        }
    }

    /** True while what was not saved is neither taken nor set aside. */
    public boolean isUndecided() {
        synchronized (place) {
            return place.offered().isPresent();
        }
    }

    /** When something was entered last that a start would offer for this job file; absent when there is nothing. Looks for files alone. */
    public static Optional<Instant> leftUnsaved(Path jobFile, Optional<Path> ownFolder) {
        return UnsavedPlace.left(jobFile.toAbsolutePath().normalize(), ownFolder);
    }

    /** True when a window has this job open now. */
    public static boolean isHeld(Path jobFile) {
        Path file = jobFile.toAbsolutePath().normalize();
        try {
            Optional<JobLock> lock = lock(file, Instant.now());
            if (lock.isPresent()) {
                lock.get().close();
            }
            return lock.isEmpty();
        } catch (IOException unwritable) {
            return false;
        }
    }

    /** The job changed; it is on the disk soon, in the side file. Costs nothing. */
    public void changed(JobState state) {
        if (keepsUnsaved()) {
            autosave.later(state);
        }
    }

    /**
     * Keeps what is not saved for the next start, now.
     *
     * @throws IOException with a message for people when it cannot be kept
     */
    public void keep(JobState state) throws IOException {
        synchronized (place) {
            try {
                place.write(bytes(state));
                autosave.forget();
            } catch (IOException failed) {
                throw new IOException(file.getFileName() + ": what is not saved cannot be kept for the next start (" + SafeFile.reason(failed) + "); save it under another name", failed);
            }
        }
    }

    /** Nothing differs from the job file any more: what was kept for the next start goes, but for an offer that is not answered. */
    public void unchanged() {
        synchronized (place) {
            autosave.forget();
            try {
                place.clear();
            } catch (IOException stays) {
                // then the next start offers what was taken back, which loses nothing
            }
        }
    }

    /**
     * Saves, whole or not at all.
     *
     * @param overwrite true to write over a file that changed on the disk since it was read
     * @throws JobFileException when somebody else holds it, when it changed on the disk, or when it cannot be written
     */
    public void save(JobState state, boolean overwrite) throws IOException {
        if (readOnly.isPresent()) {
            throw new JobFileException(JobFileException.Kind.UNWRITABLE, file + ": cannot be saved here, " + readOnly.get() + "; save under another name", null);
        }
        if (lock.isEmpty()) {
            throw new JobFileException(JobFileException.Kind.HELD, file + ": cannot be saved here, it is held by "
                    + heldBy.orElse("another window") + "; save a copy under another name", null);
        }
        synchronized (place) {
            if (!overwrite && !DiskFile.digest(file).equals(digest)) {
                throw new JobFileException(JobFileException.Kind.CHANGED_ON_DISK, file
                        + ": changed on the disk since it was read; save under another name, or overwrite it", null);
            }
            if (isWriteProtected()) { // renaming would take its place all the same
                throw new JobFileException(JobFileException.Kind.UNWRITABLE, file + ": is write-protected; save under another name, or lift that", null);
            }
            try {
                byte[] bytes = bytes(state);
                place.write(bytes);
                SafeFile.move(place.side().orElseThrow(), file);
                digest = DiskFile.digest(bytes);
                autosave.forget(); // not before: what is not saved must still be kept
            } catch (IOException failed) {
                autosave.later(state); // it is on no disk yet
                throw new JobFileException(JobFileException.Kind.UNWRITABLE, file + ": cannot be saved (" + SafeFile.reason(failed)
                        + "); what is there is unchanged. Make room or save elsewhere", failed);
            }
        }
    }

    /** True when the file itself may only be read. */
    public boolean isWriteProtected() {
        return Files.exists(file) && !Files.isWritable(file);
    }

    /** Ends autosave, with what is still to be written, and gives the job back to others. The side file stays if it holds unsaved work. */
    @Override
    public void close() throws IOException {
        autosave.close();
        place.close();
        if (lock.isPresent()) {
            lock.get().close();
        }
    }

    private void autosave(JobState state) throws IOException {
        place.write(bytes(state));
    }

    private byte[] bytes(JobState state) {
        return JobJson.write(state, file.getParent(), clock.instant(), digest).getBytes(StandardCharsets.UTF_8);
    }

    private Optional<Unsaved> readUnsaved() throws IOException {
        if (place.offered().isEmpty()) {
            return Optional.empty();
        }
        Path left = place.offered().get();
        JobReader.Read read = JobReader.read(String.valueOf(file.getFileName()), StoredJob.read(left).bytes(), file.getParent());
        return Optional.of(new Unsaved(read.state(), Files.getLastModifiedTime(left).toInstant(), read.previous().equals(digest), read.previous()));
    }

    private static Path target(Path path) throws JobFileException {
        try {
            return SafeFile.target(path);
        } catch (IOException unreadable) {
            throw new JobFileException(JobFileException.Kind.UNREADABLE, path + ": cannot be read (" + unreadable + ")", unreadable);
        }
    }

    private static Path sibling(Path file, String name) {
        return file.resolveSibling(name);
    }
}
