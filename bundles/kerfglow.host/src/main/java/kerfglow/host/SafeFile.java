// SPDX-License-Identifier: Apache-2.0
package kerfglow.host;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.file.AccessDeniedException;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.NoSuchFileException;
import java.nio.file.NotDirectoryException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.FileTime;
import java.util.Collection;
import java.util.Locale;
import java.util.UUID;

/**
 * Writes a file whole or not at all: into a new file beside the old one, through to the disk, then put in its place in one step.
 * When anything goes wrong the old file is as it was and nothing is left behind.
 */
public final class SafeFile {
    private static final int BUFFER_BYTES = 1 << 16;
    /** Enough that two writers at once do not meet. */
    private static final int ID_CHARACTERS = 8;
    private static final String UNFINISHED = ".unfinished";
    /** A chain of links this long is a circle; Linux gives up at 40 as well (path_resolution(7)). */
    private static final int MOST_LINKS = 40;

    /** Writes the content; the stream is closed for it. */
    @FunctionalInterface
    public interface Content {
        void writeTo(OutputStream out) throws IOException;
    }

    private SafeFile() {
    }

    /**
     * Writes, over whatever is there.
     *
     * @param target where; folders on the way are made, a link is written through
     * @param content writes the bytes
     * @throws IOException whose message says which file, what is wrong and what to do
     */
    public static void write(Path target, Content content) throws IOException {
        write(target, content, path -> true);
    }

    /**
     * Writes, but not over something that may be worth more than what would take its place: one of the inputs, or something else that
     * changed after the youngest of them, for somebody may have worked on it. What is there already byte for byte is left as it is.
     *
     * @param target where, as in {@link #write}
     * @param inputs what the content is made from
     * @param replace true when the person said that something newer may be replaced
     * @param content writes the bytes
     * @throws IOException as {@link #write}, and when the target is newer or is an input
     */
    public static void writeOver(Path target, Collection<Path> inputs, boolean replace, Content content) throws IOException {
        FileTime youngest = FileTime.fromMillis(0);
        for (Path input : inputs) {
            if (Files.exists(input) && Files.exists(target) && Files.isSameFile(input, target)) {
                throw new IOException(target + " is what this is made from, which is never written over; choose another name");
            }
            youngest = Files.exists(input) && Files.getLastModifiedTime(input).compareTo(youngest) > 0 ? Files.getLastModifiedTime(input) : youngest;
        }
        FileTime madeFrom = youngest;
        write(target, content, unfinished -> {
            if (!Files.exists(target) || replace || Files.getLastModifiedTime(target).compareTo(madeFrom) <= 0) {
                return true;
            }
            if (Files.mismatch(unfinished, target) < 0) {
                return false;
            }
            throw new IOException("there is one already that is newer than what this is made from; choose another name, or add --replace to write over it");
        });
    }

    /** Asked when all is written, before it takes the place of what was there. */
    private interface Gate {
        boolean admits(Path unfinished) throws IOException;
    }

