// SPDX-License-Identifier: Apache-2.0
package kerfglow.fuzz;

import com.code_intelligence.jazzer.api.FuzzedDataProvider;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import kerfglow.api.proof.ProofException;
import kerfglow.host.JobSheet;
import kerfglow.host.Result;
import kerfglow.host.RunRequest;
import kerfglow.host.Runner;
import kerfglow.host.SheetException;
import kerfglow.host.Watcher;

/** Drawings by a grammar of SVG with odd values, through import, parts, checks and the forms that a result is written in. */
public final class Drawings {
    private static final Path FOLDER = Bench.folder("drawing");
    private static final Runner RUNNER = Bench.runner();
    private static final List<String> SHEETS = List.of("", "roles:\n- {layer: \"*\", role: face}\nbuild: face-lit letters\n", "roles:\n- {id: \"a*\", role: panel}\n- {layer: \"*\", role: opening}\n",
            "roles:\n- {layer: L*, role: face}\n- {fill: \"#123\", role: back}\nknock-out: \"#fff\"\nunits: inch\n", "roles:\n- {layer: \"*\", role: vinyl}\nbuild: vinyl\n",
            "roles:\n- {layer: \"*\", role: push-through}\nknown-dimension: {width: 3 ft}\n", "scale: 1000\n", lit("face-lit letters"), lit("halo-lit letters"), lit("cabinet"), "roles:\n- {layer: \"*\", role: hole}\n- {layer: \"*\", role: face}\n");

    private Drawings() {
    }

    /** Takes in light, moulding, print and power too; the map is coarse, so that a drawing takes milliseconds. */
    private static String lit(String build) {
        return "build: " + build + "\nroles:\n- {id: \"a*\", role: module}\n- {id: \"b*\", role: print}\n- {layer: \"*\", role: face}\n"
                + "settings: {returns.depth: 60 mm, glow.cell: 25 mm, trim.faces: all, fit.make-backs: all, print.viewing-distance: 2 m}\n";
    }

    public static void fuzzerTestOneInput(FuzzedDataProvider data) {
        String sheet = data.pickValue(SHEETS);
        int form = data.consumeInt(0, Forms.COUNT - 1);
        String svg = new SvgGrammar(data).drawing();
        Path file = Bench.write(FOLDER.resolve("drawing.svg"), svg.getBytes(StandardCharsets.UTF_8));
        Guard.over(FOLDER.toString(), () -> {
            JobSheet job = sheet.isEmpty() ? JobSheet.NONE : JobSheet.parse("drawing.job.yaml", sheet, FOLDER);
            Result result = RUNNER.run(new RunRequest(file, Optional.of(job), Optional.empty(), Optional.empty(), List.of(), List.of()), Watcher.NONE);
            Bench.requireSound(result.proof());
            Bench.requireWhole(result);
            Forms.requireReadable(form, result);
        }, List.of(ProofException.class, SheetException.class));
    }
}
