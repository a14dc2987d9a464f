// SPDX-License-Identifier: Apache-2.0
package kerfglow.geometry;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.util.LinearComponentExtracter;

/**
 * The distance from every point of one outline to the nearest point of other outlines, as a function along the first.
 *
 * <p>Along a straight edge that function is made of straight lines (nearest is the inside of an edge) and of hyperbolas (nearest is
 * a corner). Both are known in closed form, so that least, greatest and mean, and the places where a limit is crossed, are exact for
 * the polygons: no sample decides. Distances are never negative; which side a point lies on is the caller's to know.
 *
 * <p>Cost: near n log n for outlines that run side by side, as a back and its face do. May be used by several threads.
 */
public final class EdgeDistance {
    /** Edges shorter than this (mm) have no direction; far below what any machine places. */
    private static final double SAME_POINT_MM = 1e-9;

    private final int size;
    /** From x, from y, to x, to y of every edge. */
    private final double[] ends;
    /** The turn at both ends of every edge, radians: 0 where it goes straight on, pi at the end of an open line. */
    private final double[] turns;
    /** The edges before and after every edge, itself where there is none. */
    private final int[] beside;
    private final EdgeBoxes boxes;

    /**
     * @param outlines polygons or lines, mm, with at least one edge; not changed
     * @throws IllegalArgumentException when there is no edge
     */
    public EdgeDistance(Geometry outlines) {
        List<List<Coordinate>> lines = new ArrayList<>();
        int edges = 0;
        for (Object line : LinearComponentExtracter.getLines(outlines)) {
            List<Coordinate> points = apart((LineString) line);
            lines.add(points);
            edges += points.size() - 1;
        }
        if (edges < 1) {
            throw new IllegalArgumentException("there is no edge to measure to");
        }
        size = edges;
        ends = new double[4 * size];
        turns = new double[2 * size];
        beside = new int[2 * size];
        int at = 0;
        for (List<Coordinate> points : lines) {
            at = add(points, at);
        }
        double[] own = new double[4 * size];
        for (int i = 0; i < own.length; i += 4) {
            own[i] = Math.min(ends[i], ends[i + 2]);
            own[i + 1] = Math.min(ends[i + 1], ends[i + 3]);
            own[i + 2] = Math.max(ends[i], ends[i + 2]);
            own[i + 3] = Math.max(ends[i + 1], ends[i + 3]);
        }
        boxes = new EdgeBoxes(own);
    }

    private static List<Coordinate> apart(LineString line) {
        List<Coordinate> points = new ArrayList<>();
        for (Coordinate point : line.getCoordinates()) {
            if (points.isEmpty() || point.distance(points.get(points.size() - 1)) > SAME_POINT_MM) {
                points.add(point);
            }
        }
        if (points.isEmpty()) {
            points.add(new Coordinate());
        }
        return points;
    }

    private int add(List<Coordinate> points, int first) {
        int count = points.size() - 1;
        boolean closed = count > 1 && points.get(0).distance(points.get(count)) <= SAME_POINT_MM;
        for (int i = 0; i < count; i++) {
            int edge = first + i;
            ends[4 * edge] = points.get(i).x;
            ends[4 * edge + 1] = points.get(i).y;
            ends[4 * edge + 2] = points.get(i + 1).x;
            ends[4 * edge + 3] = points.get(i + 1).y;
            beside[2 * edge] = i > 0 ? edge - 1 : closed ? first + count - 1 : edge;
            beside[2 * edge + 1] = i + 1 < count ? edge + 1 : closed ? first : edge;
        }
        for (int edge = first; edge < first + count; edge++) {
            turns[2 * edge] = turn(beside[2 * edge], edge);
            turns[2 * edge + 1] = turn(edge, beside[2 * edge + 1]);
        }
        return first + count;
    }

    private double turn(int edge, int after) {
        if (edge == after) {
            return Math.PI;
        }
        double ax = ends[4 * edge + 2] - ends[4 * edge];
        double ay = ends[4 * edge + 3] - ends[4 * edge + 1];
        double bx = ends[4 * after + 2] - ends[4 * after];
        double by = ends[4 * after + 3] - ends[4 * after + 1];
        return Math.abs(Math.atan2(ax * by - ay * bx, ax * bx + ay * by));
    }

    /** The distance of one point, mm. Cost: mostly log n. */
    public double of(Coordinate point) {
        return Math.sqrt(square(nearest(point), point.x, point.y));
    }

    private int nearest(Coordinate point) {
        return boxes.nearest(point.x, point.y, edge -> square(edge, point.x, point.y));
    }

