// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.router;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import kerfglow.api.Finding;
import kerfglow.api.Inspection;
import kerfglow.api.Measure;
import kerfglow.api.proof.Element;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Role;
import kerfglow.geometry.Opening;
import kerfglow.geometry.Union;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.prep.PreparedGeometry;
import org.locationtech.jts.geom.prep.PreparedGeometryFactory;

/**
 * The outer outlines of the panels, before any opening was taken out, and how openings lie to them.
 *
 * <p>A panel part has lost its openings, and may be one of several pieces. Its elements have not: the outline is that of the areas they
 * paint in the part's paint, holes filled. Where the proof does not know the elements it is the convex hull of the parts that share
 * them: right for the usual panel, too large for one with a recess, so that there an opening may pass that lies in the recess.
 */
final class PanelEdge {
    /** How an opening lies to the panels. */
    enum Lie {
        /** All round it there is panel; in a proof without panels every opening counts as such. */
        INSIDE,
        /** It reaches the edge of a panel, so that it is a notch in that edge. */
        AT_EDGE,
        /** It is a notch, and goes on where no panel is. */
        OVER_EDGE,
        /** No panel is there at all. */
        OUTSIDE
    }

    /** An overlay moves an edge by far less. */
    private static final double SAME_EDGE_MM = 0.01;
    /** Two flattened curves that were drawn as one lie no farther apart than their chord errors. */
    private static final double CURVES = 2;
    /** Arcs of a grown outline need not be truer than a share of what it grows by. */
    private static final double ARC_SHARE = 0.1;

    private final List<PreparedGeometry> within = new ArrayList<>();
    private final Geometry all;
    private final PreparedGeometry about;

    PanelEdge(Inspection inspection) {
        double same = SAME_EDGE_MM + CURVES * inspection.proof().chordErrorMm();
        List<Geometry> outlines = outlines(inspection);
        outlines.forEach(outline -> within.add(PreparedGeometryFactory.prepare(Opening.erosion(outline, same, same * ARC_SHARE))));
        all = isKnown() ? Union.of(outlines) : null;
        about = isKnown() ? PreparedGeometryFactory.prepare(Opening.dilation(all, same, same * ARC_SHARE)) : null;
    }

    /** False when the proof has no panel. */
    boolean isKnown() {
        return !within.isEmpty();
    }

    Lie of(Part opening) {
        Polygon shape = opening.shape();
        if (!isKnown() || within.stream().anyMatch(panel -> panel.covers(shape))) {
            return Lie.INSIDE;
        }
        if (within.stream().noneMatch(panel -> panel.intersects(shape))) {
            return Lie.OUTSIDE;
        }
        return about.covers(shape) ? Lie.AT_EDGE : Lie.OVER_EDGE;
    }

    /** For an opening over the edge, measured is how far it reaches out; one outside is its own place. */
    Finding finding(Part opening, Lie lie, Inspection inspection) {
        if (lie == Lie.OUTSIDE) {
            return Finding.of(RouterRules.OPENING_OFF_PANEL, "The " + RouterFindings.name(opening) + " lies in no panel.")
                    .place(opening.shape()).parts(opening.id()).elements(opening.elements()).build();
        }
        Geometry outside = Opening.difference(opening.shape(), all);
        Coordinate farthest = opening.shape().getCoordinate();
        double reach = 0;
        for (Coordinate corner : outside.getCoordinates()) {
            double distance = all.distance(all.getFactory().createPoint(corner));
            if (distance > reach) {
                reach = distance;
                farthest = corner;
            }
        }
        return Finding.of(RouterRules.OPENING_OFF_PANEL, "The " + RouterFindings.name(opening) + " reaches " + inspection.length(reach)
                + " beyond the edge of its panel.").place(outside).at(farthest).measured(Measure.mm(reach)).parts(opening.id())
                .elements(opening.elements()).build();
    }

    private static List<Geometry> outlines(Inspection inspection) {
        Map<String, Element> elements = new HashMap<>();
        inspection.proof().elements().forEach(element -> elements.put(element.id(), element));
        Map<List<String>, List<Part>> panels = new LinkedHashMap<>();
        inspection.parts(Role.PANEL).forEach(part -> panels.computeIfAbsent(part.elements(), each -> new ArrayList<>()).add(part));
        List<Geometry> outlines = new ArrayList<>();
        for (List<Part> pieces : panels.values()) {
            List<Geometry> painted = painted(pieces.get(0), elements);
            outlines.add(painted.isEmpty() ? pieces.get(0).shape().getFactory().buildGeometry(pieces.stream().map(Part::shape).toList()).convexHull()
                    : filled(Union.of(painted)));
        }
        return outlines;
    }

    private static List<Geometry> painted(Part panel, Map<String, Element> elements) {
        List<Geometry> areas = new ArrayList<>();
        panel.elements().stream().map(elements::get).filter(Objects::nonNull).forEach(element -> {
            if (element.fill().equals(panel.paint())) {
                areas.add(element.fillArea());
            }
            if (element.stroke().equals(panel.paint())) {
                areas.add(element.strokeArea());
            }
        });
        areas.removeIf(Geometry::isEmpty);
        return areas;
    }

    private static Geometry filled(Geometry area) {
        List<Geometry> shells = new ArrayList<>();
        for (int i = 0; i < area.getNumGeometries(); i++) {
            shells.add(area.getFactory().createPolygon(((Polygon) area.getGeometryN(i)).getExteriorRing()));
        }
        return Union.of(shells);
    }
}
