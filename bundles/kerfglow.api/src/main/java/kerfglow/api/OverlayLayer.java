// SPDX-License-Identifier: Apache-2.0
package kerfglow.api;

import java.util.List;
import java.util.Objects;
import org.locationtech.jts.geom.Geometry;

/**
 * Something that a check shows on the proof beside its findings, free of any drawing toolkit.
 *
 * @param id lower case with hyphens, unique in the check
 * @param title what it shows
 * @param items what is drawn, bottom first
 */
public record OverlayLayer(String id, String title, List<Item> items) {
    /**
     * One thing drawn.
     *
     * @param shape lines are stroked, areas filled faintly, points marked; mm
     * @param level where it stands between least (0) and greatest (1), for a colour scale; NaN for plain
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

    public OverlayLayer {
        items = List.copyOf(items);
    }
}
