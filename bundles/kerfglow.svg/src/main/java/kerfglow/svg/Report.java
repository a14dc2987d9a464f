// SPDX-License-Identifier: Apache-2.0
package kerfglow.svg;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import kerfglow.api.proof.ImportNote;
import kerfglow.api.proof.ImportNote.Kind;
import org.w3c.dom.Element;

/** Collects the notes of one import; the same note about the same line is kept once. */
final class Report {
    private final Limits limits;
    private final SourceLines lines;
    private final List<ImportNote> notes = new ArrayList<>();
    private final Set<ImportNote> seen = new HashSet<>();
    private int leftOut;

    Report(Limits limits, SourceLines lines) {
        this.limits = limits;
        this.lines = lines;
    }

    void add(Kind kind, Element element, String message) {
        add(kind, element, name(element), message);
    }

    /** @param name how the element is called in the proof, when it became one */
    void add(Kind kind, Element element, String name, String message) {
        add(kind, name, lines.of(element), message);
    }

    void add(Kind kind, String name, int line, String message) {
        ImportNote note = new ImportNote(kind, name, line, message);
        if (seen.contains(note)) {
            return;
        }
        if (notes.size() >= limits.notes()) {
            leftOut++;
            return;
        }
        seen.add(note);
        notes.add(note);
    }

    /** A value of an attribute or property that cannot be used. */
    void badValue(Element element, String attribute, String fault, String consequence) {
        add(Kind.BAD_VALUE, element, attribute + " " + fault + "; " + consequence);
    }

    List<ImportNote> all() {
        if (leftOut == 0) {
            return List.copyOf(notes);
        }
        List<ImportNote> all = new ArrayList<>(notes);
        all.add(new ImportNote(Kind.UNSUPPORTED, "svg", 0, leftOut + " more notes are left out (limit on notes " + limits.notes() + ")"));
        return all;
    }

    static String name(Element element) {
        String id = element.getAttribute("id");
        return id.isEmpty() ? element.getLocalName() : id;
    }
}
