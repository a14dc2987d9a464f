// SPDX-License-Identifier: Apache-2.0
package kerfglow.geometry;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import org.locationtech.jts.algorithm.Distance;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.util.LinearComponentExtracter;
import org.locationtech.jts.index.hprtree.HPRtree;

/**
 * The distance from every point of one outline to the nearest point of other outlines, as a function along the first.
 *
 * <p>Along a straight edge that function is made of straight lines (nearest is the inside of an edge) and of hyperbolas (nearest is
 * a corner). Both are known in closed form, so that least, greatest and mean, and the places where a limit is crossed, are exact for
 * the polygons: no sample decides. Distances are never negative; which side a point lies on is the caller's to know.
 *
 * <p>Cost: near n log n for outlines that run side by side, as a back and its face do.
 */
public final class EdgeDistance {
    /** How much nearer (mm²) another edge must be to take over: above the rounding of squares of 10 m, below 0.0004 mm at any distance. */
    private static final double NEARER_MM2 = 1e-7;
    /** Edges shorter than this (mm) have no direction; far below what any machine places. */
    private static final double SAME_POINT_MM = 1e-9;
    /** A slope below this is level: an edge square to the measured one, or equal squares. */
    private static final double LEVEL = 1e-12;

    private final List<Edge> edges = new ArrayList<>();
    private final HPRtree index = new HPRtree();
    private final GeometryFactory factory;

    /** An edge of the outlines; turns are those at its ends, radians, 0 where it goes straight on, pi at the end of an open line. */
    private record Edge(double fromX, double fromY, double toX, double toY, double turnAtFrom, double turnAtTo) {
        double distance(double x, double y) {
            return Distance.pointToSegment(new Coordinate(x, y), new Coordinate(fromX, fromY),
                    new Coordinate(toX, toY));
        }
    }

    /**
     * @param outlines polygons or lines, mm, with at least one edge; not changed
     * @throws IllegalArgumentException when there is no edge
     */
    public EdgeDistance(Geometry outlines) {
        factory = outlines.getFactory();
        for (Object line : LinearComponentExtracter.getLines(outlines)) {
            add((LineString) line);
        }
        if (edges.isEmpty()) {
            throw new IllegalArgumentException("there is no edge to measure to");
        }
        for (Edge edge : edges) {
            index.insert(new Envelope(edge.fromX, edge.toX, edge.fromY, edge.toY), edge);
        }
        index.build();
    }

    private void add(LineString line) {
        List<Coordinate> points = new ArrayList<>();
        for (Coordinate point : line.getCoordinates()) {
            if (points.isEmpty() || point.distance(points.get(points.size() - 1)) > SAME_POINT_MM) {
                points.add(point);
            }
        }
        boolean closed = line instanceof LinearRing || line.isClosed();
        int count = points.size() - 1;
        for (int i = 0; i < count; i++) {
            Coordinate from = points.get(i);
            Coordinate to = points.get(i + 1);
            Coordinate before = i > 0 ? points.get(i - 1) : closed ? points.get(count - 1) : null;
            Coordinate after = i + 2 <= count ? points.get(i + 2) : closed ? points.get(1) : null;
            edges.add(new Edge(from.x, from.y, to.x, to.y, turn(before, from, to), turn(from, to, after)));
        }
    }

    private static double turn(Coordinate before, Coordinate at, Coordinate after) {
        if (before == null || after == null) {
            return Math.PI;
        }
        double ax = at.x - before.x;
        double ay = at.y - before.y;
        double bx = after.x - at.x;
        double by = after.y - at.y;
        return Math.abs(Math.atan2(ax * by - ay * bx, ax * bx + ay * by));
    }

    /** The distance of one point, mm. Cost: every edge. */
    public double of(Coordinate point) {
        return nearest(point.x, point.y).distance(point.x, point.y);
    }

    private Edge nearest(double x, double y) {
        Edge best = edges.get(0);
        double least = Double.POSITIVE_INFINITY;
        for (Edge edge : edges) {
            double distance = edge.distance(x, y);
            if (distance < least) {
                least = distance;
                best = edge;
            }
        }
        return best;
    }

