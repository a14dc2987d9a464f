// SPDX-License-Identifier: Apache-2.0
package kerfglow.light;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.CoordinateFilter;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.util.AffineTransformation;

/**
 * A frame of a shape's own: its origin at the centre of the shape, its x axis along most of its edges, nearest to the shape's main direction towards the heavier tail.
 * What is reckoned in it turns and moves with the artwork. A shape that looks the same after half a turn may take either way round.
 */
public final class Pose {
    /** Coordinates in the frame are rounded to this, mm, so that the rounding of a turn decides nothing. Far below any tolerance of a shop. */
    private static final double GRID_MM = 1e-4;
    /** Assumed: a shape whose squares differ by less than this share in two directions has no main one and keeps the axes of the proof. */
    private static final double ALIKE = 1e-6;

    private final AffineTransformation into;
    private final AffineTransformation back;
    private final Coordinate centre;
    private final double turn;

    private Pose(Coordinate centre, double turn) {
        this.centre = centre;
        this.turn = turn;
        into = AffineTransformation.translationInstance(-centre.x, -centre.y).rotate(-turn);
        back = AffineTransformation.rotationInstance(turn).translate(centre.x, centre.y);
    }

    /** The frame of a shape that is not empty. */
    public static Pose of(Polygon shape) {
        Coordinate centre = shape.getCentroid().getCoordinate();
        double[] sums = new double[3];
        addRing(shape.getExteriorRing().getCoordinates(), centre, 1, sums);
        for (int i = 0; i < shape.getNumInteriorRing(); i++) {
            addRing(shape.getInteriorRingN(i).getCoordinates(), centre, -1, sums);
        }
        double unlike = Math.hypot(sums[0] - sums[1], 2 * sums[2]);
        double main = 0;
        if (unlike > ALIKE * (sums[0] + sums[1])) {
            double axis = Math.atan2(2 * sums[2], sums[0] - sums[1]) / 2;
            main = tail(shape, centre, axis) >= 0 ? axis : axis + Math.PI;
        }
        return new Pose(centre, alongEdges(shape, main));
    }

    /** The direction nearest to another along which, or across which, most of the edges run; that other where they run every way alike. */
    private static double alongEdges(Polygon shape, double main) {
        double sin = 0;
        double cos = 0;
        List<LinearRing> rings = new ArrayList<>(List.of(shape.getExteriorRing()));
        for (int i = 0; i < shape.getNumInteriorRing(); i++) {
            rings.add(shape.getInteriorRingN(i));
        }
        for (LinearRing ring : rings) {
            Coordinate[] points = ring.getCoordinates();
            for (int i = 1; i < points.length; i++) {
                double fourfold = 4 * Math.atan2(points[i].y - points[i - 1].y, points[i].x - points[i - 1].x); // a right angle changes nothing
                sin += points[i].distance(points[i - 1]) * Math.sin(fourfold);
                cos += points[i].distance(points[i - 1]) * Math.cos(fourfold);
            }
        }
        if (Math.hypot(sin, cos) <= ALIKE * shape.getLength()) {
            return main;
        }
        double edges = Math.atan2(sin, cos) / 4;
        double right = Math.PI / 2;
        return edges + right * Math.rint((main - edges) / right - ALIKE); // half way between two it is always the same of them
    }

    /** Green's theorem, triangle by triangle from the centre: integrals of x², y² and xy, times 12. */
    private static void addRing(Coordinate[] points, Coordinate centre, double sign, double[] sums) {
        double area = 0;
        double[] own = new double[3];
        for (int i = 1; i < points.length; i++) {
            double x0 = points[i - 1].x - centre.x;
            double y0 = points[i - 1].y - centre.y;
            double x1 = points[i].x - centre.x;
            double y1 = points[i].y - centre.y;
            double cross = x0 * y1 - x1 * y0;
            area += cross;
            own[0] += cross * (x0 * x0 + x0 * x1 + x1 * x1);
            own[1] += cross * (y0 * y0 + y0 * y1 + y1 * y1);
            own[2] += cross * (x0 * y1 + x1 * y0 + 2 * (x0 * y0 + x1 * y1)) / 2;
        }
        for (int i = 0; i < sums.length; i++) {
            sums[i] += Math.signum(area) * sign * own[i];
        }
    }

    /** The third moment of the outline along an axis; nought within rounding counts as nought. */
    private static double tail(Polygon shape, Coordinate centre, double axis) {
        double cos = Math.cos(axis);
        double sin = Math.sin(axis);
        double sum = 0;
        double size = 0;
        Coordinate[] points = shape.getExteriorRing().getCoordinates();
        for (int i = 1; i < points.length; i++) {
            double from = (points[i - 1].x - centre.x) * cos + (points[i - 1].y - centre.y) * sin;
            double to = (points[i].x - centre.x) * cos + (points[i].y - centre.y) * sin;
            double cubes = points[i].distance(points[i - 1]) * (from * from * from + from * from * to + from * to * to + to * to * to);
            sum += cubes;
            size += Math.abs(cubes);
        }
        return Math.abs(sum) <= ALIKE * size ? 0 : sum;
    }

    /** From a frame that is turned by so much (radians) against this one into this one. */
    static Pose turned(double angle) {
        return new Pose(new Coordinate(), -angle);
    }

    /** The frame with the same origin, turned further, radians. */
    public Pose further(double angle) {
        return new Pose(centre, turn + angle);
    }

    /** A point in the frame, into {@code place}. */
    void into(double x, double y, Coordinate place) {
        place.setX(x);
        place.setY(y);
        into.transform(place, place);
    }

    /** A geometry in the frame. */
    public Geometry into(Geometry geometry) {
        Geometry moved = into.transform(geometry);
        moved.apply((CoordinateFilter) point -> {
            point.x = Math.rint(point.x / GRID_MM) * GRID_MM;
            point.y = Math.rint(point.y / GRID_MM) * GRID_MM;
        });
        moved.geometryChanged();
        return moved.isValid() ? moved : into.transform(geometry);
    }

    /** A module in the frame. */
    public LightModule into(LightModule module) {
        return moved(module, into, -turn);
    }

    /** A geometry of the frame where the artwork is. */
    public Geometry back(Geometry geometry) {
        return back.transform(geometry);
    }

    /** A module of the frame where the artwork is. */
    public LightModule back(LightModule module) {
        return moved(module, back, turn);
    }

    private static LightModule moved(LightModule module, AffineTransformation by, double turn) {
        Coordinate at = by.transform(new Coordinate(module.xMm(), module.yMm()), new Coordinate());
        return new LightModule(at.x, at.y, upright(module.turnDegrees() + Math.toDegrees(turn)), module.type());
    }

    /** A plate looks the same after half a turn: above -90, at most 90 degrees. */
    private static double upright(double degrees) {
        double rest = Math.IEEEremainder(degrees, 180);
        return rest <= -90 ? rest + 180 : rest;
    }
}
