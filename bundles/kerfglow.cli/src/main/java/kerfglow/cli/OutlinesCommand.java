// SPDX-License-Identifier: Apache-2.0
package kerfglow.cli;

import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.PrintStream;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
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
        description = "Writes what is cut (faces, made backs, openings), centres of modules and joints as DXF or SVG at real size, a layer a kind.")
final class OutlinesCommand implements Callable<Integer> {
    @Mixin
    private RunArguments arguments;
    @Option(names = {"-o", "--output"}, paramLabel = "FILE", description = "A file that ends in .dxf or .svg; repeat for both. Default: NAME.outlines.dxf beside FILE.")
    private List<Path> outputs = List.of();
    @Option(names = "--from-behind", paramLabel = "LAYER", split = ",",
            description = "Layers that are cut from behind: they are mirrored, and say so. faces, backs, backs-made, panels, openings or push-throughs.")
    private List<String> fromBehind = List.of();

    private final FloorFiles files;

    OutlinesCommand(Runner runner, PrintStream out, PrintStream err, Terminal terminal) {
        files = new FloorFiles(runner, out, err, terminal);
    }

    @Override
    public Integer call() throws InterruptedException {
        List<Path> targets = outputs.isEmpty() ? List.of(arguments.beside(".outlines.dxf")) : outputs;
        Set<String> turned = new LinkedHashSet<>(fromBehind);
        return files.make(arguments, wrong(targets), reviewed -> {
            OutlineSet set = OutlineSet.of(reviewed.result(), turned);
            return targets.stream().map(target -> new FloorFiles.Made(target, out -> write(set, isDxf(target), out))).toList();
        });
    }

    private Optional<String> wrong(List<Path> targets) {
        return fromBehind.stream().filter(layer -> !OutlineSet.CUT_LAYERS.contains(layer)).map(layer -> "--from-behind " + layer + ": there is no such layer; known: " + String.join(", ", OutlineSet.CUT_LAYERS))
                .findFirst().or(() -> targets.stream().filter(target -> !isDxf(target) && !ends(target, ".svg")).map(target -> "--output " + target + ": write a name that ends in .dxf or .svg").findFirst());
    }

    private static boolean isDxf(Path target) {
        return ends(target, ".dxf");
    }

    private static boolean ends(Path target, String ending) {
        return target.toString().toLowerCase(Locale.ROOT).endsWith(ending);
    }

    private static void write(OutlineSet set, boolean dxf, OutputStream out) throws IOException {
        Writer writer = new OutputStreamWriter(out, StandardCharsets.UTF_8);
        if (dxf) {
            DxfOutlines.write(set, writer);
        } else {
            SvgOutlines.write(set, writer);
        }
    }
}
