// SPDX-License-Identifier: Apache-2.0
package kerfglow.light.layout;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import kerfglow.geometry.LocalWidth;
import kerfglow.geometry.Stretch;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.CoordinateArrays;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.simplify.DouglasPeuckerSimplifier;

/**
 * The centre lines of a shape's strokes: the part of its medial axis that lies between opposite walls. Free ends are prolonged to the wall
 * before them. A shape without opposite walls, such as a disc or a square, gets a line across it, along the x axis.
 */
final class CentreLines {
    /** Assumed: this much wiggle of a line, mm, moves no module. */
    private static final double SMOOTH_MM = 0.1;
    /** Walls count as opposite from this angle on, seen from the disc between them: bends are followed, square corners are not. */
    private static final double FACING_DEGREES = 130;
    /** A little above the widest place, so that the whole shape counts as narrow. */
    private static final double ABOVE_WIDEST = 1.02;
    private static final double NOT_NOTHING_MM = 0.1;

    private final Polygon shape;
    private final GeometryFactory factory;

    private CentreLines(Polygon shape) {
        this.shape = shape;
        factory = shape.getFactory();
    }

    /** Longest first; not empty. */
    static List<CentreLine> of(Polygon shape, Runnable pulse) {
        return new CentreLines(shape).find(pulse);
    }

    private List<CentreLine> find(Runnable pulse) {
        double widest = LocalWidth.largestDiscMm(shape);
        List<LineString> lines = new ArrayList<>();
        for (Stretch stretch : LocalWidth.narrowerThan(shape, widest * ABOVE_WIDEST + NOT_NOTHING_MM, FACING_DEGREES, pulse)) {
            for (int i = 0; i < stretch.axis().getNumGeometries(); i++) {
                if (stretch.axis().getGeometryN(i) instanceof LineString line) {
                    lines.add((LineString) DouglasPeuckerSimplifier.simplify(line, SMOOTH_MM));
                }
            }
        }
        if (lines.stream().mapToDouble(LineString::getLength).sum() < NOT_NOTHING_MM) {
            return List.of(across());
        }
        Map<Coordinate, Integer> ends = new HashMap<>();
        for (LineString line : lines) {
            ends.merge(line.getCoordinateN(0), 1, Integer::sum);
            ends.merge(line.getCoordinateN(line.getNumPoints() - 1), 1, Integer::sum);
        }
        List<CentreLine> found = new ArrayList<>();
        for (LineString line : lines) {
            pulse.run();
            found.add(prolonged(line, ends));
        }
        found.sort(Comparator.comparingDouble(CentreLine::lengthMm).reversed().thenComparingDouble(each -> each.line().getCoordinateN(0).x)
                .thenComparingDouble(each -> each.line().getCoordinateN(0).y));
        return found;
    }

    private CentreLine across() {
        Coordinate middle = shape.getCentroid().within(shape) ? shape.getCentroid().getCoordinate() : shape.getInteriorPoint().getCoordinate();
        return new CentreLine(factory.createLineString(new Coordinate[] {wall(middle, Math.PI), middle, wall(middle, 0)}), false);
    }

    private CentreLine prolonged(LineString line, Map<Coordinate, Integer> ends) {
        Coordinate[] points = line.getCoordinates();
        Coordinate first = points[0];
        Coordinate last = points[points.length - 1];
        if (first.equals2D(last) && ends.get(first) == 2) {
            return new CentreLine(line, true);
        }
        List<Coordinate> longer = new ArrayList<>(List.of(points));
        if (ends.get(first) == 1) {
            longer.add(0, wall(first, outward(points, 0, 1)));
        }
        if (ends.get(last) == 1) {
            longer.add(wall(last, outward(points, points.length - 1, -1)));
        }
        Coordinate[] all = CoordinateArrays.removeRepeatedPoints(longer.toArray(new Coordinate[0]));
        return new CentreLine(factory.createLineString(all), false);
    }

    /** The direction in which a line leaves at its end, over the last stretch as long as the stroke is half wide there. */
    private double outward(Coordinate[] points, int end, int step) {
        double reach = shape.getBoundary().distance(factory.createPoint(points[end]));
        int i = end + step;
        while (i + step >= 0 && i + step < points.length && points[i].distance(points[end]) < reach) {
            i += step;
        }
        return Math.atan2(points[end].y - points[i].y, points[end].x - points[i].x);
    }

    /** Where a ray from a point inside meets the wall; the point itself where it lies on the wall. */
    private Coordinate wall(Coordinate from, double direction) {
        Envelope box = shape.getEnvelopeInternal();
        double far = box.getWidth() + box.getHeight();
        Geometry ray = factory.createLineString(new Coordinate[] {from, new Coordinate(from.x + far * Math.cos(direction), from.y + far * Math.sin(direction))});
        Coordinate nearest = from;
        double least = Double.POSITIVE_INFINITY;
        for (Coordinate each : ray.intersection(shape.getBoundary()).getCoordinates()) {
            double distance = each.distance(from);
            if (distance < least) {
                least = distance;
                nearest = each;
            }
        }
        return nearest;
    }
}
