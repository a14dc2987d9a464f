// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.mount;

import java.util.List;
import kerfglow.api.Inspection;
import kerfglow.api.proof.Role;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;

/**
 * How large the sign is.
 *
 * @param outlineMm2 area of all sheets and openings as seen from the front, counters of letters left out
 * @param box the rectangle around it
 */
record SignSize(double outlineMm2, Envelope box) {
    static SignSize of(Inspection inspection) {
        List<Geometry> shapes = inspection.parts(Role.FACE, Role.BACK, Role.PANEL, Role.PUSH_THROUGH, Role.OPENING).stream().map(part -> (Geometry) part.shape()).toList();
        Geometry all = OverlayNGRobust.union(shapes);
        return new SignSize(all.getArea(), all.getEnvelopeInternal());
    }

    double rectangleMm2() {
        return box.getArea();
    }
}
