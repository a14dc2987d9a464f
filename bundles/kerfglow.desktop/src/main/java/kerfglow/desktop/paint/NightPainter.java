// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.paint;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import kerfglow.api.OverlayLayer;
import kerfglow.desktop.scene.Night;
import kerfglow.desktop.scene.View;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Color;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Image;
import org.eclipse.swt.graphics.ImageData;
import org.eclipse.swt.graphics.PaletteData;
import org.eclipse.swt.graphics.Rectangle;

/** Lays the night over a sign that is painted as by day: dark everywhere, less so where the light maps say. Must be disposed. */
public final class NightPainter {
    private static final Color NIGHT = Palette.colour(0x05070c);
    private static final int BITS = 24;

    private final Map<OverlayLayer.Raster, Image> veils = new HashMap<>();

    /** Paints; without a map all is dark. */
    public void paint(GC gc, List<OverlayLayer.Raster> maps, View view, Rectangle all) {
        veils.keySet().removeIf(each -> {
            boolean gone = !maps.contains(each);
            if (gone) {
                veils.get(each).dispose();
            }
            return gone;
        });
        if (maps.isEmpty()) {
            fill(gc, all);
        }
        maps.forEach(map -> paint(gc, map, view, all));
    }

    private void paint(GC gc, OverlayLayer.Raster map, View view, Rectangle all) {
        int left = (int) Math.round(view.toPixelX(map.leftMm()));
        int top = (int) Math.round(view.toPixelY(map.topMm()));
        int width = Math.max(1, (int) Math.round(view.toPixelX(map.leftMm() + map.columns() * map.cellMm())) - left);
        int height = Math.max(1, (int) Math.round(view.toPixelY(map.topMm() + map.rows() * map.cellMm())) - top);
        Rectangle lit = new Rectangle(left, top, width, height).intersection(all);
        fill(gc, new Rectangle(all.x, all.y, all.width, lit.y - all.y));
        fill(gc, new Rectangle(all.x, lit.y, lit.x - all.x, lit.height));
        fill(gc, new Rectangle(lit.x + lit.width, lit.y, all.x + all.width - lit.x - lit.width, lit.height));
        fill(gc, new Rectangle(all.x, lit.y + lit.height, all.width, all.y + all.height - lit.y - lit.height));
        Image veil = veils.computeIfAbsent(map, each -> veil(gc, each));
        gc.setAdvanced(true);
        gc.setInterpolation(SWT.HIGH);
        gc.drawImage(veil, 0, 0, map.columns(), map.rows(), left, top, width, height);
    }

    private static void fill(GC gc, Rectangle place) {
        if (place.width > 0 && place.height > 0) {
            gc.setAlpha(Night.UNLIT);
            gc.setBackground(NIGHT);
            gc.fillRectangle(place);
            gc.setAlpha(255);
        }
    }

    private static Image veil(GC gc, OverlayLayer.Raster map) {
        PaletteData colours = new PaletteData(0xff0000, 0xff00, 0xff);
        ImageData data = new ImageData(map.columns(), map.rows(), BITS, colours);
        byte[] veil = Night.veil(map);
        int unlit = colours.getPixel(NIGHT.getRGB());
        int[] row = new int[map.columns()];
        for (int i = 0; i < map.rows(); i++) {
            int first = i * row.length;
            Arrays.setAll(row, column -> map.argb()[first + column] == 0 ? unlit : 0);
            data.setPixels(0, i, row.length, row, 0);
        }
        data.alphaData = veil;
        return new Image(gc.getDevice(), data);
    }

    /** Gives back what was kept between paintings. */
    public void dispose() {
        veils.values().forEach(Image::dispose);
        veils.clear();
    }
}
