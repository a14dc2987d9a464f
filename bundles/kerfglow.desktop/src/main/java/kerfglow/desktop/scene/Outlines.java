// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.scene;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.CoordinateSequence;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Polygon;

/**
 * The rings and lines of a shape as plain numbers, at several levels of detail. Level 0 is the shape as it is; each further level
 * may lie twice as far from it as the one before. A level is made the first time that it is asked for.
 */
public final class Outlines {
    /** Tolerance of level 1, mm: about the chord error that curves are flattened with, so that level 1 is free of needless nodes. */
    static final double FIRST_TOLERANCE_MM = 0.02;
    /** Assumed: what a line may lie off its place on the screen, in pixels, without being seen beside an edge drawn with antialiasing. */
    static final double UNSEEN_PX = 0.5;
    /** Beyond that a shape of 100 m is a few pixels. */
    private static final int LEVELS = 20;

    /** One ring (first point repeated) or open line: x, y, x, y... mm. */
    public record Line(double[] xy, boolean closed) {
        /** How many points. */
        public int size() {
            return xy.length / 2;
        }
    }

    private final Geometry geometry;
    private final List<List<Line>> levels = new ArrayList<>();

    private Outlines(Geometry geometry) {
        this.geometry = geometry;
    }

    /** The rings of the areas and the lines of a geometry; points have none. Taken out of it the first time that they are asked for. */
    public static Outlines of(Geometry geometry) {
        return new Outlines(geometry);
    }

    private static void collect(Geometry geometry, List<Line> lines) {
        if (geometry instanceof Polygon polygon) {
            if (!polygon.isEmpty()) {
                lines.add(new Line(numbers(polygon.getExteriorRing()), true));
                for (int i = 0; i < polygon.getNumInteriorRing(); i++) {
                    lines.add(new Line(numbers(polygon.getInteriorRingN(i)), true));
                }
            }
        } else if (geometry instanceof LineString line) {
            if (!line.isEmpty()) {
                lines.add(new Line(numbers(line), line.isClosed()));
            }
        } else if (geometry.getNumGeometries() > 1 || geometry.getNumGeometries() == 1 && geometry.getGeometryN(0) != geometry) {
            for (int i = 0; i < geometry.getNumGeometries(); i++) {
                collect(geometry.getGeometryN(i), lines);
            }
        }
    }

    private static double[] numbers(LineString line) {
        CoordinateSequence points = line.getCoordinateSequence();
        double[] xy = new double[2 * points.size()];
        for (int i = 0; i < points.size(); i++) {
            xy[2 * i] = points.getX(i);
            xy[2 * i + 1] = points.getY(i);
        }
        return xy;
    }

    /** The coarsest lines whose difference from the shape is not seen at a scale. */
    public List<Line> at(double pixelsPerMm) {
        return level(levelFor(pixelsPerMm));
    }

    /**
     * Level whose tolerance stays below {@link #UNSEEN_PX}. As each level is made from the one before, the distances add up to less than
     * twice its own tolerance, which is why the half is asked for.
     */
    static int levelFor(double pixelsPerMm) {
        double toleranceMm = UNSEEN_PX / pixelsPerMm / 2;
        if (toleranceMm < FIRST_TOLERANCE_MM) {
            return 0;
        }
        return Math.min(LEVELS, 1 + (int) Math.floor(Math.log(toleranceMm / FIRST_TOLERANCE_MM) / Math.log(2)));
    }

    private synchronized List<Line> level(int level) {
        if (levels.isEmpty()) {
            List<Line> lines = new ArrayList<>();
            collect(geometry, lines);
            levels.add(List.copyOf(lines));
        }
        while (levels.size() <= level) {
            double toleranceMm = FIRST_TOLERANCE_MM * Math.pow(2, levels.size() - 1);
            levels.add(levels.get(levels.size() - 1).stream().map(line -> new Line(Thinning.of(line.xy(), toleranceMm), line.closed())).toList());
        }
        return levels.get(level);
    }

    /** Points at full detail. */
    public int size() {
        return level(0).stream().mapToInt(Line::size).sum();
    }

    /** The nearest point of the full outline to a point; infinite distance when there is none. */
    double distanceMm(Coordinate point) {
        double least = Double.POSITIVE_INFINITY;
        for (Line line : level(0)) {
            double[] xy = line.xy();
            for (int i = 2; i < xy.length; i += 2) {
                least = Math.min(least, Segments.distance(point.x, point.y, xy[i - 2], xy[i - 1], xy[i], xy[i + 1]));
            }
        }
        return least;
    }
}
