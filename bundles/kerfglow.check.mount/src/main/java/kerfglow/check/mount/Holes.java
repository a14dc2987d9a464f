// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.mount;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import kerfglow.api.Inspection;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Role;
import org.locationtech.jts.geom.Coordinate;

/**
 * A hole that is drilled.
 *
 * @param hole as drawn
 * @param kind what it is for, by the name of its layer or element
 * @param in what it is drilled into; empty when nothing lies there
 * @param diameterMm that of a circle with its area
 */
record Holes(Part hole, Kind kind, Optional<Part> in, double diameterMm) {
    /** What a hole is for. */
    enum Kind { STUD, WIRE, DRAIN }

    static List<Holes> of(Inspection inspection) {
        return inspection.parts(Role.HOLE).stream().map(hole -> new Holes(hole, kind(hole), inspection.parts().stream()
                .filter(part -> !part.drilled().isEmpty() && part.drilled().intersects(hole.shape().getInteriorPoint())).findFirst(),
                2 * Math.sqrt(hole.shape().getArea() / Math.PI))).toList();
    }

    private static Kind kind(Part hole) {
        String words = (hole.layer() + " " + String.join(" ", hole.elements())).toLowerCase(Locale.ROOT);
        return words.contains("drain") || words.contains("weep") ? Kind.DRAIN : words.contains("wire") || words.contains("cable") ? Kind.WIRE : Kind.STUD;
    }

    Coordinate centre() {
        return hole.shape().getCentroid().getCoordinate();
    }

    String words() {
        return kind.name().toLowerCase(Locale.ROOT);
    }
}
