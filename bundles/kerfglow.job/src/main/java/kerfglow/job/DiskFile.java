// SPDX-License-Identifier: Apache-2.0
package kerfglow.job;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFileAttributeView;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import kerfglow.host.InputFile;
import kerfglow.host.SafeFile;

/** Steps of keeping a file under a name that is known beforehand, so that a later start finds what an earlier one left; {@link SafeFile} does the rest. */
final class DiskFile {
    private DiskFile() {
    }

    /**
     * Writes beside the target and forces it to the disk; {@link SafeFile#move} then puts it in its place.
     *
     * @param permissionsLike a file whose permissions it gets, if that is there
     */
    static void write(Path file, byte[] bytes, Path permissionsLike) throws IOException {
        Files.deleteIfExists(file); // else a link that somebody put there would be written through
        try (FileChannel out = FileChannel.open(file, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE)) {
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

    static void delete(Path file) throws IOException {
        if (Files.deleteIfExists(file)) {
            SafeFile.forceFolder(file.getParent());
        }
    }

    /** Deletes where that can be done; for what is in the way after something worse went wrong. */
    static void discard(Path file) {
        try {
            Files.deleteIfExists(file);
        } catch (IOException stays) {
            // what went wrong before is what the person must hear
        }
    }

    /** SHA-256 of a file's bytes; empty when there is none. */
    static String digest(Path file) throws IOException {
        try {
            return digest(InputFile.read(file, StoredJob.MOST_BYTES, "a job file"));
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
