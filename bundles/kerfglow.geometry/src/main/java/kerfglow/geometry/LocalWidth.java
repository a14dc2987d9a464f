// SPDX-License-Identifier: Apache-2.0
package kerfglow.geometry;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.locationtech.jts.algorithm.construct.MaximumInscribedCircle;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Point;

/**
 * Finds where a shape is narrow.
 *
 * <p>The width at a place is the diameter of the inscribed disc there, a disc of the medial axis (H. Blum, A transformation for
 * extracting new descriptors of shape, 1967). It is exact for the polygon: for each wall the least disc over all other walls is
 * taken in closed form, so that no grid and no sample decides. A disc counts where its two contacts lie nearly opposite each
 * other, because the axis also runs into every corner of a wide shape, where the discs shrink to nothing and nothing is narrow.
 */
public final class LocalWidth {
    /** How right the largest disc of a shape without opposite walls is; a fifth of the width tolerance, 0.02 mm. */
    private static final double INSCRIBED_TOLERANCE_MM = 0.004;

    /** Differences of widths below one micrometre are rounding of coordinates, not geometry. */
    static final double RESOLUTION_MM = 0.001;

    private LocalWidth() {
    }

    /**
     * Every stretch along which a shape is narrower than a limit, each once.
     *
     * <p>A shape narrower than the limit everywhere is one neck. Widths equal to the limit, within 0.001 mm, do not count. A corner is neither neck
     * nor taper unless its angle is at most {@code 180 - leastFacingDegrees}. Cost: n log n for outlines as people draw them.
     *
     * @param area valid polygonal geometry, mm; may be empty; not changed
     * @param limitMm the width that is wide enough, mm, above 0.001
     * @param leastFacingDegrees least angle between the contacts of a disc, seen from its centre, at which walls count as
     *     opposite; above 0, at most 180
     * @param pulse called often, for progress; may throw to stop the work
     * @return in the order of the shape's rings
     * @throws IllegalArgumentException when a limit is out of its range
     */
    public static List<Stretch> narrowerThan(Geometry area, double limitMm, double leastFacingDegrees, Runnable pulse) {
        requireLimit(limitMm, leastFacingDegrees);
        Walls walls = Walls.inside(area);
        List<Stretch> stretches = new ArrayList<>();
        for (ThinPiece piece : ThinPiece.of(walls, limitMm - RESOLUTION_MM, Math.toRadians(leastFacingDegrees), pulse)) {
            pulse.run();
            stretch(piece, area, pulse).ifPresent(stretches::add);
        }
        return stretches;
    }

    /**
     * The diameter of the largest disc that lies in a shape, within 0.004 mm.
     *
     * @param area polygonal, not empty, mm
     */
    public static double largestDiscMm(Geometry area) {
        return 2 * new MaximumInscribedCircle(area, INSCRIBED_TOLERANCE_MM).getRadiusLine().getLength();
    }

    static void requireLimit(double limitMm, double leastFacingDegrees) {
        if (!(limitMm > RESOLUTION_MM && limitMm < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("the limit must be above " + RESOLUTION_MM + " mm and finite: " + limitMm + " mm");
        }
        if (!(leastFacingDegrees > 0 && leastFacingDegrees <= 180)) {
            throw new IllegalArgumentException("opposite walls need an angle above 0 and up to 180 degrees: " + leastFacingDegrees);
        }
    }

    private static Optional<Stretch> stretch(ThinPiece piece, Geometry area, Runnable pulse) {
        Optional<Disc> narrowest = piece.narrowest();
        if (narrowest.isEmpty() && piece.wideEnds() > 0) {
            return Optional.empty();
        }
        GeometryFactory factory = area.getFactory();
        if (narrowest.isEmpty()) {
            return Optional.of(thinThroughout(piece, area));
        }
        Geometry axis = Axis.of(piece, factory, pulse);
        List<Integer> tips = piece.tips();
        Disc disc = narrowest.get();
        if (axis.isEmpty()) {
            axis = factory.createPoint(disc.centre());
        }
        boolean taper = !tips.isEmpty() && piece.wideEnds() <= 1;
        Stretch.Kind kind = taper ? Stretch.Kind.TAPER : piece.wideEnds() == 1 ? Stretch.Kind.STUB : Stretch.Kind.NECK;
        Coordinate at = taper ? piece.walls.corner(tips.get(0)) : disc.centre();
        return Optional.of(new Stretch(kind, disc.widthMm(), axis.getLength(), at, axis));
    }

    /** A dot: narrower than the limit everywhere, and no two of its walls lie opposite. Its width is its largest disc. */
    private static Stretch thinThroughout(ThinPiece piece, Geometry area) {
        Coordinate within = piece.runs.get(0).start().touch();
        Geometry dot = area;
        for (int i = 0; i < area.getNumGeometries(); i++) {
            Geometry part = area.getGeometryN(i);
            dot = part.distance(area.getFactory().createPoint(within)) <= INSCRIBED_TOLERANCE_MM ? part : dot;
        }
        MaximumInscribedCircle circle = new MaximumInscribedCircle(dot, INSCRIBED_TOLERANCE_MM);
        Point centre = circle.getCenter();
        return new Stretch(Stretch.Kind.NECK, 2 * circle.getRadiusLine().getLength(), 0, centre.getCoordinate(), centre);
    }
}
