// SPDX-License-Identifier: Apache-2.0
package kerfglow.worksheet;

import org.locationtech.jts.geom.Envelope;

/**
 * How an area is cut into pages that overlap.
 *
 * @param area what is covered, mm
 * @param media the page as it lies
 * @param columns pages across
 * @param rows pages down
 */
record Tiling(Envelope area, PatternMedia media, int columns, int rows) {
    private static final double OVERLAP_MM = PatternMedia.OVERLAP_MM;
    private static final int LETTERS = 26;

    /** The way of laying the page that takes fewer pages; upright when it does not matter. */
    static Tiling of(Envelope area, PatternMedia media) {
        Tiling upright = laid(area, media);
        Tiling turned = laid(area, media.turned());
        return turned.pages() < upright.pages() ? turned : upright;
    }

    private static Tiling laid(Envelope area, PatternMedia media) {
        return new Tiling(area, media, count(area.getWidth(), media.usableWidthMm()), count(area.getHeight(), media.usableHeightMm()));
    }

    private static int count(double extent, double usable) {
        return extent <= usable ? 1 : (int) Math.ceil((extent - OVERLAP_MM) / (usable - OVERLAP_MM));
    }

    int pages() {
        return columns * rows;
    }

    /** What a page shows, mm of the sign. Pages of a roll are no longer than the area. */
    Envelope tile(int column, int row) {
        double left = area.getMinX() + column * (media.usableWidthMm() - OVERLAP_MM);
        double top = area.getMinY() + row * (media.usableHeightMm() - OVERLAP_MM);
        double width = media.roll() ? Math.min(media.usableWidthMm(), area.getMaxX() - left) : media.usableWidthMm();
        return new Envelope(left, left + width, top, top + media.usableHeightMm());
    }

    /** The middle of the overlap after a column, mm of the sign. */
    double seamX(int column) {
        return area.getMinX() + (column + 1) * (media.usableWidthMm() - OVERLAP_MM) + OVERLAP_MM / 2;
    }

    /** The middle of the overlap after a row, mm of the sign. */
    double seamY(int row) {
        return area.getMinY() + (row + 1) * (media.usableHeightMm() - OVERLAP_MM) + OVERLAP_MM / 2;
    }

    /** A letter for the column and a number for the row: A1, B1, …, A2. */
    static String name(int column, int row) {
        String letters = "";
        for (int left = column; left >= 0; left = left / LETTERS - 1) {
            letters = (char) ('A' + left % LETTERS) + letters;
        }
        return letters + (row + 1);
    }
}
