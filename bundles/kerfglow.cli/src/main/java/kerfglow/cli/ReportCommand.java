// SPDX-License-Identifier: Apache-2.0
package kerfglow.cli;

import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import kerfglow.host.Runner;
import kerfglow.host.SafeFile;
import kerfglow.papers.HtmlReport;
import kerfglow.papers.PdfReport;
import kerfglow.papers.Report;
import kerfglow.views.PlainText;
import kerfglow.views.Review;
import kerfglow.views.TextView;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Writes reports that leave the program: a web page in one file, or a PDF. */
@Command(name = "report", mixinStandardHelpOptions = true, sortOptions = false, description = "Checks proofs and writes a report on each: picture, findings with close-ups, decisions.",
        footer = {"", "Exit status as of \"kerfglow check\"."})
final class ReportCommand implements Callable<Integer> {
    @Parameters(arity = "1..*", paramLabel = "FILE", description = "SVG files, job files (.kerfglow), or folders whose SVG files are checked.")
    private List<String> files;
    @Option(names = "--to", required = true, paramLabel = "REPORT", description = "A file that ends in .html or .pdf, or a folder that gets both. Repeat as needed.")
    private List<String> to;
    @Option(names = "--layers", paramLabel = "LAYER", split = ",", description = "Draws these layers of checks on the picture too, for instance glow.map, or all.")
    private List<String> layers = List.of();
    @Mixin
    private RunWords words = new RunWords();

    private final Runner runner;
    private final PrintStream out;
    private final PrintStream err;
    private final Terminal terminal;

    ReportCommand(Runner runner, PrintStream out, PrintStream err, Terminal terminal) {
        this.runner = runner;
        this.out = out;
        this.err = err;
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws InterruptedException {
        Batch batch = new Batch(err, terminal);
        List<Path> proofs = batch.files(files);
        Targets reports = new Targets("--to", to, List.of(".html", ".pdf"), ".report");
        Optional<String> wrong = words.wrong(proofs).or(() -> reports.wrong(proofs));
        if (wrong.isPresent()) {
            err.println(PlainText.of("kerfglow: " + wrong.get()));
            return ExitStatus.INPUT.code();
        }
        batch.each(proofs, (proof, watcher) -> words.run(proof, runner, watcher), (proof, checked) -> {
            Report report = new Report(checked.reviewed().result(), Review.of(checked.reviewed()), CheckCommand.layers(checked.reviewed().result(), layers), LocalDate.now(ZoneOffset.UTC));
            for (Path file : reports.of(proof)) {
                SafeFile.writeOver(file, checked.inputs(), words.replace(), out -> write(report, file, out));
                out.println(PlainText.of(file.toString()));
            }
            out.println(TextView.summary(checked.reviewed()));
            return words.status(checked.reviewed());
        });
        return batch.status();
    }

    private static void write(Report report, Path file, OutputStream to) throws IOException {
        if (file.toString().toLowerCase(Locale.ROOT).endsWith(".html")) {
            to.write(HtmlReport.of(report).getBytes(StandardCharsets.UTF_8));
        } else {
            PdfReport.write(report, to);
        }
    }
}