    private static void write(Path target, Content content, Gate gate) throws IOException {
        Path path = target(target);
        Path folder = path.getParent();
        if (folder == null || Files.isDirectory(path)) {
            throw new IOException(target + " is a folder; name a file in it");
        }
        Path unfinished = folder.resolve("." + path.getFileName() + "." + UUID.randomUUID().toString().substring(0, ID_CHARACTERS) + UNFINISHED);
        try {
            Files.createDirectories(folder);
            if (Files.exists(path) && !Files.isWritable(path)) {
                throw new AccessDeniedException(path.toString());
            }
            try (FileChannel channel = FileChannel.open(unfinished, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
                    OutputStream out = new BufferedOutputStream(Channels.newOutputStream(channel), BUFFER_BYTES)) {
                content.writeTo(out);
                out.flush();
                channel.force(true); // else a crash may leave the new name with nothing in it
            }
            if (gate.admits(unfinished)) {
                move(unfinished, path);
            }
        } catch (UncheckedIOException wrong) {
            throw new IOException(explained(target, folder, wrong.getCause()), wrong);
        } catch (IOException wrong) {
            throw new IOException(explained(target, folder, wrong), wrong);
        } finally {
            discard(unfinished);
        }
    }

    private static void discard(Path unfinished) {
        try {
            Files.deleteIfExists(unfinished);
        } catch (IOException gone) {
            // what went wrong before is what the person must hear
        }
    }

    /**
     * Where a path leads when links are followed, also when the last one leads to a file that is not there yet: what is written goes there,
     * so that a link stays a link.
     */
    public static Path target(Path file) throws IOException {
        Path at = file.toAbsolutePath();
        for (int i = 0; i < MOST_LINKS && Files.isSymbolicLink(at); i++) {
            at = at.resolveSibling(Files.readSymbolicLink(at));
        }
        if (Files.exists(at, LinkOption.NOFOLLOW_LINKS) && !Files.isSymbolicLink(at)) {
            return at.toRealPath();
        }
        Path folder = at.getParent();
        return folder != null && Files.exists(folder) ? folder.toRealPath().resolve(at.getFileName()) : at.normalize();
    }

    /** Puts one file in the place of another in one step, and has the disk know of it. */
    public static void move(Path from, Path to) throws IOException {
        try {
            Files.move(from, to, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
        } catch (AtomicMoveNotSupportedException notHere) { // some network drives
            Files.move(from, to, StandardCopyOption.REPLACE_EXISTING);
        }
        forceFolder(to.getParent());
    }

    /** A new name is on the disk only when its folder is (fsync(2)). Windows opens no folders and keeps their entries by itself. */
    public static void forceFolder(Path folder) {
        try (FileChannel channel = FileChannel.open(folder, StandardOpenOption.READ)) {
            channel.force(true);
        } catch (IOException notHere) {
            // the content is safe; only the moment at which the name changes is up to the system
        }
    }

    private static String explained(Path target, Path folder, IOException wrong) {
        String what = target + " cannot be written: ";
        if (wrong instanceof AccessDeniedException || isReadOnly(wrong)) {
            Path denied = Files.exists(target, LinkOption.NOFOLLOW_LINKS) && !Files.isWritable(target) ? target : folder;
            return what + denied + " may only be read; choose another folder or ask for the right to write there";
        }
        if (wrong instanceof NoSuchFileException || wrong instanceof FileAlreadyExistsException || wrong instanceof NotDirectoryException) {
            return what + "the folder " + folder + " cannot be made; choose another";
        }
        if (isFull(wrong)) {
            return what + "the disk is full; make room and try again. What was there before is untouched";
        }
        return what + (wrong.getMessage() == null ? wrong.toString() : wrong.getMessage());
    }

    /** Why a file could not be written, in a few words for people. */
    public static String reason(Throwable wrong) {
        if (wrong instanceof IOException failed && isFull(failed)) {
            return "the disk is full";
        }
        if (wrong instanceof AccessDeniedException || wrong instanceof IOException failed && isReadOnly(failed)) {
            return "it may only be read";
        }
        return wrong instanceof IOException && wrong.getMessage() != null ? wrong.getMessage() : wrong.toString();
    }

    /** The Java platform passes on the system's own words alone: POSIX ENOSPC and EDQUOT, Windows ERROR_DISK_FULL and ERROR_HANDLE_DISK_FULL. */
    private static boolean isFull(IOException wrong) {
        String words = String.valueOf(wrong.getMessage()).toLowerCase(Locale.ROOT);
        return words.contains("no space left") || words.contains("quota exceeded") || words.contains("not enough space on the disk") || words.contains("disk is full");
    }

    private static boolean isReadOnly(IOException wrong) {
        return String.valueOf(wrong.getMessage()).toLowerCase(Locale.ROOT).contains("read-only file system");
    }
}
