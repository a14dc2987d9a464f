// SPDX-License-Identifier: Apache-2.0
package kerfglow.cli;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import kerfglow.check.artwork.ArtworkCheck;
import kerfglow.host.CheckCatalogue;
import kerfglow.host.Runner;
import kerfglow.svg.SvgImporter;

/**
 * Any words as a command, a line a word. Every run ends with a documented exit status, and says so in words when it is 2. Works in one folder,
 * which must be the folder that the process was started in, and never looks at words that could lead out of it.
 */
public final class CommandWords {
    private static final String SIGN = "<svg xmlns='http://www.w3.org/2000/svg' width='90mm' height='60mm'><rect width='50' height='40'/></svg>";
    private static final SvgImporter IMPORTER = new SvgImporter();
    private static final Path HERE = Path.of("").toAbsolutePath();

    private CommandWords() {
    }

    public static void fuzzerTestOneInput(byte[] bytes) throws IOException {
        String text = new String(bytes, StandardCharsets.UTF_8);
        if (text.isBlank() || text.contains("/") || text.contains("\\") || text.contains("..") || text.indexOf(0) >= 0) {
            return; // a shell gives no NUL, and no file outside may be touched
        }
        layOut();
        CheckCatalogue catalogue = new CheckCatalogue();
        catalogue.add(new ArtworkCheck(), "fuzz", "1");
        OwnChecks none = new OwnChecks() {
            @Override
            public void use(Path folder) {
                // a shop's own checks are a matter of trust, not of input
            }

            @Override
            public List<Path> newCheck(String name, Path folder) {
                return List.of();
            }
        };
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        int status = new Program(new Runner(IMPORTER, catalogue), catalogue, none, new PrintStream(out, true, StandardCharsets.UTF_8),
                new PrintStream(err, true, StandardCharsets.UTF_8), Terminal.NONE).run(text.split("\n"));
        String said = err.toString(StandardCharsets.UTF_8);
        require(status >= 0 && status <= 3, "exit status " + status);
        require(status != 3 || text.contains("host."), said); // a limit on time may be set so low that a check overruns it
        require(status != 2 || !said.isBlank() || out.size() > 0, "status 2 without a word");
        require(said.chars().noneMatch(each -> each < ' ' && each != '\n' && each != '\t' || each >= 0x7f && each < 0xa0), "control characters reach the terminal: " + said);
    }

    private static void require(boolean holds, String otherwise) {
        if (!holds) {
            throw new AssertionError(otherwise);
        }
    }

    /** The folder as it is before every run. What it takes away lies in the folder that the process works in, which must bear this target's name. */
    private static void layOut() throws IOException {
        if (!HERE.endsWith(Path.of("fuzz", "target", "work", "words"))) {
            throw new IllegalStateException("start this by product/fuzz/run, which gives it a folder of its own; it is not for " + HERE);
        }
        try (Stream<Path> walk = Files.walk(HERE)) { // follows no links
            for (Path path : walk.sorted(Comparator.reverseOrder()).filter(path -> !path.equals(HERE)).toList()) {
                Files.delete(path);
            }
        }
        Files.writeString(HERE.resolve("sign.svg"), SIGN);
        Files.writeString(HERE.resolve("bad.svg"), "<svg");
        Files.writeString(HERE.resolve("job.yaml"), "units: inch\n");
        Files.writeString(HERE.resolve("shop.yaml"), "name: Rasp & Rule\n");
        Files.writeString(HERE.resolve("sign.kerfglow"), "{\"type\":\"kerfglow:Job\",\"format\":1,\"proof\":{\"file\":\"sign.svg\",\"widthMm\":90,\"heightMm\":60,\"scale\":1},\"sheet\":{}}");
        Files.createDirectory(HERE.resolve("folder"));
    }
}
