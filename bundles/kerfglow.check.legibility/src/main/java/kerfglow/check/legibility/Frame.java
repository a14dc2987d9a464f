// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.legibility;

import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.CoordinateFilter;
import org.locationtech.jts.geom.CoordinateSequence;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.util.AffineTransformation;

/**
 * How the letters of a line stand on the sign: side by side on a straight line, on a circle, or one under the other.
 *
 * <p>It turns each piece by itself, rigidly, so that it stands upright: u to the right along the base line, v up. On a circle each
 * piece is turned about the circle's centre by the direction of its own middle, as lettering on a path is set; its shape is not
 * bent, unless it is a whole word in one piece. In a stack each piece is lowered onto v = 0.
 */
final class Frame {
    /** How the line runs. */
    enum Form { STRAIGHT, ARCHED, STACKED }

    /** The middle of a turned piece moves a little, so that its direction is taken again; it settles at once. */
    private static final int SETTLING = 3;

    private final Form form;
    private final double angle;
    private final Coordinate centre;
    private final double radiusMm;
    private final boolean outward;

    private Frame(Form form, double angle, Coordinate centre, double radiusMm, boolean outward) {
        this.form = form;
        this.angle = angle;
        this.centre = centre;
        this.radiusMm = radiusMm;
        this.outward = outward;
    }

    /**
     * A straight base line.
     *
     * @param angle by which the line is turned clockwise as seen, radians
     */
    static Frame straight(double angle) {
        return new Frame(Form.STRAIGHT, angle, new Coordinate(), 0, false);
    }

    /**
     * A base line on a circle.
     *
     * @param outward true when the letters' heads point away from the centre
     * @param angle the turn of a letter in the middle of the line, radians
     */
    static Frame circle(Coordinate centre, double radiusMm, boolean outward, double angle) {
        return new Frame(Form.ARCHED, angle, centre, radiusMm, outward);
    }

    /** Upright letters one under the other. */
    static Frame stacked() {
        return new Frame(Form.STACKED, 0, new Coordinate(), 0, false);
    }

    Form form() {
        return form;
    }

    /** By how much the line, or the letter in the middle of an arch, is turned clockwise, radians. */
    double angle() {
        return angle;
    }

    /** Of a circle; the origin for others. */
    Coordinate centre() {
        return centre;
    }

    double radiusMm() {
        return radiusMm;
    }

    boolean isOutward() {
        return outward;
    }

    Frame turned(double by) {
        return new Frame(form, angle + by, centre, radiusMm, outward);
    }

    /** From the sign to upright, for one piece. */
    AffineTransformation upright(Piece piece) {
        return switch (form) {
            case STRAIGHT -> turn(angle, 0, 0);
            case ARCHED -> onCircle(piece);
            case STACKED -> stackedUp(piece);
        };
    }

    private static AffineTransformation stackedUp(Piece piece) {
        Envelope box = piece.shape().getEnvelopeInternal();
        return new AffineTransformation(1, 0, box.getMaxY() - piece.centre().x, 0, -1, box.getMaxY());
    }

    private AffineTransformation onCircle(Piece piece) {
        Coordinate middle = piece.centre();
        AffineTransformation up = turn(0, 0, 0);
        for (int i = 0; i < SETTLING; i++) {
            up = onCircle(middle);
            Envelope box = box(piece.shape(), up);
            Coordinate at = up.transform(middle, new Coordinate());
            Coordinate back = new Coordinate(box.centre().x, at.y);
            middle = inverse(up).transform(back, new Coordinate());
        }
        return up;
    }

    /** The box of a moved shape, without moving a copy of all its corners. */
    private static Envelope box(Polygon shape, AffineTransformation move) {
        CoordinateSequence corners = shape.getExteriorRing().getCoordinateSequence();
        Envelope box = new Envelope();
        Coordinate moved = new Coordinate();
        for (int i = 0; i < corners.size(); i++) {
            move.transform(corners.getCoordinate(i), moved);
            box.expandToInclude(moved.x, moved.y);
        }
        return box;
    }

    private AffineTransformation onCircle(Coordinate middle) {
        double sign = outward ? 1 : -1;
        double turn = Math.atan2(sign * (middle.x - centre.x), -sign * (middle.y - centre.y));
        double along = sign * radiusMm * (angle + Math.IEEEremainder(turn - angle, 2 * Math.PI));
        double cos = Math.cos(turn);
        double sin = Math.sin(turn);
        return turn(turn, along - (centre.x * cos + centre.y * sin), -sign * radiusMm - (centre.x * sin - centre.y * cos));
    }

    /** A shape with the circle bent straight: along it as u, away from it as v. */
    Polygon unbent(Polygon shape) {
        Polygon straight = (Polygon) shape.copy();
        straight.apply((CoordinateFilter) at -> {
            double sign = outward ? 1 : -1;
            double turn = Math.atan2(sign * (at.x - centre.x), -sign * (at.y - centre.y));
            double away = at.distance(centre);
            at.x = sign * radiusMm * (angle + Math.IEEEremainder(turn - angle, 2 * Math.PI));
            at.y = sign * (away - radiusMm);
        });
        straight.geometryChanged();
        return straight;
    }

    /** Where a place of a shape that was bent straight lies on the sign. */
    Coordinate bent(double u, double v) {
        double sign = outward ? 1 : -1;
        double turn = sign * u / radiusMm;
        double away = sign * radiusMm + v;
        return new Coordinate(centre.x + away * Math.sin(turn), centre.y - away * Math.cos(turn));
    }

    private static AffineTransformation turn(double angle, double du, double dv) {
        double cos = Math.cos(angle);
        double sin = Math.sin(angle);
        return new AffineTransformation(cos, sin, du, sin, -cos, dv);
    }

    /** From upright back to the sign. */
    static AffineTransformation inverse(AffineTransformation up) {
        double[] m = up.getMatrixEntries(); // a rigid turn with one axis mirrored is its own transpose's inverse
        return new AffineTransformation(m[0], m[3], -(m[0] * m[2] + m[3] * m[5]), m[1], m[4], -(m[1] * m[2] + m[4] * m[5]));
    }
}
