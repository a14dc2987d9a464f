// SPDX-License-Identifier: Apache-2.0
package kerfglow.host;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A full disk and a folder that may only be read need a file system of their own: the acceptance tests have them. */
class SafeFileTest {
    @TempDir
    private Path folder;

    private static SafeFile.Content words(String words) {
        return out -> out.write(words.getBytes(StandardCharsets.UTF_8));
    }

    private Path file(String name, String words, long seconds) throws IOException {
        Path file = Files.writeString(folder.resolve(name), words);
        Files.setLastModifiedTime(file, FileTime.fromMillis(seconds * 1000));
        return file;
    }

    private List<String> names() throws IOException {
        try (Stream<Path> list = Files.list(folder)) {
            return list.map(path -> path.getFileName().toString()).sorted().toList();
        }
    }

    @Test
    void writes_into_folders_that_are_not_there_yet() throws IOException {
        SafeFile.write(folder.resolve("a/b/out.txt"), words("whole"));
        assertEquals("whole", Files.readString(folder.resolve("a/b/out.txt")));
    }

    @Test
    void what_breaks_half_way_leaves_the_old_file_and_nothing_else() throws IOException {
        Path target = file("out.txt", "old", 100);
        IOException told = assertThrows(IOException.class, () -> SafeFile.write(target, out -> {
            out.write(new byte[1 << 20]);
            throw new IOException("No space left on device");
        }));
        assertTrue(told.getMessage().contains("out.txt") && told.getMessage().contains("the disk is full") && told.getMessage().contains("untouched"), told::getMessage);
        assertEquals("old", Files.readString(target));
        assertThrows(IllegalStateException.class, () -> SafeFile.write(target, out -> {
            throw new IllegalStateException("a defect");
        }));
        assertEquals(List.of("out.txt"), names());
    }

    @Test
    void something_newer_is_kept_unless_the_person_says_so() throws IOException {
        Path proof = file("proof.svg", "proof", 1000);
        Path target = file("report.html", "worked on", 2000);
        IOException told = assertThrows(IOException.class, () -> SafeFile.writeOver(target, List.of(proof), false, words("new")));
        assertTrue(told.getMessage().contains("newer") && told.getMessage().contains("--replace"), told::getMessage);
        assertEquals("worked on", Files.readString(target));
        assertEquals(List.of("proof.svg", "report.html"), names());
        SafeFile.writeOver(target, List.of(proof), true, words("new"));
        assertEquals("new", Files.readString(target));
    }

    @Test
    void something_older_than_its_inputs_is_out_of_date_and_goes() throws IOException {
        Path target = file("report.html", "old", 1000);
        SafeFile.writeOver(target, List.of(file("proof.svg", "proof", 500), file("proof.job.yaml", "job", 1500)), false, words("new"));
        assertEquals("new", Files.readString(target));
    }

    @Test
    void the_same_again_is_no_complaint() throws IOException {
        Path proof = file("proof.svg", "proof", 1000);
        Path target = file("report.html", "same", 2000);
        SafeFile.writeOver(target, List.of(proof), false, words("same"));
        assertEquals(FileTime.fromMillis(2_000_000), Files.getLastModifiedTime(target));
    }

    @Test
    void an_input_is_never_written_over() throws IOException {
        Path proof = file("proof.svg", "proof", 1000);
        assertThrows(IOException.class, () -> SafeFile.writeOver(folder.resolve("./proof.svg"), List.of(proof), true, words("new")));
        assertEquals("proof", Files.readString(proof));
    }

    @Test
    void a_link_stays_a_link() throws IOException {
        Path real = file("real.txt", "old", 1000);
        Path link = Files.createSymbolicLink(folder.resolve("link.txt"), real);
        SafeFile.write(link, words("new"));
        assertTrue(Files.isSymbolicLink(link));
        assertEquals("new", Files.readString(real));
    }

    @Test
    void a_folder_is_no_file_and_a_file_no_folder() throws IOException {
        file("plain", "x", 1000);
        for (String wrong : List.of(".", "plain/out.txt")) {
            IOException told = assertThrows(IOException.class, () -> SafeFile.write(folder.resolve(wrong), words("new")));
            assertTrue(told.getMessage().contains("folder") && !told.getMessage().contains("Exception"), told::getMessage);
        }
        assertFalse(names().stream().anyMatch(name -> name.endsWith(".unfinished")));
    }
}
