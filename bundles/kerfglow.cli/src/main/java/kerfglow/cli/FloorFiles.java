// SPDX-License-Identifier: Apache-2.0
package kerfglow.cli;

import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import kerfglow.host.Runner;
import kerfglow.host.SafeFile;
import kerfglow.job.ReviewedResult;
import kerfglow.views.PlainText;
import kerfglow.views.TextView;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** The words that commands have which make files for the floor, and what they do alike: check, write each file whole or not at all, say so. */
final class FloorFiles {
    @Parameters(arity = "1..*", paramLabel = "FILE", description = "SVG files, job files (.kerfglow), or folders whose SVG files are checked.")
    private List<String> files;
    @Option(names = "--to", required = true, paramLabel = "TARGET", description = "A file whose ending says its kind, or a folder that gets one of each kind. Repeat as needed.")
    private List<String> to;
    @Mixin
    private RunWords words = new RunWords();

    /** Writes one file of a result. */
    interface Content {
        void write(ReviewedResult reviewed, Path file, OutputStream out) throws IOException;
    }

    /** Where a command says what it does. */
    record Voice(PrintStream out, PrintStream err, Terminal terminal) {
    }

    /**
     * Checks and writes; returns the exit status.
     *
     * @param endings of the kinds that there are, with their points
     * @param suffix goes between the proof's name and the ending in a folder
     * @param wrong what is wrong with the command's other words, if anything
     */
    int make(Runner runner, Voice voice, List<String> endings, String suffix, Optional<String> wrong, Content content) throws InterruptedException {
        Batch batch = new Batch(voice.err(), voice.terminal());
        List<Path> proofs = batch.files(files);
        Targets targets = new Targets("--to", to, endings, suffix);
        Optional<String> mistaken = wrong.or(() -> words.wrong(proofs)).or(() -> targets.wrong(proofs));
        if (mistaken.isPresent()) {
            voice.err().println(PlainText.of("kerfglow: " + mistaken.get()));
            return ExitStatus.INPUT.code();
        }
        batch.each(proofs, (proof, watcher) -> words.run(proof, runner, watcher), (proof, checked) -> {
            for (Path file : targets.of(proof)) {
                SafeFile.writeOver(file, checked.inputs(), words.replace(), stream -> content.write(checked.reviewed(), file, stream));
                voice.out().println(PlainText.of(file.toString()));
            }
            voice.out().println(TextView.summary(checked.reviewed()));
            return words.status(checked.reviewed());
        });
        return batch.status();
    }
}
