// SPDX-License-Identifier: Apache-2.0
package kerfglow.worksheet;

import java.util.List;
import java.util.Locale;
import kerfglow.api.Quantity;
import kerfglow.api.UnitSystem;
import kerfglow.api.Units;
import kerfglow.views.Canvas;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.util.AffineTransformation;

/**
 * A piece of the sign on paper, at a scale that drawings use. The canvas is in mm of paper.
 *
 * @param seenMm the piece, mm of the sign
 * @param scale mm of paper a mm of the sign
 * @param leftMm where its left edge stands on the canvas
 * @param topMm where its upper edge stands
 */
record ScaledView(Envelope seenMm, double scale, double leftMm, double topMm) {
    /** Scales that drawings use, largest first: those of ISO 5455 (1, 2 and 5 with powers of ten) and round steps between, so that a page is used. */
    private static final List<Double> SCALES = List.of(5.0, 2.0, 1.0, 1 / 2.0, 1 / 2.5, 1 / 4.0, 1 / 5.0, 1 / 7.5, 1 / 10.0, 1 / 15.0, 1 / 20.0, 1 / 25.0, 1 / 40.0, 1 / 50.0, 1 / 75.0, 1 / 100.0, 1 / 200.0,
            1 / 500.0, 1 / 1000.0);
    /** Room for a dimension line with its number. */
    static final double DIMENSION_MM = 9;
    static final int INK = 0x1d2733;
    static final int QUIET = 0x66717d;
    static final double PEN_MM = 0.25;
    static final double TEXT_MM = 2.6;
    private static final double ARROW_MM = 2;

    /** The largest scale at which a piece fits, with room for dimensions to its left and below. */
    static ScaledView fitting(Envelope seenMm, double widthMm, double heightMm) {
        double across = widthMm - DIMENSION_MM - PEN_MM;
        double down = heightMm - 2 * DIMENSION_MM;
        double scale = SCALES.stream().filter(each -> seenMm.getWidth() * each <= across && seenMm.getHeight() * each <= down).findFirst()
                .orElse(Math.min(across / seenMm.getWidth(), down / seenMm.getHeight()));
        return new ScaledView(seenMm, scale, DIMENSION_MM, PEN_MM);
    }

    Geometry at(Geometry mm) {
        return new AffineTransformation(scale, 0, leftMm - seenMm.getMinX() * scale, 0, scale, topMm - seenMm.getMinY() * scale).transform(mm);
    }

    Coordinate at(Coordinate mm) {
        return new Coordinate(leftMm + (mm.x - seenMm.getMinX()) * scale, topMm + (mm.y - seenMm.getMinY()) * scale);
    }

    double rightMm() {
        return leftMm + seenMm.getWidth() * scale;
    }

    double bottomMm() {
        return topMm + seenMm.getHeight() * scale;
    }

    /** For instance {@code 1:10}. */
    String words() {
        return scale >= 1 ? number(scale) + ":1" : "1:" + number(1 / scale);
    }

    private static String number(double value) {
        return String.format(Locale.ROOT, "%.1f", value).replace(".0", "");
    }

    /** Overall width below and overall height to the left, and the scale. */
    void dimensions(Canvas canvas, UnitSystem units) {
        double y = bottomMm() + DIMENSION_MM * 0.55;
        line(canvas, leftMm, y, rightMm(), y);
        canvas.line(leftMm, bottomMm() + 1, leftMm, y + 1, QUIET, PEN_MM / 2);
        canvas.line(rightMm(), bottomMm() + 1, rightMm(), y + 1, QUIET, PEN_MM / 2);
        canvas.text(Units.format(seenMm.getWidth(), Quantity.LENGTH, units), (leftMm + rightMm()) / 2, y + TEXT_MM * 1.2, TEXT_MM, false, Canvas.Anchor.MIDDLE, INK);
        double x = leftMm - DIMENSION_MM * 0.35;
        line(canvas, x, topMm, x, bottomMm());
        canvas.line(x - 1, topMm, leftMm - 0.5, topMm, QUIET, PEN_MM / 2);
        canvas.line(x - 1, bottomMm(), leftMm - 0.5, bottomMm(), QUIET, PEN_MM / 2);
        canvas.text(Units.format(seenMm.getHeight(), Quantity.LENGTH, units), 0, bottomMm() + TEXT_MM * 1.2, TEXT_MM, false, Canvas.Anchor.START, INK);
        canvas.text("scale " + words(), leftMm, y + TEXT_MM * 2.5, TEXT_MM, false, Canvas.Anchor.START, QUIET);
    }

    private static void line(Canvas canvas, double x1, double y1, double x2, double y2) {
        canvas.line(x1, y1, x2, y2, INK, PEN_MM / 2);
        double length = Math.hypot(x2 - x1, y2 - y1);
        double arrow = Math.min(ARROW_MM, length / 3);
        double dx = (x2 - x1) / length * arrow;
        double dy = (y2 - y1) / length * arrow;
        canvas.polygon(new double[] {x1, y1, x1 + dx - dy / 5, y1 + dy + dx / 5, x1 + dx + dy / 5, y1 + dy - dx / 5}, INK, INK, 0);
        canvas.polygon(new double[] {x2, y2, x2 - dx - dy / 5, y2 - dy + dx / 5, x2 - dx + dy / 5, y2 - dy - dx / 5}, INK, INK, 0);
    }
}
