// SPDX-License-Identifier: Apache-2.0
package kerfglow.geometry;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.util.AffineTransformation;
import org.locationtech.jts.geom.util.NoninvertibleTransformationException;

/**
 * Tells whether two shapes are one shape in two places: whether a rigid motion, turning and mirroring included, takes one onto
 * the other.
 *
 * <p>"Onto" is meant within a tolerance: no vertex of either, after the motion, lies farther than that from the other's lines.
 * Where the vertices of a curve happen to lie does not matter beyond the flattening error. The motion is guessed from the
 * principal axes, or from the farthest points where a shape has none, and then improved by least squares; so a pair that is
 * congruent only just within the tolerance may be told apart, and a pair outside it is never taken for congruent.
 */
public final class Congruence {
    /** A shape whose principal moments differ by a smaller share has no axis to turn by: square, circle, three-fold shapes. */
    private static final double LEAST_ELONGATION = 0.01;
    /** Improvement steps; each about halves what is left of the error. */
    private static final int IMPROVEMENTS = 16;
    /** A guess that is off by more than this share of the size is not worth improving. */
    private static final double HOPELESS_SHARE = 0.1;
    /** An improvement step that leaves more than this share of the error leads nowhere. */
    private static final double WORTHWHILE = 0.97;
    /** Farthest points tried at most: enough for every symmetry that signs have; the vertices of a circle are all alike. */
    private static final int MOST_FARTHEST = 64;
    /** The centre of two congruent shapes can differ by the tolerance, their radius by twice that. */
    private static final double RADIUS_SLACK = 2;
    /** A border that moves by the tolerance sweeps its length times that, and a little more at corners. */
    private static final double BORDER_SLACK = 1.25;
    /** Buckets this many tolerances wide: three of four shapes lie in one bucket only, and little else does. */
    private static final double BUCKET_WIDTH = 16;
    /** Points that are tried first, spread over the shape: most pairs that do not match are told by these. */
    private static final int PROBES = 48;

    private final Geometry geometry;
    private final Coordinate centre;
    private final Coordinate[] points;
    private final Coordinate[] probes;
    private final double radiusMm;
    private final Moments moments;
    private final double area;
    private final double length;
    private Nearest nearest;

    private Congruence(Geometry geometry) {
        this.geometry = geometry;
        this.centre = geometry.isEmpty() ? new Coordinate() : geometry.getCentroid().getCoordinate();
        this.points = geometry.getCoordinates();
        this.probes = spread(points);
        this.moments = Moments.of(geometry, centre);
        this.area = geometry.getArea();
        this.length = geometry.getLength();
        double most = 0;
        for (Coordinate point : points) {
            most = Math.max(most, point.distance(centre));
        }
        this.radiusMm = most;
    }

    private static Coordinate[] spread(Coordinate[] points) {
        if (points.length <= PROBES) {
            return points;
        }
        Coordinate[] some = new Coordinate[PROBES];
        for (int i = 0; i < PROBES; i++) {
            some[i] = points[(int) ((long) i * points.length / PROBES)];
        }
        return some;
    }

    /**
     * A shape to be compared with many others. Not for several threads at once.
     *
     * @param shape any geometry, mm; not changed, and not to be changed while this is used
     */
    public static Congruence of(Geometry shape) {
        return new Congruence(shape);
    }

    /**
     * True when a rigid motion takes one shape onto the other. Points are congruent to points; empty shapes to empty ones.
     *
     * @param a any geometry, mm; not changed
     * @param b any geometry, mm; not changed
     * @param toleranceMm greatest distance left, above 0
     */
    public static boolean congruent(Geometry a, Geometry b, double toleranceMm) {
        return of(a).matches(of(b), toleranceMm);
    }

    /** True when a rigid motion takes this shape onto the other; see {@link #congruent}. */
    public boolean matches(Congruence other, double toleranceMm) {
        if (!(toleranceMm > 0)) {
            throw new IllegalArgumentException("the tolerance must be above 0: " + toleranceMm + " mm");
        }
        if (geometry.isEmpty() || other.geometry.isEmpty()) {
            return geometry.isEmpty() && other.geometry.isEmpty();
        }
        if (geometry.getDimension() != other.geometry.getDimension()) {
            return false;
        }
        if (points.length == 1 && other.points.length == 1) {
            return true;
        }
        return mayMatch(other, toleranceMm) && new Fit(this, other, toleranceMm).found();
    }

    /**
     * Keys of buckets that a shape belongs in: two shapes congruent within the tolerance share at least one. Cheap; one key for
     * most shapes, two for those near a border.
     */
    public List<Long> buckets(double toleranceMm) {
        if (geometry.isEmpty()) {
            return List.of(-1L);
        }
        if (points.length == 1) {
            return List.of(0L);
        }
        double width = BUCKET_WIDTH * toleranceMm;
        long low = (long) Math.floor((radiusMm - RADIUS_SLACK * toleranceMm) / width);
        long high = (long) Math.floor((radiusMm + RADIUS_SLACK * toleranceMm) / width);
        // the dimension is kept apart by the remainder by 4; a radius is never below 0, so that low is -1 at least
        long dimension = geometry.getDimension();
        long lowKey = (low + 2) * 4 + dimension;
        return low == high ? List.of(lowKey) : List.of(lowKey, (high + 2) * 4 + dimension);
    }

    /** {@link #buckets(double)} of a shape that is asked only once. */
    public static List<Long> buckets(Geometry shape, double toleranceMm) {
        return of(shape).buckets(toleranceMm);
    }

