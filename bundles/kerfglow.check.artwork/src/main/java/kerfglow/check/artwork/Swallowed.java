// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.artwork;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import kerfglow.api.Finding;
import kerfglow.api.Measure;
import kerfglow.api.Rule;
import kerfglow.api.Severity;
import kerfglow.api.proof.Element;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Visibility;
import org.locationtech.jts.algorithm.locate.IndexedPointInAreaLocator;
import org.locationtech.jts.algorithm.locate.SimplePointInAreaLocator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Location;
import org.locationtech.jts.index.strtree.STRtree;

/** Shapes that lie wholly within another shape of the same part, so that nothing of them is seen. */
final class Swallowed {
    static final Rule RULE = new Rule("artwork.swallowed", Severity.REVIEW, "A shape lies unseen within another of the same colour",
            "It is measured here as part of the larger shape, but the file holds its outline, and a cutter follows it.",
            "Delete it, or subtract it when it was meant as an opening.", "common practice, no source");

    private final Artwork artwork;
    private final Gatherer found;
    private final Map<String, Element> cut = new HashMap<>();
    /** Pairs of elements whose outlines cross or run together, which is said by other rules. */
    private final Set<List<String>> told;
    private final STRtree shown = new STRtree();

    private Swallowed(Artwork artwork, Copies copies, Set<List<String>> told) {
        this.artwork = artwork;
        this.told = told;
        this.found = new Gatherer(artwork, RULE);
        copies.originals().forEach(contour -> cut.put(contour.element().id(), contour.element()));
        artwork.elements().stream().filter(element -> element.visibility() == Visibility.SHOWN && !element.fillArea().isEmpty())
                .forEach(element -> shown.insert(element.fillArea().getEnvelopeInternal(), element));
    }

    static List<Finding> find(Artwork artwork, Copies copies, List<NearPair> pairs) {
        Set<List<String>> told = new HashSet<>();
        for (NearPair pair : pairs) {
            if (!pair.crossings().isEmpty() || !Doubled.stretches(artwork, pair).isEmpty()) {
                told.add(List.of(pair.a().element().id(), pair.b().element().id()));
                told.add(List.of(pair.b().element().id(), pair.a().element().id()));
            }
        }
        Swallowed swallowed = new Swallowed(artwork, copies, told);
        artwork.inspection().parts().stream().filter(part -> part.elements().size() > 1).forEach(swallowed::look);
        return swallowed.found.findings();
    }

    private void look(Part part) {
        List<Element> elements = new ArrayList<>();
        STRtree tree = new STRtree();
        for (String id : part.elements()) {
            Element element = cut.get(id);
            if (element != null && !element.fillArea().isEmpty()) {
                elements.add(element);
                tree.insert(element.fillArea().getEnvelopeInternal(), element);
            }
        }
        Map<String, IndexedPointInAreaLocator> locators = new HashMap<>();
        for (Element inner : elements) {
            Envelope extent = inner.fillArea().getEnvelopeInternal();
            Coordinate point = inner.fillArea().getInteriorPoint().getCoordinate();
            for (Object each : tree.query(new Envelope(point))) {
                Element outer = (Element) each;
                if (outer != inner && outer.fillArea().getEnvelopeInternal().contains(extent)
                        && !told.contains(List.of(inner.id(), outer.id())) && locators
                                .computeIfAbsent(outer.id(), id -> new IndexedPointInAreaLocator(outer.fillArea())).locate(point)
                                == Location.INTERIOR && !isCovered(outer, inner, point)) {
                    add(inner, outer);
                    break;
                }
            }
        }
    }

    /** True when something of another colour is painted over the outer shape there before the inner one is painted on top. */
    private boolean isCovered(Element outer, Element inner, Coordinate point) {
        for (Object each : shown.query(new Envelope(point))) {
            Element between = (Element) each;
            if (between.order() > outer.order() && between.order() < inner.order() && !between.fill().equals(inner.fill())
                    && SimplePointInAreaLocator.locate(point, between.fillArea()) == Location.INTERIOR) {
                return true;
            }
        }
        return false;
    }

    private void add(Element inner, Element outer) {
        Geometry place = inner.fillArea();
        String message = artwork.name(inner) + ", " + artwork.length(place.getEnvelopeInternal().getWidth()) + " by "
                + artwork.length(place.getEnvelopeInternal().getHeight()) + ", lies wholly within " + artwork.name(outer)
                + " in the same colour; none may";
        found.add(inner, place, artwork.finding(RULE, message, List.of(inner, outer)).place(place).measured(Measure.count(1))
                .required(Measure.count(0)).build());
    }
}
