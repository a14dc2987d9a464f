// SPDX-License-Identifier: Apache-2.0
package kerfglow.job;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFileAttributeView;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/** Files that are the old or the new one at every moment, whatever ends the process. */
final class SafeFile {
    /** A chain of links this long is a circle; Linux gives up at 40 as well (path_resolution(7)). */
    private static final int MOST_LINKS = 40;

    private SafeFile() {
    }

    /**
     * Writes beside the target and forces it to the disk; {@link #move} then puts it in its place.
     *
     * @param permissionsLike a file whose permissions it gets, if that is there
     */
    static void write(Path file, byte[] bytes, Path permissionsLike) throws IOException {
        try (FileChannel out = FileChannel.open(file, StandardOpenOption.CREATE, StandardOpenOption.WRITE, StandardOpenOption.TRUNCATE_EXISTING)) {
            ByteBuffer left = ByteBuffer.wrap(bytes);
            while (left.hasRemaining()) {
                out.write(left);
            }
            out.force(true);
        }
        PosixFileAttributeView own = Files.getFileAttributeView(file, PosixFileAttributeView.class);
        if (own != null && Files.exists(permissionsLike)) {
            own.setPermissions(Files.getPosixFilePermissions(permissionsLike));
        }
    }

    /** Puts one file in the place of another in one step. */
    static void move(Path from, Path to) throws IOException {
        Files.move(from, to, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
        forceFolder(to.getParent());
    }

    static void delete(Path file) throws IOException {
        if (Files.deleteIfExists(file)) {
            forceFolder(file.getParent());
        }
    }

    /** A new name is on the disk only when its folder is (fsync(2)). Windows opens no folders and keeps their entries by itself. */
    private static void forceFolder(Path folder) {
        try (FileChannel channel = FileChannel.open(folder, StandardOpenOption.READ)) {
            channel.force(true);
        } catch (IOException notHere) {
            // the content is safe; only the moment at which the name changes is up to the system
        }
    }

    /** Where a path leads when links are followed, also when the last one leads to a file that is not there yet. */
    static Path target(Path file) throws IOException {
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

    /** SHA-256 of a file's bytes; empty when there is none. */
    static String digest(Path file) throws IOException {
        try {
            return digest(Files.readAllBytes(file));
        } catch (NoSuchFileException missing) {
            return "";
        }
    }

    /** SHA-256, 64 lower-case hex digits. */
    static String digest(byte[] bytes) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException("every Java platform has SHA-256", impossible);
        }
    }
}
