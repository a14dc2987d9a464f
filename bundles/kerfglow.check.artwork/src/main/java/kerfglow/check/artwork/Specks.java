// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.artwork;

import java.util.ArrayList;
import java.util.List;
import kerfglow.api.Finding;
import kerfglow.api.Measure;
import kerfglow.api.Rule;
import kerfglow.api.Setting;
import kerfglow.api.Severity;
import kerfglow.api.proof.Element;
import kerfglow.api.proof.Outline;
import kerfglow.api.proof.Visibility;
import org.locationtech.jts.algorithm.MinimumBoundingCircle;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;

/** Points, lines without length or area, and shapes too small to be meant. */
final class Specks {
    static final Rule STRAY = new Rule("artwork.stray-point", Severity.REVIEW, "A point or a line without area is left over",
            "It shows nothing, but CAD takes it over: it spoils the extents, and a controller may plunge there.",
            "Delete it.", "common practice, no source");
    static final Rule TINY = new Rule("artwork.tiny-shape", Severity.REVIEW, "A shape is too small to be meant",
            "Specks come from tracing and from cutting shapes apart; each costs a plunge, a tool path and a crumb in the dust.",
            "Delete it, or say by the setting that such small shapes are meant.", "common practice, no source");
    static final Setting<Double> LEAST_SIZE = Setting.lengthMm("artwork.least-size", "greatest extent of a shape that is a speck", 1.5, 0, 100,
            "nothing smaller can be cut, weeded or lit; the smallest weedable piece is about 2 mm square", "common practice, no source");

    private static final GeometryFactory FACTORY = new GeometryFactory();

    private final Artwork artwork;
    private final Gatherer stray;
    private final Gatherer tiny;

    private Specks(Artwork artwork) {
        this.artwork = artwork;
        this.stray = new Gatherer(artwork, STRAY);
        this.tiny = new Gatherer(artwork, TINY);
    }

    static List<Finding> find(Artwork artwork) {
        Specks specks = new Specks(artwork);
        for (Element element : artwork.elements()) {
            if (element.visibility() == Visibility.SHOWN && element.origin() == Element.Origin.SHAPE && artwork.isOfTheSign(element)) {
                specks.lookForStrays(element);
            }
        }
        specks.lookForSmall();
        List<Finding> findings = new ArrayList<>(specks.stray.findings());
        findings.addAll(specks.tiny.findings());
        return findings;
    }

    private void lookForStrays(Element element) {
        List<Geometry> points = new ArrayList<>();
        List<Geometry> lines = new ArrayList<>();
        for (Outline outline : element.outlines()) {
            if (outline.path().isEmpty()) {
                continue;
            }
            if (outline.path().getLength() <= Artwork.RESOLUTION_MM) {
                points.add(FACTORY.createPoint(outline.path().getCoordinate()));
            } else if (!Artwork.paintsArea(element)) {
                lines.add(outline.path());
            }
        }
        if (!points.isEmpty()) {
            addStray(element, points, points.size() == 1 ? "is or holds a single point" : "is or holds " + points.size() + " single points");
        }
        if (!lines.isEmpty()) {
            addStray(element, lines, "paints no area; it is a line of " + artwork.length(FACTORY.buildGeometry(lines).getLength())
                    + " without width");
        }
    }

    private void addStray(Element element, List<Geometry> places, String what) {
        Geometry place = FACTORY.buildGeometry(places);
        stray.add(element, place, artwork.finding(STRAY, artwork.name(element) + " " + what + ", at " + artwork.place(place.getCoordinate()),
                List.of(element)).place(place).at(place.getCoordinate()).measured(Measure.count(places.size())).required(Measure.count(0))
                .build());
    }

    private void lookForSmall() {
        for (Contour contour : artwork.contours()) {
            double leastMm = artwork.inspection().settings().get(LEAST_SIZE, contour.part());
            Geometry path = contour.outline().path();
            if (path.getLength() <= Artwork.RESOLUTION_MM || path.getEnvelopeInternal().getDiameter() > 2 * leastMm) {
                continue; // the diagonal of the extents is at most the square root of 2 times the true extent
            }
            double sizeMm = 2 * new MinimumBoundingCircle(path).getRadius();
            if (leastMm - sizeMm > Artwork.RESOLUTION_MM) {
                String message = artwork.name(contour.element()) + " has an outline only " + artwork.length(sizeMm) + " across at "
                        + artwork.place(path.getCoordinate()) + "; shapes below " + artwork.length(leastMm) + " are taken for specks";
                tiny.add(contour.element(), path, artwork.finding(TINY, message, List.of(contour.element())).place(path)
                        .at(path.getCoordinate()).measured(Measure.mm(sizeMm)).required(Measure.mm(leastMm)).build());
            }
        }
    }
}
