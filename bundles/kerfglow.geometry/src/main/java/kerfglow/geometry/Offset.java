// SPDX-License-Identifier: Apache-2.0
package kerfglow.geometry;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.algorithm.locate.IndexedPointInAreaLocator;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Location;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.prep.PreparedGeometry;
import org.locationtech.jts.geom.prep.PreparedGeometryFactory;
import org.locationtech.jts.geom.util.PolygonExtracter;
import org.locationtech.jts.index.strtree.STRtree;
import org.locationtech.jts.operation.buffer.BufferOp;
import org.locationtech.jts.operation.buffer.BufferParameters;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;

/**
 * An area made larger or smaller on every side. JTS's buffer compares every ring that comes out with all others, so an area of many rings
 * is taken apart: shrunk, it is its shrunk outline less its grown holes; grown, its grown outline with its shrunk holes. Holes that meet
 * nothing after that, the ordinary case, are never overlaid. Time then grows with corners times the logarithm of corners.
 */
final class Offset {
    /** With fewer rings the buffer in one go is as fast; signs have more only where something is perforated. */
    private static final int FEW_RINGS = 64;

    private final double distanceMm;
    private final BufferParameters parameters;

    private Offset(double distanceMm, BufferParameters parameters) {
        this.distanceMm = distanceMm;
        this.parameters = parameters;
    }

    /**
     * The area offset.
     *
     * @param area polygonal, mm; not changed
     * @param distanceMm above 0 makes it larger, below 0 smaller
     * @param parameters how arcs and corners are made
     * @return polygonal; may be empty
     */
    static Geometry of(Geometry area, double distanceMm, BufferParameters parameters) {
        List<Polygon> polygons = new ArrayList<>();
        PolygonExtracter.getPolygons(area, polygons);
        if (polygons.stream().mapToInt(polygon -> 1 + polygon.getNumInteriorRing()).sum() <= FEW_RINGS) {
            return BufferOp.bufferOp(area, distanceMm, parameters);
        }
        Offset offset = new Offset(distanceMm, parameters);
        if (distanceMm > 0) {
            return Union.of(polygons.stream().map(offset::grown).toList());
        }
        List<Polygon> pieces = new ArrayList<>();
        polygons.forEach(polygon -> pieces.addAll(offset.shrunk(polygon))); // apart before, and farther apart now
        return pieces.isEmpty() ? area.getFactory().createPolygon() : area.getFactory().buildGeometry(pieces);
    }

    /** What lies within a ring, by as much larger or smaller. */
    private List<Polygon> filled(LinearRing ring, double byMm) {
        List<Polygon> pieces = new ArrayList<>();
        PolygonExtracter.getPolygons(BufferOp.bufferOp(ring.getFactory().createPolygon(ring), byMm, parameters), pieces);
        pieces.removeIf(Polygon::isEmpty);
        return pieces;
    }

    private Polygon grown(Polygon polygon) {
        Polygon outline = filled(polygon.getExteriorRing(), distanceMm).get(0);
        List<LinearRing> holes = new ArrayList<>(holes(outline));
        for (LinearRing hole : holes(polygon)) {
            filled(hole, -distanceMm).forEach(left -> holes.add(left.getExteriorRing()));
        }
        return polygon.getFactory().createPolygon(outline.getExteriorRing(), holes.toArray(LinearRing[]::new));
    }

    private List<Polygon> shrunk(Polygon polygon) {
        List<Polygon> outline = filled(polygon.getExteriorRing(), distanceMm);
        if (outline.isEmpty()) {
            return outline;
        }
        List<Polygon> grown = new ArrayList<>();
        holes(polygon).forEach(hole -> grown.addAll(filled(hole, -distanceMm)));
        Geometry within = polygon.getFactory().buildGeometry(outline);
        PreparedGeometry inner = PreparedGeometryFactory.prepare(within);
        List<LinearRing> apart = new ArrayList<>();
        List<Polygon> meeting = new ArrayList<>();
        for (List<Polygon> cluster : Clusters.of(grown, Geometry::getEnvelopeInternal)) {
            Polygon first = cluster.get(0);
            if (cluster.size() == 1 && first.getNumInteriorRing() == 0 && inner.containsProperly(first)) {
                apart.add(first.getExteriorRing());
            } else {
                PolygonExtracter.getPolygons(OverlayNGRobust.union(new ArrayList<Geometry>(cluster)), meeting);
            }
        }
        List<Polygon> left = outline;
        if (!meeting.isEmpty()) {
            left = new ArrayList<>();
            PolygonExtracter.getPolygons(OverlayNGRobust.overlay(within, polygon.getFactory().createMultiPolygon(meeting.toArray(Polygon[]::new)), OverlayNG.DIFFERENCE), left);
            left.removeIf(Polygon::isEmpty);
        }
        return pierced(left, apart);
    }

    private static List<LinearRing> holes(Polygon polygon) {
        List<LinearRing> holes = new ArrayList<>();
        for (int i = 0; i < polygon.getNumInteriorRing(); i++) {
            holes.add(polygon.getInteriorRingN(i));
        }
        return holes;
    }

    /** Each hole given to the piece that it lies in. */
    private static List<Polygon> pierced(List<Polygon> pieces, List<LinearRing> apart) {
        if (apart.isEmpty()) {
            return pieces;
        }
        STRtree boxes = new STRtree();
        List<List<LinearRing>> own = new ArrayList<>();
        List<IndexedPointInAreaLocator> locators = new ArrayList<>();
        for (int i = 0; i < pieces.size(); i++) {
            boxes.insert(pieces.get(i).getEnvelopeInternal(), i);
            own.add(holes(pieces.get(i)));
            locators.add(new IndexedPointInAreaLocator(pieces.get(i))); // indexed when it is first asked
        }
        for (LinearRing hole : apart) {
            for (Object each : boxes.query(new Envelope(hole.getCoordinate()))) {
                int piece = (Integer) each;
                if (locators.get(piece).locate(hole.getCoordinate()) == Location.INTERIOR) {
                    own.get(piece).add(hole);
                    break;
                }
            }
        }
        List<Polygon> pierced = new ArrayList<>();
        for (int i = 0; i < pieces.size(); i++) {
            pierced.add(pieces.get(i).getFactory().createPolygon(pieces.get(i).getExteriorRing(), own.get(i).toArray(LinearRing[]::new)));
        }
        return pierced;
    }
}
