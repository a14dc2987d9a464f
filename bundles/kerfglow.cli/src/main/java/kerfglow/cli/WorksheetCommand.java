// SPDX-License-Identifier: Apache-2.0
package kerfglow.cli;

import java.io.OutputStreamWriter;
import java.io.PrintStream;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import kerfglow.host.Runner;
import kerfglow.papers.Paper;
import kerfglow.worksheet.Worksheet;
import kerfglow.worksheet.WorksheetCsv;
import kerfglow.worksheet.WorksheetJson;
import kerfglow.worksheet.WorksheetPdf;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Writes the production worksheet. */
@Command(name = "worksheet", mixinStandardHelpOptions = true, sortOptions = false,
        description = "Writes the production worksheet as .pdf, .csv or .json: sizes, sheets, bits, backs, strips with bend tables, moulding, modules, supplies, film, weight.",
        footer = {"", "Exit status as of \"kerfglow check\"."})
final class WorksheetCommand implements Callable<Integer> {
    @Mixin
    private FloorFiles files;
    @Option(names = "--revision", paramLabel = "WORDS", description = "What this revision is called, for instance B. Stands on every page.")
    private String revision = "";
    @Option(names = "--paper", paramLabel = "SIZE", description = "a4 or letter. Default: letter where inches are read, else a4.")
    private Paper.Size paper;

    private final Runner runner;
    private final FloorFiles.Voice voice;

    WorksheetCommand(Runner runner, PrintStream out, PrintStream err, Terminal terminal) {
        this.runner = runner;
        this.voice = new FloorFiles.Voice(out, err, terminal);
    }

    @Override
    public Integer call() throws InterruptedException {
        Instant now = Instant.now();
        return files.make(runner, voice, List.of(".pdf", ".csv", ".json"), ".worksheet", Optional.empty(), (reviewed, file, out) -> {
            Worksheet sheet = Worksheet.of(reviewed, revision, LocalDate.ofInstant(now, ZoneOffset.UTC).toString());
            String name = file.toString().toLowerCase(Locale.ROOT);
            Writer writer = new OutputStreamWriter(out, StandardCharsets.UTF_8);
            if (name.endsWith(".pdf")) {
                WorksheetPdf.write(sheet, Optional.ofNullable(paper).orElse(Paper.Size.of(reviewed.result().units())), now, out);
            } else if (name.endsWith(".csv")) {
                WorksheetCsv.write(sheet, writer);
            } else {
                WorksheetJson.write(sheet, writer);
            }
        });
    }
}
