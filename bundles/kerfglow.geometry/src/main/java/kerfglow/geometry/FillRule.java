// SPDX-License-Identifier: Apache-2.0
package kerfglow.geometry;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.algorithm.Orientation;
import org.locationtech.jts.algorithm.locate.IndexedPointInAreaLocator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.CoordinateArrays;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Location;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.index.strtree.STRtree;

/**
 * Which points a set of closed rings paints.
 *
 * <p>Rings may cross themselves and each other, lie on each other and turn either way. The area is the set of points whose winding
 * number is not 0 ({@link #NONZERO}) or is odd ({@link #EVENODD}); SVG 2, 13.4.2, "fill-rule".
 */
public enum FillRule {
    /** Inside where the winding number is not 0. */
    NONZERO,
    /** Inside where the winding number is odd. */
    EVENODD;

    /** Assumed: no artwork crosses itself a thousandth as often; crossings grow with the square of edges, and each costs about 1 kB. */
    public static final int MOST_CROSSINGS = 50_000;

    /** A ring of three different corners repeats the first at the end. */
    private static final int LEAST_RING = 4;

    /**
     * The painted area of closed rings.
     *
     * <p>Rings with fewer than three different points, and rings without area, paint nothing. Rings that neither cross nor touch
     * (the ordinary case) are nested and never cut, so their corners come back exactly. Otherwise new corners are added where
     * edges cross, and corners that lie within {@link FillRuleFaces#SNAP_MM} of each other or of an edge move by no more than that.
     *
     * @param rings each ring's corners in order, mm; the first need not be repeated at the end; not changed
     * @param factory makes the result
     * @return a valid polygon or multipolygon, or an empty polygon
     * @throws FillRuleLimitException when the rings cross more than {@link #MOST_CROSSINGS} times
     */
    public Geometry area(List<Coordinate[]> rings, GeometryFactory factory) {
        List<Coordinate[]> clean = new ArrayList<>(rings.size());
        for (Coordinate[] ring : rings) {
            Coordinate[] closed = closed(ring);
            if (closed.length >= LEAST_RING) {
                clean.add(closed);
            }
        }
        if (clean.isEmpty()) {
            return factory.createPolygon();
        }
        if (FillRuleContacts.anyIn(clean)) {
            return FillRuleFaces.area(clean, this, factory);
        }
        return nested(clean, factory);
    }

    boolean isInside(int winding) {
        return this == NONZERO ? winding != 0 : (winding & 1) != 0;
    }

    private static Coordinate[] closed(Coordinate[] ring) {
        Coordinate[] points = CoordinateArrays.removeRepeatedPoints(ring);
        if (points.length == 0 || points[0].equals2D(points[points.length - 1])) {
            return points;
        }
        Coordinate[] closed = java.util.Arrays.copyOf(points, points.length + 1);
        closed[points.length] = points[0];
        return closed;
    }

    /** Rings that do not meet form a tree; a ring is an edge of the area where crossing it changes inside to outside. */
    private Geometry nested(List<Coordinate[]> rings, GeometryFactory factory) {
        List<Ring> all = new ArrayList<>(rings.size());
        STRtree tree = new STRtree();
        for (Coordinate[] points : rings) {
            LinearRing line = factory.createLinearRing(points);
            if (line.getEnvelopeInternal().getArea() > 0) {
                Ring ring = new Ring(line);
                all.add(ring);
                tree.insert(line.getEnvelopeInternal(), ring);
            }
        }
        for (Ring ring : all) {
            ring.findWhatEncloses(tree);
        }
        all.sort((a, b) -> Integer.compare(a.around.size(), b.around.size()));
        List<Polygon> polygons = new ArrayList<>();
        for (Ring ring : all) {
            ring.settle(this);
            if (ring.isEdge && ring.insideIsPainted) {
                ring.holes = new ArrayList<>();
            } else if (ring.isEdge) {
                ring.innermostShellAround().holes.add(ring.line);
            }
        }
        for (Ring ring : all) {
            if (ring.holes != null) {
                polygons.add(factory.createPolygon(ring.line, ring.holes.toArray(LinearRing[]::new)));
            }
        }
        return polygons.isEmpty() ? factory.createPolygon() : factory.buildGeometry(polygons);
    }

    private static final class Ring {
        final LinearRing line;
        final Envelope bounds;
        final int turn;
        /** Outermost first once settled. */
        final List<Ring> around = new ArrayList<>();
        private IndexedPointInAreaLocator locator;
        private int windingInside;
        private boolean insideIsPainted;
        private boolean isEdge;
        private List<LinearRing> holes;

        Ring(LinearRing line) {
            this.line = line;
            bounds = line.getEnvelopeInternal();
            turn = Orientation.isCCW(line.getCoordinateSequence()) ? 1 : -1;
        }

        void findWhatEncloses(STRtree tree) {
            Coordinate corner = line.getCoordinateN(0);
            for (Object candidate : tree.query(new Envelope(corner))) {
                Ring other = (Ring) candidate;
                if (other != this && other.bounds.covers(bounds) && other.contains(corner)) {
                    around.add(other);
                }
            }
        }

        private boolean contains(Coordinate point) {
            if (locator == null) {
                locator = new IndexedPointInAreaLocator(line);
            }
            return locator.locate(point) == Location.INTERIOR;
        }

        void settle(FillRule rule) {
            around.sort((a, b) -> Integer.compare(a.around.size(), b.around.size()));
            int outside = around.isEmpty() ? 0 : around.get(around.size() - 1).windingInside;
            windingInside = outside + turn;
            insideIsPainted = rule.isInside(windingInside);
            isEdge = rule.isInside(outside) != insideIsPainted;
        }

        Ring innermostShellAround() {
            for (int i = around.size() - 1; i >= 0; i--) {
                if (around.get(i).holes != null) {
                    return around.get(i);
                }
            }
            throw new IllegalStateException("a hole lies in no shell");
        }
    }
}
