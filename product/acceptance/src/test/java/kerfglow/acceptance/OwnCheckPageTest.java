// SPDX-License-Identifier: Apache-2.0
package kerfglow.acceptance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Follows docs/own-check.md from top to bottom, as a person in an empty folder would: files are written, commands run, what is shown compared. */
class OwnCheckPageTest {
    private static final Pattern BLOCK = Pattern.compile("(?:\\*\\*([\\w./-]+)\\*\\*\n\n)?```(\\w+)\n(.*?)```\n", Pattern.DOTALL);
    private static final int LIMIT_SECONDS = 300;

    @TempDir
    private Path home;
    private Path folder;

    @Test
    void the_page_leads_from_nothing_to_the_marked_drawing() throws Exception {
        folder = Files.createDirectory(home.resolve("work"));
        Files.createSymbolicLink(Files.createDirectory(home.resolve("bin")).resolve("kerfglow"), Kerfglow.program());
        Matcher blocks = BLOCK.matcher(Files.readString(Kerfglow.TOP.resolve("docs/own-check.md")));
        String said = "";
        List<String> done = new ArrayList<>();
        while (blocks.find()) {
            String content = blocks.group(3);
            if (blocks.group(1) != null) {
                Files.writeString(folder.resolve(blocks.group(1)), content);
                done.add("file");
            } else if (blocks.group(2).equals("sh")) {
                said = run(content);
                done.add("run");
            } else if (blocks.group(2).equals("text")) {
                String all = said.replaceAll("\\s+", " ");
                content.lines().forEach(line -> assertTrue(all.contains(line.strip().replaceAll("\\s+", " ")), line + "\n" + all));
                done.add("compared");
            }
        }
        assertEquals(List.of("run", "file", "file", "file", "run", "file", "file", "run", "compared"), done);
        assertEquals(2000, ImageIO.read(folder.resolve("marked.png").toFile()).getWidth());
    }

    private String run(String commands) throws IOException, InterruptedException {
        Path log = home.resolve("log.txt");
        Path where = home.resolve("where.txt");
        ProcessBuilder builder = new ProcessBuilder("sh", "-ec", commands + "\npwd > " + where).directory(folder.toFile()).redirectErrorStream(true).redirectOutput(log.toFile());
        builder.environment().put("HOME", home.toString());
        builder.environment().put("KERFGLOW_CHECKS", home.resolve(".kerfglow/checks").toString());
        builder.environment().put("PATH", home.resolve("bin") + ":" + System.getenv("PATH"));
        builder.environment().remove("MAVEN_OPTS");
        Process process = builder.start();
        process.getOutputStream().close();
        assertTrue(process.waitFor(LIMIT_SECONDS, TimeUnit.SECONDS), commands);
        assertEquals(0, process.exitValue(), () -> commands + "\n" + text(log));
        folder = Path.of(Files.readString(where).strip());
        return text(log);
    }

    private static String text(Path file) {
        try {
            return Files.readString(file);
        } catch (IOException unreadable) {
            return unreadable.toString();
        }
    }
}
