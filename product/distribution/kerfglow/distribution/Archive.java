// SPDX-License-Identifier: Apache-2.0
package kerfglow.distribution;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.apache.commons.compress.archivers.tar.TarArchiveEntry;
import org.apache.commons.compress.archivers.tar.TarArchiveOutputStream;
import org.apache.commons.compress.compressors.gzip.GzipCompressorOutputStream;
import org.apache.commons.compress.compressors.gzip.GzipParameters;

/** An archive whose bytes follow from names and contents alone: entries in order of their names, one time, no owner, rights by kind. */
final class Archive {
    private static final int FOLDER = 0755;
    private static final int PROGRAM = 0755;
    private static final int FILE = 0644;

    /** What the framework keeps where it was started from. */
    private static final Pattern WRITTEN_BY_A_RUN = Pattern.compile("(configuration|command)/(?!config\\.ini|org\\.eclipse\\.equinox\\.simpleconfigurator(/bundles\\.info)?$).*|kerfglow\\.stamp");

    private Archive() {
    }

    static void tarGz(Path archive, Path program, Instant time) throws IOException {
        GzipParameters header = new GzipParameters(); // neither file name nor time
        try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(archive));
                TarArchiveOutputStream tar = new TarArchiveOutputStream(new GzipCompressorOutputStream(out, header), "UTF-8")) {
            tar.setLongFileMode(TarArchiveOutputStream.LONGFILE_POSIX);
            for (Path path : sorted(program)) {
                boolean folder = Files.isDirectory(path);
                TarArchiveEntry entry = new TarArchiveEntry(name(program, path));
                entry.setModTime(time.toEpochMilli());
                entry.setMode(folder ? FOLDER : isProgram(program, path) ? PROGRAM : FILE);
                entry.setIds(0, 0);
                entry.setNames("", "");
                entry.setSize(folder ? 0 : Files.size(path));
                tar.putArchiveEntry(entry);
                if (!folder) {
                    Files.copy(path, tar);
                }
                tar.closeArchiveEntry();
            }
        }
    }

    static void zip(Path archive, Path program, Instant time) throws IOException {
        try (ZipOutputStream zip = new ZipOutputStream(new BufferedOutputStream(Files.newOutputStream(archive)))) {
            for (Path path : sorted(program)) {
                ZipEntry entry = new ZipEntry(name(program, path));
                entry.setTimeLocal(LocalDateTime.ofInstant(time, ZoneOffset.UTC)); // the same in every time zone
                zip.putNextEntry(entry);
                if (!Files.isDirectory(path)) {
                    Files.copy(path, zip);
                }
                zip.closeEntry();
            }
        }
    }

    private static List<Path> sorted(Path program) throws IOException {
        try (Stream<Path> all = Files.walk(program)) {
            return all.filter(path -> !WRITTEN_BY_A_RUN.matcher(program.relativize(path).toString().replace('\\', '/')).matches())
                    .sorted((a, b) -> name(program, a).compareTo(name(program, b))).toList();
        }
    }

    private static String name(Path program, Path path) {
        String name = program.getParent().relativize(path).toString().replace('\\', '/');
        return Files.isDirectory(path) ? name + "/" : name;
    }

    /** The launcher of Linux and macOS. */
    private static boolean isProgram(Path program, Path path) {
        return path.equals(program.resolve("kerfglow"));
    }
}
