// SPDX-License-Identifier: Apache-2.0
package kerfglow.views;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.util.AffineTransformation;
import org.locationtech.jts.operation.overlayng.LineLimiter;
import org.locationtech.jts.operation.overlayng.RingClipper;

/**
 * Which piece of the proof is seen, and where on the canvas.
 *
 * @param seenMm the piece, mm
 * @param left where its left edge stands, in units of the canvas
 * @param top where its upper edge stands, in units of the canvas
 * @param unitsPerMm units of the canvas a mm of the sign
 * @param toleranceMm how far what is drawn may lie from the true shape, mm of the sign
 */
record Viewport(Envelope seenMm, double left, double top, double unitsPerMm, double toleranceMm) {
    private static final GeometryFactory SHAPES = new GeometryFactory();
    /** What lies farther outside than this share of the piece is cut away; far enough that no edge of the cut is seen. */
    private static final double SURROUNDINGS = 0.1;

    /** The frame that the piece fills. */
    Envelope frame() {
        return new Envelope(left, left + seenMm.getWidth() * unitsPerMm, top, top + seenMm.getHeight() * unitsPerMm);
    }

    Coordinate at(Coordinate mm) {
        return new Coordinate(left + (mm.x - seenMm.getMinX()) * unitsPerMm, top + (mm.y - seenMm.getMinY()) * unitsPerMm);
    }

    Envelope at(Envelope mm) {
        return new Envelope(at(new Coordinate(mm.getMinX(), mm.getMinY())), at(new Coordinate(mm.getMaxX(), mm.getMaxY())));
    }

    /** The geometry on the canvas, without what lies far outside; only for drawing, since what is cut need not be valid. */
    Geometry at(Geometry mm) {
        Envelope near = new Envelope(seenMm);
        near.expandBy(SURROUNDINGS * Math.max(seenMm.getWidth(), seenMm.getHeight()));
        if (!near.intersects(mm.getEnvelopeInternal())) {
            return SHAPES.createPolygon();
        }
        Geometry kept = near.contains(mm.getEnvelopeInternal()) ? mm : cut(mm, near);
        return new AffineTransformation(unitsPerMm, 0, left - seenMm.getMinX() * unitsPerMm, 0, unitsPerMm, top - seenMm.getMinY() * unitsPerMm).transform(kept);
    }

    private static Geometry cut(Geometry geometry, Envelope near) {
        List<Geometry> pieces = new ArrayList<>();
        for (int i = 0; i < geometry.getNumGeometries(); i++) {
            Geometry each = geometry.getGeometryN(i);
            if (each instanceof Polygon polygon && !polygon.isEmpty()) {
                pieces.add(cut(polygon, near));
            } else if (each instanceof LineString line) {
                new LineLimiter(near).limit(line.getCoordinates()).forEach(piece -> pieces.add(SHAPES.createLineString(piece)));
            } else if (near.contains(each.getEnvelopeInternal())) {
                pieces.add(each);
            }
        }
        return SHAPES.buildGeometry(pieces);
    }

    private static Polygon cut(Polygon polygon, Envelope near) {
        RingClipper clipper = new RingClipper(near);
        List<LinearRing> holes = new ArrayList<>();
        for (int i = 0; i < polygon.getNumInteriorRing(); i++) {
            LinearRing hole = ring(clipper, polygon.getInteriorRingN(i));
            if (!hole.isEmpty()) {
                holes.add(hole);
            }
        }
        LinearRing shell = ring(clipper, polygon.getExteriorRing());
        return shell.isEmpty() ? SHAPES.createPolygon() : SHAPES.createPolygon(shell, holes.toArray(new LinearRing[0]));
    }

    private static LinearRing ring(RingClipper clipper, LinearRing ring) {
        Coordinate[] points = clipper.clip(ring.getCoordinates());
        return points.length < LinearRing.MINIMUM_VALID_SIZE + 1 ? SHAPES.createLinearRing() : SHAPES.createLinearRing(points);
    }
}
