// SPDX-License-Identifier: Apache-2.0
package kerfglow.dropins;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/** A temporary folder that this object made. It deletes the files that were put in by name, and what the framework of a worker wrote. */
final class OwnFolder {
    private static final String FRAMEWORK = "framework";

    private final Path path;
    private final List<Path> files = new ArrayList<>();

    OwnFolder(String prefix) throws IOException {
        path = Files.createTempDirectory(prefix);
    }

    Path path() {
        return path;
    }

    /** The name of a file to be, which goes with the folder. */
    Path file(String name) {
        Path file = path.resolve(name);
        files.add(file);
        return file;
    }

    /** Where a framework keeps its own files. */
    Path framework() {
        return path.resolve(FRAMEWORK);
    }

    /** Deletes it, as far as that can be done; links are deleted, never followed. */
    void delete() {
        try {
            deleteTree(framework());
            for (Path file : files) {
                Files.deleteIfExists(file);
            }
            Files.deleteIfExists(path);
        } catch (IOException left) {
            return; // a temporary folder: the system clears it
        }
    }

    private static void deleteTree(Path tree) throws IOException {
        if (Files.isDirectory(tree, LinkOption.NOFOLLOW_LINKS)) {
            List<Path> inside;
            try (Stream<Path> list = Files.list(tree)) {
                inside = list.toList();
            }
            for (Path each : inside) {
                deleteTree(each);
            }
        }
        Files.deleteIfExists(tree);
    }
}
