// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.returns;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import kerfglow.api.Inspection;
import kerfglow.api.Settings;
import kerfglow.api.SharedSettings;
import kerfglow.api.proof.Element;
import kerfglow.api.proof.Outline;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Role;
import kerfglow.geometry.Inset;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Polygon;

/**
 * Where the strips of a part run: along drawn return outlines, else along the edge of the back drawn within the face, else along the
 * face inset by the allowance.
 */
final class Lines {
    /** A back that sticks out farther than this, mm, belongs to another face. Assumed: more is no slip of drawing. */
    private static final double STICK_OUT_MM = 2;
    /** A back with a smaller share of the face's area is a cover or a bracket. Assumed. */
    private static final double LEAST_SHARE = 0.3;

    private final List<Part> backs;
    private final List<Part> returns;
    private final Map<String, Element> elements = new HashMap<>();
    private final double chordErrorMm;
    private final Settings settings;

    Lines(Inspection inspection) {
        backs = inspection.parts(Role.BACK);
        returns = inspection.parts(Role.RETURN);
        inspection.proof().elements().forEach(element -> elements.put(element.id(), element));
        chordErrorMm = inspection.proof().chordErrorMm();
        settings = inspection.settings();
    }

    /** True when a face gets strips of its own; false when return outlines are drawn for it. */
    boolean isDerived(Part face) {
        return returns.stream().noneMatch(drawn -> isWithin(drawn.shape(), face.shape()));
    }

    /** The lines of a face or a drawn return; empty when nothing is left inside the inset, or a return is drawn as an open line. */
    List<Contour> of(Part part, double allowanceMm) {
        List<Contour> contours = new ArrayList<>();
        if (part.role() == Role.RETURN) {
            if (part.sources().equals(Set.of(Part.Source.STROKE))) {
                stroked(part, contours); // an open line makes no strip
            } else {
                add(part, part.shape(), 0, contours);
            }
            return contours;
        }
        List<Part> own = backs.stream().filter(back -> isWithin(back.shape(), part.shape())
                && back.shape().getArea() >= LEAST_SHARE * part.shape().getArea()).toList();
        own.forEach(back -> add(part, back.shape(), allowanceMm, contours)); // most are drawn by an offset, which rounds as an inset does
        if (own.isEmpty()) {
            Inset.Join join = Inset.Join.valueOf(settings.get(SharedSettings.BACK_JOINS, part).toUpperCase(Locale.ROOT));
            add(part, Inset.of(part.shape(), allowanceMm, join, settings.get(SharedSettings.BACK_MITRE_LIMIT, part), chordErrorMm), allowanceMm, contours);
        }
        return contours;
    }

    private static boolean isWithin(Polygon inner, Polygon face) {
        Envelope around = face.getEnvelopeInternal();
        around.expandBy(STICK_OUT_MM);
        return around.contains(inner.getEnvelopeInternal())
                && face.getFactory().createPolygon(face.getExteriorRing()).covers(inner.getInteriorPoint());
    }

    /** A return drawn as a line with a pen: the line itself counts, not the band that the pen paints. */
    private void stroked(Part part, List<Contour> contours) {
        for (String id : part.elements()) {
            List<LineString> closed = closedLines(id);
            for (LineString line : closed) {
                if (part.shape().covers(line.getStartPoint())) {
                    LinearRing ring = line.getFactory().createLinearRing(line.getCoordinateSequence());
                    long around = closed.stream().filter(other -> other != line
                            && other.getFactory().createPolygon(other.getCoordinateSequence()).covers(line.getStartPoint())).count();
                    contours.add(Contour.of(part, contours.size() + 1, around % 2 == 1, ring, 0));
                }
            }
        }
    }

    private List<LineString> closedLines(String elementId) {
        List<LineString> closed = new ArrayList<>();
        Element element = elements.get(elementId);
        for (Outline outline : element == null ? List.<Outline>of() : element.outlines()) {
            if (outline.closed() && outline.path() instanceof LineString line && line.getNumPoints() > 3) {
                closed.add(line);
            }
        }
        return closed;
    }

    private static void add(Part part, Geometry area, double insetMm, List<Contour> contours) {
        for (int i = 0; i < area.getNumGeometries(); i++) {
            if (area.getGeometryN(i) instanceof Polygon piece && !piece.isEmpty()) {
                contours.add(Contour.of(part, contours.size() + 1, false, piece.getExteriorRing(), insetMm));
                for (int j = 0; j < piece.getNumInteriorRing(); j++) {
                    contours.add(Contour.of(part, contours.size() + 1, true, piece.getInteriorRingN(j), insetMm));
                }
            }
        }
    }
}
