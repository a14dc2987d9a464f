// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.desk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class HabitsTest {
    @TempDir
    Path folder;

    @Test
    void what_was_done_is_remembered_by_the_next_window() {
        Path file = folder.resolve("deep/habits.properties");
        Habits habits = new Habits(file);
        assertTrue(habits.isFirstStart());
        habits.setStarted();
        habits.setDark(true);
        habits.setScreen(new Screen(4.2));
        habits.setName("M. Reviewer");
        habits.opened(Path.of("a.svg"));
        habits.opened(Path.of("b.svg"));
        habits.opened(Path.of("a.svg"));
        Habits next = new Habits(file);
        assertFalse(next.isFirstStart());
        assertTrue(next.isDark());
        assertEquals(Optional.of(new Screen(4.2)), next.screen());
        assertEquals("M. Reviewer", next.name());
        assertEquals(List.of(Path.of("a.svg"), Path.of("b.svg")), next.recent());
    }

    @Test
    void the_list_of_recent_files_ends() {
        Habits habits = new Habits(folder.resolve("habits.properties"));
        for (int i = 0; i < 30; i++) {
            habits.opened(Path.of(i + ".svg"));
        }
        assertEquals(Habits.MOST_RECENT, habits.recent().size());
        assertEquals(Path.of("29.svg"), habits.recent().get(0));
    }

    @Test
    void a_damaged_memory_is_none() throws IOException {
        Path file = Files.writeString(folder.resolve("habits.properties"), "screen.pixels-per-mm=nothing\nname=\\u12");
        Habits habits = new Habits(file);
        assertEquals(Optional.empty(), habits.screen());
        assertTrue(habits.isFirstStart());
    }
}
