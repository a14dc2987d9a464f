// SPDX-License-Identifier: Apache-2.0
package kerfglow.fuzz;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import kerfglow.api.Check;
import kerfglow.api.proof.Element;
import kerfglow.api.proof.Outline;
import kerfglow.api.proof.Proof;
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
import kerfglow.host.Runner;
import kerfglow.svg.SvgImporter;
import org.locationtech.jts.geom.Geometry;

/** What the targets have in common: a folder for the files that they make, the program's parts, and what must hold of whatever comes out. */
final class Bench {
    private static final Path WORK = Path.of(System.getProperty("kerfglow.fuzz.work")).toAbsolutePath();
    private static final SvgImporter IMPORTER = new SvgImporter();

    private Bench() {
    }

    /** A folder that one target has for itself. */
    static Path folder(String target) {
        try {
            return Files.createDirectories(WORK.resolve(target));
        } catch (IOException unwritable) {
            throw new UncheckedIOException(unwritable);
        }
    }

    static Path write(Path file, byte[] bytes) {
        try {
            return Files.write(file, bytes);
        } catch (IOException unwritable) {
            throw new UncheckedIOException(unwritable);
        }
    }

    static SvgImporter importer() {
        return IMPORTER;
    }

    /** Every check that ships. Light is made cheap by the sheet: a coarse map, and no stock to choose from. */
    static Runner runner() {
        CheckCatalogue catalogue = new CheckCatalogue();
        for (Check check : List.of(new ArtworkCheck(), new FitCheck(), new GlowCheck(), new LegibilityCheck(), new MountCheck(), new PowerCheck(), new PrintCheck(), new ReturnsCheck(),
                new RouterCheck(), new SheetCheck(), new TrimCheck(), new VinylCheck())) {
            catalogue.add(check, "fuzz", "1");
        }
        return new Runner(IMPORTER, catalogue);
    }

    /** Every check ended well: what one throws on a drawing is its fault, not the drawing's. */
    static void requireWhole(Result result) {
        result.checks().forEach(row -> Guard.require(row.status() != Result.Status.FAILED && row.status() != Result.Status.TIMED_OUT,
                row.check() + " ended as " + row.status().word() + ": " + row.why()));
    }

    /** All geometry of a proof is finite and valid. */
    static void requireSound(Proof proof) {
        Guard.require(Double.isFinite(proof.widthMm()) && Double.isFinite(proof.heightMm()) && proof.widthMm() > 0 && proof.heightMm() > 0, "size " + proof.widthMm() + " x " + proof.heightMm());
        for (Element element : proof.elements()) {
            Map.of("fill", element.fillArea(), "stroke", element.strokeArea()).forEach((what, area) -> {
                requireFinite(area, element.id());
                Guard.require(area.isValid(), what + " of " + element.id() + " is not valid");
            });
            for (Outline outline : element.outlines()) {
                requireFinite(outline.path(), element.id());
            }
        }
    }

    private static void requireFinite(Geometry geometry, String id) {
        for (var point : geometry.getCoordinates()) {
            Guard.require(Double.isFinite(point.x) && Double.isFinite(point.y), "a point of " + id + " is not finite");
        }
    }
}
