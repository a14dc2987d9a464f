// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.power;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;

/**
 * Modules on one cable.
 *
 * @param lamps from the supply on; at least one
 * @param type what they are
 * @param given the name that a person gave it; empty when it was planned
 * @param supplyVolts voltage at the supply
 * @param conductor of the feed and of extended steps
 * @param feedMm cable from the supply to the first module
 * @param ownMm steps on the modules' own cable
 * @param extendedMm steps on the feed's conductor
 * @param extended how many those are
 * @param dropVolts lost at the last module
 * @param feedFrom where the cable enters the sign
 */
record LightString(List<Lamp> lamps, ModuleType type, String given, double supplyVolts, Conductor conductor, double feedMm, double ownMm, double extendedMm,
        int extended, double dropVolts, Coordinate feedFrom) {
    double watts() {
        return lamps.size() * type.watts();
    }

    double amperes() {
        return lamps.size() * type.amperes();
    }

    double dropShare() {
        return dropVolts / supplyVolts;
    }

    double cableMm() {
        return feedMm + ownMm + extendedMm;
    }

    List<String> parts() {
        return lamps.stream().map(Lamp::part).distinct().toList();
    }

    /** From where the cable enters the sign to the last module. */
    LineString way(GeometryFactory factory) {
        List<Coordinate> points = new ArrayList<>();
        points.add(feedFrom.copy());
        lamps.forEach(lamp -> points.add(lamp.at().copy()));
        return factory.createLineString(points.toArray(new Coordinate[0]));
    }
}
