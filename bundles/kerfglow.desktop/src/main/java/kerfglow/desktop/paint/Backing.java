// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.paint;

import kerfglow.desktop.scene.View;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Device;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Image;
import org.eclipse.swt.graphics.Pattern;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.graphics.Transform;

/**
 * Keeps what was painted last, when painting it took long. When the view has only been moved by whole pixels, what is still seen is copied
 * and the strips that came into view are painted alone; anything else paints all of it anew. Must be disposed.
 */
public final class Backing {
    /** A move is whole when it is nearer than this to whole pixels: rounding of views, far below what is seen. */
    private static final double WHOLE_PX = 1e-3;
    /** Assumed: copying a window of a million pixels twice takes about this long; what is painted faster than that is not worth keeping. */
    private static final long WORTH_KEEPING_NANOS = 10_000_000;

    /** Paints a rectangle of the canvas; the GC is clipped to it. */
    @FunctionalInterface
    public interface Painter {
        void paint(GC gc, View view, Rectangle exposed);
    }

    private Image image;
    /** The one before; taken up again, since making one takes as long as copying. */
    private Image spare;
    private View shown;
    /** How long it took to paint all of it, the last time that this was done. */
    private long wholeNanos;

    /** What was painted is no longer right: all will be painted anew. */
    public void forget() {
        shown = null;
    }

    /**
     * Brings a canvas up to date.
     *
     * @param zoom how many pixels of the screen make one of the canvas: 1, or 2 on a fine screen
     */
    public void paint(GC target, View view, Point size, int zoom, Painter painter) {
        Device device = target.getDevice();
        int width = Math.max(1, size.x);
        int height = Math.max(1, size.y);
        if (wholeNanos < WORTH_KEEPING_NANOS) {
            shown = null;
            long start = System.nanoTime();
            painter.paint(target, view, new Rectangle(0, 0, width, height));
            wholeNanos = System.nanoTime() - start;
            return;
        }
        if (image == null || image.getBounds().width != width * zoom || image.getBounds().height != height * zoom) {
            dispose();
            image = new Image(device, width * zoom, height * zoom);
        }
        if (!view.equals(shown)) {
            bring(device, view, width, height, zoom, painter);
            shown = view;
        }
        if (zoom == 1) {
            copy(image, target, 0, 0, width, height);
        } else {
            target.drawImage(image, 0, 0, width * zoom, height * zoom, 0, 0, width, height);
        }
    }

    private void bring(Device device, View view, int width, int height, int zoom, Painter painter) {
        double right = shown == null ? Double.NaN : (shown.leftMm() - view.leftMm()) * view.pixelsPerMm();
        double down = shown == null ? Double.NaN : (shown.topMm() - view.topMm()) * view.pixelsPerMm();
        boolean moved = shown != null && shown.pixelsPerMm() == view.pixelsPerMm() && isWhole(right) && isWhole(down) && Math.abs(right) < width && Math.abs(down) < height;
        if (!moved) {
            long start = System.nanoTime();
            paint(image, view, new Rectangle(0, 0, width, height), zoom, painter);
            wholeNanos = System.nanoTime() - start;
            return;
        }
        int dx = (int) Math.round(right);
        int dy = (int) Math.round(down);
        Image next = spare == null ? new Image(device, width * zoom, height * zoom) : spare;
        GC gc = new GC(next);
        copy(image, gc, dx * zoom, dy * zoom, width * zoom, height * zoom);
        gc.dispose();
        spare = image;
        image = next;
        if (dx != 0) {
            paint(next, view, new Rectangle(dx > 0 ? 0 : width + dx, 0, Math.abs(dx), height), zoom, painter);
        }
        if (dy != 0) {
            paint(next, view, new Rectangle(0, dy > 0 ? 0 : height + dy, width, Math.abs(dy)), zoom, painter);
        }
    }

    /** Copies an image, moved; as a pattern, since the toolkit's drawImage first brings every pixel of the image into Java's memory, only to ask how many there are. */
    private static void copy(Image from, GC to, int dx, int dy, int width, int height) {
        Pattern pattern = new Pattern(to.getDevice(), from);
        Transform moved = new Transform(to.getDevice());
        try {
            to.setAntialias(SWT.OFF);
            moved.translate(dx, dy);
            to.setTransform(moved);
            to.setBackgroundPattern(pattern);
            to.fillRectangle(Math.max(0, -dx), Math.max(0, -dy), width - Math.abs(dx), height - Math.abs(dy));
            to.setBackgroundPattern(null);
            to.setTransform(null);
        } finally {
            moved.dispose();
            pattern.dispose();
        }
    }

    private static boolean isWhole(double pixels) {
        return Math.abs(pixels - Math.rint(pixels)) < WHOLE_PX;
    }

    private static void paint(Image image, View view, Rectangle exposed, int zoom, Painter painter) {
        GC gc = new GC(image);
        Transform larger = new Transform(gc.getDevice(), zoom, 0, 0, zoom, 0, 0);
        try {
            if (zoom > 1) {
                gc.setTransform(larger);
            }
            gc.setClipping(exposed);
            gc.setAntialias(SWT.ON);
            painter.paint(gc, view, exposed);
        } finally {
            gc.dispose();
            larger.dispose();
        }
    }

    public void dispose() {
        for (Image each : new Image[] {image, spare}) {
            if (each != null) {
                each.dispose();
            }
        }
        image = null;
        spare = null;
        shown = null;
    }
}
