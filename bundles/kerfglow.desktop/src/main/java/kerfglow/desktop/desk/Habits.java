// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.desk;

import java.io.IOException;
import java.io.Reader;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Properties;

/**
 * What the window remembers of its person: recent files, the measured screen, light or dark, the name that decisions are signed with. A
 * small file of properties; one that cannot be read or written costs the memory and nothing else.
 */
public final class Habits {
    /** More names than fit a menu help nobody. */
    static final int MOST_RECENT = 9;
    private static final String RECENT = "recent.";
    private static final String PIXELS_PER_MM = "screen.pixels-per-mm";
    private static final String DARK = "dark";
    private static final String STARTED = "started";
    private static final String NAME = "name";
    private static final String LAYOUT_VERSION = "layout.version";

    private final Path file;
    private final Properties properties = new Properties();

    /** Reads what was remembered; nothing where there is no such file. */
    public Habits(Path file) {
        this.file = file;
        if (Files.isRegularFile(file)) {
            try (Reader in = Files.newBufferedReader(file, StandardCharsets.UTF_8)) {
                properties.load(in);
            } catch (IOException | IllegalArgumentException damaged) {
                properties.clear(); // remembered again as the window is used
            }
        }
    }

    /** Files opened last, the latest first. */
    public List<Path> recent() {
        List<Path> recent = new ArrayList<>();
        for (int i = 0; i < MOST_RECENT; i++) {
            try {
                Optional.ofNullable(properties.getProperty(RECENT + i)).map(Path::of).ifPresent(recent::add);
            } catch (InvalidPathException damaged) {
                continue; // the others are still worth remembering
            }
        }
        return recent;
    }

    /** Remembers a file as the latest. */
    public void opened(Path path) {
        List<Path> recent = new ArrayList<>(recent());
        recent.remove(path);
        recent.add(0, path);
        for (int i = 0; i < MOST_RECENT; i++) {
            if (i < recent.size()) {
                properties.setProperty(RECENT + i, recent.get(i).toString());
            }
        }
        write();
    }

    /** The screen as the person measured it. */
    public Optional<Screen> screen() {
        try {
            return Optional.ofNullable(properties.getProperty(PIXELS_PER_MM)).map(Double::valueOf).map(Screen::new);
        } catch (IllegalArgumentException damaged) {
            return Optional.empty();
        }
    }

    public void setScreen(Screen screen) {
        set(PIXELS_PER_MM, Double.toString(screen.pixelsPerMm()));
    }

    public boolean isDark() {
        return Boolean.parseBoolean(properties.getProperty(DARK));
    }

    public void setDark(boolean dark) {
        set(DARK, Boolean.toString(dark));
    }

    /** True until {@link #setStarted}: the window has never been used here. */
    public boolean isFirstStart() {
        return !Boolean.parseBoolean(properties.getProperty(STARTED));
    }

    public void setStarted() {
        set(STARTED, Boolean.toString(true));
    }

    /** The name that marks and decisions carry; that of the account until another is given. */
    public String name() {
        return properties.getProperty(NAME, System.getProperty("user.name", ""));
    }

    public void setName(String name) {
        set(NAME, name);
    }

    /** True when the layout of the window was kept by this version of the program. */
    public boolean isLayoutOf(String version) {
        return version.equals(properties.getProperty(LAYOUT_VERSION));
    }

    public void setLayoutOf(String version) {
        set(LAYOUT_VERSION, version);
    }

    private void set(String key, String value) {
        properties.setProperty(key, value);
        write();
    }

    private void write() {
        try {
            Files.createDirectories(file.toAbsolutePath().getParent());
            try (Writer out = Files.newBufferedWriter(file, StandardCharsets.UTF_8)) {
                properties.store(out, "What Kerfglow's window remembers");
            }
        } catch (IOException unwritable) {
            // a window that cannot remember still works; the next start asks the screen and the demo again
        }
    }
}
