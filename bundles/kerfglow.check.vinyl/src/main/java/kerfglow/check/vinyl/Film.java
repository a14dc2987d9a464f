// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.vinyl;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import kerfglow.api.Inspection;
import kerfglow.api.proof.Paint;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Role;
import kerfglow.geometry.Union;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.util.PolygonExtracter;
import kerfglow.geometry.Opening;

/**
 * All film of one colour, which comes off one roll.
 *
 * @param paint the colour
 * @param parts its pieces, in paint order; not empty
 */
record Film(Paint paint, List<Part> parts) {
    /** The word of the job sheet for a sign of film alone, whose plain shapes are film too. */
    private static final String FILM_ALONE = "vinyl";
    /** Overlays leave crumbs where outlines nearly coincide; nothing this small was drawn (a square of 1 µm). */
    private static final double CRUMB_MM2 = 1e-6;

    /** The colours in the order in which they are laid, by their lowest piece. */
    static List<Film> of(Inspection inspection) {
        boolean alone = inspection.build().filter(FILM_ALONE::equals).isPresent();
        Map<Paint, List<Part>> byPaint = new LinkedHashMap<>();
        for (Part part : alone ? inspection.parts(Role.VINYL, Role.FACE) : inspection.parts(Role.VINYL)) {
            byPaint.computeIfAbsent(part.paint(), paint -> new ArrayList<>()).add(part);
        }
        return byPaint.entrySet().stream().map(entry -> new Film(entry.getKey(), List.copyOf(entry.getValue()))).toList();
    }

    String colour() {
        return paint.toString();
    }

    double areaMm2() {
        return parts.stream().mapToDouble(part -> part.shape().getArea()).sum();
    }

    /** Length of all cuts, mm. */
    double cutMm() {
        return parts.stream().mapToDouble(part -> part.shape().getLength()).sum();
    }

    /**
     * What is pulled off when it is cut as it stands on the sign: one piece around everything, then the islands.
     *
     * @param borderMm how far the waste reaches beyond the film
     */
    List<Polygon> waste(double borderMm) {
        List<Geometry> shapes = parts.stream().map(part -> (Geometry) part.shape()).toList();
        Geometry film = Union.of(shapes);
        Envelope box = film.getEnvelopeInternal();
        box.expandBy(borderMm);
        List<Polygon> waste = new ArrayList<>();
        for (Object each : PolygonExtracter.getPolygons(Opening.difference(film.getFactory().toGeometry(box), film))) {
            Polygon piece = (Polygon) each;
            if (piece.getArea() > CRUMB_MM2) {
                waste.add(piece);
            }
        }
        return waste;
    }
}
