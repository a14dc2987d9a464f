// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.paint;

import kerfglow.api.Quantity;
import kerfglow.api.UnitSystem;
import kerfglow.api.Units;
import kerfglow.api.proof.Role;
import kerfglow.desktop.closeup.CloseUp;
import kerfglow.desktop.closeup.Dimension;
import kerfglow.desktop.scene.Outlines;
import kerfglow.desktop.scene.View;
import kerfglow.host.Result;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Color;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Path;
import org.eclipse.swt.graphics.Point;
import org.locationtech.jts.geom.Geometry;

/** Paints a close-up: material hatched by tint, edges by kind of line, the tool translucent over it, the dimension last. */
public final class CloseUpPainter {
    private static final int MATERIAL_ALPHA = 60;
    private static final int OTHER_ALPHA = 25;
    private static final int PLACE_ALPHA = 110;
    private static final int TOOL_ALPHA = 90;
    private static final int ARROW_PX = 7;
    private static final int LABEL_MARGIN_PX = 4;

    public void paint(GC gc, CloseUp closeUp, Result.ReportedFinding finding, Point size, UnitSystem units, Palette palette) {
        gc.setBackground(palette.page);
        gc.fillRectangle(0, 0, size.x, size.y);
        gc.setAntialias(SWT.ON);
        gc.setFillRule(SWT.FILL_EVEN_ODD);
        View view = new View(size.x / closeUp.window().getWidth(), closeUp.window().getMinX(), closeUp.window().getMinY());
        for (CloseUp.Piece piece : closeUp.pieces()) {
            fill(gc, piece.area(), view, Palette.colour(0x6d7a86), piece.concerned() ? MATERIAL_ALPHA : OTHER_ALPHA);
        }
        Color colour = palette.of(finding.severity());
        Geometry place = closeUp.place().shape();
        if (place.getDimension() == 2) {
            fill(gc, place, view, colour, PLACE_ALPHA);
        } else {
            draw(gc, place, view, colour, 2, SWT.LINE_SOLID);
        }
        for (CloseUp.Piece piece : closeUp.pieces()) {
            draw(gc, piece.edge(), view, Palette.colour(piece.concerned() ? 0x22262b : 0x8d949b), piece.concerned() ? 2 : 1,
                    piece.role() == Role.BACK ? SWT.LINE_DASH : SWT.LINE_SOLID);
        }
        closeUp.tool().ifPresent(tool -> {
            Color steel = Palette.colour(0x0f6b6b);
            fill(gc, tool.shape(), view, steel, TOOL_ALPHA);
            draw(gc, tool.shape(), view, steel, 2, SWT.LINE_SOLID);
        });
        closeUp.place().suggestion().ifPresent(outline -> FindingPainter.paintSuggestion(gc, Outlines.of(outline), view, true, palette));
        closeUp.dimension().ifPresent(dimension -> closeUp.place().measured().or(finding::measured)
                .ifPresent(measure -> paintDimension(gc, dimension, view, Units.format(Math.abs(measure.value()), Quantity.LENGTH, units), palette.onPage)));
        paintWords(gc, closeUp, size, palette);
    }

    private static void fill(GC gc, Geometry area, View view, Color colour, int alpha) {
        Path path = Paths.path(gc.getDevice(), Outlines.of(area).at(view.pixelsPerMm()), view);
        gc.setAlpha(alpha);
        gc.setBackground(colour);
        gc.fillPath(path);
        gc.setAlpha(255);
        path.dispose();
    }

    private static void draw(GC gc, Geometry lines, View view, Color colour, int width, int style) {
        Path path = Paths.path(gc.getDevice(), Outlines.of(lines).at(view.pixelsPerMm()), view);
        gc.setForeground(colour);
        gc.setLineWidth(width);
        gc.setLineStyle(style);
        gc.drawPath(path);
        gc.setLineStyle(SWT.LINE_SOLID);
        path.dispose();
    }

