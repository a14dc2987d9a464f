// SPDX-License-Identifier: Apache-2.0
package kerfglow.geometry;

import java.util.Arrays;
import java.util.Optional;
import java.util.TreeSet;
import org.locationtech.jts.algorithm.ConvexHull;
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
 * <p>Cost: n² in the corners of the hull, n log n otherwise.
 */
public final class RectangleFit {
    /** Sizes are compared to this, mm: rounding of coordinates. */
    private static final double RESOLUTION_MM = 1e-6;
    private static final double HALF_TURN = Math.PI;

    private final Coordinate[] hull;
    private final double[] edges;

    /** @param shape not empty, mm; not changed */
    public RectangleFit(Geometry shape) {
        Coordinate[] corners = new ConvexHull(shape).getConvexHull().getCoordinates();
        if (corners.length == 0) {
            throw new IllegalArgumentException("an empty shape fits nowhere and everywhere");
        }
        hull = corners.length > 2 ? Arrays.copyOf(corners, corners.length - 1) : corners;
        TreeSet<Double> directions = new TreeSet<>();
        for (int i = 0; i < hull.length; i++) {
            Coordinate a = hull[i];
            Coordinate b = hull[(i + 1) % hull.length];
            double direction = Math.atan2(b.y - a.y, b.x - a.x);
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
        double least = Double.POSITIVE_INFINITY;
        double most = Double.NEGATIVE_INFINITY;
        for (Coordinate p : hull) {
            double along = p.x * dx + p.y * dy;
            least = Math.min(least, along);
            most = Math.max(most, along);
        }
        return most - least;
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
        double least = Double.POSITIVE_INFINITY;
        for (double edge : edges) {
            Turned turned = at(Math.toDegrees(edge));
            least = Math.min(least, Math.min(turned.widthMm(), turned.heightMm()));
        }
        return least;
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
        for (double plain : new double[] {0, 90}) {
            Turned turned = at(plain);
            if (spare(turned, widthMm, heightMm) >= -RESOLUTION_MM) {
                return Optional.of(turned);
            }
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
        Coordinate first = hull[0];
        Coordinate last = hull[0];
        for (Coordinate p : hull) {
            first = p.x * dx + p.y * dy < first.x * dx + first.y * dy ? p : first;
            last = p.x * dx + p.y * dy > last.x * dx + last.y * dy ? p : last;
        }
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
