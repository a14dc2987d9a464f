// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.paint;

import java.util.ArrayList;
import java.util.List;
import java.util.function.IntConsumer;
import kerfglow.desktop.scene.LayerStyle;
import kerfglow.desktop.scene.OverlayDrawing;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Point;

/** Paints what colours, dashes and signs of the shown layers mean, at the lower right of the canvas; it stays where it is while the proof is moved. */
public final class LegendPainter {
    private static final int MARGIN_PX = 10;
    private static final int PADDING_PX = 6;
    private static final int SAMPLE_PX = 34;
    private static final int SWATCH_PX = 14;

    /** A line of words with what is drawn before it, given the height of its middle. */
    private record Line(String text, int indent, IntConsumer sample) {
    }

    private LegendPainter() {
    }

    /**
     * Paints.
     *
     * @param suggestions true when outlines are shown as they would be right
     * @param size of the canvas
     */
    public static void paint(GC gc, List<OverlayDrawing> drawings, boolean suggestions, Point size, Palette palette) {
        int row = gc.getFontMetrics().getHeight() + 4;
        List<Line> lines = new ArrayList<>();
        int[] left = new int[1]; // known when the longest line is
        for (OverlayDrawing drawing : drawings) {
            boolean raster = drawing.layer().raster().isPresent();
            lines.add(new Line(drawing.layer().title(), raster ? 0 : SAMPLE_PX + PADDING_PX, y -> {
                if (!raster) {
                    sample(gc, left[0], y, drawing, palette);
                }
            }));
            drawing.layer().legend().forEach(entry -> lines.add(new Line(entry.label(), SWATCH_PX + PADDING_PX, y -> {
                gc.setBackground(Palette.colour(entry.rgb()));
                gc.fillRectangle(left[0], y - row / 2 + 2, SWATCH_PX, row - 4);
            })));
        }
        if (suggestions) {
            lines.add(new Line("the outline as it would be right", SAMPLE_PX + PADDING_PX, y -> {
                gc.setForeground(palette.suggested);
                gc.setLineWidth(2);
                gc.setLineStyle(SWT.LINE_DASH);
                gc.drawLine(left[0], y, left[0] + SAMPLE_PX, y);
                gc.setLineStyle(SWT.LINE_SOLID);
            }));
        }
        if (lines.isEmpty()) {
            return;
        }
        int width = lines.stream().mapToInt(line -> gc.stringExtent(line.text).x + line.indent).max().orElse(0) + 2 * PADDING_PX;
        int height = lines.size() * row + PADDING_PX;
        int x = size.x - width - MARGIN_PX;
        int top = size.y - height - MARGIN_PX;
        left[0] = x + PADDING_PX;
        gc.setBackground(palette.page); // of paper in both looks, as the styles are made for it
        gc.setForeground(palette.line);
        gc.setLineWidth(1);
        gc.fillRectangle(x, top, width, height);
        gc.drawRectangle(x, top, width, height);
        for (int i = 0; i < lines.size(); i++) {
            int y = top + PADDING_PX / 2 + i * row;
            lines.get(i).sample.accept(y + row / 2);
            gc.setForeground(palette.onPage);
            gc.drawString(lines.get(i).text, left[0] + lines.get(i).indent, y + 2, true);
        }
    }

    /** A line for a layer of lines and areas, a sign for one of points, both for one that has both. */
    private static void sample(GC gc, int x, int y, OverlayDrawing drawing, Palette palette) {
        LayerStyle style = drawing.style();
        if (drawing.hasLines()) {
            LayerPainter.sample(gc, x, y, SAMPLE_PX, style);
        }
        if (drawing.hasPoints()) {
            LayerPainter.sign(gc, x + SAMPLE_PX / 2, y, style, palette);
        }
    }
}