    /**
     * Walks along an outline.
     *
     * @param outline a line or ring, mm; not changed; edges of no length are passed over
     * @param each told every piece along which the distance follows one formula, in order and without a break
     * @param pulse called often, for progress; may throw to stop the work
     */
    public void along(LineString outline, Consumer<DistancePiece> each, Runnable pulse) {
        Coordinate[] points = outline.getCoordinates();
        if (points.length == 0) {
            return;
        }
        Edge nearest = nearest(points[0].x, points[0].y);
        for (int i = 1; i < points.length; i++) {
            double length = points[i].distance(points[i - 1]);
            if (length > SAME_POINT_MM) {
                nearest = walk(points[i - 1], points[i], length, nearest, each);
            }
            pulse.run();
        }
    }

    private Edge walk(Coordinate from, Coordinate to, double length, Edge first, Consumer<DistancePiece> each) {
        // the distance to one edge is convex along a line, so what is nearest at one end bounds the search for the whole of it
        double reach = Math.max(first.distance(from.x, from.y), first.distance(to.x, to.y)) + SAME_POINT_MM;
        Envelope near = new Envelope(from, to);
        near.expandBy(reach);
        List<Course> courses = new ArrayList<>();
        index.query(near, item -> courses.add(new Course((Edge) item, from, to, length)));
        Course current = courses.get(0);
        for (Course course : courses) {
            current = course.squareAt(0) < current.squareAt(0) ? course : current;
        }
        double at = 0;
        while (true) {
            double until = length;
            Course next = null;
            for (Course course : courses) {
                double passes = course == current ? until : course.passesBelow(current, at, until);
                if (passes < until) {
                    until = passes;
                    next = course;
                }
            }
            if (until > at) {
                current.emit(at, until, each, factory);
            }
            if (next == null) {
                return current.edge;
            }
            current = next;
            at = until;
        }
    }

    /** The square of the distance to one edge along a measured line: up to three parabolas, one after the other. */
    private static final class Course {
        private final Edge edge;
        private final Coordinate start;
        private final double dirX;
        private final double dirY;
        private final double length;
        /** Ends of the parabolas along the line; the last is the line's end. */
        private final double[] ends = new double[3];
        private final double[] square = new double[3];
        private final double[] linear = new double[3];
        private final double[] constant = new double[3];
        /** For parabolas of a corner its place along the line, otherwise NaN. */
        private final double[] foot = new double[3];
        private final double[] turn = new double[3];
        private int count;

        Course(Edge edge, Coordinate from, Coordinate to, double length) {
            this.edge = edge;
            this.start = from;
            this.length = length;
            dirX = (to.x - from.x) / length;
            dirY = (to.y - from.y) / length;
            double fromAlong = (edge.fromX - from.x) * dirX + (edge.fromY - from.y) * dirY;
            double fromBeside = dirX * (edge.fromY - from.y) - dirY * (edge.fromX - from.x);
            double toAlong = (edge.toX - from.x) * dirX + (edge.toY - from.y) * dirY;
            double toBeside = dirX * (edge.toY - from.y) - dirY * (edge.toX - from.x);
            double size = Math.hypot(toAlong - fromAlong, toBeside - fromBeside);
            double along = (toAlong - fromAlong) / size;
            double beside = (toBeside - fromBeside) / size;
            if (Math.abs(along) < LEVEL) {
                double foot0 = -fromBeside * beside;
                if (foot0 <= 0) {
                    corner(length, fromAlong, fromBeside, edge.turnAtFrom);
                } else if (foot0 >= size) {
                    corner(length, toAlong, toBeside, edge.turnAtTo);
                } else {
                    inside(length, fromAlong, fromBeside, along, beside);
                }
                return;
            }
            double entersAt = fromAlong + fromBeside * beside / along;
            double leavesAt = entersAt + size / along;
            if (along > 0) {
                corner(entersAt, fromAlong, fromBeside, edge.turnAtFrom);
                inside(leavesAt, fromAlong, fromBeside, along, beside);
                corner(length, toAlong, toBeside, edge.turnAtTo);
            } else {
                corner(leavesAt, toAlong, toBeside, edge.turnAtTo);
                inside(entersAt, fromAlong, fromBeside, along, beside);
                corner(length, fromAlong, fromBeside, edge.turnAtFrom);
            }
        }

