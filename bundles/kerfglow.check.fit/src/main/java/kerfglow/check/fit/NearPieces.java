// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.fit;

import java.util.Optional;
import org.locationtech.jts.algorithm.locate.IndexedPointInAreaLocator;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Location;
import org.locationtech.jts.geom.Point;
import org.locationtech.jts.index.strtree.STRtree;
import org.locationtech.jts.operation.distance.IndexedFacetDistance;

/** Which piece of a back lies nearest to a point; for many points, and pieces many or large. */
final class NearPieces {
    private final STRtree boxes = new STRtree();
    private final Geometry back;
    private final IndexedPointInAreaLocator[] insides;
    private final IndexedFacetDistance[] edges;

    NearPieces(Geometry back) {
        this.back = back;
        this.insides = new IndexedPointInAreaLocator[back.getNumGeometries()];
        this.edges = new IndexedFacetDistance[back.getNumGeometries()];
        for (int i = 0; i < back.getNumGeometries(); i++) {
            boxes.insert(back.getGeometryN(i).getEnvelopeInternal(), i);
        }
    }

    /** The number of the nearest piece; empty when none lies within reach. */
    Optional<Integer> nearest(Point point, double reachMm) {
        Envelope around = new Envelope(point.getCoordinate());
        around.expandBy(reachMm);
        Optional<Integer> nearest = Optional.empty();
        double least = Double.POSITIVE_INFINITY;
        for (Object each : boxes.query(around)) {
            int piece = (Integer) each;
            double distance = distance(piece, point);
            if (distance <= reachMm && (distance < least || distance == least && piece < nearest.orElseThrow())) {
                least = distance;
                nearest = Optional.of(piece);
            }
        }
        return nearest;
    }

    private double distance(int piece, Point point) {
        if (insides[piece] == null) {
            insides[piece] = new IndexedPointInAreaLocator(back.getGeometryN(piece));
            edges[piece] = new IndexedFacetDistance(back.getGeometryN(piece));
        }
        return insides[piece].locate(point.getCoordinate()) == Location.EXTERIOR ? edges[piece].distance(point) : 0;
    }
}
