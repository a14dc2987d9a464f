// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.paint;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import kerfglow.api.ColourScale;
import kerfglow.api.OverlayLayer;
import kerfglow.desktop.scene.LayerStyle;
import kerfglow.desktop.scene.OverlayDrawing;
import kerfglow.desktop.scene.View;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Image;
import org.eclipse.swt.graphics.ImageData;
import org.eclipse.swt.graphics.PaletteData;
import org.eclipse.swt.graphics.Path;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.graphics.Rectangle;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;

/** Paints what checks show beside their findings: rasters, areas, lines, points, labels. Must be disposed. */
public final class OverlayPainter {
    private static final int LABEL_REACH_PX = 160;
    /** Labels of items smaller than this would lie on each other. */
    private static final double LABEL_PX = 24;
    private static final int RGB = 0xffffff;
    /** A label stands so far from the point that it belongs to. */
    private static final int BESIDE_PX = 10;

    private final Map<OverlayLayer.Raster, Image> rasters = new HashMap<>();

    /** Paints the layers into a rectangle of the canvas. */
    public void paint(GC gc, List<OverlayDrawing> drawings, View view, Rectangle exposed, Palette palette) {
        gc.setAntialias(SWT.ON);
        Envelope seen = view.seen(exposed.x, exposed.y, exposed.width, exposed.height, LABEL_REACH_PX);
        for (OverlayDrawing drawing : drawings) {
            drawing.layer().raster().ifPresent(raster -> paint(gc, raster, view));
            for (OverlayDrawing.Drawn drawn : drawing.meeting(seen)) {
                paint(gc, drawn, drawing, view, palette);
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

    private static void paint(GC gc, OverlayDrawing.Drawn drawn, OverlayDrawing of, View view, Palette palette) {
        OverlayLayer.Item item = drawn.item();
        Envelope extent = item.shape().getEnvelopeInternal();
        if (item.shape().getDimension() == 0) {
            for (Coordinate at : item.shape().getCoordinates()) {
                LayerPainter.sign(gc, (int) Math.round(view.toPixelX(at.x)), (int) Math.round(view.toPixelY(at.y)), styled(item, of), palette);
            }
        } else {
            Path path = Paths.path(gc.getDevice(), drawn.outlines().at(view.pixelsPerMm()), view);
            if (item.shape().getDimension() == 1 && of.layer().raster().isPresent()) {
                contour(gc, path, item.level());
            } else {
                LayerPainter.path(gc, path, item.shape().getDimension() == 2, styled(item, of), palette);
            }
            path.dispose();
        }
        if (!item.label().isEmpty() && (item.shape().getDimension() == 0 || Math.max(extent.getWidth(), extent.getHeight()) * view.pixelsPerMm() >= LABEL_PX)) {
            label(gc, item, view, palette);
        }
    }

    /** A level has a colour of its own; dash and sign are the layer's. */
    private static LayerStyle styled(OverlayLayer.Item item, OverlayDrawing of) {
        return Double.isNaN(item.level()) ? of.style() : new LayerStyle(ColourScale.rgb(item.level()), of.style().dash(), of.style().sign());
    }

    private static void contour(GC gc, Path path, double level) {
        gc.setForeground(Palette.colour(ColourScale.rgbOver(Double.isNaN(level) ? 0 : level)));
        gc.setLineStyle(SWT.LINE_SOLID);
        gc.setLineWidth(1);
        gc.drawPath(path);
    }

    /** In the middle of a line or area, beside a point. */
    private static void label(GC gc, OverlayLayer.Item item, View view, Palette palette) {
        Coordinate middle = item.shape().getEnvelopeInternal().centre();
        Point size = gc.stringExtent(item.label());
        int x = (int) Math.round(view.toPixelX(middle.x)) + (item.shape().getDimension() == 0 ? BESIDE_PX : -size.x / 2);
        int y = (int) Math.round(view.toPixelY(middle.y)) - size.y / 2;
        gc.setAlpha(210);
        gc.setBackground(palette.page);
        gc.fillRectangle(x - 2, y, size.x + 4, size.y);
        gc.setAlpha(255);
        gc.setForeground(palette.onPage);
        gc.drawString(item.label(), x, y, true);
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
