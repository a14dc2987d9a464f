// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.desk;

import java.util.ArrayList;
import java.util.List;
import kerfglow.job.MarkShape;
import kerfglow.job.PointMm;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.util.AffineTransformation;

/**
 * Where a mark can be taken hold of, and what becomes of it then: the ends of arrows and dimensions, the corners of boxes, the tops of rings.
 * Notes and freehand lines have no grips and move as a whole. A side that is pulled leaves the opposite one where it is.
 */
public final class MarkGrips {
    /** Taken hold of as a whole. */
    public static final int WHOLE = -1;
    /** A side that is pulled across its opposite stops this far from it, since marks have an extent. */
    private static final double LEAST_MM = 0.1;

    /** A grip of a box or a ring: which side it moves across and down; 0 for none. */
    private record Sides(int across, int down) {
    }

    private static final List<Sides> CORNERS = List.of(new Sides(-1, -1), new Sides(1, -1), new Sides(1, 1), new Sides(-1, 1));
    private static final List<Sides> TOPS = List.of(new Sides(0, -1), new Sides(1, 0), new Sides(0, 1), new Sides(-1, 0));

    private MarkGrips() {
    }

    /** The grips of a mark, in a fixed order, mm. */
    public static List<PointMm> of(MarkShape shape) {
        if (shape instanceof MarkShape.Arrow arrow) {
            return List.of(arrow.from(), arrow.tip());
        }
        if (shape instanceof MarkShape.Dimension line) {
            return List.of(line.from(), line.to());
        }
        List<PointMm> grips = new ArrayList<>();
        Envelope extent = extent(shape);
        for (Sides sides : sides(shape)) {
            grips.add(new PointMm(at(extent.getMinX(), extent.getMaxX(), sides.across), at(extent.getMinY(), extent.getMaxY(), sides.down)));
        }
        return grips;
    }

    private static double at(double least, double greatest, int side) {
        return side < 0 ? least : side > 0 ? greatest : (least + greatest) / 2;
    }

    private static List<Sides> sides(MarkShape shape) {
        return shape instanceof MarkShape.Box ? CORNERS : shape instanceof MarkShape.Ring ? TOPS : List.of();
    }

    /** From the numbers of the mark, not from its outline, which is made of straight pieces. */
    private static Envelope extent(MarkShape shape) {
        if (shape instanceof MarkShape.Ring ring) {
            return new Envelope(ring.centre().xMm() - ring.radiusXMm(), ring.centre().xMm() + ring.radiusXMm(), ring.centre().yMm() - ring.radiusYMm(),
                    ring.centre().yMm() + ring.radiusYMm());
        }
        return shape.outline().getEnvelopeInternal();
    }

    /**
     * The mark after a grip was moved.
     *
     * @param grip its number in {@link #of}, or {@link #WHOLE}
     */
    public static MarkShape moved(MarkShape shape, int grip, double dxMm, double dyMm) {
        if (shape instanceof MarkShape.Arrow arrow && grip != WHOLE) {
            return grip == 0 ? new MarkShape.Arrow(moved(arrow.from(), dxMm, dyMm), arrow.tip()) : new MarkShape.Arrow(arrow.from(), moved(arrow.tip(), dxMm, dyMm));
        }
        if (shape instanceof MarkShape.Dimension line && grip != WHOLE) {
            return grip == 0 ? new MarkShape.Dimension(moved(line.from(), dxMm, dyMm), line.to()) : new MarkShape.Dimension(line.from(), moved(line.to(), dxMm, dyMm));
        }
        if (grip == WHOLE || sides(shape).isEmpty()) {
            return whole(shape, dxMm, dyMm);
        }
        Sides sides = sides(shape).get(grip);
        Envelope extent = extent(shape);
        double left = sides.across < 0 ? Math.min(extent.getMinX() + dxMm, extent.getMaxX() - LEAST_MM) : extent.getMinX();
        double right = sides.across > 0 ? Math.max(extent.getMaxX() + dxMm, extent.getMinX() + LEAST_MM) : extent.getMaxX();
        double top = sides.down < 0 ? Math.min(extent.getMinY() + dyMm, extent.getMaxY() - LEAST_MM) : extent.getMinY();
        double bottom = sides.down > 0 ? Math.max(extent.getMaxY() + dyMm, extent.getMinY() + LEAST_MM) : extent.getMaxY();
        return shape instanceof MarkShape.Box ? new MarkShape.Box(new PointMm(left, top), right - left, bottom - top)
                : new MarkShape.Ring(new PointMm((left + right) / 2, (top + bottom) / 2), (right - left) / 2, (bottom - top) / 2);
    }

    private static MarkShape whole(MarkShape shape, double dxMm, double dyMm) {
        if (shape instanceof MarkShape.Ring ring) {
            return new MarkShape.Ring(moved(ring.centre(), dxMm, dyMm), ring.radiusXMm(), ring.radiusYMm());
        }
        if (shape instanceof MarkShape.Box box) {
            return new MarkShape.Box(moved(box.topLeft(), dxMm, dyMm), box.widthMm(), box.heightMm());
        }
        return shape.moved(AffineTransformation.translationInstance(dxMm, dyMm));
    }

    private static PointMm moved(PointMm point, double dxMm, double dyMm) {
        return new PointMm(point.xMm() + dxMm, point.yMm() + dyMm);
    }
}
