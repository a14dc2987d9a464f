// SPDX-License-Identifier: Apache-2.0
package kerfglow.views;

import org.locationtech.jts.geom.Geometry;

/** Where a picture is drawn: pixels, or another unit that the canvas states, x right, y down. Colours are 0xRRGGBB. */
public interface Canvas {
    /** Fills the polygons of a geometry. */
    void area(Geometry pixels, int rgb, double opacity);

    /** Strokes the lines, or the edges of the polygons, of a geometry. */
    void edge(Geometry pixels, int rgb, double width, double opacity);

    void rectangle(double x, double y, double width, double height, int fillRgb, int edgeRgb, double edgeWidth);

    void circle(double x, double y, double radius, int fillRgb, int edgeRgb, double edgeWidth);

    /** A closed polygon: x, y, x, y, … */
    void polygon(double[] corners, int fillRgb, int edgeRgb, double edgeWidth);

    void line(double x1, double y1, double x2, double y2, int rgb, double width);

    /** One line of text. */
    void text(String text, double x, double baseline, double size, boolean bold, Anchor anchor, int rgb);

    /**
     * A picture of square cells, filling a rectangle.
     *
     * @param columns cells in a row; the height follows
     * @param argb 0xAARRGGBB of each cell, row by row, alpha not multiplied in
     */
    void image(int columns, int[] argb, double x, double y, double width);

    /** Draws what follows only inside this rectangle, until {@link #unclip}. */
    void clip(double x, double y, double width, double height);

    void unclip();

    /** Which end of a text its x stands for. */
    enum Anchor { START, MIDDLE, END }
}