        private void corner(double end, double along, double beside, double turnThere) {
            put(end, 1, -2 * along, along * along + beside * beside, along, turnThere);
        }

        private void inside(double end, double fromAlong, double fromBeside, double along, double beside) {
            double offset = along * fromBeside - beside * fromAlong;
            put(end, beside * beside, 2 * beside * offset, offset * offset, Double.NaN, 0);
        }

        private void put(double end, double c2, double c1, double c0, double footAt, double turnThere) {
            double before = count == 0 ? 0 : ends[count - 1];
            if (end <= before || before >= length) {
                return;
            }
            ends[count] = Math.min(end, length);
            square[count] = c2;
            linear[count] = c1;
            constant[count] = c0;
            foot[count] = footAt;
            turn[count] = turnThere;
            count++;
        }

        double squareAt(double s) {
            int i = at(s);
            return value(i, s);
        }

        private double value(int i, double s) {
            return Math.max(0, (square[i] * s + linear[i]) * s + constant[i]);
        }

        private int at(double s) {
            int i = 0;
            while (i < count - 1 && s >= ends[i]) {
                i++;
            }
            return i;
        }

        /** The first place from {@code from} on where this is nearer than another, or {@code until}. */
        double passesBelow(Course other, double from, double until) {
            double at = from;
            int i = at(from);
            int j = other.at(from);
            while (true) {
                double end = Math.min(until, Math.min(ends[i], other.ends[j]));
                double crossing = firstBelow(square[i] - other.square[j], linear[i] - other.linear[j],
                        constant[i] - other.constant[j] + NEARER_MM2, at, end);
                if (crossing < end) {
                    return crossing;
                }
                if (end >= until) {
                    return until;
                }
                at = end;
                i = ends[i] <= at && i < count - 1 ? i + 1 : i;
                j = other.ends[j] <= at && j < other.count - 1 ? j + 1 : j;
            }
        }

        private static double firstBelow(double c2, double c1, double c0, double from, double to) {
            if ((c2 * from + c1) * from + c0 < 0) {
                return from;
            }
            if (Math.abs(c2) < LEVEL) {
                double root = -c0 / c1;
                return c1 < -LEVEL && root > from && root < to ? root : to;
            }
            double discriminant = c1 * c1 - 4 * c2 * c0;
            if (discriminant <= 0) {
                return to;
            }
            double q = -0.5 * (c1 + Math.copySign(Math.sqrt(discriminant), c1));
            double one = q / c2;
            double two = c0 / q;
            double low = Math.min(one, two);
            double high = Math.max(one, two);
            // a parabola open upwards dips below between its roots, one open downwards outside of them
            double root = c2 > 0 ? low : high;
            return root > from && root < to ? root : to;
        }

        void emit(double from, double to, Consumer<DistancePiece> each, GeometryFactory factory) {
            double at = from;
            for (int i = at(from); i < count && at < to; i++) {
                double end = i == count - 1 ? to : Math.min(to, ends[i]);
                if (end <= at) {
                    continue;
                }
                if (Double.isNaN(foot[i])) {
                    double zero = square[i] > LEVEL ? -linear[i] / (2 * square[i]) : Double.NaN;
                    if (zero > at && zero < end) {
                        each.accept(piece(i, at, zero));
                        at = zero;
                    }
                }
                each.accept(piece(i, at, end));
                at = end;
            }
        }

        private DistancePiece piece(int i, double from, double to) {
            Coordinate a = new Coordinate(start.x + dirX * from, start.y + dirY * from);
            Coordinate b = new Coordinate(start.x + dirX * to, start.y + dirY * to);
            return new DistancePiece(a, b, to - from, Math.sqrt(value(i, from)), Math.sqrt(value(i, to)), foot[i] - from, turn[i]);
        }
    }
}
