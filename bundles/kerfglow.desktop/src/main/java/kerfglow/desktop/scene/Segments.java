// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.scene;

/** Distances to straight segments, as plain numbers: the drawing asks for them too often to make objects. */
final class Segments {
    private Segments() {
    }

    /** How far along the segment its point nearest to (x, y) lies, 0 to 1; 0 for a segment without length. */
    static double nearest(double x, double y, double ax, double ay, double bx, double by) {
        double dx = bx - ax;
        double dy = by - ay;
        double length2 = dx * dx + dy * dy;
        return length2 == 0 ? 0 : Math.max(0, Math.min(1, ((x - ax) * dx + (y - ay) * dy) / length2));
    }

    /** Distance of (x, y) from the segment. */
    static double distance(double x, double y, double ax, double ay, double bx, double by) {
        double t = nearest(x, y, ax, ay, bx, by);
        return Math.hypot(x - ax - t * (bx - ax), y - ay - t * (by - ay));
    }
}
