// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.paint;

import kerfglow.desktop.scene.LayerStyle;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Path;

/** Draws lines and points in the style of their layer, on a pale casing that keeps them apart from what is below. */
final class LayerPainter {
    private static final int LINE_PX = 2;
    private static final int CASING_PX = 4;
    private static final int CASING_ALPHA = 170;
    private static final int AREA_ALPHA = 60;
    private static final int SIGN_PX = 5;

    private LayerPainter() {
    }

    static void path(GC gc, Path path, boolean isArea, LayerStyle style, Palette palette) {
        if (isArea) {
            gc.setAlpha(AREA_ALPHA);
            gc.setBackground(Palette.colour(style.rgb()));
            gc.fillPath(path);
        }
        gc.setLineStyle(SWT.LINE_SOLID);
        gc.setLineWidth(CASING_PX);
        gc.setAlpha(CASING_ALPHA);
        gc.setForeground(palette.casing);
        gc.drawPath(path);
        gc.setAlpha(255);
        pen(gc, style);
        gc.drawPath(path);
        gc.setLineStyle(SWT.LINE_SOLID);
    }

    private static void pen(GC gc, LayerStyle style) {
        gc.setForeground(Palette.colour(style.rgb()));
        gc.setLineWidth(LINE_PX);
        if (!style.dash().isEmpty()) {
            gc.setLineDash(style.dash().stream().mapToInt(Integer::intValue).toArray());
        }
    }

    /** A sample of the style, for a legend. */
    static void sample(GC gc, int x, int y, int width, LayerStyle style) {
        pen(gc, style);
        gc.drawLine(x, y, x + width, y);
        gc.setLineStyle(SWT.LINE_SOLID);
    }

    static void sign(GC gc, int x, int y, LayerStyle style, Palette palette) {
        int r = SIGN_PX;
        gc.setLineStyle(SWT.LINE_SOLID);
        gc.setBackground(Palette.colour(style.rgb()));
        gc.setForeground(palette.casing);
        gc.setLineWidth(2);
        switch (style.sign()) {
            case DISC -> {
                gc.fillOval(x - r, y - r, 2 * r + 1, 2 * r + 1);
                gc.drawOval(x - r, y - r, 2 * r, 2 * r);
            }
            case SQUARE -> {
                gc.fillRectangle(x - r + 1, y - r + 1, 2 * r - 1, 2 * r - 1);
                gc.drawRectangle(x - r + 1, y - r + 1, 2 * r - 2, 2 * r - 2);
            }
            case TRIANGLE -> polygon(gc, x, y - r - 1, x + r + 1, y + r, x - r - 1, y + r);
            case DIAMOND -> polygon(gc, x, y - r - 1, x + r + 1, y, x, y + r + 1, x - r - 1, y);
            case CROSS -> {
                gc.setLineWidth(CASING_PX + 1);
                cross(gc, x, y, r);
                gc.setForeground(Palette.colour(style.rgb()));
                gc.setLineWidth(LINE_PX);
                cross(gc, x, y, r);
            }
        }
    }

    private static void polygon(GC gc, int... points) {
        gc.fillPolygon(points);
        gc.drawPolygon(points);
    }

    private static void cross(GC gc, int x, int y, int r) {
        gc.drawLine(x - r, y - r, x + r, y + r);
        gc.drawLine(x - r, y + r, x + r, y - r);
    }
}
