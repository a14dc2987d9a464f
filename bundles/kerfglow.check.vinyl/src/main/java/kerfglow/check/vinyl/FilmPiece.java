// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.vinyl;

import java.util.ArrayList;
import java.util.List;
import kerfglow.api.proof.Part;
import org.locationtech.jts.algorithm.locate.IndexedPointInAreaLocator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.LineSegment;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.index.strtree.STRtree;

/**
 * A piece of film as one that others meet: what takes time to make is made once.
 *
 * @param part the piece
 * @param box the rectangle around it
 * @param rings all its rings in the direction that has the film on the right, as JTS normalises them
 * @param edges its edges, line segments in the direction of the rings
 * @param area tells what lies within it
 */
record FilmPiece(Part part, Envelope box, List<LinearRing> rings, STRtree edges, IndexedPointInAreaLocator area) {
    static FilmPiece of(Part part) {
        List<LinearRing> rings = rings(part.shape());
        STRtree edges = new STRtree();
        for (LinearRing ring : rings) {
            Coordinate[] points = ring.getCoordinates();
            for (int i = 1; i < points.length; i++) {
                if (!points[i - 1].equals2D(points[i])) {
                    edges.insert(new Envelope(points[i - 1], points[i]), new LineSegment(points[i - 1], points[i]));
                }
            }
        }
        edges.build();
        return new FilmPiece(part, part.shape().getEnvelopeInternal(), rings, edges, new IndexedPointInAreaLocator(part.shape()));
    }

    private static List<LinearRing> rings(Polygon shape) {
        Polygon normal = (Polygon) shape.norm();
        List<LinearRing> rings = new ArrayList<>();
        rings.add(normal.getExteriorRing());
        for (int i = 0; i < normal.getNumInteriorRing(); i++) {
            rings.add(normal.getInteriorRingN(i));
        }
        return rings;
    }
}
