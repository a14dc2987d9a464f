// SPDX-License-Identifier: Apache-2.0
package kerfglow.outlines;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import kerfglow.geometry.OutlinePiece;
import kerfglow.geometry.OutlinePieces;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Polygon;

/**
 * Makes straights and arcs again of outlines whose curves were flattened.
 *
 * <p>Arcs begin and end in vertices of the outline and pass within {@link #FIT_MM} of all vertices between; a stretch for which that cannot be had keeps its vertices.
 */
final class ArcPaths {
    /** How far an arc may lie from the vertices that it stands for, mm. */
    static final double FIT_MM = 0.02;
    /** Arcs are looked for a little finer than they must be, since their ends are then put on vertices. */
    private static final double SEARCH_MM = FIT_MM / 2;
    /** Fewer chords say nothing about a curve. */
    private static final int LEAST_CHORDS = 3;
    private static final double QUARTERS = 4;
    /** Flatter arcs are straights, and so long a radius helps no machine: mm. */
    private static final double LARGEST_RADIUS_MM = 1e6;

    private final double chordErrorMm;

    /** @param chordErrorMm how far the chords may lie from the true curve */
    ArcPaths(double chordErrorMm) {
        this.chordErrorMm = chordErrorMm;
    }

    /** All rings of polygons and all lines of a geometry. */
    List<CutPath> of(Geometry geometry) {
        List<CutPath> paths = new ArrayList<>();
        for (int i = 0; i < geometry.getNumGeometries(); i++) {
            Geometry each = geometry.getGeometryN(i);
            if (each instanceof Polygon polygon && !polygon.isEmpty()) {
                paths.add(ring(polygon.getExteriorRing()));
                for (int hole = 0; hole < polygon.getNumInteriorRing(); hole++) {
                    paths.add(ring(polygon.getInteriorRingN(hole)));
                }
            } else if (each instanceof LineString line && !line.isEmpty()) {
                paths.add(straight(line));
            }
        }
        return paths;
    }

    private static CutPath straight(LineString line) {
        List<CutPath.Vertex> vertices = new ArrayList<>();
        for (Coordinate point : line.getCoordinates()) {
            vertices.add(new CutPath.Vertex(point.x, point.y, 0));
        }
        return new CutPath(line.isClosed() ? vertices.subList(0, vertices.size() - 1) : vertices, line.isClosed());
    }

    CutPath ring(LinearRing ring) {
        Coordinate[] points = ring.getCoordinates();
        int size = points.length - 1;
        Map<Coordinate, Integer> places = new HashMap<>();
        for (int i = 0; i < size; i++) {
            places.put(points[i], i);
        }
        List<CutPath.Vertex> vertices = new ArrayList<>();
        Circle whole = Circle.through(points[0], points[size / 3], points[2 * size / 3]);
        if (size >= LEAST_CHORDS && whole.isSound() && whole.radiusMm() <= LARGEST_RADIUS_MM && fits(whole, points)) {
            halves(whole, points, vertices);
            return new CutPath(vertices, true);
        }
        for (OutlinePiece piece : OutlinePieces.of(ring, chordErrorMm, SEARCH_MM)) {
            if (piece.kind() == OutlinePiece.Kind.CORNER) {
                continue; // the pieces beside it end there
            }
            Coordinate[] line = piece.line().getCoordinates();
            int from = places.get(line[0]);
            int to = places.get(line[line.length - 1]);
            Coordinate[] run = run(points, size, from, to == from || line.length > 1 && to < from ? to + size : to);
            if (piece.kind() == OutlinePiece.Kind.ARC) {
                arc(run, vertices);
            } else if (isStraight(run)) {
                vertices.add(new CutPath.Vertex(run[0].x, run[0].y, 0));
            } else {
                chords(run, vertices);
            }
        }
        return vertices.size() < 2 ? straight(ring) : new CutPath(vertices, true);
    }

