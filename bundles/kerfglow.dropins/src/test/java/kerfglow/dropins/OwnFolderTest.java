// SPDX-License-Identifier: Apache-2.0
package kerfglow.dropins;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Temporary folders go with the process that made them, or, when that was killed, at a later start. */
class OwnFolderTest {
    private static final Instant LATER = Instant.now().plus(Duration.ofHours(1));
    private static final String PREFIX = "kerfglow-trial";

    @TempDir
    private Path temporary;

    /** Makes a folder and waits to be killed. */
    public static final class Holder {
        private Holder() {
        }

        public static void main(String[] arguments) throws Exception {
            OwnFolder folder = new OwnFolder(PREFIX);
            Files.writeString(folder.bundle(), "a bundle");
            Files.writeString(Files.createDirectories(folder.framework().resolve("1/2")).resolve("cache"), "of the framework");
            System.out.println(folder.path());
            System.in.read();
        }
    }

    @Test
    void what_a_killed_process_left_goes_later_and_what_a_living_one_has_stays() throws Exception {
        Process process = new ProcessBuilder(Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-Djava.io.tmpdir=" + temporary, "-cp",
                System.getProperty("java.class.path"), Holder.class.getName()).redirectError(ProcessBuilder.Redirect.INHERIT).start();
        try {
            Path left = Path.of(new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8)).readLine());
            Path target = Files.writeString(temporary.resolve("elsewhere"), "not ours");
            Files.createSymbolicLink(left.resolve("framework/link"), target);
            OwnFolder.clearAbandoned(temporary, PREFIX, LATER);
            assertTrue(Files.exists(left.resolve("bundle.jar")), "its process lives");
            process.destroyForcibly().waitFor();
            OwnFolder.clearAbandoned(temporary, PREFIX, Instant.now());
            assertTrue(Files.exists(left), "it is too young to be sure");
            OwnFolder.clearAbandoned(temporary, "kerfglow-other", LATER);
            assertTrue(Files.exists(left));
            OwnFolder.clearAbandoned(temporary, PREFIX, LATER);
            assertFalse(Files.exists(left));
            assertEquals("not ours", Files.readString(target), "links are not followed");
        } finally {
            process.destroyForcibly();
        }
    }

    @Test
    void what_is_not_ours_stays() throws Exception {
        Path unlocked = Files.createDirectory(temporary.resolve(PREFIX + "-without-lock"));
        Path others = Files.createDirectory(temporary.resolve(PREFIX + "-with-more"));
        Files.writeString(others.resolve("in-use.lock"), "");
        Files.writeString(others.resolve("thesis.txt"), "ten years of work");
        Path link = Files.createSymbolicLink(temporary.resolve(PREFIX + "-link"), Files.createDirectory(temporary.resolve("real")));
        Files.writeString(temporary.resolve("real/in-use.lock"), "");
        OwnFolder.clearAbandoned(temporary, PREFIX, LATER);
        assertTrue(Files.isDirectory(unlocked));
        assertEquals("ten years of work", Files.readString(others.resolve("thesis.txt")));
        assertTrue(Files.isSymbolicLink(link) && Files.exists(temporary.resolve("real/in-use.lock")));
    }

    @Test
    void one_of_this_process_stays_until_it_is_deleted() throws Exception {
        OwnFolder folder = new OwnFolder(PREFIX);
        Path path = folder.path();
        Files.writeString(folder.beside(3), "another bundle");
        OwnFolder.clearAbandoned(path.getParent(), PREFIX, LATER);
        assertTrue(Files.exists(folder.beside(3)));
        folder.delete();
        assertFalse(Files.exists(path));
    }
}
