// SPDX-License-Identifier: Apache-2.0
package kerfglow.dropins;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class BundleFileTest {
    @TempDir
    private Path home;

    @Test
    void links_to_nowhere_and_folders_cost_no_other_bundle() throws Exception {
        Path folder = Files.createDirectory(home.resolve("checks"));
        Files.writeString(folder.resolve("a.jar"), "a");
        Files.writeString(folder.resolve("\u78ba\u8a8d.jar"), "b");
        Files.writeString(folder.resolve("readme.txt"), "c");
        Files.createDirectory(folder.resolve("folder.jar"));
        Files.createSymbolicLink(folder.resolve("b.jar"), home.resolve("nowhere"));
        Files.createSymbolicLink(folder.resolve("linked.jar"), folder.resolve("a.jar"));
        Set<String> found = Set.of("a.jar", "linked.jar", "\u78ba\u8a8d.jar");
        assertEquals(found, BundleFile.in(folder).keySet());
        assertEquals(found, BundleFile.in(Files.createSymbolicLink(home.resolve("link"), folder)).keySet());
    }

    @Test
    void where_there_is_no_folder_there_are_no_bundles() throws Exception {
        assertTrue(BundleFile.in(home.resolve("none")).isEmpty());
        assertTrue(BundleFile.in(Files.writeString(home.resolve("file"), "a")).isEmpty());
    }
}
