// SPDX-License-Identifier: Apache-2.0
package kerfglow.light;

import java.util.Objects;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;

/**
 * A straight-walled can: back, return walls along the whole outline and round each counter, face. The walls reach from back to face, so
 * that in plan they block light wherever the line between two points leaves the outline.
 *
 * @param inside the inner outline with counters, mm; valid and not empty
 * @param lit the part of the face that is seen lit, mm; what lies outside of {@code inside} does not count
 * @param depthMm from the back to the face's inner side, mm
 * @param finish what its surfaces do with light
 */
public record Can(Polygon inside, Geometry lit, double depthMm, Finish finish) {
    /**
     * Refuses a can without depth or plan.
     *
     * @throws IllegalArgumentException naming the value and the allowed range
     */
    public Can {
        Objects.requireNonNull(lit, "lit");
        Objects.requireNonNull(finish, "finish");
        Ranges.require("depth", depthMm, Double.MIN_NORMAL, Double.MAX_VALUE, "above 0 mm");
        if (inside.isEmpty()) {
            throw new IllegalArgumentException("a can needs an outline");
        }
    }

    /** A can whose whole face is lit. */
    public Can(Polygon inside, double depthMm, Finish finish) {
        this(inside, inside, depthMm, finish);
    }
}
