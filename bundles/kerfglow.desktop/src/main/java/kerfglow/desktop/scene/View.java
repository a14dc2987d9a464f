// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.scene;

import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;

/**
 * Where the drawing stands on a canvas. Drawing: millimetres, y down. Canvas: pixels, y down, origin at its top left.
 *
 * @param pixelsPerMm how large it is drawn, above 0
 * @param leftMm what stands at the left edge of the canvas
 * @param topMm what stands at the top edge of the canvas
 */
public record View(double pixelsPerMm, double leftMm, double topMm) {
    /** A sign of 100 m is then ten pixels wide; nothing is gained by going further. */
    public static final double LEAST_PIXELS_PER_MM = 1e-4;
    /** A thousandth of a millimetre, the resolution of the import, is then 0.4 pixels; a sign of 20 m still fits the toolkit's 24-bit coordinates. */
    public static final double MOST_PIXELS_PER_MM = 400;

    public View {
        if (!(pixelsPerMm >= LEAST_PIXELS_PER_MM && pixelsPerMm <= MOST_PIXELS_PER_MM) || !Double.isFinite(leftMm) || !Double.isFinite(topMm)) {
            throw new IllegalArgumentException("no such view: " + pixelsPerMm + " px/mm at " + leftMm + ", " + topMm);
        }
    }

    /** Shows a whole area in the middle of a canvas, with a margin around it; an area without extent is shown at 1 px/mm. */
    public static View fitting(Envelope areaMm, int widthPx, int heightPx, int marginPx) {
        double across = Math.max(1, widthPx - 2 * marginPx);
        double down = Math.max(1, heightPx - 2 * marginPx);
        double scale = Math.min(across / Math.max(areaMm.getWidth(), 0), down / Math.max(areaMm.getHeight(), 0));
        return centred(areaMm.centre(), Double.isFinite(scale) ? scale : 1, widthPx, heightPx);
    }

    /** Shows a point in the middle of a canvas. */
    public static View centred(Coordinate atMm, double pixelsPerMm, int widthPx, int heightPx) {
        double scale = clamped(pixelsPerMm);
        return new View(scale, atMm.x - widthPx / 2.0 / scale, atMm.y - heightPx / 2.0 / scale);
    }

    private static double clamped(double pixelsPerMm) {
        return Math.max(LEAST_PIXELS_PER_MM, Math.min(MOST_PIXELS_PER_MM, pixelsPerMm));
    }

    public double toPixelX(double xMm) {
        return (xMm - leftMm) * pixelsPerMm;
    }

    public double toPixelY(double yMm) {
        return (yMm - topMm) * pixelsPerMm;
    }

    public double toMmX(double xPx) {
        return leftMm + xPx / pixelsPerMm;
    }

    public double toMmY(double yPx) {
        return topMm + yPx / pixelsPerMm;
    }

    /** The point of the drawing below a pixel. */
    public Coordinate toMm(double xPx, double yPx) {
        return new Coordinate(toMmX(xPx), toMmY(yPx));
    }

    /** What a rectangle of the canvas shows, widened by some pixels for what is drawn larger than it is. */
    public Envelope seen(int leftPx, int topPx, int widthPx, int heightPx, int widenedPx) {
        return new Envelope(toMmX(leftPx - widenedPx), toMmX(leftPx + widthPx + widenedPx), toMmY(topPx - widenedPx), toMmY(topPx + heightPx + widenedPx));
    }

    /** Zooms so that the drawing point under the pointer stays under the pointer; stops at the least and greatest scale. */
    public View zoomedAbout(double xPx, double yPx, double factor) {
        double scale = clamped(pixelsPerMm * factor);
        return new View(scale, toMmX(xPx) - xPx / scale, toMmY(yPx) - yPx / scale);
    }

    /** Moves the drawing by pixels, as if pulled by the pointer. */
    public View moved(double rightPx, double downPx) {
        return new View(pixelsPerMm, leftMm - rightPx / pixelsPerMm, topMm - downPx / pixelsPerMm);
    }

    /** A view between this and another, for flying from one to the other; 0 is this, 1 the other. Scales pass evenly to the eye. */
    public View towards(View other, double fraction, int widthPx, int heightPx) {
        double scale = Math.exp(Math.log(pixelsPerMm) * (1 - fraction) + Math.log(other.pixelsPerMm) * fraction);
        // the middle moves in step with the width that is seen, so that it neither races at the start nor at the end
        double from = 1 / pixelsPerMm;
        double to = 1 / other.pixelsPerMm;
        double moved = Math.abs(to - from) < 1e-9 * from ? fraction : (1 / scale - from) / (to - from);
        Coordinate here = toMm(widthPx / 2.0, heightPx / 2.0);
        Coordinate there = other.toMm(widthPx / 2.0, heightPx / 2.0);
        return centred(new Coordinate(here.x + (there.x - here.x) * moved, here.y + (there.y - here.y) * moved), scale, widthPx, heightPx);
    }
}
