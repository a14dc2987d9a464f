// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.fit;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.util.LinearComponentExtracter;
import org.locationtech.jts.index.strtree.STRtree;

/**
 * The corners of the outer part, and how far off the inner part may stand there because its edges are prolonged to a mitre. That can
 * also be where another edge is nearer than the corner. Corners that stick out excuse nothing: an inner part that keeps its clearance
 * from both edges stands that far off anyway.
 */
final class Corners {
    /** Smaller turns (radians, 20 degrees) are those of flattened curves; their mitres differ from arcs by less than 0.02 clearances. */
    private static final double LEAST_TURN = Math.PI / 9;
    private static final double LEAST_COSINE = 1e-9;

    private final STRtree corners = new STRtree();

    /** A corner and how far its mitre reaches, mm. */
    private record Corner(Coordinate at, double reachMm) {
    }

    Corners(Geometry outer, Allowance allowance, double mitreLimit) {
        for (Object line : LinearComponentExtracter.getLines(outer)) {
            Coordinate[] points = ((LineString) line).getCoordinates();
            for (int i = 0; i < points.length - 1; i++) {
                Coordinate before = points[i == 0 ? points.length - 2 : i - 1];
                double turn = turn(before, points[i], points[i + 1]);
                if (turn > LEAST_TURN) {
                    Corner corner = new Corner(points[i], allowance.sideMm() * reach(turn, mitreLimit) + allowance.toleranceMm());
                    Envelope reach = new Envelope(corner.at);
                    reach.expandBy(corner.reachMm);
                    corners.insert(reach, corner);
                }
            }
        }
        corners.build();
    }

    private List<Corner> near(Envelope where) {
        List<Corner> near = new ArrayList<>();
        corners.query(where, corner -> near.add((Corner) corner));
        return near;
    }

    /** How far a mitre reaches, in clearances. */
    static double reach(double turn, double mitreLimit) {
        return Math.min(mitreLimit, 1 / Math.max(LEAST_COSINE, Math.cos(turn / 2)));
    }

    private static double turn(Coordinate before, Coordinate at, Coordinate after) {
        double ax = at.x - before.x;
        double ay = at.y - before.y;
        double bx = after.x - at.x;
        double by = after.y - at.y;
        return Math.abs(Math.atan2(ax * by - ay * bx, ax * bx + ay * by));
    }

    /** True when a mitre may reach the point. */
    boolean excuse(Coordinate point) {
        return near(new Envelope(point)).stream().anyMatch(corner -> corner.at.distance(point) <= corner.reachMm);
    }

    /** Where a straight stretch enters or leaves the reach of a mitre: mm along it. */
    List<Double> borders(Coordinate from, Coordinate to) {
        List<Double> borders = new ArrayList<>();
        double length = from.distance(to);
        double dx = (to.x - from.x) / length;
        double dy = (to.y - from.y) / length;
        for (Corner corner : near(new Envelope(from, to))) {
            double along = (corner.at.x - from.x) * dx + (corner.at.y - from.y) * dy;
            double beside = (corner.at.x - from.x) * dy - (corner.at.y - from.y) * dx;
            double half = Math.sqrt(Math.max(0, corner.reachMm * corner.reachMm - beside * beside));
            for (double place : new double[] {along - half, along + half}) {
                if (half > 0 && place > 0 && place < length) {
                    borders.add(place);
                }
            }
        }
        return borders;
    }
}
