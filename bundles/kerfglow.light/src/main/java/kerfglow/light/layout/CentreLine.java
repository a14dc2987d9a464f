// SPDX-License-Identifier: Apache-2.0
package kerfglow.light.layout;

import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.linearref.LengthIndexedLine;

/**
 * One stretch of a stroke's centre line, from a free end or junction to the next.
 *
 * @param line the line, mm, prolonged to the wall at free ends
 * @param closed true when it runs round a counter without an end
 * @param lengthMm of the line, mm
 */
record CentreLine(LineString line, boolean closed, double lengthMm) {
    /** Directions are taken over this length, mm, so that a facet does not turn a module. */
    private static final double CHORD_MM = 6;

    CentreLine(LineString line, boolean closed) {
        this(line, closed, line.getLength()); // it is asked for too often to be summed up each time
    }

    Coordinate at(double along) {
        return new LengthIndexedLine(line).extractPoint(along);
    }

    /** The direction at a place, radians. */
    double direction(double along) {
        LengthIndexedLine index = new LengthIndexedLine(line);
        double half = Math.min(CHORD_MM, lengthMm()) / 2;
        double middle = closed ? along : Math.max(half, Math.min(lengthMm() - half, along));
        Coordinate from = index.extractPoint(wrapped(middle - half));
        Coordinate to = index.extractPoint(wrapped(middle + half));
        return Math.atan2(to.y - from.y, to.x - from.x);
    }

    private double wrapped(double along) {
        double length = lengthMm();
        return closed ? (along % length + length) % length : Math.max(0, Math.min(length, along));
    }
}
