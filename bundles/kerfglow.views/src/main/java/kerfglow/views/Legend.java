// SPDX-License-Identifier: Apache-2.0
package kerfglow.views;

import java.util.ArrayList;
import java.util.List;
import kerfglow.api.OverlayLayer;

/** What the colours of layers mean: a title a layer, with a swatch when it draws in the one colour of all layers, then a swatch and a word for each colour. */
final class Legend {
    private static final double LINE = 1.5;
    private static final double SWATCH = 1.1;
    private static final double GAP = 1.2;

    private final double size;
    private final double height;
    private final List<Item> items = new ArrayList<>();

    /** A title, or a swatch with its word. */
    private record Item(double x, double y, boolean title, int rgb, String text) {
    }

    /**
     * @param suggestions true when outlines are drawn as they would be right
     * @param size of the text, which all else follows
     */
    Legend(List<OverlayLayer> layers, boolean suggestions, double width, double size) {
        this.size = size;
        double y = 0;
        if (suggestions) {
            items.add(new Item(0, y, false, Painter.SUGGESTED, "dashed: the outline as it would be right"));
            y += size * (LINE + 0.3);
        }
        for (OverlayLayer layer : layers) {
            boolean plain = layer.items().stream().anyMatch(item -> Double.isNaN(item.level()));
            if (plain) {
                items.add(new Item(0, y, false, Painter.LAYER, ""));
            }
            items.add(new Item(plain ? size * (SWATCH + 0.5) : 0, y, true, 0, layer.title()));
            y += size * LINE;
            double x = 0;
            for (OverlayLayer.LegendEntry entry : layer.legend()) {
                double room = size * (SWATCH + GAP) + ImageCanvas.roomFor(entry.label(), size, false) + size * GAP;
                if (x > 0 && x + room > width) {
                    x = 0;
                    y += size * LINE;
                }
                items.add(new Item(x, y, false, entry.rgb(), entry.label()));
                x += room;
            }
            y += layer.legend().isEmpty() ? size * 0.3 : size * (LINE + 0.3);
        }
        height = y;
    }

    double height() {
        return height;
    }

    void draw(Canvas canvas, double left, double top) {
        for (Item item : items) {
            double baseline = top + item.y + size;
            if (item.title) {
                canvas.text(item.text, left + item.x, baseline, size, true, Canvas.Anchor.START, Painter.INK);
            } else {
                canvas.rectangle(left + item.x, baseline - size * 0.9, size * SWATCH, size * SWATCH, item.rgb, Painter.QUIET, size * 0.06);
                canvas.text(item.text, left + item.x + size * (SWATCH + 0.5), baseline, size, false, Canvas.Anchor.START, Painter.INK);
            }
        }
    }
}
