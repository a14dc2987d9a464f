// SPDX-License-Identifier: Apache-2.0
package kerfglow.light.layout;

import kerfglow.light.LightModule;
import kerfglow.light.LightModuleType;

/**
 * A place where a module can lie, turned along its stroke.
 *
 * @param x its centre, mm
 * @param y its centre, mm
 * @param turn direction of the stroke, radians
 * @param line which centre line it belongs to; -1 for none
 * @param along how far along that, mm
 */
record Site(double x, double y, double turn, int line, double along) {
    LightModule module(LightModuleType type) {
        return new LightModule(x, y, Math.toDegrees(turn), type);
    }

    double distanceTo(Site other) {
        double dx = x - other.x;
        double dy = y - other.y;
        return Math.sqrt(dx * dx + dy * dy);
    }

    /** True when two plates keep a gap: in the direction of one of their sides they stand that far apart. */
    static boolean apart(Site a, Site b, LightModuleType type, double gapMm) {
        double half = type.lengthMm() / 2;
        double side = type.widthMm() / 2;
        if (a.distanceTo(b) >= 2 * Math.hypot(half, side) + gapMm) {
            return true;
        }
        for (double axis : new double[] {a.turn, a.turn + Math.PI / 2, b.turn, b.turn + Math.PI / 2}) {
            double centres = Math.abs((a.x - b.x) * Math.cos(axis) + (a.y - b.y) * Math.sin(axis));
            if (centres >= reach(a, axis, half, side) + reach(b, axis, half, side) + gapMm) {
                return true;
            }
        }
        return false;
    }

    private static double reach(Site site, double axis, double half, double side) {
        return half * Math.abs(Math.cos(axis - site.turn)) + side * Math.abs(Math.sin(axis - site.turn));
    }
}
