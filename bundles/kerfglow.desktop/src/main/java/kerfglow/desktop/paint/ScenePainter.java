// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.paint;

import java.util.List;
import java.util.function.Predicate;
import kerfglow.desktop.scene.Figure;
import kerfglow.desktop.scene.Outlines;
import kerfglow.desktop.scene.Scene;
import kerfglow.desktop.scene.View;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Color;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Path;
import org.eclipse.swt.graphics.Rectangle;
import org.locationtech.jts.geom.Envelope;

/** Paints the artwork: what the view meets, in the detail that can be seen. */
public final class ScenePainter {
    /** Below this a figure is one pixel, and its outline need not be made. */
    private static final double DOT_PX = 1.5;
    /** Notes and leftovers, of 255. */
    private static final int FAINT_ALPHA = 90;
    /** An edge is drawn this much wider than the figure. */
    private static final int EDGE_PX = 2;
    private static final Color IMAGE = Palette.colour(0xd9dde2);

    /** Paints page and artwork into a rectangle of the canvas. */
    public void paint(GC gc, Scene scene, View view, Rectangle exposed, Predicate<Figure> shows, boolean edgesAlone, Palette palette) {
        paintPage(gc, scene.page(), view, palette);
        paintFigures(gc, scene, view, exposed, shows, edgesAlone, palette);
    }

    /** Paints the artwork alone, without a page below it. */
    public void paintArtwork(GC gc, Scene scene, View view, Rectangle exposed, Predicate<Figure> shows, Palette palette) {
        paintFigures(gc, scene, view, exposed, shows, false, palette);
    }

    private static void paintFigures(GC gc, Scene scene, View view, Rectangle exposed, Predicate<Figure> shows, boolean edgesAlone, Palette palette) {
        Envelope seen = view.seen(exposed.x, exposed.y, exposed.width, exposed.height, EDGE_PX);
        gc.setAntialias(SWT.ON);
        gc.setFillRule(SWT.FILL_EVEN_ODD);
        for (Figure figure : scene.meeting(seen)) {
            if (shows.test(figure)) {
                paint(gc, figure, view, edgesAlone, palette);
            }
        }
        gc.setAlpha(255);
    }

    private static void paintPage(GC gc, Envelope page, View view, Palette palette) {
        gc.setAntialias(SWT.OFF);
        Rectangle clip = gc.getClipping();
        // cut to the canvas: the toolkit draws rectangles in whole 16-bit pixels on some platforms
        int left = (int) Math.max(clip.x - 2, Math.floor(view.toPixelX(page.getMinX())));
        int top = (int) Math.max(clip.y - 2, Math.floor(view.toPixelY(page.getMinY())));
        int right = (int) Math.min(clip.x + clip.width + 2, Math.ceil(view.toPixelX(page.getMaxX())));
        int bottom = (int) Math.min(clip.y + clip.height + 2, Math.ceil(view.toPixelY(page.getMaxY())));
        if (right > left && bottom > top) {
            gc.setBackground(palette.page);
            gc.fillRectangle(left, top, right - left, bottom - top);
            gc.setForeground(palette.line);
            gc.setLineWidth(1);
            gc.setLineStyle(SWT.LINE_SOLID);
            gc.drawRectangle(left, top, right - left, bottom - top);
        }
    }

    private static void paint(GC gc, Figure figure, View view, boolean edgesAlone, Palette palette) {
        double scale = view.pixelsPerMm();
        Color colour = figure.kind() == Figure.Kind.IMAGE ? IMAGE : Palette.colour(figure.rgb());
        gc.setAlpha(figure.kind() == Figure.Kind.FAINT ? FAINT_ALPHA : 255);
        if (figure.extent().getWidth() * scale < DOT_PX && figure.extent().getHeight() * scale < DOT_PX) {
            gc.setBackground(edgesAlone ? palette.ink : colour);
            gc.fillRectangle((int) view.toPixelX(figure.extent().getMinX()), (int) view.toPixelY(figure.extent().getMinY()), 1, 1);
            return;
        }
        List<Outlines.Line> lines = figure.outlines().at(scale);
        Path path = Paths.path(gc.getDevice(), lines, view);
        try {
            if (edgesAlone) {
                gc.setForeground(edgeColour(figure, colour));
                gc.setLineWidth(1);
                gc.setLineStyle(SWT.LINE_SOLID);
                gc.drawPath(path);
            } else {
                gc.setBackground(colour);
                gc.fillPath(path);
            }
            if (figure.kind() == Figure.Kind.IMAGE) {
                paintCross(gc, figure.extent(), view, palette);
            }
        } finally {
            path.dispose();
        }
    }

    /** Edges in the artwork's own colour, but for those too pale to be seen on the page. */
    private static Color edgeColour(Figure figure, Color colour) {
        double brightness = (0.299 * colour.getRed() + 0.587 * colour.getGreen() + 0.114 * colour.getBlue()) / 255; // ITU-R BT.601
        return figure.kind() == Figure.Kind.IMAGE || brightness > 0.8 ? Palette.colour(0x7a7f85) : colour;
    }

    /** Two diagonals: an image stands here, whose pixels are not drawn. */
    private static void paintCross(GC gc, Envelope box, View view, Palette palette) {
        gc.setForeground(Palette.colour(0x7a7f85));
        gc.setLineWidth(1);
        int left = (int) view.toPixelX(box.getMinX());
        int right = (int) view.toPixelX(box.getMaxX());
        int top = (int) view.toPixelY(box.getMinY());
        int bottom = (int) view.toPixelY(box.getMaxY());
        gc.drawLine(left, top, right, bottom);
        gc.drawLine(left, bottom, right, top);
    }
}