    /** A dimension as on a drawing: a line with an arrow head at each wall, the length beside it. Short ones have their arrows outside. */
    public static void paintDimension(GC gc, Dimension dimension, View view, String text, Color ink) {
        double x1 = view.toPixelX(dimension.from().x);
        double y1 = view.toPixelY(dimension.from().y);
        double x2 = view.toPixelX(dimension.to().x);
        double y2 = view.toPixelY(dimension.to().y);
        double length = Math.hypot(x2 - x1, y2 - y1);
        if (length == 0) {
            return;
        }
        double dx = (x2 - x1) / length;
        double dy = (y2 - y1) / length;
        boolean outside = length < 4 * ARROW_PX;
        double tail = outside ? 2.5 * ARROW_PX : 0;
        gc.setForeground(ink);
        gc.setBackground(ink);
        gc.setLineWidth(1);
        gc.drawLine((int) Math.round(x1 - dx * tail), (int) Math.round(y1 - dy * tail), (int) Math.round(x2 + dx * tail), (int) Math.round(y2 + dy * tail));
        arrow(gc, x1, y1, outside ? -dx : dx, outside ? -dy : dy);
        arrow(gc, x2, y2, outside ? dx : -dx, outside ? dy : -dy);
        Point extent = gc.stringExtent(text);
        double alongX = outside ? dx : -dy; // beyond the second end, or beside the middle
        double alongY = outside ? dy : dx;
        double off = LABEL_MARGIN_PX + (outside ? tail : 0) + Math.abs(alongX) * extent.x / 2.0 + Math.abs(alongY) * extent.y / 2.0;
        double x = (outside ? x2 : (x1 + x2) / 2) + alongX * off;
        double y = (outside ? y2 : (y1 + y2) / 2) + alongY * off;
        label(gc, text, (int) Math.round(x - extent.x / 2.0), (int) Math.round(y - extent.y / 2.0));
    }

    private static void arrow(GC gc, double x, double y, double dx, double dy) {
        double half = ARROW_PX * 0.35;
        gc.fillPolygon(new int[] {(int) Math.round(x), (int) Math.round(y), (int) Math.round(x + dx * ARROW_PX - dy * half), (int) Math.round(y + dy * ARROW_PX + dx * half),
            (int) Math.round(x + dx * ARROW_PX + dy * half), (int) Math.round(y + dy * ARROW_PX - dx * half)});
    }

    /** The scale at the lower left, the tool at the lower right, or above where there is no room for both. */
    private static void paintWords(GC gc, CloseUp closeUp, Point size, Palette palette) {
        String scale = "Scale " + closeUp.scale() + (closeUp.place().suggestion().isPresent() ? ", dashed: as it would be right" : "");
        Point scaleSize = gc.stringExtent(scale);
        gc.setForeground(palette.onPage);
        label(gc, scale, LABEL_MARGIN_PX, size.y - scaleSize.y - LABEL_MARGIN_PX);
        closeUp.tool().ifPresent(tool -> {
            Point extent = gc.stringExtent(tool.words());
            boolean beside = scaleSize.x + extent.x + 4 * LABEL_MARGIN_PX <= size.x;
            gc.setForeground(Palette.colour(0x0f6b6b));
            label(gc, tool.words(), size.x - extent.x - LABEL_MARGIN_PX, size.y - (beside ? 1 : 2) * (extent.y + LABEL_MARGIN_PX));
        });
    }

    /** Text on a plate, so that it can be read over anything. */
    private static void label(GC gc, String text, int x, int y) {
        Point extent = gc.stringExtent(text);
        Color before = gc.getBackground();
        gc.setAlpha(220);
        gc.setBackground(Palette.colour(0xffffff));
        gc.fillRectangle(x - 2, y, extent.x + 4, extent.y);
        gc.setAlpha(255);
        gc.setBackground(before);
        gc.drawString(text, x, y, true);
    }
}