    private double square(int edge, double x, double y) {
        double ax = ends[4 * edge];
        double ay = ends[4 * edge + 1];
        double dx = ends[4 * edge + 2] - ax;
        double dy = ends[4 * edge + 3] - ay;
        double share = Math.max(0, Math.min(1, ((x - ax) * dx + (y - ay) * dy) / (dx * dx + dy * dy)));
        double offX = ax + share * dx - x;
        double offY = ay + share * dy - y;
        return offX * offX + offY * offY;
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
        Walk walk = new Walk();
        int nearest = nearest(points[0]);
        for (int i = 1; i < points.length; i++) {
            if (points[i].distance(points[i - 1]) > SAME_POINT_MM) {
                nearest = walk.edge(points[i - 1], points[i], nearest, each);
            }
            pulse.run();
        }
    }

    /**
     * True when no point of an outline is farther off than a limit. Much cheaper than {@link #along} where the answer is clear.
     *
     * @param outline a line or ring, mm; not changed
     * @param limitMm the limit, mm
     * @param pulse called often, for progress; may throw to stop the work
     */
    public boolean isWithin(LineString outline, double limitMm, Runnable pulse) {
        Coordinate[] points = outline.getCoordinates();
        if (points.length == 0) {
            return true;
        }
        Walk walk = new Walk();
        boolean[] within = {true};
        double limit = limitMm * limitMm;
        int near = nearest(points[0]);
        for (int i = 1; i < points.length && within[0]; i++) {
            near = downhill(near, points[i]);
            // the distance to one edge is convex along a line: near enough at both ends is near enough between
            if (square(near, points[i - 1].x, points[i - 1].y) > limit || square(near, points[i].x, points[i].y) > limit) {
                if (points[i].distance(points[i - 1]) > SAME_POINT_MM) {
                    near = walk.edge(points[i - 1], points[i], near, piece -> within[0] &= piece.greatestMm() <= limitMm);
                }
            }
            pulse.run();
        }
        return within[0];
    }

    /** The edge that is nearest when going from one edge to the next as long as it gets nearer. */
    private int downhill(int from, Coordinate point) {
        int best = from;
        double least = square(from, point.x, point.y);
        for (int side = 0; side < 2; side++) {
            for (int next = beside[2 * best + side]; next != best; next = beside[2 * best + side]) {
                double distance = square(next, point.x, point.y);
                if (distance >= least) {
                    break;
                }
                least = distance;
                best = next;
            }
        }
        return best;
    }

    /** One walk: keeps what it needs for an edge to use it again for the next. */
    private final class Walk {
        private final List<Course> courses = new ArrayList<>();
        private int used;

        /** Measures along one edge; {@code first} should be near at its start, answered is what is nearest at its end. */
        int edge(Coordinate from, Coordinate to, int first, Consumer<DistancePiece> each) {
            double length = from.distance(to);
            gather(from, to, length, first);
            Course current = courses.get(0);
            for (int i = 1; i < used; i++) {
                current = courses.get(i).squareAt(0) < current.squareAt(0) ? courses.get(i) : current;
            }
            double at = 0;
            while (true) {
                double until = length;
                Course next = null;
                for (int i = 0; i < used; i++) {
                    Course course = courses.get(i);
                    double passes = course == current ? until : course.passesBelow(current, at, until);
                    if (passes < until) {
                        until = passes;
                        next = course;
                    }
                }
                if (until > at) {
                    current.emit(at, until, each);
                }
                if (next == null) {
                    return current.edge;
                }
                current = next;
                at = until;
            }
        }

        /** The distance to one edge is convex along a line, so what is nearest at one end bounds the search for the whole of it. */
        private void gather(Coordinate from, Coordinate to, double length, int first) {
            double reach = Math.sqrt(Math.max(square(first, from.x, from.y), square(first, to.x, to.y))) + SAME_POINT_MM;
            double dirX = (to.x - from.x) / length;
            double dirY = (to.y - from.y) / length;
            double farthest = (reach + length) * (reach + length);
            used = 0;
            boxes.query(Math.min(from.x, to.x) - reach, Math.min(from.y, to.y) - reach, Math.max(from.x, to.x) + reach,
                    Math.max(from.y, to.y) + reach, edge -> {
                        double ax = ends[4 * edge] - from.x;
                        double ay = ends[4 * edge + 1] - from.y;
                        double bx = ends[4 * edge + 2] - from.x;
                        double by = ends[4 * edge + 3] - from.y;
                        double fromBeside = dirX * ay - dirY * ax;
                        double toBeside = dirX * by - dirY * bx;
                        double fromAlong = dirX * ax + dirY * ay;
                        double toAlong = dirX * bx + dirY * by;
                        if (Math.min(fromBeside, toBeside) > reach || Math.max(fromBeside, toBeside) < -reach
                                || Math.min(fromAlong, toAlong) > length + reach || Math.max(fromAlong, toAlong) < -reach) {
                            return;
                        }
                        if (used == courses.size()) {
                            courses.add(new Course());
                        }
                        courses.get(used++).set(edge, from, dirX, dirY, length, fromAlong, fromBeside, toAlong, toBeside, turns[2 * edge],
                                turns[2 * edge + 1]);
                    });
        }
    }
}
