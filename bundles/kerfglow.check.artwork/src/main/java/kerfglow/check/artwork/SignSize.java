// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.artwork;

import java.util.ArrayList;
import java.util.List;
import kerfglow.api.Finding;
import kerfglow.api.Measure;
import kerfglow.api.Rule;
import kerfglow.api.Setting;
import kerfglow.api.Severity;
import kerfglow.api.Units;
import kerfglow.api.proof.ImportNote;
import kerfglow.api.proof.ImportOptions;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.GeometryFactory;

/** Whether the sign has a size that signs have, and what went wrong with the scale when it has not. */
final class SignSize {
    static final Rule IMPLAUSIBLE = new Rule("artwork.implausible-size", Severity.STOP, "The sign has a size that no sign has",
            "Every limit is a length at real size, so at the wrong scale every other finding and every pass is wrong.",
            "Measure one known dimension on the proof and correct the scale or the units per inch in the job sheet.", "common practice, no source");
    static final Rule ASSUMED = new Rule("artwork.assumed-size", Severity.REVIEW, "The file does not say how large the sign is",
            "Programs disagree on how many units make an inch: 96 by CSS, 90 and 72 in older ones, so the sign may be off by a third.",
            "Save the file with width and height in mm or in, or check one known dimension.",
            "CSS Values and Units (1 in = 96 px); common practice for 90 and 72");
    static final Setting<Double> LEAST = Setting.lengthMm("artwork.least-sign", "least plausible size of a sign, greater side", 80.0, 1, 10_000,
            "Assumed: a door plate; anything smaller is engraved, not built", "common practice, no source");
    static final Setting<Double> GREATEST = Setting.lengthMm("artwork.greatest-sign", "greatest plausible size of a sign, greater side", 30_000.0,
            100, 1_000_000, "Assumed: the front of a large store; larger signs are drawn in sections", "common practice, no source");

    /** What could have gone wrong, and by what the size would then have to be multiplied. */
    private record Cause(String words, double factor) {
    }

    private static final double OLD_UNITS_PER_INCH = 72;
    private static final double OTHER_UNITS_PER_INCH = 90;
    private static final double DRAWN_SCALE = 10;

    private static final List<Cause> CAUSES = List.of(
            new Cause("drawn to 1:10 scale", DRAWN_SCALE),
            new Cause("enlarged ten times on the way", 1 / DRAWN_SCALE),
            new Cause("millimetres written as px", ImportOptions.CSS_UNITS_PER_INCH / Units.MM_PER_INCH),
            new Cause("px taken for millimetres", Units.MM_PER_INCH / ImportOptions.CSS_UNITS_PER_INCH),
            new Cause("inches taken for millimetres", Units.MM_PER_INCH),
            new Cause("drawn at 72 units per inch", ImportOptions.CSS_UNITS_PER_INCH / OLD_UNITS_PER_INCH),
            new Cause("drawn at 90 units per inch", ImportOptions.CSS_UNITS_PER_INCH / OTHER_UNITS_PER_INCH));

    private static final GeometryFactory FACTORY = new GeometryFactory();

    private SignSize() {
    }

    static List<Finding> find(Artwork artwork) {
        Envelope extent = new Envelope();
        artwork.inspection().parts().forEach(part -> extent.expandToInclude(part.shape().getEnvelopeInternal()));
        List<Finding> findings = new ArrayList<>();
        artwork.inspection().proof().notes().stream().filter(note -> note.kind() == ImportNote.Kind.ASSUMED_SIZE)
                .forEach(note -> findings.add(assumed(artwork, note, extent)));
        double leastMm = artwork.inspection().settings().get(LEAST);
        double greatestMm = artwork.inspection().settings().get(GREATEST);
        double sizeMm = Math.max(extent.getWidth(), extent.getHeight());
        if (!extent.isNull() && (sizeMm < leastMm || sizeMm > greatestMm)) {
            findings.add(implausible(artwork, extent, sizeMm, leastMm, greatestMm));
        }
        return findings;
    }

    private static Finding implausible(Artwork artwork, Envelope extent, double sizeMm, double leastMm, double greatestMm) {
        List<String> likely = new ArrayList<>();
        for (Cause cause : CAUSES) {
            double corrected = sizeMm * cause.factor();
            if (corrected >= leastMm && corrected <= greatestMm) {
                likely.add(cause.words() + " (then " + size(artwork, extent, cause.factor()) + ")");
            }
        }
        String message = "The sign is " + size(artwork, extent, 1) + " over all; its greater side should be "
                + artwork.length(leastMm) + " to " + artwork.length(greatestMm)
                + (likely.isEmpty() ? "; no usual slip of scale explains it" : "; likely: " + String.join("; ", likely));
        return Finding.of(IMPLAUSIBLE, message).place(FACTORY.toGeometry(extent)).measured(Measure.mm(sizeMm))
                .required(Measure.mm(sizeMm < leastMm ? leastMm : greatestMm)).build();
    }

    private static Finding assumed(Artwork artwork, ImportNote note, Envelope extent) {
        String would = extent.isNull() ? "" : "; the sign is read as " + size(artwork, extent, 1) + ", drawn at 90 units per inch it is "
                + size(artwork, extent, ImportOptions.CSS_UNITS_PER_INCH / OTHER_UNITS_PER_INCH) + ", at 72 units per inch "
                + size(artwork, extent, ImportOptions.CSS_UNITS_PER_INCH / OLD_UNITS_PER_INCH);
        return Finding.of(ASSUMED, note.message() + would).build();
    }

    private static String size(Artwork artwork, Envelope extent, double factor) {
        return artwork.length(extent.getWidth() * factor) + " by " + artwork.length(extent.getHeight() * factor);
    }
}
