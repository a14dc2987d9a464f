// SPDX-License-Identifier: Apache-2.0
package kerfglow.cli;

import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.PrintStream;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import javax.imageio.ImageIO;
import kerfglow.api.OverlayLayer;
import kerfglow.host.Result;
import kerfglow.host.Runner;
import kerfglow.host.SafeFile;
import kerfglow.job.ReviewedResult;
import kerfglow.views.JsonView;
import kerfglow.views.JunitView;
import kerfglow.views.Layers;
import kerfglow.views.OverlayPicture;
import kerfglow.views.PlainText;
import kerfglow.views.SarifView;
import kerfglow.views.TextView;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Checks proofs and shows what was found. One bad file does not stop the rest. */
@Command(name = "check", mixinStandardHelpOptions = true, sortOptions = false, description = "Checks proofs (SVG files, job files, or folders of SVG files) and shows what was found.",
        footer = {"", "Exit status: 0 nothing at or above the threshold, 1 something is, 2 a file, a sheet or the words of the command are at fault,",
            "3 a check failed or timed out, or the program did. Of several files the first of 2, 3, 1, 0 that occurred."})
final class CheckCommand implements Callable<Integer> {
    /** How the result is written. */
    enum Format { text, json, sarif, junit }

    @Parameters(arity = "1..*", paramLabel = "FILE", description = "SVG files, job files (.kerfglow), or folders whose SVG files are checked.")
    private List<String> files;
    @Mixin
    private RunWords words = new RunWords();
    @Option(names = "--format", paramLabel = "FORMAT", description = "text, json, sarif (2.1.0) or junit (XML). Default: ${DEFAULT-VALUE}.")
    private Format format = Format.text;
    @Option(names = "--overlay", paramLabel = "PICTURE",
            description = "Draws the findings on the proof: a file that ends in .svg or .png, or a folder. Repeat for both.")
    private List<String> overlays = List.of();
    @Option(names = "--layers", paramLabel = "LAYER", split = ",", description = "Draws these layers of checks on the pictures too, for instance glow.map, or all.")
    private List<String> layers = List.of();

    private final Runner runner;
    private final PrintStream out;
    private final PrintStream err;
    private final Terminal terminal;
    private final List<ReviewedResult> results = new ArrayList<>();

    CheckCommand(Runner runner, PrintStream out, PrintStream err, Terminal terminal) {
        this.runner = runner;
        this.out = out;
        this.err = err;
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws InterruptedException {
        Batch batch = new Batch(err, terminal);
        List<Path> proofs = batch.files(files);
        Targets pictures = new Targets("--overlay", overlays, List.of(".svg", ".png"), ".overlay");
        Optional<String> wrong = words.wrong(proofs).or(() -> pictures.wrong(proofs))
                .or(() -> Optional.of("--layers: there is no picture to draw them on; add --overlay PICTURE").filter(none -> overlays.isEmpty() && !layers.isEmpty()));
        if (wrong.isPresent()) {
            err.println(PlainText.of("kerfglow: " + wrong.get()));
            return ExitStatus.INPUT.code();
        }
        batch.each(proofs, (proof, watcher) -> words.run(proof, runner, watcher), (proof, checked) -> {
            Result result = checked.reviewed().result();
            List<OverlayLayer> chosen = layers(result, layers);
            for (Path picture : pictures.of(proof)) {
                SafeFile.writeOver(picture, checked.inputs(), words.replace(), out -> draw(picture, result, chosen, out));
            }
            results.add(checked.reviewed());
            if (format == Format.text) {
                out.print(TextView.of(checked.reviewed(), terminal.colour()));
                out.flush();
            }
            return words.status(checked.reviewed());
        });
        write(proofs.size() > 1, batch.unusable());
        return batch.status();
    }

    /** The layers of these names. */
    static List<OverlayLayer> layers(Result result, List<String> names) throws WordsException {
        try {
            return Layers.named(result, names);
        } catch (IllegalArgumentException unknown) {
            throw new WordsException("--layers: " + unknown.getMessage(), unknown);
        }
    }

    private static void draw(Path picture, Result result, List<OverlayLayer> layers, OutputStream to) throws IOException {
        if (picture.toString().toLowerCase(Locale.ROOT).endsWith(".svg")) {
            to.write(OverlayPicture.svg(result, layers).getBytes(StandardCharsets.UTF_8));
        } else {
            ImageIO.write(OverlayPicture.image(result, layers), "png", to);
        }
    }

    private void write(boolean several, List<JsonView.Unusable> unusable) {
        Writer writer = new OutputStreamWriter(out, StandardCharsets.UTF_8);
        switch (format) {
            case text -> summaries(unusable);
            case json -> {
                if (!several && results.size() == 1 && unusable.isEmpty()) {
                    JsonView.write(results.get(0), writer);
                } else {
                    JsonView.writeReviewed(results, unusable, writer);
                }
            }
            case sarif -> SarifView.write(results, unusable, Program.Version.text(), writer);
            case junit -> JunitView.write(results, unusable, words.threshold(), writer);
        }
        out.flush();
    }

    private void summaries(List<JsonView.Unusable> unusable) {
        if (results.size() + unusable.size() > 1) {
            out.println();
            results.forEach(result -> out.println(TextView.summary(result)));
            unusable.forEach(each -> out.println(PlainText.of(each.file() + ": not checked: " + each.error())));
        }
    }
}
