// SPDX-License-Identifier: Apache-2.0
package kerfglow.views;

import kerfglow.api.ColourScale;
import kerfglow.api.OverlayLayer;
import kerfglow.api.Quantity;
import kerfglow.api.Severity;
import kerfglow.api.UnitSystem;
import kerfglow.api.Units;
import kerfglow.host.Result;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Puntal;

/** Draws what a result knows through a viewport: the proof, the places of findings, layers of checks, marks, a scale bar. */
final class Painter {
    static final int INK = 0x1d2733;
    static final int QUIET = 0x66717d;
    static final int WHITE = 0xffffff;
    /** Widths of the lines of layers, in pens. */
    private static final double LINE = 0.8;
    private static final double CONTOUR = 0.4;
    private static final int GROUND = 0xf3f1ec;
    private static final int STOP = 0xb3152b;
    private static final int REVIEW = 0x9a5b00;
    private static final int INFO = 0x1f5f8b;
    /** Of what a check shows and no level colours. */
    static final int LAYER = 0x5b2d8e;
    /** Of an outline as it would be right. */
    /** A dash in widths of the pen: seen as one, and as no dot. Gaps are as long, of which a round end takes one width. */
    private static final double DASH = 3;
    static final int SUGGESTED = 0x0b6e4f;
    /** Of what a reviewer drew. */
    private static final int MARK = 0x8a0f6b;
    private static final double FAINT = 0.35;

    private final Canvas canvas;
    private final Viewport view;
    private final double pen;

    /**
     * A painter.
     *
     * @param pen width of a line that is seen well, in units of the canvas
     */
    Painter(Canvas canvas, Viewport view, double pen) {
        this.canvas = canvas;
        this.view = view;
        this.pen = pen;
    }

    static int rgb(Severity severity) {
        return switch (severity) {
            case STOP -> STOP;
            case REVIEW -> REVIEW;
            case INFO -> INFO;
        };
    }

    void background() {
        Envelope frame = view.frame();
        canvas.rectangle(frame.getMinX(), frame.getMinY(), frame.getWidth(), frame.getHeight(), GROUND, GROUND, 0);
    }

    /** Draws what follows only inside the frame, until {@link Canvas#unclip}. */
    void clip() {
        Envelope frame = view.frame();
        canvas.clip(frame.getMinX(), frame.getMinY(), frame.getWidth(), frame.getHeight());
    }

    void proof(ProofShapes shapes) {
        Result result = shapes.result();
        Envelope page = view.at(new Envelope(0, result.proof().widthMm(), 0, result.proof().heightMm()).intersection(around()));
        canvas.rectangle(page.getMinX(), page.getMinY(), page.getWidth(), page.getHeight(), WHITE, QUIET, pen / 2);
        for (ProofShapes.Area area : shapes.within(view.toleranceMm())) {
            Geometry seen = view.at(area.shape());
            if (!seen.isEmpty()) {
                canvas.area(seen, area.rgb(), area.opacity());
                if (area.image()) {
                    cross(view.at(area.shape().getEnvelopeInternal()));
                }
            }
        }
    }

    private void cross(Envelope box) {
        canvas.line(box.getMinX(), box.getMinY(), box.getMaxX(), box.getMaxY(), QUIET, pen / 2);
        canvas.line(box.getMinX(), box.getMaxY(), box.getMaxX(), box.getMinY(), QUIET, pen / 2);
    }

    /** What is seen and as much again on every side, so that a page far larger does not make numbers far larger. */
    private Envelope around() {
        Envelope around = new Envelope(view.seenMm());
        around.expandBy(around.getWidth(), around.getHeight());
        return around;
    }

    /** The place of a finding; one that is smaller than {@code leastSize} gets a dot. */
    void place(Result.Place place, int rgb, double leastSize) {
        Geometry shape = view.at(place.shape());
        Coordinate at = view.at(place.at());
        if (shape.getDimension() == 2 && !shape.isEmpty()) {
            canvas.area(shape, rgb, 0.3);
        }
        if (!(shape instanceof Puntal)) {
            edge(shape, rgb);
        }
        Envelope box = view.at(place.shape().getEnvelopeInternal());
        if (Math.max(box.getWidth(), box.getHeight()) < leastSize) {
            canvas.circle(at.x, at.y, pen * 2, rgb, WHITE, pen * 0.7);
        }
    }

    /** The outline as it would be right: dashed, so that it is told from what was drawn without colour too. */
    void suggestion(Geometry outline) {
        Geometry shape = view.at(outline);
        if (!shape.isEmpty()) {
            canvas.edge(shape, WHITE, pen * 2, 0.7);
            canvas.edge(Dashes.of(shape, pen * DASH), SUGGESTED, pen, 1);
        }
    }

    private void edge(Geometry shape, int rgb) {
        if (!shape.isEmpty()) {
            canvas.edge(shape, WHITE, pen * 2, 0.7);
            canvas.edge(shape, rgb, pen, 1);
        }
    }