    /** The vertices of the outline itself, since the pieces leave out those that lie very close to others. */
    private static Coordinate[] run(Coordinate[] points, int size, int from, int to) {
        Coordinate[] run = new Coordinate[to - from + 1];
        for (int i = 0; i < run.length; i++) {
            run[i] = points[(from + i) % size];
        }
        return run;
    }

    private static boolean isStraight(Coordinate[] run) {
        Coordinate a = run[0];
        Coordinate b = run[run.length - 1];
        double length = a.distance(b);
        for (Coordinate p : run) {
            double off = length == 0 ? p.distance(a) : Math.abs((b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x)) / length;
            if (off > FIT_MM) {
                return false;
            }
        }
        return true;
    }

    private static void chords(Coordinate[] run, List<CutPath.Vertex> vertices) {
        for (int i = 0; i + 1 < run.length; i++) {
            vertices.add(new CutPath.Vertex(run[i].x, run[i].y, 0));
        }
    }

    /** One arc, or two of half each where it turns more than half round, or the chords where no arc will do. */
    private void arc(Coordinate[] run, List<CutPath.Vertex> vertices) {
        int middle = run.length / 2;
        if (run.length - 1 < LEAST_CHORDS) {
            chords(run, vertices);
            return;
        }
        Circle circle = Circle.through(run[0].equals2D(run[run.length - 1]) ? run[run.length / 4] : run[0], run[middle], run[run.length - 1]);
        if (!circle.isSound() || circle.radiusMm() > LARGEST_RADIUS_MM || !fits(circle, run)) {
            chords(run, vertices);
            return;
        }
        double sweep = circle.sweep(run, 0, run.length - 1);
        if (Math.abs(sweep) > Math.PI) {
            halves(circle, run, vertices);
        } else {
            vertices.add(new CutPath.Vertex(run[0].x, run[0].y, Math.tan(sweep / QUARTERS)));
        }
    }

    private static void halves(Circle circle, Coordinate[] run, List<CutPath.Vertex> vertices) {
        int middle = run.length / 2;
        vertices.add(new CutPath.Vertex(run[0].x, run[0].y, Math.tan(circle.sweep(run, 0, middle) / QUARTERS)));
        vertices.add(new CutPath.Vertex(run[middle].x, run[middle].y, Math.tan(circle.sweep(run, middle, run.length - 1) / QUARTERS)));
    }

    private boolean fits(Circle circle, Coordinate[] run) {
        for (int i = 0; i < run.length; i++) {
            if (Math.abs(circle.off(run[i])) > FIT_MM) {
                return false;
            }
            if (i > 0) {
                Coordinate middle = new Coordinate((run[i - 1].x + run[i].x) / 2, (run[i - 1].y + run[i].y) / 2);
                if (Math.abs(circle.off(middle)) > FIT_MM + chordErrorMm) {
                    return false;
                }
            }
        }
        return true;
    }

    private record Circle(double x, double y, double radiusMm) {
        static Circle through(Coordinate a, Coordinate b, Coordinate c) {
            double bx = b.x - a.x;
            double by = b.y - a.y;
            double cx = c.x - a.x;
            double cy = c.y - a.y;
            double cross = 2 * (bx * cy - by * cx);
            double ux = (cy * (bx * bx + by * by) - by * (cx * cx + cy * cy)) / cross;
            double uy = (bx * (cx * cx + cy * cy) - cx * (bx * bx + by * by)) / cross;
            return new Circle(a.x + ux, a.y + uy, Math.hypot(ux, uy));
        }

        boolean isSound() {
            return Double.isFinite(radiusMm) && radiusMm > 0;
        }

        double off(Coordinate p) {
            return Math.hypot(p.x - x, p.y - y) - radiusMm;
        }

        /** How far the run turns about the centre between two of its vertices, radians, signed. */
        double sweep(Coordinate[] run, int from, int to) {
            double sum = 0;
            for (int i = from + 1; i <= to; i++) {
                double ax = run[i - 1].x - x;
                double ay = run[i - 1].y - y;
                double bx = run[i].x - x;
                double by = run[i].y - y;
                sum += Math.atan2(ax * by - ay * bx, ax * bx + ay * by);
            }
            return sum;
        }
    }
}
