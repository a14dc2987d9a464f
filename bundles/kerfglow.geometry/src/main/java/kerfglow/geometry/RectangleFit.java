// SPDX-License-Identifier: Apache-2.0
package kerfglow.geometry;

import java.util.Arrays;
import java.util.Collections;
import java.util.Optional;
import java.util.TreeSet;
import org.locationtech.jts.algorithm.ConvexHull;
import org.locationtech.jts.algorithm.Orientation;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;

/**
 * Whether a shape fits into a rectangle, turned as need be.
 *
 * <p>Only the hull decides. Between two directions in which one of its edges lies along the rectangle the same corners touch, and each
 * extent is that of one segment, {@code d cos(angle - direction)}; so every angle at which the shape begins or ceases to fit is
 * known in closed form, and between two such angles it fits throughout or nowhere. Nothing is sampled: a bar that fits at
 * a slant within a hundredth of a degree is found.
 *
 * <p>Cost: n log n in the corners.
 */
public final class RectangleFit {
    /** Sizes are compared to this, mm: rounding of coordinates. */
    private static final double RESOLUTION_MM = 1e-6;
    private static final double HALF_TURN = Math.PI;

    private final Coordinate[] hull;
    private final double[] edges;
    private final double[] turns;
    private final double areaMm2;
    private double leastExtentMm = Double.NaN;

    /** @param shape not empty, mm; not changed */
    public RectangleFit(Geometry shape) {
        Geometry around = new ConvexHull(shape).getConvexHull();
        Coordinate[] corners = around.getCoordinates();
        if (corners.length == 0) {
            throw new IllegalArgumentException("an empty shape fits nowhere and everywhere");
        }
        areaMm2 = around.getArea();
        hull = corners.length > 2 ? ordered(corners) : corners;
        turns = new double[hull.length];
        TreeSet<Double> directions = new TreeSet<>();
        for (int i = 0; i < hull.length; i++) {
            double direction = direction(hull, i);
            turns[i] = direction;
            directions.add(turned(-direction));
            directions.add(turned(HALF_TURN / 2 - direction));
        }
        directions.add(0.0);
        edges = directions.stream().mapToDouble(Double::doubleValue).toArray();
    }

    private static double turned(double angle) {
        double within = angle % HALF_TURN;
        return within < 0 ? within + HALF_TURN : within;
    }

    /**
     * A shape turned.
     *
     * @param degrees by how much, counter-clockwise where y points up, 0 to 180
     * @param widthMm its extent in x then
     * @param heightMm its extent in y then
     */
    public record Turned(double degrees, double widthMm, double heightMm) {
    }

    /** The extents after a turn by an angle in degrees. */
    public Turned at(double degrees) {
        double angle = Math.toRadians(degrees);
        return new Turned(degrees, extent(Math.cos(angle), -Math.sin(angle)), extent(Math.sin(angle), Math.cos(angle)));
    }

    private double extent(double dx, double dy) {
        return along(farthest(dx, dy), dx, dy) - along(farthest(-dx, -dy), dx, dy);
    }

    private static double along(Coordinate p, double dx, double dy) {
        return p.x * dx + p.y * dy;
    }

    /** The corner that lies farthest in a direction: the one between whose edges the line across that direction lies. */
    private Coordinate farthest(double dx, double dy) {
        int at = Arrays.binarySearch(turns, Math.atan2(dx, -dy));
        int near = at < 0 ? -at - 1 : at;
        Coordinate best = hull[near % hull.length];
        for (int i = -1; i <= 1; i++) { // rounding may have chosen its neighbour
            Coordinate other = hull[(near + i + hull.length) % hull.length];
            best = along(other, dx, dy) > along(best, dx, dy) ? other : best;
        }
        return best;
    }

    /** The corners with the inside on the left, from the edge of least direction on. */
    private static Coordinate[] ordered(Coordinate[] ring) {
        Coordinate[] corners = Arrays.copyOf(ring, ring.length - 1);
        if (!Orientation.isCCW(ring)) {
            Collections.reverse(Arrays.asList(corners));
        }
        int first = 0;
        for (int i = 1; i < corners.length; i++) {
            first = direction(corners, i) < direction(corners, first) ? i : first;
        }
        Collections.rotate(Arrays.asList(corners), -first);
        return corners;
    }

    private static double direction(Coordinate[] corners, int edge) {
        Coordinate a = corners[edge];
        Coordinate b = corners[(edge + 1) % corners.length];
        return Math.atan2(b.y - a.y, b.x - a.x);
    }

