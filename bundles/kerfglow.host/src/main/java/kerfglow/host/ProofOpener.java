// SPDX-License-Identifier: Apache-2.0
package kerfglow.host;

import java.nio.file.Path;
import java.util.List;
import kerfglow.api.Quantity;
import kerfglow.api.UnitSystem;
import kerfglow.api.Units;
import kerfglow.api.proof.Element;
import kerfglow.api.proof.ImportNote;
import kerfglow.api.proof.ImportOptions;
import kerfglow.api.proof.Proof;
import kerfglow.api.proof.ProofException;
import kerfglow.api.proof.ProofImporter;
import kerfglow.api.proof.Visibility;
import org.locationtech.jts.geom.Envelope;

/** Imports a proof at the real size of the sign: by the job sheet's scale, or by the one dimension that it says is known. */
final class ProofOpener {
    private final ProofImporter importer;

    ProofOpener(ProofImporter importer) {
        this.importer = importer;
    }

    Proof open(Path file, JobSheet job, SettingsInForce settings, Watcher watcher, List<String> remarks, Deadline deadline) throws ProofException, SheetException {
        ImportOptions options = ImportOptions.defaults().withScale(job.scale().orElse(1)).withChordErrorMm(settings.get(HostSettings.CHORD_ERROR))
                .withUnitsPerInch(settings.get(HostSettings.UNITS_PER_INCH)).withProgress(fraction -> {
                    deadline.require(watcher);
                    watcher.progress("import", fraction);
                });
        Proof proof = importer.read(file, options);
        if (job.knownDimension().isEmpty()) {
            return settings.isGiven(HostSettings.UNITS_PER_INCH) ? withStatedSize(proof) : proof;
        }
        JobSheet.KnownDimension known = job.knownDimension().get();
        Envelope drawn = extent(proof, known.selector());
        double drawnMm = known.horizontal() ? drawn.getWidth() : drawn.getHeight();
        if (!(drawnMm > 0)) {
            throw new SheetException(job.from() + ", known-dimension: no shape that is shown fits it, or it has no extent; check layer, id, fill or data-part", null);
        }
        double scale = known.lengthMm() / drawnMm;
        remarks.add("Scale " + Units.format(scale, Quantity.RATIO, UnitSystem.METRIC) + " from the known " + (known.horizontal() ? "width" : "height")
                + " of " + Units.format(known.lengthMm(), Quantity.LENGTH, UnitSystem.METRIC) + "; drawn " + Units.format(drawnMm, Quantity.LENGTH, UnitSystem.METRIC) + ".");
        return withStatedSize(importer.read(file, options.withScale(scale))); // again, so that curves keep their chord error at real size
    }

    /** The importer sees the file alone and cannot know that a person has said how large the sign is; then nothing is assumed. */
    private static Proof withStatedSize(Proof proof) {
        return new Proof(proof.file(), proof.sha256(), proof.widthMm(), proof.heightMm(), proof.scale(), proof.chordErrorMm(), proof.elements(),
                proof.notes().stream().filter(note -> note.kind() != ImportNote.Kind.ASSUMED_SIZE).toList());
    }

    private static Envelope extent(Proof proof, JobSheet.Selector selector) {
        Envelope extent = new Envelope();
        for (Element element : proof.elements()) {
            if (element.visibility() == Visibility.SHOWN && (Selectors.fits(selector, element, element.fill()) || Selectors.fits(selector, element, element.stroke()))) {
                extent.expandToInclude(element.fillArea().getEnvelopeInternal());
                extent.expandToInclude(element.strokeArea().getEnvelopeInternal());
            }
        }
        return extent;
    }
}
