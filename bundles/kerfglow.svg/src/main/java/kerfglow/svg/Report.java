// SPDX-License-Identifier: Apache-2.0
package kerfglow.svg;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
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
    /** The element that each note speaks of, where its file gives it no id. */
    private final Map<ImportNote, Element> nameless = new HashMap<>();
    private final Map<Element, String> delivered = new IdentityHashMap<>();
    private int leftOut;

    Report(Limits limits, SourceLines lines) {
        this.limits = limits;
        this.lines = lines;
    }

    void add(Kind kind, Element element, String message) {
        ImportNote note = new ImportNote(kind, name(element), lines.of(element), message);
        if (keep(note) && element.getAttributeNS(null, "id").isEmpty()) {
            nameless.put(note, element);
        }
    }

    /** Tells what an element of the file is called in the proof; the first time counts. */
    void delivered(Element element, String id) {
        delivered.putIfAbsent(element, id);
    }

    void add(Kind kind, String name, int line, String message) {
        keep(new ImportNote(kind, name, line, message));
    }

    /** A value of an attribute or property that cannot be used. */
    void badValue(Element element, String attribute, String fault, String consequence) {
        add(Kind.BAD_VALUE, element, attribute + " " + fault + "; " + consequence);
    }

    List<ImportNote> all() {
        List<ImportNote> all = new ArrayList<>(notes);
        all.replaceAll(note -> new ImportNote(note.kind(), delivered.getOrDefault(nameless.get(note), note.element()), note.line(), note.message()));
        if (leftOut == 0) {
            return all;
        }
        all.add(new ImportNote(Kind.UNSUPPORTED, "svg", 0, leftOut + " more notes are left out (limit on notes " + limits.notes() + ")"));
        return all;
    }

    private boolean keep(ImportNote note) {
        if (seen.contains(note)) {
            return false;
        }
        if (notes.size() >= limits.notes()) {
            leftOut++;
            return false;
        }
        seen.add(note);
        notes.add(note);
        return true;
    }

    static String name(Element element) {
        String id = element.getAttribute("id");
        return id.isEmpty() ? element.getLocalName() : id;
    }
}
