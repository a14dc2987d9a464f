// SPDX-License-Identifier: Apache-2.0
package kerfglow.light;

import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;

/**
 * Square cells on the face, row by row from the top left. What is measured in a cell is measured at its centre.
 *
 * @param leftMm left edge, mm
 * @param topMm upper edge, mm
 * @param cellMm width and height of a cell, mm
 * @param columns cells in a row
 * @param rows rows
 */
public record Grid(double leftMm, double topMm, double cellMm, int columns, int rows) {
    /** The least grid of such cells over a box; it begins at the box's corner, so that it moves with what is drawn. */
    public static Grid over(Envelope box, double cellMm) {
        return new Grid(box.getMinX(), box.getMinY(), cellMm, Math.max(1, (int) Math.ceil(box.getWidth() / cellMm)),
                Math.max(1, (int) Math.ceil(box.getHeight() / cellMm)));
    }

    /** The same cells elsewhere, moved by so much, mm. */
    public Grid moved(double dx, double dy) {
        return new Grid(leftMm + dx, topMm + dy, cellMm, columns, rows);
    }

    /** How many cells. */
    public int size() {
        return columns * rows;
    }

    /** The x of the centre of a column, mm. */
    public double x(int column) {
        return leftMm + (column + 0.5) * cellMm;
    }

    /** The y of the centre of a row, mm. */
    public double y(int row) {
        return topMm + (row + 0.5) * cellMm;
    }

    /** The centre of a cell, mm. */
    public Coordinate at(int cell) {
        return new Coordinate(x(cell % columns), y(cell / columns));
    }

    /** The column that holds an x; the nearest one for what lies beside the grid. */
    public int column(double x) {
        return Math.max(0, Math.min(columns - 1, (int) ((x - leftMm) / cellMm)));
    }

    /** The row that holds a y; the nearest one for what lies beside the grid. */
    public int row(double y) {
        return Math.max(0, Math.min(rows - 1, (int) ((y - topMm) / cellMm)));
    }

    /** The cell that holds a point; the nearest one for what lies beside the grid. */
    public int cell(double x, double y) {
        return row(y) * columns + column(x);
    }
}
