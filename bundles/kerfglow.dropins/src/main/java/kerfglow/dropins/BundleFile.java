// SPDX-License-Identifier: Apache-2.0
package kerfglow.dropins;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.jar.JarFile;
import java.util.jar.Manifest;
import java.util.stream.Stream;
import org.osgi.framework.Constants;

/**
 * A bundle in the folder as it is now.
 *
 * @param path the file
 * @param size bytes
 * @param modifiedMillis when it was last written
 */
record BundleFile(Path path, long size, long modifiedMillis) {
    /** What a bundle has in its manifest when others can use what is in it. */
    private static final List<String> OFFERS = List.of(Constants.EXPORT_PACKAGE, Constants.FRAGMENT_HOST);

    /** True when other bundles can use what is in it. */
    boolean isOfUseToOthers() {
        try (JarFile jar = new JarFile(path.toFile())) {
            Manifest manifest = jar.getManifest();
            return manifest != null && OFFERS.stream().anyMatch(header -> manifest.getMainAttributes().getValue(header) != null);
        } catch (IOException unreadable) {
            return false; // told where it is to be used itself
        }
    }

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
