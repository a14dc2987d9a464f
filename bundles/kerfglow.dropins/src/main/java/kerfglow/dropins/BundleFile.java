// SPDX-License-Identifier: Apache-2.0
package kerfglow.dropins;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Stream;

/**
 * A bundle in the folder as it is now.
 *
 * @param path the file
 * @param size bytes
 * @param modifiedMillis when it was last written
 */
record BundleFile(Path path, long size, long modifiedMillis) {
    /** The bundles in a folder, by name; none when there is no folder. */
    static SortedMap<String, BundleFile> in(Path folder) {
        SortedMap<String, BundleFile> files = new TreeMap<>();
        if (Files.isDirectory(folder)) {
            try (Stream<Path> inside = Files.list(folder)) {
                List<Path> jars = inside.filter(path -> path.getFileName().toString().endsWith(".jar")).toList();
                for (Path jar : jars) {
                    files.put(jar.getFileName().toString(), new BundleFile(jar, Files.size(jar), Files.getLastModifiedTime(jar).toMillis()));
                }
            } catch (IOException goneMeanwhile) {
                return files; // looked at again soon
            }
        }
        return files;
    }
}
