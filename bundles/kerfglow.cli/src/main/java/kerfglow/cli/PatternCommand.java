// SPDX-License-Identifier: Apache-2.0
package kerfglow.cli;

import java.io.PrintStream;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import kerfglow.api.Units;
import kerfglow.host.Runner;
import kerfglow.worksheet.MountingPattern;
import kerfglow.worksheet.PatternMedia;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Writes the mounting pattern. */
@Command(name = "pattern", mixinStandardHelpOptions = true, sortOptions = false,
        description = "Writes the mounting pattern as .pdf at full size, on pages that overlap or on pieces of a roll: outlines, holes, level line, marks to join pages, a bar to measure.",
        footer = {"", "Exit status as of \"kerfglow check\"."})
final class PatternCommand implements Callable<Integer> {
    @Mixin
    private FloorFiles files;
    @Option(names = "--page", paramLabel = "SIZE", description = "a4, a3, a2, a1, a0, letter, tabloid, or for instance \"24 in x 36 in\". Default: ${DEFAULT-VALUE}.")
    private String page = "a4";
    @Option(names = "--roll", paramLabel = "WIDTH", description = "Width of a roll, for instance 610 mm; instead of --page.")
    private String roll;

    private final Runner runner;
    private final FloorFiles.Voice voice;

    PatternCommand(Runner runner, PrintStream out, PrintStream err, Terminal terminal) {
        this.runner = runner;
        this.voice = new FloorFiles.Voice(out, err, terminal);
    }

    @Override
    public Integer call() throws InterruptedException {
        Optional<String> wrong = Optional.empty();
        PatternMedia media = PatternMedia.parse("a4");
        try {
            media = roll == null ? PatternMedia.parse(page) : PatternMedia.roll(Units.lengthMm(roll));
        } catch (IllegalArgumentException unreadable) {
            wrong = Optional.of((roll == null ? "--page " + page : "--roll " + roll) + ": " + unreadable.getMessage());
        }
        PatternMedia printed = media;
        Instant now = Instant.now();
        return files.make(runner, voice, List.of(".pdf"), ".pattern", wrong, (reviewed, file, out) -> MountingPattern.write(reviewed.result(), printed, now, out));
    }
}
