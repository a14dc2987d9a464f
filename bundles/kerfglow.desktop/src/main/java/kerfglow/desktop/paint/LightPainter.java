// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.paint;

import kerfglow.api.PlacedModule;
import kerfglow.desktop.scene.View;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.GC;

/** Paints the handle of a light module: a bar along its long side. Solid when placed by hand, hollow when laid out; a ring about the chosen one. */
public final class LightPainter {
    /** Half of a handle's length and width; the plate itself is painted by the check that knows its size. */
    private static final double HALF_LENGTH_PX = 12;
    private static final double HALF_WIDTH_PX = 5;
    private static final int RING_PX = 18;

    private LightPainter() {
    }

    public static void paint(GC gc, PlacedModule module, boolean placed, boolean chosen, View view, Palette palette) {
        double x = view.toPixelX(module.xMm());
        double y = view.toPixelY(module.yMm());
        double cos = Math.cos(Math.toRadians(module.turnDegrees()));
        double sin = Math.sin(Math.toRadians(module.turnDegrees()));
        int[] corners = new int[8];
        for (int i = 0; i < 4; i++) {
            double along = i == 0 || i == 3 ? -HALF_LENGTH_PX : HALF_LENGTH_PX;
            double across = i < 2 ? -HALF_WIDTH_PX : HALF_WIDTH_PX;
            corners[2 * i] = (int) Math.round(x + along * cos - across * sin);
            corners[2 * i + 1] = (int) Math.round(y + along * sin + across * cos);
        }
        gc.setAntialias(SWT.ON);
        gc.setLineStyle(SWT.LINE_SOLID);
        gc.setBackground(placed ? palette.module : palette.casing);
        gc.fillPolygon(corners);
        gc.setForeground(palette.casing);
        gc.setLineWidth(4);
        gc.drawPolygon(corners);
        gc.setForeground(palette.module);
        gc.setLineWidth(2);
        gc.drawPolygon(corners);
        if (chosen) {
            gc.drawOval((int) Math.round(x) - RING_PX, (int) Math.round(y) - RING_PX, 2 * RING_PX, 2 * RING_PX);
        }
    }
}