    /** Cheap measures that a motion does not change, and a tolerance changes by what lies within it of the outline at most. */
    private boolean mayMatch(Congruence other, double toleranceMm) {
        double slack = RADIUS_SLACK * toleranceMm;
        double radius = Math.max(radiusMm, other.radiusMm);
        double swept = BORDER_SLACK * toleranceMm * Math.max(length, other.length);
        boolean alike = geometry.getNumGeometries() == other.geometry.getNumGeometries()
                && Math.abs(radiusMm - other.radiusMm) <= slack && Math.abs(area - other.area) <= swept;
        return alike && (area == 0 || Math.abs(moments.polar() - other.moments.polar()) <= swept * radius * radius);
    }

    private Nearest nearest() {
        if (nearest == null) {
            nearest = new Nearest(geometry);
        }
        return nearest;
    }

    /** The directions by which it can be laid onto another, radians: its main axis both ways, or its farthest points. */
    private List<Double> directions(boolean byAxis, double slackMm) {
        List<Double> directions = new ArrayList<>();
        if (byAxis) {
            directions.add(moments.axis());
            directions.add(moments.axis() + Math.PI);
            return directions;
        }
        for (Coordinate point : points) {
            if (point.distance(centre) >= radiusMm - slackMm && directions.size() < MOST_FARTHEST) {
                directions.add(Math.atan2(point.y - centre.y, point.x - centre.x));
            }
        }
        return directions;
    }

    /** The search for the motion. */
    private static final class Fit {
        private final Congruence a;
        private final Congruence b;
        private final double toleranceMm;
        private final Nearest onA;
        private final Nearest onB;

        Fit(Congruence a, Congruence b, double toleranceMm) {
            this.a = a;
            this.b = b;
            this.toleranceMm = toleranceMm;
            this.onA = a.nearest();
            this.onB = b.nearest();
        }

        boolean found() {
            boolean byAxis = Math.min(a.moments.elongation(), b.moments.elongation()) > LEAST_ELONGATION;
            double own = a.directions(byAxis, 0).get(0);
            for (double other : b.directions(byAxis, RADIUS_SLACK * toleranceMm)) {
                if (fits(own, other, false) || fits(-own, other, true)) {
                    return true;
                }
            }
            return false;
        }

        private boolean fits(double from, double to, boolean mirrored) {
            AffineTransformation motion = AffineTransformation.translationInstance(-a.centre.x, -a.centre.y);
            if (mirrored) {
                motion.scale(1, -1);
            }
            motion.rotate(to - from).translate(b.centre.x, b.centre.y);
            double size = Math.max(a.radiusMm, toleranceMm);
            double before = Double.POSITIVE_INFINITY;
            for (int i = 0; i <= IMPROVEMENTS; i++) {
                double hopeless = Math.max(HOPELESS_SHARE * size, toleranceMm * 2);
                Pairs pairs = pairs(motion, hopeless, a.probes, b.probes);
                if (pairs.farthest <= toleranceMm) {
                    pairs = pairs(motion, hopeless, a.points, b.points);
                }
                if (pairs.farthest <= toleranceMm) {
                    return true;
                }
                if (pairs.farthest > hopeless || pairs.farthest > WORTHWHILE * before) {
                    return false;
                }
                before = pairs.farthest;
                motion.compose(pairs.correction());
            }
            return false;
        }

        /** Stops at the first pair that is farther apart than is worth going on for. */
        private Pairs pairs(AffineTransformation motion, double hopeless, Coordinate[] ofA, Coordinate[] ofB) {
            Pairs pairs = new Pairs();
            for (Coordinate point : ofA) {
                Coordinate moved = motion.transform(point, new Coordinate());
                pairs.add(moved, onB.to(moved));
                if (pairs.farthest > hopeless) {
                    return pairs;
                }
            }
            AffineTransformation back = inverse(motion);
            for (Coordinate point : ofB) {
                Coordinate moved = motion.transform(onA.to(back.transform(point, new Coordinate())), new Coordinate());
                pairs.add(moved, point);
            }
            return pairs;
        }

        private static AffineTransformation inverse(AffineTransformation motion) {
            try {
                return motion.getInverse();
            } catch (NoninvertibleTransformationException never) {
                throw new IllegalStateException("a rigid motion has an inverse", never);
            }
        }
    }

    /** Points and where they should be; sums for the rigid motion that moves them there best (least squares). */
    private static final class Pairs {
        private double farthest;
        private int count;
        private double sumX;
        private double sumY;
        private double toX;
        private double toY;
        private double dot;
        private double cross;

        void add(Coordinate from, Coordinate to) {
            farthest = Math.max(farthest, from.distance(to));
            count++;
            sumX += from.x;
            sumY += from.y;
            toX += to.x;
            toY += to.y;
            dot += from.x * to.x + from.y * to.y;
            cross += from.x * to.y - from.y * to.x;
        }

        AffineTransformation correction() {
            double meanX = sumX / count;
            double meanY = sumY / count;
            double meanToX = toX / count;
            double meanToY = toY / count;
            double centredDot = dot - count * (meanX * meanToX + meanY * meanToY);
            double centredCross = cross - count * (meanX * meanToY - meanY * meanToX);
            return AffineTransformation.translationInstance(-meanX, -meanY).rotate(Math.atan2(centredCross, centredDot))
                    .translate(meanToX, meanToY);
        }
    }
}
