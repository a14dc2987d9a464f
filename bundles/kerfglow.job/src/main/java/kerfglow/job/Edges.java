// SPDX-License-Identifier: Apache-2.0
package kerfglow.job;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LineSegment;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.util.LinearComponentExtracter;
import org.locationtech.jts.index.strtree.STRtree;

/** The straight pieces of outlines, ready to be asked what is near a point. */
final class Edges {
    private final STRtree index = new STRtree();

    private Edges() {
    }

    static Edges of(List<Snapshot.Outline> outlines) {
        return ofShapes(outlines.stream().map(Snapshot.Outline::shape).toList());
    }

    static Edges ofShapes(List<Geometry> shapes) {
        Edges edges = new Edges();
        for (Geometry shape : shapes) {
            for (LineString line : lines(shape)) {
                for (int i = 1; i < line.getNumPoints(); i++) {
                    LineSegment piece = new LineSegment(line.getCoordinateN(i - 1), line.getCoordinateN(i));
                    edges.index.insert(new Envelope(piece.p0, piece.p1), piece);
                }
            }
        }
        edges.index.build();
        return edges;
    }

    private static List<LineString> lines(Geometry shape) {
        List<LineString> lines = new ArrayList<>();
        for (Object line : LinearComponentExtracter.getLines(shape)) {
            lines.add((LineString) line);
        }
        return lines;
    }

    /** The nearest point, if it is not farther than this. */
    Optional<Coordinate> nearest(Coordinate point, double withinMm) {
        Envelope around = new Envelope(point);
        around.expandBy(withinMm);
        Coordinate best = null;
        double least = withinMm;
        for (Object found : index.query(around)) {
            Coordinate near = ((LineSegment) found).closestPoint(point);
            double distance = near.distance(point);
            if (distance <= least) {
                least = distance;
                best = near;
            }
        }
        return Optional.ofNullable(best);
    }

    /** The distance of the nearest point; infinite when it is farther than this. */
    double distance(Coordinate point, double withinMm) {
        return nearest(point, withinMm).map(near -> near.distance(point)).orElse(Double.POSITIVE_INFINITY);
    }

    /** About so many points at equal steps along all outlines; at least one on every line. */
    static List<Coordinate> points(List<Snapshot.Outline> outlines, int count) {
        double length = outlines.stream().mapToDouble(each -> each.shape().getLength()).sum();
        List<Coordinate> points = new ArrayList<>();
        for (Snapshot.Outline outline : outlines) {
            for (LineString line : lines(outline.shape())) {
                along(line, length / count, points);
            }
        }
        return points;
    }

    /** Points at equal steps along a line, from its first point on. */
    static void along(LineString line, double stepMm, List<Coordinate> points) {
        double next = 0;
        double done = 0;
        for (int i = 1; i < line.getNumPoints(); i++) {
            LineSegment piece = new LineSegment(line.getCoordinateN(i - 1), line.getCoordinateN(i));
            double length = piece.getLength();
            while (length > 0 && next < done + length) {
                points.add(piece.pointAlong((next - done) / length));
                next += stepMm;
            }
            done += length;
        }
    }
}
