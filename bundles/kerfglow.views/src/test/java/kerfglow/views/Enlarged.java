// SPDX-License-Identifier: Apache-2.0
package kerfglow.views;

import java.util.Arrays;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.util.AffineTransformation;

/** A canvas of larger units on one of smaller. */
record Enlarged(Canvas canvas, double by) implements Canvas {
    private Geometry large(Geometry units) {
        return AffineTransformation.scaleInstance(by, by).transform(units);
    }

    @Override
    public void area(Geometry units, int rgb, double opacity) {
        canvas.area(large(units), rgb, opacity);
    }

    @Override
    public void edge(Geometry units, int rgb, double width, double opacity) {
        canvas.edge(large(units), rgb, width * by, opacity);
    }

    @Override
    public void rectangle(double x, double y, double width, double height, int fillRgb, int edgeRgb, double edgeWidth) {
        canvas.rectangle(x * by, y * by, width * by, height * by, fillRgb, edgeRgb, edgeWidth * by);
    }

    @Override
    public void circle(double x, double y, double radius, int fillRgb, int edgeRgb, double edgeWidth) {
        canvas.circle(x * by, y * by, radius * by, fillRgb, edgeRgb, edgeWidth * by);
    }

    @Override
    public void polygon(double[] corners, int fillRgb, int edgeRgb, double edgeWidth) {
        canvas.polygon(Arrays.stream(corners).map(each -> each * by).toArray(), fillRgb, edgeRgb, edgeWidth * by);
    }

    @Override
    public void line(double x1, double y1, double x2, double y2, int rgb, double width) {
        canvas.line(x1 * by, y1 * by, x2 * by, y2 * by, rgb, width * by);
    }

    @Override
    public void text(String text, double x, double baseline, double size, boolean bold, Anchor anchor, int rgb) {
        canvas.text(text, x * by, baseline * by, size * by, bold, anchor, rgb);
    }

    @Override
    public void image(int columns, int[] argb, double x, double y, double width) {
        canvas.image(columns, argb, x * by, y * by, width * by);
    }

    @Override
    public void clip(double x, double y, double width, double height) {
        canvas.clip(x * by, y * by, width * by, height * by);
    }

    @Override
    public void unclip() {
        canvas.unclip();
    }
}
