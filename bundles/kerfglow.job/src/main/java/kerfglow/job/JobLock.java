// SPDX-License-Identifier: Apache-2.0
package kerfglow.job;

import java.io.IOException;
import java.net.InetAddress;
import java.net.UnknownHostException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Optional;

/**
 * Holds a job for one window. The operating system lifts the lock when the process ends, however it ends; who holds it stands in the lock
 * file for others to read.
 */
final class JobLock implements AutoCloseable {
    /** Far behind the text, since Windows keeps others from reading the bytes that are locked. */
    private static final long LOCKED_BYTE = Long.MAX_VALUE - 1;
    private static final int MOST_INFO_BYTES = 4096;
    /** Between opening the file and locking it its last holder may have deleted it; more than a few times is no chance. */
    private static final int TRIES = 5;

    private final Path file;
    private final FileChannel channel;

    private JobLock(Path file, FileChannel channel) {
        this.file = file;
        this.channel = channel;
    }

    /**
     * Takes the lock.
     *
     * @return the lock, or nothing when somebody holds it
     * @throws IOException when no lock file can be written here, or the file system has no locks
     */
    static Optional<JobLock> take(Path file, Instant now) throws IOException {
        for (int i = 0; i < TRIES; i++) {
            FileChannel channel = FileChannel.open(file, StandardOpenOption.CREATE, StandardOpenOption.READ, StandardOpenOption.WRITE);
            boolean kept = false;
            try {
                FileLock lock = channel.tryLock(LOCKED_BYTE, 1, false);
                if (lock == null) {
                    return Optional.empty();
                }
                if (isStillThere(file, channel, now)) {
                    kept = true;
                    return Optional.of(new JobLock(file, channel));
                }
            } catch (OverlappingFileLockException ownProcess) { // another window of this process
                return Optional.empty();
            } finally {
                if (!kept) {
                    channel.close();
                }
            }
        }
        return Optional.empty();
    }

    /** Writes who holds it, and sees whether the name leads to what was written: its last holder may have deleted the file meanwhile. */
    private static boolean isStillThere(Path file, FileChannel channel, Instant now) throws IOException {
        byte[] info = (holder(now) + "\n").getBytes(StandardCharsets.UTF_8);
        channel.truncate(0);
        channel.write(ByteBuffer.wrap(info), 0);
        channel.force(true);
        return Files.exists(file) && Files.readString(file).equals(new String(info, StandardCharsets.UTF_8));
    }

    private static String holder(Instant now) {
        String host;
        try {
            host = InetAddress.getLocalHost().getHostName();
        } catch (UnknownHostException nameless) {
            host = "this computer";
        }
        return System.getProperty("user.name", "somebody") + " on " + host + ", process " + ProcessHandle.current().pid() + ", since " + now.truncatedTo(ChronoUnit.SECONDS);
    }

    /** Who holds it, for people. */
    static String holder(Path file) {
        try (FileChannel channel = FileChannel.open(file, StandardOpenOption.READ)) {
            ByteBuffer info = ByteBuffer.allocate(MOST_INFO_BYTES);
            channel.read(info);
            String text = new String(info.array(), 0, info.position(), StandardCharsets.UTF_8).strip();
            return text.isEmpty() ? "another window" : text;
        } catch (IOException unreadable) {
            return "another window";
        }
    }

    /** Gives it back. */
    @Override
    public void close() throws IOException {
        try {
            Files.deleteIfExists(file); // while it is still locked, so that nobody else's is deleted
        } catch (IOException openOnWindows) {
            // an empty lock file that nobody locks does no harm
        }
        channel.close();
    }
}
