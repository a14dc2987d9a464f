// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.power;

import org.locationtech.jts.geom.Coordinate;

/**
 * A light module in its place.
 *
 * @param part the part that it lights
 * @param at its centre, mm
 * @param turnDegrees direction of its long side, degrees; NaN where it is not told
 * @param type what the shop sheet calls it
 * @param string the string that a person gave it; empty for none
 */
record Lamp(String part, Coordinate at, double turnDegrees, String type, String string) {
    double distanceTo(Lamp other) {
        return at.distance(other.at);
    }
}
