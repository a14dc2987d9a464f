// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.paint;

import java.util.List;
import kerfglow.api.UnitSystem;
import kerfglow.desktop.scene.Ruler;
import kerfglow.desktop.scene.View;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Point;

/** Paints rulers along the top and the left edge of the proof, with a line where the pointer stands. */
public final class RulerPainter {
    /** Room for one line of small figures. */
    public static final int WIDTH_PX = 20;
    /** Figures of five digits do not touch. */
    private static final double LEAST_STEP_PX = 64;

    public void paint(GC gc, View view, Point size, UnitSystem units, Point pointer, Palette palette) {
        gc.setAntialias(SWT.OFF);
        gc.setAlpha(255);
        gc.setLineStyle(SWT.LINE_SOLID);
        gc.setLineWidth(1);
        gc.setBackground(palette.ground);
        gc.fillRectangle(0, 0, size.x, WIDTH_PX);
        gc.fillRectangle(0, 0, WIDTH_PX, size.y);
        gc.setForeground(palette.quiet);
        double leastMm = LEAST_STEP_PX / view.pixelsPerMm();
        gc.setClipping(WIDTH_PX, 0, Math.max(0, size.x - WIDTH_PX), WIDTH_PX);
        for (Ruler.Mark mark : marks(view.toMmX(0), view.toMmX(size.x), leastMm, units)) {
            int x = (int) Math.round(view.toPixelX(mark.atMm()));
            gc.drawLine(x, mark.label().isEmpty() ? WIDTH_PX - 5 : 2, x, WIDTH_PX - 1);
            gc.drawString(mark.label(), x + 3, 1, true);
        }
        gc.setClipping(0, WIDTH_PX, WIDTH_PX, Math.max(0, size.y - WIDTH_PX));
        for (Ruler.Mark mark : marks(view.toMmY(0), view.toMmY(size.y), leastMm, units)) {
            int y = (int) Math.round(view.toPixelY(mark.atMm()));
            gc.drawLine(mark.label().isEmpty() ? WIDTH_PX - 5 : 2, y, WIDTH_PX - 1, y);
            paintUpright(gc, mark.label(), y);
        }
        gc.setClipping((org.eclipse.swt.graphics.Rectangle) null);
        gc.setForeground(palette.line);
        gc.drawLine(WIDTH_PX - 1, WIDTH_PX - 1, size.x, WIDTH_PX - 1);
        gc.drawLine(WIDTH_PX - 1, WIDTH_PX - 1, WIDTH_PX - 1, size.y);
        gc.setForeground(palette.accent);
        gc.drawLine(pointer.x, 0, pointer.x, WIDTH_PX - 1);
        gc.drawLine(0, pointer.y, WIDTH_PX - 1, pointer.y);
    }

    private static List<Ruler.Mark> marks(double fromMm, double toMm, double leastMm, UnitSystem units) {
        return Ruler.marks(fromMm, toMm, leastMm, units);
    }

    /** Figures of the left ruler are read from the right, as on a draughtsman's scale. */
    private static void paintUpright(GC gc, String label, int y) {
        if (label.isEmpty()) {
            return;
        }
        org.eclipse.swt.graphics.Transform turn = new org.eclipse.swt.graphics.Transform(gc.getDevice());
        try {
            turn.translate(1, y - 3);
            turn.rotate(-90);
            gc.setTransform(turn);
            gc.drawString(label, 0, 0, true);
        } finally {
            gc.setTransform(null);
            turn.dispose();
        }
    }
}
