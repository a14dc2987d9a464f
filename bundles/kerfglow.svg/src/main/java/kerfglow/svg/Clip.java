// SPDX-License-Identifier: Apache-2.0
package kerfglow.svg;

import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;

/** What may be seen at one place of the document: everything, or an area in mm. Immutable. */
final class Clip {
    static final Clip NONE = new Clip(null, false);
    private final Geometry area;
    private final boolean isUpright;

    private Clip(Geometry area, boolean isUpright) {
        this.area = area;
        this.isUpright = isUpright;
    }

    Clip and(Geometry more) {
        Geometry both = area == null ? more : Areas.common(area, more);
        return new Clip(both, both.isRectangle());
    }

    /** The part of an area that is seen. */
    Geometry of(Geometry painted) {
        if (area == null || painted.isEmpty()) {
            return painted;
        }
        Envelope window = area.getEnvelopeInternal();
        if (!window.intersects(painted.getEnvelopeInternal())) {
            return painted.getFactory().createPolygon();
        }
        // The ordinary nested viewport holds all of what it shows: its corners then come back unchanged.
        return isUpright && window.covers(painted.getEnvelopeInternal()) ? painted : Areas.common(painted, area);
    }
}