    /** What a check shows beside its findings. */
    void layer(OverlayLayer layer, double textSize) {
        layer.raster().ifPresent(raster -> {
            Coordinate corner = view.at(new Coordinate(raster.leftMm(), raster.topMm()));
            canvas.image(raster.columns(), raster.argb(), corner.x, corner.y, raster.columns() * raster.cellMm() * view.unitsPerMm());
        });
        for (OverlayLayer.Item item : layer.items()) {
            Geometry shape = view.at(item.shape());
            if (shape.isEmpty()) {
                continue;
            }
            boolean isContour = shape.getDimension() == 1 && layer.raster().isPresent();
            item(shape, Double.isNaN(item.level()) ? LAYER : isContour ? ColourScale.rgbOver(item.level()) : ColourScale.rgb(item.level()), isContour ? pen * CONTOUR : pen * LINE);
        }
        layer.items().stream().filter(item -> !item.label().isEmpty()).forEach(item -> label(item, textSize));
    }

    /** On a ground of its own, since what is below may be dark. */
    private void label(OverlayLayer.Item item, double textSize) {
        Geometry shape = view.at(item.shape());
        if (!shape.isEmpty()) {
            Coordinate at = shape.getInteriorPoint().getCoordinate();
            double width = ImageCanvas.roomFor(item.label(), textSize, false);
            canvas.rectangle(at.x + pen * 1.5, at.y - pen * 2 - textSize, width + pen * 2, textSize * 1.35, WHITE, QUIET, pen / 4);
            canvas.text(item.label(), at.x + pen * 2.5, at.y - pen * 2, textSize, false, Canvas.Anchor.START, INK);
        }
    }

    private void item(Geometry shape, int rgb, double width) {
        for (int i = 0; i < shape.getNumGeometries(); i++) {
            Geometry each = shape.getGeometryN(i);
            if (each instanceof Puntal) {
                canvas.circle(each.getCoordinate().x, each.getCoordinate().y, pen * 1.6, rgb, WHITE, pen * 0.5);
            } else if (each.getDimension() == 2) {
                canvas.area(each, rgb, FAINT);
            }
        }
        if (shape.getDimension() > 0) {
            canvas.edge(shape, rgb, width, 1);
        }
    }

    /** What a reviewer drew, with its letter. */
    void mark(Review.MarkLine mark, double textSize) {
        Geometry shape = view.at(mark.shape());
        if (!(shape instanceof Puntal)) {
            edge(shape, MARK);
        }
        Coordinate at = view.at(mark.anchor());
        canvas.circle(at.x, at.y, textSize * 0.75, WHITE, MARK, pen);
        canvas.text(mark.letter(), at.x, at.y + textSize * 0.36, textSize, true, Canvas.Anchor.MIDDLE, MARK);
    }

    /** A number in the shape of its weight: stop is a disc, review a lozenge, info a square. */
    static void badge(Canvas canvas, double x, double y, double radius, int number, Severity severity) {
        double r = radius;
        switch (severity) {
            case STOP -> canvas.circle(x, y, r, STOP, WHITE, r * 0.12);
            case REVIEW -> canvas.polygon(new double[] {x, y - r * 1.3, x + r * 1.3, y, x, y + r * 1.3, x - r * 1.3, y}, REVIEW, WHITE, r * 0.12);
            case INFO -> canvas.rectangle(x - r * 0.9, y - r * 0.9, r * 1.8, r * 1.8, INFO, WHITE, r * 0.12);
        }
        double size = number < 100 ? r * 1.12 : r * 0.86;
        canvas.text(Integer.toString(number), x, y + size * 0.36, size, true, Canvas.Anchor.MIDDLE, WHITE);
    }

    /**
     * A scale bar of a round length that ends at {@code right}.
     *
     * @param longest no longer than this, in units of the canvas
     */
    void scaleBar(double right, double y, double longest, double textSize, UnitSystem units) {
        double unit = units == UnitSystem.INCH ? Units.MM_PER_INCH : 1;
        double wanted = longest / view.unitsPerMm() / unit;
        double power = Math.pow(10, Math.floor(Math.log10(wanted)));
        double length = wanted / power >= 5 ? 5 * power : wanted / power >= 2 ? 2 * power : power;
        double across = length * unit * view.unitsPerMm();
        double tick = textSize * 0.3;
        canvas.line(right - across, y, right, y, INK, pen * 0.9);
        canvas.line(right - across, y - tick, right - across, y + tick, INK, pen * 0.9);
        canvas.line(right, y - tick, right, y + tick, INK, pen * 0.9);
        canvas.text(Units.format(length * unit, Quantity.LENGTH, units), right - across - textSize * 0.5, y + tick, textSize, false, Canvas.Anchor.END, INK);
    }
}
