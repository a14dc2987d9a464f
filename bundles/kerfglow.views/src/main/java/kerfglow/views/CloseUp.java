// SPDX-License-Identifier: Apache-2.0
package kerfglow.views;

import java.util.List;
import kerfglow.api.proof.Role;
import kerfglow.host.Result;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Puntal;

/**
 * One place of a finding, large, at a scale that people name: 2:1 is twice the size of the sign, 1:5 a fifth. Drawn in mm of paper,
 * {@link #WIDTH_MM} wide and {@link #HEIGHT_MM} high; the scale is that of the paper.
 */
public final class CloseUp {
    /** On paper; common practice, no source: two of them and a margin are as wide as a page. */
    public static final double WIDTH_MM = 72;
    /** On paper, with a line for the scale at its foot. */
    public static final double HEIGHT_MM = 48;

    /** Scales that drawings use, largest first (ISO 5455: 1, 2 and 5 with powers of ten). */
    private static final List<Double> SCALES = List.of(10.0, 5.0, 2.0, 1.0, 1 / 2.0, 1 / 5.0, 1 / 10.0, 1 / 20.0, 1 / 50.0, 1 / 100.0, 1 / 200.0, 1 / 500.0,
            1 / 1000.0, 1 / 2000.0, 1 / 5000.0);
    /** As much again is seen around a place, so that one knows where it is. Assumed: tried on the samples. */
    private static final double SURROUNDINGS = 2;
    /** The whole sign with a rim around it. Assumed: seen to be enough. */
    private static final double ALL_OF_IT = 1.1;
    /** A place is shown with at least this much around it, mm on the sign. Assumed: a stroke and its neighbours are seen. */
    private static final double LEAST_SEEN_MM = 12;
    /** What is drawn lies no farther from the true shape: less than a dot of a printer of 1200 dots an inch. */
    private static final double TOLERANCE_MM = 0.015;
    private static final double PEN_MM = 0.45;
    private static final double TEXT_MM = 2.5;
    private static final double FOOT_MM = 5;
    private static final double BADGE_MM = 2.6;

    private final ProofShapes shapes;
    private final Result.ReportedFinding finding;
    private final int number;
    private final double scale;
    private final Viewport view;

    CloseUp(ProofShapes shapes, Result.ReportedFinding finding, int number) {
        this.shapes = shapes;
        this.finding = finding;
        this.number = number;
        Result.Place place = finding.places().get(0);
        Envelope extent = new Envelope(place.shape().getEnvelopeInternal());
        extent.expandToInclude(place.at());
        boolean ofTheSign = place.shape() instanceof Puntal && finding.parts().isEmpty() && finding.elements().isEmpty();
        if (ofTheSign) { // its centre of mass means nothing without the sign
            shapes.result().parts().stream().filter(part -> part.role() != Role.NOTE && part.role() != Role.UNUSED).forEach(part -> extent.expandToInclude(part.shape().getEnvelopeInternal()));
        }
        double share = ofTheSign ? ALL_OF_IT : SURROUNDINGS;
        double seenHeight = HEIGHT_MM - FOOT_MM;
        double widest = Math.max(LEAST_SEEN_MM, extent.getWidth() * share);
        double highest = Math.max(LEAST_SEEN_MM * seenHeight / WIDTH_MM, extent.getHeight() * share);
        scale = SCALES.stream().filter(each -> WIDTH_MM / each >= widest && seenHeight / each >= highest).findFirst().orElse(SCALES.get(SCALES.size() - 1));
        Coordinate centre = extent.centre();
        Envelope seen = new Envelope(centre.x - WIDTH_MM / scale / 2, centre.x + WIDTH_MM / scale / 2, centre.y - seenHeight / scale / 2, centre.y + seenHeight / scale / 2);
        view = new Viewport(seen, 0, 0, scale, TOLERANCE_MM / scale);
    }

    /** {@code 2:1} or {@code 1:5}: length on paper to length on the sign. */
    public String scale() {
        return scale >= 1 ? Math.round(scale) + ":1" : "1:" + Math.round(1 / scale);
    }

    /** Draws in mm of paper. */
    public void draw(Canvas canvas) {
        Painter painter = new Painter(canvas, view, PEN_MM);
        painter.background();
        painter.clip();
        painter.proof(shapes);
        int rgb = Painter.rgb(finding.severity());
        finding.places().stream().filter(place -> isNear(place.shape().getEnvelopeInternal())).forEach(place -> painter.place(place, rgb, 3 * PEN_MM));
        finding.places().forEach(place -> place.suggestion().filter(outline -> isNear(outline.getEnvelopeInternal())).ifPresent(painter::suggestion));
        Painter.badge(canvas, BADGE_MM * 1.5, BADGE_MM * 1.5, BADGE_MM, number, finding.severity());
        canvas.unclip();
        double y = HEIGHT_MM - FOOT_MM / 2;
        boolean suggests = finding.places().stream().flatMap(place -> place.suggestion().stream()).anyMatch(outline -> isNear(outline.getEnvelopeInternal()));
        canvas.text("scale " + scale() + (suggests ? ", dashed: suggested" : ""), 0, y + TEXT_MM * 0.3, TEXT_MM, false, Canvas.Anchor.START, Painter.INK);
        painter.scaleBar(WIDTH_MM - PEN_MM, y, WIDTH_MM / 3, TEXT_MM, shapes.result().units());
    }

    private boolean isNear(Envelope extent) {
        return view.seenMm().intersects(extent);
    }

    /** As an SVG element without declaration, for a page. */
    public String svg(String idPrefix, String title) {
        SvgCanvas canvas = SvgCanvas.inside(WIDTH_MM, HEIGHT_MM, idPrefix, title);
        draw(canvas);
        return canvas.text();
    }
}
