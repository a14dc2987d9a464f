// SPDX-License-Identifier: Apache-2.0
package kerfglow.host;

import java.io.FileNotFoundException;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.Path;

/** Reads small files that anybody may have made: never a pipe or a device, which may not end, and never more than a limit, however the file grows meanwhile. */
public final class InputFile {
    private InputFile() {
    }

    /**
     * The bytes of a file.
     *
     * @param file links are followed
     * @param mostBytes the limit
     * @param what it should be, with its article, for complaints: {@code "a sheet"}
     * @throws java.nio.file.NoSuchFileException when there is none
     * @throws IOException whose message says in words why it cannot be read
     */
    public static byte[] read(Path file, long mostBytes, String what) throws IOException {
        require(file, what);
        if (Files.size(file) > mostBytes) {
            throw tooLarge(mostBytes, what);
        }
        try (InputStream in = Files.newInputStream(file)) {
            byte[] bytes = in.readNBytes(Math.toIntExact(mostBytes) + 1);
            if (bytes.length > mostBytes) {
                throw tooLarge(mostBytes, what);
            }
            return bytes;
        } catch (AccessDeniedException denied) {
            throw new IOException("it may not be read; check its permissions", denied);
        }
    }

    /**
     * Refuses what is there but no file.
     *
     * @throws IOException whose message says in words what it is
     */
    public static void require(Path file, String what) throws IOException {
        if (Files.isDirectory(file)) {
            throw new FileNotFoundException("this is a folder, not " + what);
        }
        if (Files.exists(file) && !Files.isRegularFile(file)) {
            throw new FileNotFoundException("this is a device or a pipe, not " + what);
        }
    }

    private static IOException tooLarge(long mostBytes, String what) {
        return new IOException("larger than " + mostBytes + " bytes (limit on file size); this is not " + what);
    }
}
