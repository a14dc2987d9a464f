// SPDX-License-Identifier: Apache-2.0
package kerfglow.geometry;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.algorithm.Orientation;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.CoordinateArrays;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Polygon;

/**
 * The rings of a shape as walls: every edge is walked so that the side to be measured lies on its left. Corner {@code k} starts
 * edge {@code k}. Left is meant in axes where a quarter turn takes x to y; whether y points up or down does not matter.
 */
final class Walls {
    /** Points nearer than this are one: rounding of coordinates of a sign, far below what any machine places. */
    private static final double SAME_POINT_MM = 1e-9;
    /** A corner that turns by less (radians) is straight; its disc would differ from the wall by less than 1e-9 of the bit. */
    private static final double STRAIGHT = 1e-6;

    final int size;
    final double[] x;
    final double[] y;
    final double[] dx;
    final double[] dy;
    final double[] length;
    /** Turn at the corner, radians, positive to the left (towards the measured side). */
    final double[] turn;
    final int[] next;
    final int[] previous;
    final int[] ring;
    /** The direction of the first normal of a corner's fan, that of the edge before it, radians. */
    final double[] fanStart;

    private Walls(List<Coordinate[]> rings) {
        size = rings.stream().mapToInt(ringPoints -> ringPoints.length).sum();
        x = new double[size];
        y = new double[size];
        dx = new double[size];
        dy = new double[size];
        length = new double[size];
        turn = new double[size];
        next = new int[size];
        previous = new int[size];
        ring = new int[size];
        fanStart = new double[size];
        int at = 0;
        for (int r = 0; r < rings.size(); r++) {
            at = add(rings.get(r), r, at);
        }
    }

    private int add(Coordinate[] points, int ringIndex, int first) {
        int count = points.length;
        for (int i = 0; i < count; i++) {
            int k = first + i;
            Coordinate from = points[i];
            Coordinate to = points[(i + 1) % count];
            x[k] = from.x;
            y[k] = from.y;
            length[k] = from.distance(to);
            dx[k] = (to.x - from.x) / length[k];
            dy[k] = (to.y - from.y) / length[k];
            next[k] = first + (i + 1) % count;
            previous[next[k]] = k;
            ring[k] = ringIndex;
        }
        for (int i = 0; i < count; i++) {
            int k = first + i;
            int after = next[k];
            double cross = dx[k] * dy[after] - dy[k] * dx[after];
            double dot = dx[k] * dx[after] + dy[k] * dy[after];
            turn[after] = Math.atan2(cross, dot);
            fanStart[after] = Math.atan2(normalY(k), normalX(k));
        }
        return first + count;
    }

    /** The walls seen from inside a polygonal shape; rings of fewer than three points are left out. */
    static Walls inside(Geometry area) {
        List<Coordinate[]> rings = new ArrayList<>();
        for (int i = 0; i < area.getNumGeometries(); i++) {
            Polygon polygon = (Polygon) area.getGeometryN(i);
            addRing(rings, polygon.getExteriorRing(), true);
            for (int h = 0; h < polygon.getNumInteriorRing(); h++) {
                addRing(rings, polygon.getInteriorRingN(h), false);
            }
        }
        return new Walls(rings);
    }

    /** The walls of one ring of a polygon, seen from the side where the polygon is not. */
    static Walls outside(LinearRing wall, boolean hole) {
        List<Coordinate[]> rings = new ArrayList<>();
        addRing(rings, wall, hole);
        return new Walls(rings);
    }

    private static void addRing(List<Coordinate[]> rings, LinearRing source, boolean counterClockwise) {
        Coordinate[] all = source.getCoordinates();
        if (all.length == 0) {
            return;
        }
        if (Orientation.isCCW(all) != counterClockwise) {
            all = all.clone();
            CoordinateArrays.reverse(all);
        }
        List<Coordinate> kept = new ArrayList<>(all.length);
        for (int i = 0; i < all.length - 1; i++) {
            if (kept.isEmpty() || all[i].distance(kept.get(kept.size() - 1)) > SAME_POINT_MM) {
                kept.add(all[i]);
            }
        }
        while (kept.size() > 1 && kept.get(0).distance(kept.get(kept.size() - 1)) <= SAME_POINT_MM) {
            kept.remove(kept.size() - 1);
        }
        if (kept.size() > 2) {
            rings.add(kept.toArray(new Coordinate[0]));
        }
    }

    /** True when a disc can touch the corner itself: the measured side takes more than half a turn about it. */
    boolean isReflex(int k) {
        return turn[k] < -STRAIGHT;
    }

    double normalX(int k) {
        return -dy[k];
    }

    double normalY(int k) {
        return dx[k];
    }

    Envelope envelope(int k) {
        int to = next[k];
        return new Envelope(x[k], x[to], y[k], y[to]);
    }

    Coordinate corner(int k) {
        return new Coordinate(x[k], y[k]);
    }
}
