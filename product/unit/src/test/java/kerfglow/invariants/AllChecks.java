// SPDX-License-Identifier: Apache-2.0
package kerfglow.invariants;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import kerfglow.api.Check;
import kerfglow.check.artwork.ArtworkCheck;
import kerfglow.check.fit.FitCheck;
import kerfglow.check.glow.GlowCheck;
import kerfglow.check.legibility.LegibilityCheck;
import kerfglow.check.mount.MountCheck;
import kerfglow.check.power.PowerCheck;
import kerfglow.check.print.PrintCheck;
import kerfglow.check.returns.ReturnsCheck;
import kerfglow.check.router.RouterCheck;
import kerfglow.check.sheet.SheetCheck;
import kerfglow.check.trim.TrimCheck;
import kerfglow.check.vinyl.VinylCheck;
import kerfglow.host.CheckCatalogue;
import kerfglow.host.Result;
import kerfglow.host.RunRequest;
import kerfglow.host.Runner;
import kerfglow.host.Watcher;
import kerfglow.svg.SvgImporter;

/** Every check that ships, on the road that a proof takes: SVG text, import, sheets, runner. */
final class AllChecks {
    static final List<Check> ALL = List.of(new ArtworkCheck(), new FitCheck(), new GlowCheck(), new LegibilityCheck(), new MountCheck(), new PowerCheck(),
            new PrintCheck(), new ReturnsCheck(), new RouterCheck(), new SheetCheck(), new TrimCheck(), new VinylCheck());

    private static final Runner RUNNER = runner();

    private AllChecks() {
    }

    private static Runner runner() {
        CheckCatalogue catalogue = new CheckCatalogue();
        ALL.forEach(check -> catalogue.add(check, "kerfglow.check." + check.info().id(), "0"));
        return new Runner(new SvgImporter(), catalogue);
    }

    /**
     * Runs checks over a proof.
     *
     * @param svg the file
     * @param job the job sheet, YAML
     * @param shop the shop sheet, YAML
     * @param only ids of checks; empty for all
     */
    static Result run(String svg, String job, String shop, List<String> only) throws Exception {
        Path folder = Files.createTempDirectory("invariants");
        Path proof = folder.resolve("proof.svg");
        Path jobSheet = folder.resolve("proof.job.yaml");
        Path shopSheet = folder.resolve("shop.yaml");
        try {
            Files.writeString(proof, svg);
            Files.writeString(jobSheet, job);
            Files.writeString(shopSheet, shop);
            return RUNNER.run(new RunRequest(proof, Optional.of(jobSheet), Optional.of(shopSheet), List.of(), only), Watcher.NONE);
        } finally {
            List.of(proof, jobSheet, shopSheet, folder).forEach(AllChecks::delete);
        }
    }

    private static void delete(Path path) {
        try {
            Files.deleteIfExists(path);
        } catch (IOException kept) {
            throw new UncheckedIOException(kept);
        }
    }
}
