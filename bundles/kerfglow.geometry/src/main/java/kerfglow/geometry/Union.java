// SPDX-License-Identifier: Apache-2.0
package kerfglow.geometry;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.TopologyException;
import org.locationtech.jts.geom.prep.PreparedGeometry;
import org.locationtech.jts.geom.prep.PreparedGeometryFactory;
import org.locationtech.jts.geom.util.PolygonExtracter;
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
        Geometry widest = cluster.stream().max(Comparator.comparingDouble(area -> area.getEnvelopeInternal().getArea())).orElseThrow();
        PreparedGeometry around = PreparedGeometryFactory.prepare(widest);
        List<Geometry> rest = new ArrayList<>(List.of(widest));
        for (Polygon area : cluster) {
            if (area != widest && !(widest.getEnvelopeInternal().covers(area.getEnvelopeInternal()) && around.covers(area))) {
                rest.add(area);
            }
        }
        if (rest.size() == 1) {
            return widest;
        }
        UnaryUnionOp union = new UnaryUnionOp(rest);
        union.setUnionFunction(SNAPPED);
        return union.union();
    }
}
