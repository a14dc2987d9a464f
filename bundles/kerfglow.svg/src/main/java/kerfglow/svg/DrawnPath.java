// SPDX-License-Identifier: Apache-2.0
package kerfglow.svg;

import java.util.Arrays;

/**
 * A path in user units as the file draws it: curves and arcs still whole, doubles throughout. Filled once, then only read.
 */
final class DrawnPath {
    /** Kinds of segment, with the count of numbers that each holds. */
    enum Kind {
        MOVE(2), LINE(2), QUADRATIC(4), CUBIC(6),
        /** Centre x, y; first half axis as a vector; second half axis as a vector; start angle; sweep; end x, y. */
        ARC(10), CLOSE(0);

        private static final Kind[] ALL = values();
        final int numbers;

        Kind(int numbers) {
            this.numbers = numbers;
        }
    }

    private static final int FIRST_ROOM = 16;
    private byte[] kinds = new byte[FIRST_ROOM];
    private double[] numbers = new double[FIRST_ROOM];
    private int kindCount;
    private int numberCount;
    private double startX;
    private double startY;
    private double x;
    private double y;
    private boolean isOpen;

    int size() {
        return kindCount;
    }

    Kind kind(int i) {
        return Kind.ALL[kinds[i]];
    }

    /** Numbers of all segments in order; read with a running index. */
    double number(int i) {
        return numbers[i];
    }

    double currentX() {
        return x;
    }

    double currentY() {
        return y;
    }

    DrawnPath moveTo(double toX, double toY) {
        put(Kind.MOVE, toX, toY);
        startX = toX;
        startY = toY;
        isOpen = true;
        return at(toX, toY);
    }

    DrawnPath lineTo(double toX, double toY) {
        open();
        put(Kind.LINE, toX, toY);
        return at(toX, toY);
    }

    DrawnPath quadraticTo(double cx, double cy, double toX, double toY) {
        open();
        put(Kind.QUADRATIC, cx, cy, toX, toY);
        return at(toX, toY);
    }

    DrawnPath cubicTo(double ax, double ay, double bx, double by, double toX, double toY) {
        open();
        put(Kind.CUBIC, ax, ay, bx, by, toX, toY);
        return at(toX, toY);
    }

    /** SVG 2, appendix B.2 "Elliptical arc parameter conversion"; radii too small are scaled up, radius 0 is a line. */
    DrawnPath arcTo(double radiusX, double radiusY, double degrees, boolean large, boolean sweep, double toX, double toY) {
        if (toX == x && toY == y) {
            return this;
        }
        double rx = Math.abs(radiusX);
        double ry = Math.abs(radiusY);
        if (rx == 0 || ry == 0) {
            return lineTo(toX, toY);
        }
        double cos = Math.cos(Math.toRadians(degrees));
        double sin = Math.sin(Math.toRadians(degrees));
        double halfX = (x - toX) / 2;
        double halfY = (y - toY) / 2;
        double px = cos * halfX + sin * halfY;
        double py = -sin * halfX + cos * halfY;
        double reach = px / rx * (px / rx) + py / ry * (py / ry);
        double factor = 0;
        if (reach > 1) {
            rx *= Math.sqrt(reach);
            ry *= Math.sqrt(reach);
        } else {
            factor = Math.sqrt((1 - reach) / reach) * (large == sweep ? -1 : 1);
        }
        double qx = factor * rx * py / ry;
        double qy = -factor * ry * px / rx;
        double start = Math.atan2((py - qy) / ry, (px - qx) / rx);
        double end = Math.atan2((-py - qy) / ry, (-px - qx) / rx);
        double turn = end - start;
        if (sweep && turn < 0) {
            turn += 2 * Math.PI;
        } else if (!sweep && turn > 0) {
            turn -= 2 * Math.PI;
        }
        double centreX = cos * qx - sin * qy + (x + toX) / 2;
        double centreY = sin * qx + cos * qy + (y + toY) / 2;
        open();
        put(Kind.ARC, centreX, centreY, cos * rx, sin * rx, -sin * ry, cos * ry, start, turn, toX, toY);
        return at(toX, toY);
    }

    DrawnPath close() {
        if (kindCount > 0 && isOpen) {
            put(Kind.CLOSE);
            isOpen = false;
            at(startX, startY);
        }
        return this;
    }

    /** After a close the next subpath starts where the last one did. */
    private void open() {
        if (!isOpen) {
            put(Kind.MOVE, x, y);
            startX = x;
            startY = y;
            isOpen = true;
        }
    }

    private DrawnPath at(double toX, double toY) {
        x = toX;
        y = toY;
        return this;
    }

    private void put(Kind kind, double... values) {
        if (kindCount == kinds.length) {
            kinds = Arrays.copyOf(kinds, kinds.length * 2);
        }
        kinds[kindCount++] = (byte) kind.ordinal();
        if (numberCount + values.length > numbers.length) {
            numbers = Arrays.copyOf(numbers, Math.max(numbers.length * 2, numberCount + values.length));
        }
        System.arraycopy(values, 0, numbers, numberCount, values.length);
        numberCount += values.length;
    }
}
