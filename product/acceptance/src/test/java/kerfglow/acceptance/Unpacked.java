// SPDX-License-Identifier: Apache-2.0
package kerfglow.acceptance;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/** The archives that are handed over, unpacked by the system's own programs. */
final class Unpacked {
    static final Path PRODUCTS = Kerfglow.TOP.resolve("product/target/products");
    /** Archive to bill of materials. */
    static final Map<String, String> ARCHIVES = Map.of("kerfglow-linux.gtk.x86_64.tar.gz", "kerfglow-linux.gtk.x86_64.cdx.json", "kerfglow-macosx.cocoa.aarch64.tar.gz",
            "kerfglow-macosx.cocoa.aarch64.cdx.json", "kerfglow-win32.win32.x86_64.zip", "kerfglow-win32.win32.x86_64.cdx.json");

    private Unpacked() {
    }

    /** The program's folder of one archive, unpacked below an empty folder. */
    static Path of(String archive, Path into) throws IOException, InterruptedException {
        Path file = PRODUCTS.resolve(archive);
        Path folder = Files.createDirectory(into.resolve(archive));
        List<String> command = archive.endsWith(".zip") ? List.of("jar", "--extract", "--file", file.toString()) : List.of("tar", "--extract", "--gzip", "--file", file.toString());
        Process process = new ProcessBuilder(command).directory(folder.toFile()).inheritIO().start();
        if (process.waitFor() != 0) {
            throw new IOException(archive + " could not be unpacked");
        }
        return folder.resolve("kerfglow");
    }

    static List<Path> jars(Path program) throws IOException {
        try (Stream<Path> jars = Files.list(program.resolve("plugins"))) {
            return jars.sorted().toList();
        }
    }
}
