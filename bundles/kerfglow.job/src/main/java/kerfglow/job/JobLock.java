// SPDX-License-Identifier: Apache-2.0
package kerfglow.job;

import java.io.IOException;
import java.net.InetAddress;
import java.net.UnknownHostException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.BasicFileAttributes;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Objects;
import java.util.Optional;
import kerfglow.host.InputFile;

/**
 * Holds a job for one window. The operating system lifts the lock when the process ends, however it ends.
 *
 * <p>Two files: the one that is locked, and one beside it that says who holds it. They are two since closing any channel of a file lifts all
 * locks that the process has on it (POSIX, fcntl), so that the locked one must not even be opened a second time: that the holder is
 * this very process is seen from the other.
 */
final class JobLock implements AutoCloseable {
    /** Between opening the file and locking it its last holder may have deleted it; more than a few times is no chance. */
    private static final int TRIES = 5;
    /** A line that names a person, a computer and a process; assumed. */
    private static final long MOST_BYTES = 10_000;

    private final Path file;
    private final Path holder;
    private final FileChannel channel;

    private JobLock(Path file, Path holder, FileChannel channel) {
        this.file = file;
        this.holder = holder;
        this.channel = channel;
    }

    /**
     * Takes the lock.
     *
     * @param file the file to lock
     * @param holder the file that says who holds it
     * @return the lock, or nothing when somebody holds it
     * @throws IOException when no files can be written here, or the file system has no locks
     */
    static Optional<JobLock> take(Path file, Path holder, Instant now) throws IOException {
        if (Files.exists(file, LinkOption.NOFOLLOW_LINKS) && !Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)) {
            throw new IOException(file.getFileName() + " is a link, a pipe or a folder, no lock of ours; take it away"); // a pipe would be waited for
        }
        if (Files.exists(file) && holder(holder).startsWith(self())) {
            return Optional.empty();
        }
        for (int i = 0; i < TRIES; i++) {
            Object before = key(file);
            FileChannel channel = FileChannel.open(file, StandardOpenOption.CREATE, StandardOpenOption.WRITE);
            Object opened = before == null ? key(file) : before;
            try {
                FileLock lock = channel.tryLock();
                if (lock != null && Files.exists(file) && Objects.equals(opened, key(file))) {
                    Files.deleteIfExists(holder); // else a link that somebody put there would be written through
                    Files.writeString(holder, self() + ", since " + now.truncatedTo(ChronoUnit.SECONDS) + "\n", StandardOpenOption.CREATE_NEW);
                    return Optional.of(new JobLock(file, holder, channel));
                }
                channel.close();
                if (lock == null) {
                    return Optional.empty();
                }
            } catch (OverlappingFileLockException ownProcess) { // left open: closing would lift the lock of the other window
                return Optional.empty();
            } catch (IOException failed) {
                channel.close();
                throw failed;
            }
        }
        return Optional.empty();
    }

    /** What tells a file from another one of the same name; null where there is none, and on Windows, where no file goes while it is open. */
    private static Object key(Path file) throws IOException {
        try {
            return Files.readAttributes(file, BasicFileAttributes.class).fileKey();
        } catch (NoSuchFileException none) {
            return null;
        }
    }

    /** This process, told from a later one that happens to get its number. */
    private static String self() {
        String host;
        try {
            host = InetAddress.getLocalHost().getHostName();
        } catch (UnknownHostException nameless) {
            host = "this computer";
        }
        ProcessHandle process = ProcessHandle.current();
        String started = process.info().startInstant().map(at -> " of " + at.truncatedTo(ChronoUnit.SECONDS)).orElse("");
        return System.getProperty("user.name", "somebody") + " on " + host + ", process " + process.pid() + started;
    }

    /** Who holds it, for people. */
    static String holder(Path holder) {
        try {
            String text = new String(InputFile.read(holder, MOST_BYTES, "the note of a holder"), StandardCharsets.UTF_8).strip();
            return text.isEmpty() ? "another window" : text;
        } catch (IOException unreadable) {
            return "another window";
        }
    }

    /** Gives it back. */
    @Override
    public void close() throws IOException {
        Files.deleteIfExists(holder);
        try {
            Files.deleteIfExists(file); // while it is still locked, so that nobody else's is deleted
        } catch (IOException openOnWindows) {
            // a lock file that nobody locks does no harm
        }
        channel.close();
    }
}
