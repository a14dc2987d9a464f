// SPDX-License-Identifier: Apache-2.0
package kerfglow.api;

/**
 * A light module that a person placed by hand. It stays where it was put, whatever a layout would do.
 *
 * @param xMm its centre, mm
 * @param yMm its centre, mm, down
 * @param turnDegrees how far its long side is turned from the x axis towards the y axis, degrees
 * @param string the string that it is wired in, as the person calls it; empty where that is left to the plan
 */
public record PlacedModule(double xMm, double yMm, double turnDegrees, String string) {
    public PlacedModule {
        if (!Double.isFinite(xMm) || !Double.isFinite(yMm) || !Double.isFinite(turnDegrees)) {
            throw new IllegalArgumentException("a module needs a finite place and turn: " + xMm + ", " + yMm + ", " + turnDegrees);
        }
        string = string.strip();
    }

    /** One whose string is left to the plan. */
    public PlacedModule(double xMm, double yMm, double turnDegrees) {
        this(xMm, yMm, turnDegrees, "");
    }

    /** The same module somewhere else. */
    public PlacedModule at(double x, double y, double degrees) {
        return new PlacedModule(x, y, degrees, string);
    }
}
