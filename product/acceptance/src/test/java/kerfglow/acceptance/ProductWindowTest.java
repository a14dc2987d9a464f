// SPDX-License-Identifier: Apache-2.0
package kerfglow.acceptance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.image.BufferedImage;
import java.io.BufferedReader;
import java.io.File;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The window of the built product, as its user starts it, under a virtual display. */
class ProductWindowTest {
    /** A machine that is busy with other things takes many times the five seconds of a quiet one; the time is printed. */
    private static final long LIMIT_SECONDS = 120;
    /** An empty window has a dozen colours in its middle, the demo hundreds. */
    private static final int COLOURS_OF_A_PICTURE = 100;

    @TempDir
    Path folder;
    private Process display;
    private String number;

    @BeforeEach
    void startDisplay() throws IOException {
        display = new ProcessBuilder("sh", "-c", "exec Xvfb -displayfd 3 -screen 0 1600x1000x24 -nolisten tcp 3>&1 1>/dev/null 2>/dev/null").start();
        number = ":" + new BufferedReader(new InputStreamReader(display.getInputStream(), StandardCharsets.US_ASCII)).readLine();
    }

    @AfterEach
    void stopDisplay() {
        display.destroy();
    }

    private Process start(String... words) throws IOException {
        String[] command = new String[words.length + 1];
        command[0] = Kerfglow.program().toString();
        System.arraycopy(words, 0, command, 1, words.length);
        ProcessBuilder builder = new ProcessBuilder(command).redirectErrorStream(true).redirectOutput(folder.resolve("out.txt").toFile());
        builder.environment().put("DISPLAY", number);
        builder.environment().put("KERFGLOW_STATE", folder.resolve("state").toString());
        return builder.start();
    }

    @Test
    void a_start_without_words_shows_the_demo() throws IOException, InterruptedException {
        long start = System.nanoTime();
        Process window = start();
        try {
            int colours = 0;
            while (colours < COLOURS_OF_A_PICTURE && window.isAlive() && System.nanoTime() - start < LIMIT_SECONDS * 1_000_000_000L) {
                TimeUnit.MILLISECONDS.sleep(100);
                colours = coloursInTheMiddle();
            }
            System.out.printf("first picture of the demo %.1f s after the start of the process%n", (System.nanoTime() - start) / 1e9);
            assertTrue(colours >= COLOURS_OF_A_PICTURE, "the proof is seen; there are " + colours + " colours. " + Files.readString(folder.resolve("out.txt")));
            Path log = folder.resolve("state/.metadata/.log");
            assertFalse(Files.exists(log) && Files.readString(log).contains(" 4 0 "), "nothing went wrong in the framework");
        } finally {
            window.destroy();
            window.waitFor();
        }
    }

    private int coloursInTheMiddle() throws IOException, InterruptedException {
        File picture = folder.resolve("screen.png").toFile();
        ProcessBuilder taking = new ProcessBuilder("import", "-window", "root", picture.toString());
        taking.environment().put("DISPLAY", number);
        if (taking.start().waitFor() != 0) {
            return 0;
        }
        BufferedImage image = ImageIO.read(picture);
        Set<Integer> colours = new HashSet<>();
        for (int x = image.getWidth() / 3; x < image.getWidth() * 2 / 3; x++) {
            for (int y = image.getHeight() / 3; y < image.getHeight() * 2 / 3; y++) {
                colours.add(image.getRGB(x, y));
            }
        }
        return colours.size();
    }

    @Test
    void a_file_that_is_not_there_is_told_without_a_window() throws IOException, InterruptedException {
        Process refused = start("open", folder.resolve("missing.svg").toString());
        assertTrue(refused.waitFor(LIMIT_SECONDS, TimeUnit.SECONDS));
        assertEquals(2, refused.exitValue());
        assertTrue(Files.readString(folder.resolve("out.txt")).contains("there is no file"));
    }
}