    /** The turn after which the rectangle around the shape has the least area; one edge of the hull lies along it then. */
    public Turned smallestRectangle() {
        Turned best = at(0);
        for (double edge : edges) {
            Turned turned = at(Math.toDegrees(edge));
            if (turned.widthMm() * turned.heightMm() < best.widthMm() * best.heightMm() * (1 - RESOLUTION_MM)) {
                best = turned;
            }
        }
        return best;
    }

    /** The least distance between two parallel lines that hold the shape; one of them lies along an edge of the hull. */
    public double leastExtentMm() {
        if (Double.isNaN(leastExtentMm)) {
            double least = Double.POSITIVE_INFINITY;
            for (double edge : edges) {
                Turned turned = at(Math.toDegrees(edge));
                least = Math.min(least, Math.min(turned.widthMm(), turned.heightMm()));
            }
            leastExtentMm = least;
        }
        return leastExtentMm;
    }

    /**
     * A turn at which the shape fits: none at all if that does, else a quarter, else the one with most room to spare among the ends and
     * middles of the ranges of angles at which it fits.
     *
     * @param widthMm of the rectangle, in x
     * @param heightMm of the rectangle, in y
     * @return empty when it fits at no angle; a shape exactly as large as the rectangle fits
     */
    public Optional<Turned> into(double widthMm, double heightMm) {
        double diagonal = Math.hypot(widthMm, heightMm) + RESOLUTION_MM;
        boolean tooLong = false;
        for (double plain : new double[] {0, 90}) {
            Turned turned = at(plain);
            if (spare(turned, widthMm, heightMm) >= -RESOLUTION_MM) {
                return Optional.of(turned);
            }
            tooLong |= turned.widthMm() > diagonal;
        }
        if (tooLong || areaMm2 > (widthMm + RESOLUTION_MM) * (heightMm + RESOLUTION_MM)) { // cheap, and true of most that is too large
            return Optional.empty();
        }
        if (leastExtentMm() > Math.min(widthMm, heightMm) + RESOLUTION_MM) {
            return Optional.empty();
        }
        Turned best = null;
        double most = -RESOLUTION_MM;
        double[] angles = decisive(widthMm, heightMm);
        for (int i = 0; i < angles.length; i++) {
            double next = i + 1 < angles.length ? angles[i + 1] : HALF_TURN;
            for (double angle : new double[] {angles[i], (angles[i] + next) / 2}) {
                Turned turned = at(Math.toDegrees(angle));
                double spare = spare(turned, widthMm, heightMm);
                if (spare > most) {
                    best = turned;
                    most = spare;
                }
            }
        }
        return Optional.ofNullable(best);
    }

    private static double spare(Turned turned, double widthMm, double heightMm) {
        return Math.min(widthMm - turned.widthMm(), heightMm - turned.heightMm());
    }

    /** Every angle at which other corners touch, or at which an extent equals a side of the rectangle. */
    private double[] decisive(double widthMm, double heightMm) {
        TreeSet<Double> angles = new TreeSet<>();
        for (int i = 0; i < edges.length; i++) {
            double from = edges[i];
            double to = i + 1 < edges.length ? edges[i + 1] : HALF_TURN;
            angles.add(from);
            double middle = (from + to) / 2;
            addEqual(angles, from, to, spanning(Math.cos(middle), -Math.sin(middle)), 0, widthMm);
            addEqual(angles, from, to, spanning(Math.sin(middle), Math.cos(middle)), HALF_TURN / 2, heightMm);
        }
        return angles.stream().mapToDouble(Double::doubleValue).toArray();
    }

    /** The segment between the two corners that lie farthest apart along a direction. */
    private Coordinate spanning(double dx, double dy) {
        Coordinate first = farthest(-dx, -dy);
        Coordinate last = farthest(dx, dy);
        return new Coordinate(last.x - first.x, last.y - first.y);
    }

    /** Turned by t the segment (x, y) extends x cos t - y sin t in x, which is d cos(t + direction); in y a quarter turn later. */
    private static void addEqual(TreeSet<Double> angles, double from, double to, Coordinate segment, double quarter, double sideMm) {
        double length = Math.hypot(segment.x, segment.y);
        if (length < sideMm) {
            return;
        }
        double direction = Math.atan2(segment.y, segment.x);
        double off = Math.acos(sideMm / length);
        for (double angle : new double[] {quarter - direction + off, quarter - direction - off}) {
            double within = turned(angle);
            if (within > from && within < to) {
                angles.add(within);
            }
        }
    }
}
