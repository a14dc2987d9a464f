// SPDX-License-Identifier: Apache-2.0
package kerfglow.dropins;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.List;
import java.util.Optional;
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

    /** The bundles in a folder, by name; none when there is no folder. What is no file, or a link that leads nowhere, is left out. */
    static SortedMap<String, BundleFile> in(Path folder) {
        SortedMap<String, BundleFile> files = new TreeMap<>();
        if (Files.isDirectory(folder)) {
            try (Stream<Path> inside = Files.list(folder)) {
                inside.filter(path -> path.getFileName().toString().endsWith(".jar")).forEach(jar -> of(jar).ifPresent(file -> files.put(jar.getFileName().toString(), file)));
            } catch (IOException | UncheckedIOException goneMeanwhile) {
                return files; // looked at again soon
            }
        }
        return files;
    }

    private static Optional<BundleFile> of(Path jar) {
        try {
            BasicFileAttributes now = Files.readAttributes(jar, BasicFileAttributes.class);
            return now.isRegularFile() ? Optional.of(new BundleFile(jar, now.size(), now.lastModifiedTime().toMillis())) : Optional.empty();
        } catch (IOException goneMeanwhile) {
            return Optional.empty();
        }
    }
}
