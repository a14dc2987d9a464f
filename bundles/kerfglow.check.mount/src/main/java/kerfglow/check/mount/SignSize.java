// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.mount;

import java.util.ArrayList;
import java.util.List;
import kerfglow.api.Inspection;
import kerfglow.api.proof.Role;
import kerfglow.geometry.Union;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.prep.PreparedGeometry;
import org.locationtech.jts.geom.prep.PreparedGeometryFactory;

/**
 * How large the sign is.
 *
 * @param outlineMm2 area of all sheets, and of openings in them, as seen from the front, counters of letters left out
 * @param box the rectangle around it
 */
record SignSize(double outlineMm2, Envelope box) {
    static SignSize of(Inspection inspection) {
        Geometry sheets = Union.of(shapes(inspection, Role.FACE, Role.BACK, Role.PANEL, Role.PUSH_THROUGH));
        List<Geometry> shapes = new ArrayList<>(List.of(sheets));
        PreparedGeometry about = PreparedGeometryFactory.prepare(sheets); // a sheet may have a hundred thousand openings, and each is asked for
        shapes(inspection, Role.OPENING).stream().filter(about::intersects).forEach(shapes::add);
        Geometry all = Union.of(shapes);
        return new SignSize(all.getArea(), all.getEnvelopeInternal());
    }

    private static List<Geometry> shapes(Inspection inspection, Role... roles) {
        return inspection.parts(roles).stream().map(part -> (Geometry) part.shape()).toList();
    }

    double rectangleMm2() {
        return box.getArea();
    }
}
