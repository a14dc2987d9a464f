// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.artwork;

import java.util.ArrayList;
import java.util.List;
import kerfglow.api.Finding;
import kerfglow.api.Measure;
import kerfglow.api.Rule;
import kerfglow.api.Severity;
import kerfglow.api.proof.Element;
import kerfglow.api.proof.ImportNote;
import kerfglow.api.proof.Outline;
import org.locationtech.jts.geom.Geometry;

/** What the import did not take over as drawn, so that the proof as measured is not the proof as seen elsewhere. */
final class NotTakenOver {
    static final Rule LEFT_OUT = new Rule("artwork.not-taken-over", Severity.REVIEW, "Something in the file was not taken over as drawn",
            "Another program may show or cut it, so what was approved and what was checked can differ.",
            "Replace it by plain shapes in the file, or make sure that it is not part of the sign.", "common practice, no source");
    static final Rule BAD_VALUE = new Rule("artwork.bad-value", Severity.STOP, "A value in the file cannot be read",
            "What depends on it was left out, so a shape may be missing, cut short or in the wrong place.",
            "Correct the value, or save the file anew from the program that made it.", "common practice, no source");

    private final Artwork artwork;

    private NotTakenOver(Artwork artwork) {
        this.artwork = artwork;
    }

    static List<Finding> find(Artwork artwork) {
        NotTakenOver rules = new NotTakenOver(artwork);
        List<ImportNote> leftOut = new ArrayList<>();
        List<ImportNote> bad = new ArrayList<>();
        for (ImportNote note : artwork.inspection().proof().notes()) {
            switch (note.kind()) {
                case REFUSED_REFERENCE, SCRIPT, ANIMATION, UNSUPPORTED -> leftOut.add(note);
                case BAD_VALUE -> bad.add(note);
                case ASSUMED_SIZE -> { } // said with the size of the sign
            }
        }
        List<Finding> findings = new ArrayList<>(rules.findings(LEFT_OUT, leftOut));
        findings.addAll(rules.findings(BAD_VALUE, bad));
        return findings;
    }

    private List<Finding> findings(Rule rule, List<ImportNote> notes) {
        if (notes.size() <= artwork.inspection().settings().get(Gatherer.LIST_AT_MOST)) {
            return notes.stream().map(note -> finding(rule, note)).toList();
        }
        return List.of(Finding.of(rule, notes.size() + " places in the file; the first: " + text(notes.get(0)))
                .measured(Measure.count(notes.size())).required(Measure.count(0)).build());
    }

    private Finding finding(Rule rule, ImportNote note) {
        Finding.Builder finding = Finding.of(rule, text(note)).measured(Measure.count(1)).required(Measure.count(0)).cause(note.kind().name());
        artwork.elements().stream().filter(element -> element.id().equals(note.element())).findFirst()
                .ifPresent(element -> addPlace(finding, element));
        return finding.build();
    }

    private void addPlace(Finding.Builder finding, Element element) {
        finding.elements(List.of(element.id()));
        List<Geometry> paths = element.outlines().stream().map(Outline::path).filter(path -> !path.isEmpty()).toList();
        if (!paths.isEmpty()) {
            finding.place(paths.get(0).getFactory().buildGeometry(paths));
        }
    }

    private static String text(ImportNote note) {
        return (note.element().isEmpty() ? "" : note.element() + (note.line() > 0 ? " (line " + note.line() + ")" : "") + ": ") + note.message();
    }
}
