// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.scene;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Predicate;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Triangle;

/**
 * Measures the artwork where the pointer stands, on the outlines as they were flattened: lengths are right to twice the chord error, radii to
 * about a tenth where the curve has several points in its turn.
 */
public final class Gauge {
    /**
     * A point on an outline.
     *
     * @param at where, mm
     * @param angleDegrees the inside angle of the corner there, 0 to 180; empty between two nodes
     * @param radiusMm the radius of the curve there; empty where it is straight
     */
    public record Snap(Coordinate at, OptionalDouble angleDegrees, OptionalDouble radiusMm) {
    }

    /**
     * The stroke below the pointer.
     *
     * @param from the nearest wall, mm
     * @param to the wall opposite, mm
     * @param heightMm how high the shape is that the stroke belongs to, for lettering
     */
    public record Stroke(Coordinate from, Coordinate to, double heightMm) {
        public double widthMm() {
            return from.distance(to);
        }
    }

    /** Turns flatter than this are curves or straight runs, sharper ones are corners. */
    private static final double CORNER_DEGREES = 160;
    /** A circle wider than this many times its chord is a straight line. */
    private static final double STRAIGHT = 500;
    private static final double ON_EDGE_MM = 1e-6;

    private final Scene scene;
    private final Predicate<Figure> shown;

    /** Measures what of a scene is shown. */
    public Gauge(Scene scene, Predicate<Figure> shown) {
        this.scene = scene;
        this.shown = shown;
    }

    /** The node within reach, else the point of an outline within reach; empty when there is none. */
    public Optional<Snap> snap(Coordinate pointer, double reachMm) {
        Envelope around = new Envelope(pointer);
        around.expandBy(reachMm);
        Optional<Snap> best = Optional.empty();
        double least = reachMm;
        Optional<Snap> node = Optional.empty();
        double leastNode = reachMm;
        for (Figure figure : scene.meeting(around)) {
            for (Outlines.Line line : shown.test(figure) ? figure.outlines().at(Double.MAX_VALUE) : List.<Outlines.Line>of()) {
                double[] xy = line.xy();
                for (int i = 2; i < xy.length; i += 2) {
                    double t = Segments.nearest(pointer.x, pointer.y, xy[i - 2], xy[i - 1], xy[i], xy[i + 1]);
                    Coordinate on = new Coordinate(xy[i - 2] + t * (xy[i] - xy[i - 2]), xy[i - 1] + t * (xy[i + 1] - xy[i - 1]));
                    if (on.distance(pointer) < least) {
                        least = on.distance(pointer);
                        best = Optional.of(new Snap(on, OptionalDouble.empty(), radius(line, i)));
                    }
                    double toNode = Math.hypot(xy[i] - pointer.x, xy[i + 1] - pointer.y);
                    if (toNode < leastNode) {
                        leastNode = toNode;
                        node = Optional.of(new Snap(new Coordinate(xy[i], xy[i + 1]), angle(line, i), radius(line, i)));
                    }
                }
            }
        }
        return node.isPresent() && isCorner(node.get()) ? node : best;
    }

    /** Nodes of flattened curves are no corners; the pointer would jump from one to the next. */
    private static boolean isCorner(Snap node) {
        return node.angleDegrees().isPresent() && node.angleDegrees().getAsDouble() < CORNER_DEGREES;
    }

    private static int before(Outlines.Line line, int i) {
        return i >= 2 ? i - 2 : line.closed() ? line.xy().length - 4 : -1;
    }

    private static int after(Outlines.Line line, int i) {
        return i + 2 < line.xy().length ? i + 2 : line.closed() ? 2 : -1;
    }

    private static OptionalDouble angle(Outlines.Line line, int i) {
        int before = before(line, i);
        int after = after(line, i);
        if (before < 0 || after < 0) {
            return OptionalDouble.empty();
        }
        double[] xy = line.xy();
        double ax = xy[before] - xy[i];
        double ay = xy[before + 1] - xy[i + 1];
        double bx = xy[after] - xy[i];
        double by = xy[after + 1] - xy[i + 1];
        return OptionalDouble.of(Math.toDegrees(Math.abs(Math.atan2(ax * by - ay * bx, ax * bx + ay * by))));
    }

    /** The radius of the circle through a node and its neighbours. */
    private static OptionalDouble radius(Outlines.Line line, int i) {
        int before = before(line, i);
        int after = after(line, i);
        OptionalDouble angle = angle(line, i);
        if (before < 0 || after < 0 || angle.isEmpty() || angle.getAsDouble() < CORNER_DEGREES) {
            return OptionalDouble.empty();
        }
        double[] xy = line.xy();
        Coordinate a = new Coordinate(xy[before], xy[before + 1]);
        Coordinate c = new Coordinate(xy[after], xy[after + 1]);
        double radius = a.distance(Triangle.circumcentre(a, new Coordinate(xy[i], xy[i + 1]), c));
        return radius < STRAIGHT * a.distance(c) ? OptionalDouble.of(radius) : OptionalDouble.empty();
    }

    /** The stroke of the uppermost shape at the pointer: from the nearest wall through the pointer to the wall opposite. Empty beside all shapes. */
    public Optional<Stroke> stroke(Coordinate pointer) {
        return scene.topAt(pointer, 0, shown).flatMap(figure -> across(figure, pointer));
    }

    private static Optional<Stroke> across(Figure figure, Coordinate pointer) {
        List<Outlines.Line> lines = figure.outlines().at(Double.MAX_VALUE);
        Coordinate near = null;
        for (Outlines.Line line : lines) {
            double[] xy = line.xy();
            for (int i = 2; i < xy.length; i += 2) {
                double t = Segments.nearest(pointer.x, pointer.y, xy[i - 2], xy[i - 1], xy[i], xy[i + 1]);
                Coordinate on = new Coordinate(xy[i - 2] + t * (xy[i] - xy[i - 2]), xy[i - 1] + t * (xy[i + 1] - xy[i - 1]));
                near = near == null || on.distance(pointer) < near.distance(pointer) ? on : near;
            }
        }
        if (near == null || near.distance(pointer) < ON_EDGE_MM) {
            return Optional.empty();
        }
        double length = near.distance(pointer);
        double dx = (pointer.x - near.x) / length;
        double dy = (pointer.y - near.y) / length;
        double least = Double.POSITIVE_INFINITY;
        for (Outlines.Line line : lines) {
            double[] xy = line.xy();
            for (int i = 2; i < xy.length; i += 2) {
                least = Math.min(least, alongRay(pointer, dx, dy, xy[i - 2], xy[i - 1], xy[i], xy[i + 1]));
            }
        }
        double reach = least;
        return Double.isInfinite(reach) ? Optional.empty()
                : Optional.of(new Stroke(near, new Coordinate(pointer.x + dx * reach, pointer.y + dy * reach), figure.extent().getHeight()));
    }

    /** How far along the ray a segment is met; infinite when it is not. */
    private static double alongRay(Coordinate from, double dx, double dy, double ax, double ay, double bx, double by) {
        double ex = bx - ax;
        double ey = by - ay;
        double across = dx * ey - dy * ex;
        if (across == 0) {
            return Double.POSITIVE_INFINITY;
        }
        double along = ((ax - from.x) * ey - (ay - from.y) * ex) / across;
        double share = ((ax - from.x) * dy - (ay - from.y) * dx) / across;
        return along > ON_EDGE_MM && share >= 0 && share <= 1 ? along : Double.POSITIVE_INFINITY;
    }
}
