// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.paint;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import kerfglow.api.ColourScale;
import kerfglow.api.OverlayLayer;
import kerfglow.desktop.scene.OverlayDrawing;
import kerfglow.desktop.scene.View;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Color;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Image;
import org.eclipse.swt.graphics.ImageData;
import org.eclipse.swt.graphics.PaletteData;
import org.eclipse.swt.graphics.Path;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.graphics.Rectangle;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;

/** Paints what checks show beside their findings: rasters, areas, lines, labels, and the legend of what is shown. Must be disposed. */
public final class OverlayPainter {
    private static final int AREA_ALPHA = 90;
    private static final int LABEL_REACH_PX = 160;
    /** Labels of items smaller than this would lie on each other. */
    private static final double LABEL_PX = 24;
    private static final int RGB = 0xffffff;
    private static final int LEGEND_MARGIN_PX = 10;
    private static final int SWATCH_PX = 14;

    private final Map<OverlayLayer.Raster, Image> rasters = new HashMap<>();

    /** Paints the layers into a rectangle of the canvas. */
    public void paint(GC gc, List<OverlayDrawing> drawings, View view, Rectangle exposed, Palette palette) {
        gc.setAntialias(SWT.ON);
        Envelope seen = view.seen(exposed.x, exposed.y, exposed.width, exposed.height, LABEL_REACH_PX);
        for (OverlayDrawing drawing : drawings) {
            drawing.layer().raster().ifPresent(raster -> paint(gc, raster, view));
            for (OverlayDrawing.Drawn drawn : drawing.meeting(seen)) {
                paint(gc, drawn, drawing.layer().raster().isPresent(), view, palette);
            }
        }
        gc.setAlpha(255);
    }

    private void paint(GC gc, OverlayLayer.Raster raster, View view) {
        Image image = rasters.computeIfAbsent(raster, each -> image(gc, each));
        int left = (int) Math.round(view.toPixelX(raster.leftMm()));
        int top = (int) Math.round(view.toPixelY(raster.topMm()));
        int right = (int) Math.round(view.toPixelX(raster.leftMm() + raster.columns() * raster.cellMm()));
        int bottom = (int) Math.round(view.toPixelY(raster.topMm() + raster.rows() * raster.cellMm()));
        if (right > left && bottom > top) {
            gc.setInterpolation(SWT.LOW);
            gc.drawImage(image, 0, 0, raster.columns(), raster.rows(), left, top, right - left, bottom - top);
        }
    }

    private static Image image(GC gc, OverlayLayer.Raster raster) {
        ImageData data = new ImageData(raster.columns(), raster.rows(), 24, new PaletteData(0xff0000, 0xff00, 0xff));
        data.alphaData = new byte[raster.argb().length];
        for (int row = 0; row < raster.rows(); row++) {
            for (int column = 0; column < raster.columns(); column++) {
                int argb = raster.argb()[row * raster.columns() + column];
                data.setPixel(column, row, argb & RGB);
                data.alphaData[row * raster.columns() + column] = (byte) (argb >>> 24);
            }
        }
        return new Image(gc.getDevice(), data);
    }

    private static void paint(GC gc, OverlayDrawing.Drawn drawn, boolean isOnRaster, View view, Palette palette) {
        OverlayLayer.Item item = drawn.item();
        boolean isContour = item.shape().getDimension() == 1 && isOnRaster;
        Color colour = Double.isNaN(item.level()) ? palette.overlay : Palette.colour(isContour ? ColourScale.rgbOver(item.level()) : ColourScale.rgb(item.level()));
        Envelope extent = item.shape().getEnvelopeInternal();
        Coordinate middle = extent.centre();
        int x = (int) Math.round(view.toPixelX(middle.x));
        int y = (int) Math.round(view.toPixelY(middle.y));
        gc.setForeground(colour);
        gc.setBackground(colour);
        gc.setLineStyle(SWT.LINE_SOLID);
        gc.setLineWidth(isContour ? 1 : 2);
        if (item.shape().getDimension() == 0) {
            for (Coordinate at : item.shape().getCoordinates()) {
                gc.fillOval((int) Math.round(view.toPixelX(at.x)) - 3, (int) Math.round(view.toPixelY(at.y)) - 3, 7, 7);
            }
        } else {
            Path path = Paths.path(gc.getDevice(), drawn.outlines().at(view.pixelsPerMm()), view);
            if (item.shape().getDimension() == 2) {
                gc.setAlpha(AREA_ALPHA);
                gc.fillPath(path);
                gc.setAlpha(255);
            }
            gc.drawPath(path);
            path.dispose();
        }
        if (!item.label().isEmpty() && Math.max(extent.getWidth(), extent.getHeight()) * view.pixelsPerMm() >= LABEL_PX) {
            Point size = gc.stringExtent(item.label());
            gc.setAlpha(210);
            gc.setBackground(palette.page);
            gc.fillRectangle(x - size.x / 2 - 2, y - size.y / 2, size.x + 4, size.y);
            gc.setAlpha(255);
            gc.setForeground(Palette.colour(0x22262b));
            gc.drawString(item.label(), x - size.x / 2, y - size.y / 2, true);
        }
    }

    /** Paints what the colours of the shown layers mean, at the lower right of the canvas; it stays where it is while the proof is moved. */
    public void paintLegend(GC gc, List<OverlayDrawing> drawings, Point size, Palette palette) {
        List<String> lines = new ArrayList<>();
        List<Integer> swatches = new ArrayList<>();
        for (OverlayDrawing drawing : drawings) {
            lines.add(drawing.layer().title());
            swatches.add(-1);
            drawing.layer().legend().forEach(entry -> {
                lines.add(entry.label());
                swatches.add(entry.rgb());
            });
        }
        if (lines.isEmpty()) {
            return;
        }
        int line = gc.getFontMetrics().getHeight() + 3;
        int width = lines.stream().mapToInt(text -> gc.stringExtent(text).x).max().orElse(0) + SWATCH_PX + 16;
        int left = size.x - width - LEGEND_MARGIN_PX;
        int top = size.y - lines.size() * line - 8 - LEGEND_MARGIN_PX;
        gc.setBackground(palette.field);
        gc.setForeground(palette.line);
        gc.setLineWidth(1);
        gc.fillRectangle(left, top, width, lines.size() * line + 8);
        gc.drawRectangle(left, top, width, lines.size() * line + 8);
        for (int i = 0; i < lines.size(); i++) {
            int y = top + 4 + i * line;
            if (swatches.get(i) >= 0) {
                gc.setBackground(Palette.colour(swatches.get(i)));
                gc.fillRectangle(left + 6, y + 2, SWATCH_PX, line - 5);
            }
            gc.setForeground(palette.ink);
            gc.drawString(lines.get(i), left + (swatches.get(i) >= 0 ? SWATCH_PX + 11 : 6), y, true);
        }
    }

    /** Images of rasters that are not shown any more go. */
    public void keepOnly(List<OverlayDrawing> drawings) {
        List<OverlayLayer.Raster> shown = drawings.stream().flatMap(drawing -> drawing.layer().raster().stream()).toList();
        rasters.entrySet().removeIf(entry -> {
            boolean gone = !shown.contains(entry.getKey());
            if (gone) {
                entry.getValue().dispose();
            }
            return gone;
        });
    }

    public void dispose() {
        keepOnly(List.of());
    }
}
