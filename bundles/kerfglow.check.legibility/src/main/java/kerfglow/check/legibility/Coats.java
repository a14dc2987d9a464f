// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.legibility;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import kerfglow.api.Inspection;
import kerfglow.api.proof.Element;
import kerfglow.api.proof.Gradient;
import kerfglow.api.proof.Gradient.Shade;
import kerfglow.api.proof.Paint;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Role;
import kerfglow.api.proof.Visibility;
import org.locationtech.jts.algorithm.locate.IndexedPointInAreaLocator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Location;
import org.locationtech.jts.index.strtree.STRtree;

/** Everything painted on the sign, in paint order, with its colour at each place. */
final class Coats {
    /** What is no painted side of the sign towards its readers. */
    static final Set<Role> UNSEEN = Set.of(Role.HOLE, Role.MODULE, Role.KEEP_OUT, Role.BACK, Role.RETURN, Role.NOTE, Role.UNUSED);
    private static final GeometryFactory FACTORY = new GeometryFactory();

    /**
     * Something painted: the fill or the stroke of an element.
     *
     * @param number in paint order
     * @param gradient where the paint is a gradient whose course is known
     */
    record Coat(int number, int order, Paint paint, Optional<Gradient> gradient, Geometry area, IndexedPointInAreaLocator inside) {
        /** Its colour at a place; all it has where their course is not known; empty where it has no colour to tell. */
        List<Shade> at(Coordinate place) {
            if (gradient.isPresent()) {
                return List.of(gradient.get().at(place));
            }
            return paint.colours().stream().map(rgb -> new Shade(rgb, 1)).toList();
        }

        boolean isGradient() {
            return paint.kind() == Paint.Kind.GRADIENT;
        }
    }

    private final STRtree tree = new STRtree();
    private final Map<String, List<Coat>> byElement = new HashMap<>();
    private int count;

    Coats(Inspection inspection) {
        Set<String> sign = new HashSet<>();
        inspection.parts().stream().filter(part -> !UNSEEN.contains(part.role())).forEach(part -> sign.addAll(part.elements()));
        for (Element element : inspection.proof().elements()) {
            inspection.checkpoint(0);
            byElement.put(element.id(), new ArrayList<>());
            if (element.visibility() != Visibility.SHOWN || !sign.contains(element.id()) && element.image().isEmpty()) {
                continue;
            }
            Paint fill = element.image().isPresent() ? new Paint(Paint.Kind.PATTERN, 0) : element.fill();
            add(element, element.fillArea(), fill, element.fillGradient());
            add(element, element.strokeArea(), element.stroke(), element.strokeGradient());
        }
    }

    private void add(Element element, Geometry area, Paint paint, Optional<Gradient> gradient) {
        if (!area.isEmpty() && paint.isPainted()) {
            Coat coat = new Coat(count++, element.order(), paint, gradient, area, new IndexedPointInAreaLocator(area));
            byElement.get(element.id()).add(coat);
            tree.insert(area.getEnvelopeInternal(), coat);
        }
    }

    /** What covers a place and was painted before an element, topmost first. */
    List<Coat> below(Coordinate place, int order) {
        List<Coat> found = new ArrayList<>();
        for (Object each : tree.query(new Envelope(place))) {
            Coat coat = (Coat) each;
            if (coat.order() < order && coat.inside().locate(place) != Location.EXTERIOR) {
                found.add(coat);
            }
        }
        found.sort(Comparator.comparingInt(Coat::number).reversed());
        return found;
    }

    /** The coat that a part was made of, nearest to a place; empty when its elements are not known. */
    Optional<Coat> of(Part part, Coordinate place) {
        List<Coat> own = new ArrayList<>();
        part.elements().forEach(id -> byElement.getOrDefault(id, List.of()).stream().filter(coat -> coat.paint().equals(part.paint())).forEach(own::add));
        if (own.size() < 2) {
            return own.stream().findFirst();
        }
        return own.stream().min(Comparator.comparingDouble((Coat coat) -> coat.area().distance(FACTORY.createPoint(place)))
                .thenComparing(Coat::number, Comparator.reverseOrder()));
    }

    /** Place in paint order of the lowest element of a part. */
    int order(Part part) {
        return part.elements().stream().flatMap(id -> byElement.getOrDefault(id, List.of()).stream()).mapToInt(Coat::order).min().orElse(part.order());
    }
}
