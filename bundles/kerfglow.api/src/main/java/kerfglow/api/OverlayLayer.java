// SPDX-License-Identifier: Apache-2.0
package kerfglow.api;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.locationtech.jts.geom.Geometry;

/**
 * Something that a check shows on the proof beside its findings, free of any drawing toolkit.
 *
 * @param id lower case with hyphens, unique in the check
 * @param title what it shows
 * @param items what is drawn over the raster, bottom first
 * @param raster a picture on the proof, drawn below the items
 * @param legend what its colours mean, least first; empty when there is nothing to explain
 */
public record OverlayLayer(String id, String title, List<Item> items, Optional<Raster> raster, List<LegendEntry> legend) {
    /**
     * One thing drawn.
     *
     * @param shape lines are stroked, areas filled faintly, points marked; mm
     * @param level where it stands between least (0) and greatest (1) of {@link ColourScale}; NaN for plain
     * @param label short text beside it, or empty
     */
    public record Item(Geometry shape, double level, String label) {
        public Item {
            Objects.requireNonNull(shape, "shape");
            Objects.requireNonNull(label, "label");
            if (level < 0 || level > 1) {
                throw new IllegalArgumentException("level must lie in 0..1 or be NaN: " + level);
            }
        }
    }

    /**
     * A picture in square cells. Immutable, provided that nobody changes the array.
     *
     * @param leftMm left edge, mm
     * @param topMm upper edge, mm
     * @param cellMm width and height of a cell, mm
     * @param columns cells in a row
     * @param rows rows, from the top
     * @param argb 0xAARRGGBB of each cell, row by row, alpha not multiplied in
     */
    public record Raster(double leftMm, double topMm, double cellMm, int columns, int rows, int[] argb) {
        public Raster {
            if (!Double.isFinite(leftMm) || !Double.isFinite(topMm) || !(cellMm > 0) || columns < 1 || rows < 1 || argb.length != (long) columns * rows) {
                throw new IllegalArgumentException("a raster needs a finite place, cells of some size, and " + columns + " by " + rows + " colours, not " + argb.length);
            }
        }
    }

    /**
     * One line of a legend.
     *
     * @param rgb 0xRRGGBB
     * @param label what the colour stands for, with its unit
     */
    public record LegendEntry(int rgb, String label) {
    }

    public OverlayLayer {
        items = List.copyOf(items);
        legend = List.copyOf(legend);
    }

    /** Items alone. */
    public OverlayLayer(String id, String title, List<Item> items) {
        this(id, title, items, Optional.empty(), List.of());
    }
}
