// SPDX-License-Identifier: Apache-2.0
package kerfglow.geometry;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Polygon;

/**
 * What a round bit leaves uncut on the waste side of a part: waste minus opening(waste, half the bit).
 *
 * <p>No offset curve is built. A point of the outline is out of reach where the disc that touches it from the waste side is
 * smaller than the bit; such stretches, closed by the arcs of the bit where it gets stuck, are the residue. So a flattened curve
 * leaves no slivers: each of its corners is a piece of its own with the depth {@code r (1 / sin(angle / 2) - 1)}, and what is
 * shallower than the tolerance is not built. The bit may enter the waste from above anywhere it fits.
 */
public final class BitReach {
    /** A sharp corner with bent walls may be this much deeper than the straight one before it is a slot with a pointed end. Assumed. */
    private static final double STRAIGHT_SHARE = 1.5;

    private final double diameterMm;
    private final double toleranceMm;
    private final double leastFacingDegrees;
    private final Runnable pulse;

    /**
     * @param diameterMm of the bit, above 0.001; a gap as wide, within 0.001 mm, lets it through
     * @param toleranceMm pieces no deeper than this are nothing, 0 or more
     * @param leastFacingDegrees least angle between the contacts of a disc at which walls count as opposite, see {@link LocalWidth}
     * @param pulse called often, for progress; may throw to stop the work
     */
    public BitReach(double diameterMm, double toleranceMm, double leastFacingDegrees, Runnable pulse) {
        LocalWidth.requireLimit(diameterMm, leastFacingDegrees);
        if (!(toleranceMm >= 0)) {
            throw new IllegalArgumentException("the tolerance must not be negative: " + toleranceMm + " mm");
        }
        this.diameterMm = diameterMm;
        this.toleranceMm = toleranceMm;
        this.leastFacingDegrees = leastFacingDegrees;
        this.pulse = pulse;
    }

    /**
     * The residue about a part that is cut out: outside it and in its holes.
     *
     * @param part valid and not empty, mm; not changed
     * @param isCut which of its rings this bit cuts
     */
    public List<Residue> aroundPart(Polygon part, Predicate<LinearRing> isCut) {
        List<Residue> found = new ArrayList<>();
        LinearRing shell = part.getExteriorRing();
        if (isCut.test(shell)) {
            collect(Walls.outside(shell, false), part.getFactory(), found);
        }
        for (int i = 0; i < part.getNumInteriorRing(); i++) {
            LinearRing hole = part.getInteriorRingN(i);
            if (isCut.test(hole)) {
                collect(Walls.outside(hole, true), part.getFactory(), found);
            }
        }
        return found;
    }

    /**
     * The residue in an opening: the waste is the opening itself.
     *
     * @param opening valid and not empty, mm; not changed
     */
    public List<Residue> inOpening(Polygon opening) {
        List<Residue> found = new ArrayList<>();
        collect(Walls.inside(opening), opening.getFactory(), found);
        return found;
    }

    private void collect(Walls walls, GeometryFactory factory, List<Residue> found) {
        List<ThinPiece> pieces = ThinPiece.of(walls, diameterMm, Math.toRadians(leastFacingDegrees), pulse);
        if (pieces.stream().anyMatch(piece -> piece.isMarginal(LocalWidth.RESOLUTION_MM))) {
            // a slot drawn as wide as the bit lets it through: rounding must not decide
            pieces = ThinPiece.of(walls, diameterMm - LocalWidth.RESOLUTION_MM, Math.toRadians(leastFacingDegrees), pulse);
        }
        for (ThinPiece piece : pieces) {
            pulse.run();
            residue(piece, factory).ifPresent(found::add);
        }
    }

    private Optional<Residue> residue(ThinPiece piece, GeometryFactory factory) {
        boolean entered = piece.wideEnds() > 0;
        Deepest deepest = Deepest.of(piece, diameterMm * Span.EDGE_STEP);
        if (entered && deepest.depthMm() <= toleranceMm) {
            return Optional.empty();
        }
        ResidueShape shape = new ResidueShape(piece, factory);
        if (shape.area().isEmpty()) {
            return Optional.empty(); // the bit comes from both sides and leaves nothing between
        }
        Optional<Disc> narrowest = piece.narrowest();
        if (!entered) {
            double width = narrowest.map(Disc::widthMm).orElseGet(() -> LocalWidth.largestDiscMm(shape.area()));
            Coordinate at = narrowest.map(Disc::centre).orElseGet(() -> shape.area().getInteriorPoint().getCoordinate());
            return Optional.of(new Residue(Residue.Kind.GAP, shape.area(), width, width, at, false));
        }
        if (isGap(piece, deepest.depthMm()) && narrowest.isPresent()) {
            return Optional.of(new Residue(Residue.Kind.GAP, shape.area(), narrowest.get().widthMm(), deepest.depthMm(),
                    narrowest.get().centre(), true));
        }
        return Optional.of(new Residue(Residue.Kind.CORNER, shape.area(), diameterMm, deepest.depthMm(), deepest.at(), true));
    }

    /** Opposite walls make a gap, unless they only meet in a sharp corner that is no deeper than straight walls make it. */
    private boolean isGap(ThinPiece piece, double depthMm) {
        if (piece.narrowest().isEmpty()) {
            return false;
        }
        List<Integer> tips = piece.tips();
        if (tips.size() != 1 || piece.wideEnds() > 1) {
            return true;
        }
        double straight = diameterMm / 2 * (1 / Math.sin(piece.angle(tips.get(0)) / 2) - 1);
        return depthMm > straight * STRAIGHT_SHARE + toleranceMm;
    }

    /** The point of a piece's walls that lies farthest from the bit. */
    private record Deepest(Coordinate at, double depthMm) {
        static Deepest of(ThinPiece piece, double stepMm) {
            List<Disc> stuck = new ArrayList<>();
            for (Run run : piece.runs) {
                if (!run.closed) {
                    stuck.add(run.end());
                }
            }
            Coordinate at = piece.runs.get(0).start().touch();
            double most = 0;
            if (stuck.isEmpty()) {
                return new Deepest(at, most);
            }
            for (Run run : piece.runs) {
                for (Span span : run.spans) {
                    Coordinate before = span.first().touch();
                    for (Disc disc : span.discs) {
                        Coordinate touch = disc.touch();
                        // between two bits the deepest point may lie where discs are far apart
                        int steps = Math.max(1, (int) Math.ceil(before.distance(touch) / stepMm));
                        for (int i = 1; i <= steps; i++) {
                            Coordinate point = i == steps ? touch : between(before, touch, (double) i / steps);
                            double depth = depth(point, stuck);
                            if (depth > most) {
                                most = depth;
                                at = point;
                            }
                        }
                        before = touch;
                    }
                }
            }
            return new Deepest(at, most);
        }

        private static Coordinate between(Coordinate from, Coordinate to, double share) {
            return new Coordinate(from.x + (to.x - from.x) * share, from.y + (to.y - from.y) * share);
        }

        private static double depth(Coordinate point, List<Disc> stuck) {
            double depth = Double.POSITIVE_INFINITY;
            for (Disc bit : stuck) {
                depth = Math.min(depth, bit.distanceTo(point.x, point.y) - bit.radiusMm());
            }
            return depth;
        }
    }
}
