// SPDX-License-Identifier: Apache-2.0
package kerfglow.host;

import java.util.List;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.TopologyException;
import org.locationtech.jts.noding.ValidatingNoder;
import org.locationtech.jts.noding.snap.SnappingNoder;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;
import org.locationtech.jts.operation.union.UnaryUnionOp;
import org.locationtech.jts.operation.union.UnionStrategy;

/**
 * Unites areas, those too that touch along an edge: where a corner of one lies on an edge of the other, rounding puts it now beside the
 * edge, now beyond it, as a drawing is turned, and an exact union would leave a slit without width between them.
 */
final class Union {
    /** Assumed: a thousandth of the micrometre that coordinates are right to, far above what rounding moves a corner. */
    private static final double SNAP_MM = 1e-6;

    private static final UnionStrategy SNAPPED = new UnionStrategy() {
        @Override
        public Geometry union(Geometry one, Geometry other) {
            try {
                return OverlayNG.overlay(one, other, OverlayNG.UNION, new ValidatingNoder(new SnappingNoder(SNAP_MM)));
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

    /** The union of polygonal areas, one at least. */
    static Geometry of(List<Geometry> areas) {
        UnaryUnionOp union = new UnaryUnionOp(areas);
        union.setUnionFunction(SNAPPED);
        return union.union();
    }
}
