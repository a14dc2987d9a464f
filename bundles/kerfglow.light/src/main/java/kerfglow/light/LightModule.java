// SPDX-License-Identifier: Apache-2.0
package kerfglow.light;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;

/**
 * A light module in its place on the back of a can.
 *
 * @param xMm its centre, mm
 * @param yMm its centre, mm, down
 * @param turnDegrees how far its long side is turned from the x axis towards the y axis, degrees
 * @param type what it is
 */
public record LightModule(double xMm, double yMm, double turnDegrees, LightModuleType type) {
    public LightModule {
        Objects.requireNonNull(type, "type");
        if (!Double.isFinite(xMm) || !Double.isFinite(yMm) || !Double.isFinite(turnDegrees)) {
            throw new IllegalArgumentException("a module needs a finite place and turn: " + xMm + ", " + yMm + ", " + turnDegrees);
        }
    }

    /** The same elsewhere, moved by so much, mm. */
    public LightModule moved(double dx, double dy) {
        return new LightModule(xMm + dx, yMm + dy, turnDegrees, type);
    }

    /** Where its emitters stand, along its long side; new coordinates. */
    public List<Coordinate> emitters() {
        List<Coordinate> places = new ArrayList<>(type.emitters());
        for (int i = 0; i < type.emitters(); i++) {
            places.add(at((i - (type.emitters() - 1) / 2.0) * type.emitterPitchMm(), 0));
        }
        return places;
    }

    /** The outline of its plate, mm; without area where the type has no size. */
    public Polygon outline(GeometryFactory factory) {
        double half = type.lengthMm() / 2;
        double side = type.widthMm() / 2;
        return factory.createPolygon(new Coordinate[] {at(-half, -side), at(half, -side), at(half, side), at(-half, side), at(-half, -side)});
    }

    private Coordinate at(double along, double across) {
        double cos = Math.cos(Math.toRadians(turnDegrees));
        double sin = Math.sin(Math.toRadians(turnDegrees));
        return new Coordinate(xMm + along * cos - across * sin, yMm + along * sin + across * cos);
    }
}
