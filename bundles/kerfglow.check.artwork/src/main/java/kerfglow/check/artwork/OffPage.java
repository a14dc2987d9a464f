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
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;

/** Elements of the sign that lie outside the page, which is the proof's viewport. */
final class OffPage {
    static final Rule WHOLLY = new Rule("artwork.off-page", Severity.STOP, "A shape lies wholly off the page",
            "Nobody who looked at the proof has seen it, yet it is in the file and will be cut.",
            "Delete it, or move it onto the page so that it is approved with the rest.", "common practice, no source");
    static final Rule PARTLY = new Rule("artwork.over-page-edge", Severity.REVIEW, "A shape runs over the edge of the page",
            "What lies beyond the edge is not seen on the proof and is cut all the same.",
            "Make the page larger, or move or trim the shape.", "common practice, no source");
    static final Setting<Double> MARGIN = Setting.lengthMm("artwork.page-margin", "how far a shape may run over the edge of the page", 0.1, 0, 1000,
            "pages are often drawn to fit the sign exactly, and sizes in files are rounded", "geometry");

    private OffPage() {
    }

    static List<Finding> find(Artwork artwork) {
        Envelope page = new Envelope(0, artwork.inspection().proof().widthMm(), 0, artwork.inspection().proof().heightMm());
        Gatherer wholly = new Gatherer(artwork, WHOLLY);
        Gatherer partly = new Gatherer(artwork, PARTLY);
        for (Element element : artwork.elements()) {
            if (!artwork.parts(element).isEmpty() && Artwork.paintsArea(element)) {
                double marginMm = artwork.inspection().settings().get(MARGIN, artwork.parts(element).get(0));
                look(artwork, element, page, marginMm, wholly, partly);
            }
        }
        List<Finding> findings = new ArrayList<>(wholly.findings());
        findings.addAll(partly.findings());
        return findings;
    }

    private static void look(Artwork artwork, Element element, Envelope page, double marginMm, Gatherer wholly, Gatherer partly) {
        Envelope extent = new Envelope(element.fillArea().getEnvelopeInternal());
        extent.expandToInclude(element.strokeArea().getEnvelopeInternal());
        double beyondMm = Math.max(Math.max(page.getMinX() - extent.getMinX(), extent.getMaxX() - page.getMaxX()),
                Math.max(page.getMinY() - extent.getMinY(), extent.getMaxY() - page.getMaxY()));
        if (beyondMm <= marginMm + Artwork.RESOLUTION_MM) {
            return;
        }
        boolean off = !page.intersects(extent);
        Rule rule = off ? WHOLLY : PARTLY;
        String message = off ? artwork.name(element) + " lies wholly off the page, which is " + artwork.length(page.getWidth()) + " by "
                + artwork.length(page.getHeight()) + "; it is " + artwork.length(extent.getWidth()) + " by "
                + artwork.length(extent.getHeight()) + " and " + artwork.length(page.distance(extent)) + " away"
                : artwork.name(element) + " runs " + artwork.length(beyondMm) + " over the edge of the page; "
                        + artwork.length(marginMm) + " is let pass";
        Geometry place = element.fillArea().isEmpty() ? element.strokeArea() : element.fillArea();
        (off ? wholly : partly).add(element, place, artwork.finding(rule, message, List.of(element)).place(place)
                .measured(Measure.mm(off ? page.distance(extent) : beyondMm)).required(Measure.mm(off ? 0 : marginMm)).build());
    }
}
