// SPDX-License-Identifier: Apache-2.0
package kerfglow.geometry;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.TopologyException;
import org.locationtech.jts.geom.prep.PreparedGeometry;
import org.locationtech.jts.geom.prep.PreparedGeometryFactory;
import org.locationtech.jts.geom.util.PolygonExtracter;
import org.locationtech.jts.index.strtree.STRtree;
import org.locationtech.jts.noding.ValidatingNoder;
import org.locationtech.jts.noding.snap.SnappingNoder;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;
import org.locationtech.jts.operation.union.UnaryUnionOp;
import org.locationtech.jts.operation.union.UnionStrategy;

/** Areas as one. */
public final class Union {
    private static final UnionStrategy SNAPPED = new UnionStrategy() {
        @Override
        public Geometry union(Geometry one, Geometry other) {
            try {
                return OverlayNG.overlay(one, other, OverlayNG.UNION, new ValidatingNoder(new SnappingNoder(FillRuleFaces.SNAP_MM)));
            } catch (TopologyException notNoded) {
                return OverlayNGRobust.overlay(one, other, OverlayNG.UNION);
            }
        }

        @Override
        public boolean isFloatingPrecision() {
            return true;
        }
    };

    /** A sign has two layers of sheets, seldom three; to leave nothing out costs time alone. */
    private static final int ASKED = 3;

    private Union() {
    }

    /**
     * The points that lie in at least one of the areas.
     *
     * <p>Only areas whose boxes meet are cut with each other: letters side by side come back as they are, and so does a panel with all that lies
     * within it. A corner within a millionth of a millimetre of an edge lies on it: rounding puts it now beside the edge, now beyond it, as a drawing is turned, and an
     * exact union would leave a slit without width between areas that touch.
     *
     * @param areas polygons or multipolygons, mm, valid; not changed; at least one
     * @return a polygon or multipolygon; empty when all are
     * @throws IllegalArgumentException when there is no area at all, for then there is no factory either
     */
    public static Geometry of(Collection<? extends Geometry> areas) {
        if (areas.isEmpty()) {
            throw new IllegalArgumentException("a union of no areas");
        }
        List<Polygon> single = new ArrayList<>();
        areas.stream().filter(area -> !area.isEmpty()).forEach(area -> PolygonExtracter.getPolygons(area, single));
        List<Polygon> polygons = new ArrayList<>();
        for (List<Polygon> cluster : Clusters.of(single, Geometry::getEnvelopeInternal)) {
            PolygonExtracter.getPolygons(united(cluster), polygons);
        }
        var factory = areas.iterator().next().getFactory();
        return polygons.isEmpty() ? factory.createPolygon() : factory.buildGeometry(polygons);
    }

    private static Geometry united(List<Polygon> cluster) {
        if (cluster.size() == 1) {
            return cluster.get(0);
        }
        List<Polygon> edges = notWithin(cluster);
        if (edges.size() == 1) {
            return edges.get(0);
        }
        UnaryUnionOp union = new UnaryUnionOp(edges);
        union.setUnionFunction(SNAPPED);
        return union.union();
    }

    /** Leaves out what lies within a wider one, a back within its face and letters within their panel; asks the widest ones about each alone. */
    private static List<Polygon> notWithin(List<Polygon> cluster) {
        List<Polygon> widestFirst = new ArrayList<>(cluster);
        widestFirst.sort(Comparator.comparingDouble((Polygon area) -> area.getEnvelopeInternal().getArea()).reversed());
        STRtree boxes = new STRtree();
        for (int i = 0; i < widestFirst.size(); i++) {
            boxes.insert(widestFirst.get(i).getEnvelopeInternal(), i);
        }
        PreparedGeometry[] prepared = new PreparedGeometry[widestFirst.size()];
        List<Polygon> kept = new ArrayList<>();
        for (int i = 0; i < widestFirst.size(); i++) {
            Polygon area = widestFirst.get(i);
            Envelope box = area.getEnvelopeInternal();
            List<Integer> around = new ArrayList<>();
            for (Object each : boxes.query(box)) {
                int other = (Integer) each;
                if (other < i && widestFirst.get(other).getEnvelopeInternal().covers(box)) {
                    around.add(other);
                }
            }
            Collections.sort(around);
            if (around.stream().limit(ASKED).noneMatch(other -> {
                prepared[other] = prepared[other] == null ? PreparedGeometryFactory.prepare(widestFirst.get(other)) : prepared[other];
                return prepared[other].covers(area);
            })) {
                kept.add(area);
            }
        }
        return kept;
    }
}
