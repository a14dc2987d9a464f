// SPDX-License-Identifier: Apache-2.0
package kerfglow.geometry;

/**
 * All the discs that touch one wall (the owner, an edge or a corner) and one other (the feature), over the stretch of the owner
 * where the disc is no wider than the limit and really touches the feature, not its prolongation.
 *
 * <p>Places on an edge are lengths from its start, mm; places on a corner are turns from the normal of the edge before it,
 * clockwise, radians. Source: plane geometry, derived.
 */
final class Contact {
    /** A disc between straight walls that grows by less than this share of the way along them is the same all along. */
    private static final double LEVEL = 1e-12;

    private enum Kind { EDGE_TO_EDGE, EDGE_TO_CORNER, CORNER_TO_EDGE, CORNER_TO_CORNER }

    /** Where the disc touches the owner, from and to. */
    final double from;
    final double to;
    /** The other wall: {@link Contacts#edge} or {@link Contacts#corner}. */
    final int feature;

    private final Kind kind;
    private final double a;
    private final double b;
    private final double c;
    private final double d;
    private final double separation;

    private Contact(Kind kind, double from, double to, int feature, double a, double b, double c, double d, double separation) {
        this.kind = kind;
        this.from = from;
        this.to = to;
        this.feature = feature;
        this.a = a;
        this.b = b;
        this.c = c;
        this.d = d;
        this.separation = separation;
    }

    /** Two straight walls: radius and place on the feature grow evenly along the owner. */
    static Contact edgeToEdge(double from, double to, int feature, double radiusAtStart, double radiusSlope, double placeAtStart,
            double placeSlope, double separation) {
        return new Contact(Kind.EDGE_TO_EDGE, from, to, feature, radiusAtStart, radiusSlope, placeAtStart, placeSlope, separation);
    }

    /**
     * A straight wall and a corner that stands {@code height} over it at {@code foot}; {@code fan} is the turn of the corner's
     * first normal from looking straight down on the wall.
     */
    static Contact edgeToCorner(double from, double to, int feature, double foot, double height, double fan) {
        return new Contact(Kind.EDGE_TO_CORNER, from, to, feature, foot, height, fan, 0, 0);
    }

    /** The same discs, seen from the corner. */
    static Contact cornerToEdge(double from, double to, int feature, double foot, double height, double fan) {
        return new Contact(Kind.CORNER_TO_EDGE, from, to, feature, foot, height, fan, 0, 0);
    }

    /** Two corners; the fans are the turns of their first normals from looking at each other. */
    static Contact cornerToCorner(double from, double to, int feature, double distance, double ownFan, double otherFan) {
        return new Contact(Kind.CORNER_TO_CORNER, from, to, feature, distance, ownFan, otherFan, 0, 0);
    }

    double radius(double place) {
        return switch (kind) {
            case EDGE_TO_EDGE -> a + b * place;
            case EDGE_TO_CORNER -> ((a - place) * (a - place) + b * b) / (2 * b);
            case CORNER_TO_EDGE -> b / (1 + Math.cos(c - place));
            case CORNER_TO_CORNER -> a / (2 * Math.cos(b - place));
        };
    }

    /** True between parallel walls: the disc is the same all along, and its centre moves straight. */
    boolean isLevel() {
        return kind == Kind.EDGE_TO_EDGE && Math.abs(b) < LEVEL;
    }

    /** Where the disc touches the feature. */
    double placeOnFeature(double place) {
        return switch (kind) {
            case EDGE_TO_EDGE -> c + d * place;
            case EDGE_TO_CORNER -> c - 2 * Math.atan((place - a) / b);
            case CORNER_TO_EDGE -> a + b * Math.tan((c - place) / 2);
            case CORNER_TO_CORNER -> c + (b - place);
        };
    }

    /** The angle between the two points of contact, seen from the disc's centre, radians; half a turn where they lie opposite. */
    double separation(double place) {
        return switch (kind) {
            case EDGE_TO_EDGE -> separation;
            case EDGE_TO_CORNER -> Math.PI - 2 * Math.abs(Math.atan((place - a) / b));
            case CORNER_TO_EDGE -> Math.PI - Math.abs(c - place);
            case CORNER_TO_CORNER -> Math.PI - 2 * Math.abs(b - place);
        };
    }

    /** How far from {@link #leastAt} the separation falls to a given angle; infinite where it is the same all along. */
    double reachOf(double leastSeparation) {
        double loss = Math.PI - leastSeparation;
        return switch (kind) {
            case EDGE_TO_EDGE -> Double.POSITIVE_INFINITY;
            case EDGE_TO_CORNER -> b * Math.tan(loss / 2);
            case CORNER_TO_EDGE -> loss;
            case CORNER_TO_CORNER -> loss / 2;
        };
    }

    /** Where the disc is least between the ends, when it is: where the two points of contact lie opposite. NaN where nowhere. */
    double leastAt() {
        return switch (kind) {
            case EDGE_TO_EDGE -> Double.NaN;
            case EDGE_TO_CORNER -> a;
            case CORNER_TO_EDGE -> c;
            case CORNER_TO_CORNER -> b;
        };
    }
}
