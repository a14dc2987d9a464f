// SPDX-License-Identifier: Apache-2.0
package kerfglow.cli;

import java.io.OutputStreamWriter;
import java.io.PrintStream;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import kerfglow.host.Runner;
import kerfglow.outlines.DxfOutlines;
import kerfglow.outlines.OutlineSet;
import kerfglow.outlines.SvgOutlines;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Writes the outlines of a proof for CAD. */
@Command(name = "outlines", mixinStandardHelpOptions = true, sortOptions = false,
        description = "Writes what is cut (faces, made backs, openings), centres of modules and joints as .dxf or .svg at real size, a layer a kind.",
        footer = {"", "Exit status as of \"kerfglow check\"."})
final class OutlinesCommand implements Callable<Integer> {
    private static final String DXF = ".dxf";

    @Mixin
    private FloorFiles files;
    @Option(names = "--from-behind", paramLabel = "LAYER", split = ",",
            description = "Layers that are cut from behind: they are mirrored, and say so. faces, backs, backs-made, panels, openings or push-throughs.")
    private List<String> fromBehind = List.of();

    private final Runner runner;
    private final FloorFiles.Voice voice;

    OutlinesCommand(Runner runner, PrintStream out, PrintStream err, Terminal terminal) {
        this.runner = runner;
        this.voice = new FloorFiles.Voice(out, err, terminal);
    }

    @Override
    public Integer call() throws InterruptedException {
        Optional<String> wrong = fromBehind.stream().filter(layer -> !OutlineSet.CUT_LAYERS.contains(layer))
                .map(layer -> "--from-behind " + layer + ": there is no such layer; known: " + String.join(", ", OutlineSet.CUT_LAYERS)).findFirst();
        return files.make(runner, voice, List.of(DXF, ".svg"), ".outlines", wrong, (reviewed, file, out) -> {
            OutlineSet set = OutlineSet.of(reviewed.result(), new LinkedHashSet<>(fromBehind));
            Writer writer = new OutputStreamWriter(out, StandardCharsets.UTF_8);
            if (file.toString().toLowerCase(Locale.ROOT).endsWith(DXF)) {
                DxfOutlines.write(set, writer);
            } else {
                SvgOutlines.write(set, writer);
            }
        });
    }
}
