// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.router;

import java.util.List;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Role;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Point;
import org.locationtech.jts.index.strtree.STRtree;

/** The edges of all openings: where a panel has the same edge, the waste is the opening's, and is measured there alone. */
final class OpeningEdges {
    /** An overlay moves a point by far less, a drawing that only looks the same by more. */
    private static final double SAME_EDGE_MM = 0.01;
    /** Points of a ring that are asked; three on one opening's edge and not elsewhere leave no other ring in drawn artwork. */
    private static final int ASKED = 3;

    /** Of a lattice of openings every ring asks all of them; read by several threads, so built before. */
    private final STRtree edges = new STRtree();

    OpeningEdges(List<Part> parts) {
        for (Part part : parts) {
            if (part.role() == Role.OPENING) {
                edges.insert(part.shape().getEnvelopeInternal(), part.shape().getBoundary());
            }
        }
        edges.build();
    }

    /** True when a ring of a panel runs along openings only. */
    boolean stand(LinearRing ring) {
        for (int i = 0; i < ASKED; i++) {
            Point point = ring.getPointN((ring.getNumPoints() - 1) * i / ASKED);
            if (!isOnOne(point)) {
                return false;
            }
        }
        return true;
    }

    private boolean isOnOne(Point point) {
        Envelope near = new Envelope(point.getCoordinate());
        near.expandBy(SAME_EDGE_MM);
        for (Object edge : edges.query(near)) {
            if (((Geometry) edge).isWithinDistance(point, SAME_EDGE_MM)) {
                return true;
            }
        }
        return false;
    }
}
