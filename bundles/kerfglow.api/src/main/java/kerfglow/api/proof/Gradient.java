// SPDX-License-Identifier: Apache-2.0
package kerfglow.api.proof;

import java.util.List;
import java.util.Objects;
import org.locationtech.jts.geom.Coordinate;

/**
 * Where on the sign a gradient has which colour: SVG 2, 14.2 "Gradients".
 *
 * <p>Two scales in mm turn a place into (u, v). A linear gradient runs from u = 0 to u = 1. A radial one runs from its focus, a
 * circle about (focusU, focusV) of radius focusRadius, to the circle of radius 1 about (0, 0). Between two stops each of red, green and
 * blue goes straight, in sRGB, and so does the opacity.
 *
 * @param kind linear or radial
 * @param spread what lies beyond its ends
 * @param u along a linear gradient; across a radial one
 * @param v the other way; of no consequence for a linear gradient
 * @param focusU of a radial gradient, 0 for others
 * @param focusV of a radial gradient, 0 for others
 * @param focusRadius of a radial gradient, 0 to 1
 * @param stops at least two, offsets from 0 to 1 and never falling
 */
public record Gradient(Kind kind, Spread spread, Scale u, Scale v, double focusU, double focusV, double focusRadius, List<Stop> stops) {
    /** The sorts of gradient. */
    public enum Kind { LINEAR, RADIAL }

    /** What lies beyond the ends: the end's colour, the gradient back and forth, the gradient again. */
    public enum Spread { PAD, REFLECT, REPEAT }

    /**
     * A number that goes evenly across the sign: x times the place's x, y times its y, plus at.
     *
     * @param x for each mm to the right
     * @param y for each mm down
     * @param at in the proof's corner
     */
    public record Scale(double x, double y, double at) {
        double of(Coordinate place) {
            return x * place.x + y * place.y + at;
        }
    }

    /**
     * A colour of the gradient.
     *
     * @param offset 0 to 1
     * @param shade the colour there
     */
    public record Stop(double offset, Shade shade) {
    }

    /**
     * A colour that may let through what lies below.
     *
     * @param rgb 0xRRGGBB
     * @param opacity 0 (clear) to 1
     */
    public record Shade(int rgb, double opacity) {
        private static final int[] SHIFTS = {16, 8, 0};
        private static final int BYTE = 0xFF;

        /** This painted over an opaque colour, mixed in sRGB as SVG does: Compositing and Blending 1, "source over". */
        public int over(int below) {
            return mixed(below, rgb, opacity);
        }

        private Shade towards(Shade other, double share) {
            return new Shade(mixed(rgb, other.rgb, share), opacity + share * (other.opacity - opacity));
        }

        private static int mixed(int from, int to, double share) {
            int all = 0;
            for (int shift : SHIFTS) {
                double a = from >> shift & BYTE;
                double b = to >> shift & BYTE;
                all |= (int) Math.round(a + share * (b - a)) << shift;
            }
            return all;
        }
    }

    public Gradient {
        Objects.requireNonNull(kind, "kind");
        Objects.requireNonNull(spread, "spread");
        stops = List.copyOf(stops);
        if (stops.size() < 2) {
            throw new IllegalArgumentException("a gradient has at least two stops, not " + stops.size());
        }
    }

    /** The colour at a place, mm; clear where a radial gradient whose focus lies outside its circle does not reach. */
    public Shade at(Coordinate place) {
        double along = kind == Kind.LINEAR ? u.of(place) : radial(u.of(place), v.of(place));
        if (Double.isNaN(along)) {
            return new Shade(0, 0);
        }
        double offset = switch (spread) {
            case PAD -> Math.max(0, Math.min(1, along));
            case REFLECT -> 1 - Math.abs(1 - (along - 2 * Math.floor(along / 2)));
            case REPEAT -> along - Math.floor(along);
        };
        Stop before = stops.get(0);
        if (offset < before.offset()) {
            return before.shade();
        }
        for (Stop stop : stops) {
            if (stop.offset() > offset) {
                return before.shade().towards(stop.shade(), (offset - before.offset()) / (stop.offset() - before.offset()));
            }
            before = stop;
        }
        return before.shade();
    }

    /** The greatest t whose circle, about focus (1 - t) with radius focusRadius (1 - t) + t, passes through the place; NaN for none. */
    private double radial(double x, double y) {
        double px = x - focusU;
        double py = y - focusV;
        double grows = 1 - focusRadius;
        double a = focusU * focusU + focusV * focusV - grows * grows;
        double b = -px * focusU - py * focusV + focusRadius * grows;
        double c = px * px + py * py - focusRadius * focusRadius;
        if (a == 0) { // the focus lies on the circle
            double t = b == 0 ? Double.NaN : c / (2 * b);
            return focusRadius + t * grows >= 0 ? t : Double.NaN;
        }
        double root = Math.sqrt(b * b - a * c);
        double larger = Math.max((b + root) / a, (b - root) / a);
        double smaller = Math.min((b + root) / a, (b - root) / a);
        return focusRadius + larger * grows >= 0 ? larger : focusRadius + smaller * grows >= 0 ? smaller : Double.NaN;
    }
}
