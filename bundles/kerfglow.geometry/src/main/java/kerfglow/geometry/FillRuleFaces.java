// SPDX-License-Identifier: Apache-2.0
package kerfglow.geometry;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.locationtech.jts.algorithm.LineIntersector;
import org.locationtech.jts.algorithm.Orientation;
import org.locationtech.jts.algorithm.RobustLineIntersector;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineSegment;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.PrecisionModel;
import org.locationtech.jts.geom.util.GeometryFixer;
import org.locationtech.jts.geom.util.PolygonExtracter;
import org.locationtech.jts.index.intervalrtree.SortedPackedIntervalRTree;
import org.locationtech.jts.noding.FastNodingValidator;
import org.locationtech.jts.noding.IntersectionAdder;
import org.locationtech.jts.noding.MCIndexNoder;
import org.locationtech.jts.noding.NodedSegmentString;
import org.locationtech.jts.noding.Noder;
import org.locationtech.jts.noding.SegmentString;
import org.locationtech.jts.noding.snap.SnappingNoder;
import org.locationtech.jts.noding.snapround.SnapRoundingNoder;
import org.locationtech.jts.operation.overlayng.CoverageUnion;
import org.locationtech.jts.operation.polygonize.Polygonizer;

/**
 * The area of rings that meet: the rings are cut where they meet, the pieces bound faces, and each face is painted or not by its
 * winding number. Time grows with edges and crossings times the logarithm of edges.
 */
final class FillRuleFaces {
    /** Assumed: a thousandth of the micrometre that coordinates are right to, far above what rounding moves a crossing. */
    static final double SNAP_MM = 1e-6;

    private final SortedPackedIntervalRTree edgesByY = new SortedPackedIntervalRTree();

    private FillRuleFaces(List<Coordinate[]> rings) {
        for (Coordinate[] ring : rings) {
            for (int i = 1; i < ring.length; i++) {
                LineSegment edge = new LineSegment(ring[i - 1], ring[i]);
                edgesByY.insert(edge.minY(), edge.maxY(), edge);
            }
        }
    }

    /** @param rings closed, first point repeated, no two equal points in a row */
    static Geometry area(List<Coordinate[]> rings, FillRule rule, GeometryFactory factory) {
        FillRuleFaces faces = new FillRuleFaces(rings);
        Polygonizer polygonizer = new Polygonizer();
        for (LineString line : cut(rings, factory)) {
            polygonizer.add(line);
        }
        List<Polygon> painted = new ArrayList<>();
        for (Object face : polygonizer.getPolygons()) {
            if (rule.isInside(faces.windingAt(((Polygon) face).getInteriorPoint().getCoordinate()))) {
                painted.add((Polygon) face);
            }
        }
        if (painted.isEmpty()) {
            return factory.createPolygon();
        }
        // As a MultiPolygon, though faces touch: a plain collection is asked for its dimension, part by part, at every node.
        Geometry union = CoverageUnion.union(factory.createMultiPolygon(painted.toArray(Polygon[]::new)));
        return polygonal(union.isValid() ? union : GeometryFixer.fix(union), factory).norm(); // else rings begin where the hash of an object falls, and no two runs agree
    }

    private static Geometry polygonal(Geometry geometry, GeometryFactory factory) {
        List<?> polygons = PolygonExtracter.getPolygons(geometry);
        return polygons.isEmpty() ? factory.createPolygon() : factory.buildGeometry(polygons);
    }

    /** Corners nearer than {@link #SNAP_MM} to one another or to an edge are snapped together, so that a drawing and the same drawing turned are cut alike. */
    private static Collection<LineString> cut(List<Coordinate[]> rings, GeometryFactory factory) {
        nodedBy(new MCIndexNoder(new CountingAdder(new RobustLineIntersector())), rings); // only to be stopped early
        Collection<? extends SegmentString> pieces = nodedBy(new SnappingNoder(SNAP_MM), rings);
        if (new FastNodingValidator(pieces).isValid()) {
            return distinct(pieces, factory);
        }
        return distinct(nodedBy(new SnapRoundingNoder(new PrecisionModel(1 / SNAP_MM)), rings), factory);
    }

    /** Stops before the crossings fill the memory. */
    private static final class CountingAdder extends IntersectionAdder {
        CountingAdder(LineIntersector lines) {
            super(lines);
        }

        @Override
        public void processIntersections(SegmentString a, int i, SegmentString b, int j) {
            super.processIntersections(a, i, b, j);
            if (numProperIntersections > FillRule.MOST_CROSSINGS) {
                throw new FillRuleLimitException();
            }
        }
    }

    @SuppressWarnings("unchecked") // the noders' signatures are raw
    private static Collection<? extends SegmentString> nodedBy(Noder noder, List<Coordinate[]> rings) {
        List<SegmentString> strings = new ArrayList<>(rings.size());
        for (Coordinate[] ring : rings) {
            strings.add(new NodedSegmentString(ring, null));
        }
        noder.computeNodes(strings);
        return noder.getNodedSubstrings();
    }

    /** Single edges, each once: the polygonizer takes two equal edges for a face of no width. */
    private static Collection<LineString> distinct(Collection<? extends SegmentString> pieces, GeometryFactory factory) {
        Set<LineSegment> edges = new HashSet<>();
        List<LineString> lines = new ArrayList<>();
        for (SegmentString piece : pieces) {
            for (int i = 1; i < piece.size(); i++) {
                LineSegment edge = new LineSegment(piece.getCoordinate(i - 1), piece.getCoordinate(i));
                edge.normalize();
                if (!edge.p0.equals2D(edge.p1) && edges.add(edge)) {
                    lines.add(factory.createLineString(new Coordinate[] {edge.p0, edge.p1}));
                }
            }
        }
        return lines;
    }

    /** Edges crossed by a ray to the right, counted by direction. */
    private int windingAt(Coordinate point) {
        int[] winding = {0};
        edgesByY.query(point.y, point.y, item -> {
            LineSegment edge = (LineSegment) item;
            boolean startsAbove = edge.p0.y > point.y;
            boolean endsAbove = edge.p1.y > point.y;
            if (startsAbove != endsAbove) {
                int side = Orientation.index(edge.p0, edge.p1, point);
                if (endsAbove && side == Orientation.LEFT) {
                    winding[0]++;
                } else if (startsAbove && side == Orientation.RIGHT) {
                    winding[0]--;
                }
            }
        });
        return winding[0];
    }
}
