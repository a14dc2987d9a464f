// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.scene;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import kerfglow.api.OverlayLayer;
import kerfglow.host.Result;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.index.strtree.STRtree;

/**
 * An overlay layer of a check prepared for drawing. Unchanging.
 */
public final class OverlayDrawing {
    /**
     * One item, ready to draw.
     *
     * @param order place in the layer, 0 at the bottom
     * @param item what the check says
     * @param outlines rings and lines at several levels of detail
     */
    public record Drawn(int order, OverlayLayer.Item item, Outlines outlines) {
    }

    private final String name;
    private final OverlayLayer layer;
    private final LayerStyle style;
    private final STRtree index = new STRtree();

    private OverlayDrawing(String name, OverlayLayer layer, LayerStyle style) {
        this.name = name;
        this.layer = layer;
        this.style = style;
        int order = 0;
        for (OverlayLayer.Item item : layer.items()) {
            if (!item.shape().isEmpty()) {
                index.insert(item.shape().getEnvelopeInternal(), new Drawn(order++, item, Outlines.of(item.shape())));
            }
        }
        index.build();
    }

    /** Every layer of every check of a result. */
    public static List<OverlayDrawing> of(Result result) {
        return of(result, List.of());
    }

    /** The same; what was prepared of the very same layers before is taken over. */
    public static List<OverlayDrawing> of(Result result, List<OverlayDrawing> before) {
        List<OverlayDrawing> drawings = new ArrayList<>();
        for (Result.CheckRow row : result.checks()) {
            for (OverlayLayer layer : row.layers()) {
                LayerStyle style = LayerStyle.of(drawings.size());
                drawings.add(before.stream().filter(each -> each.layer == layer && each.style.equals(style)).findFirst()
                        .orElseGet(() -> new OverlayDrawing(row.check() + "/" + layer.id(), layer, style)));
            }
        }
        return drawings;
    }

    /** {@code check/layer}; the same from run to run. */
    public String name() {
        return name;
    }

    public OverlayLayer layer() {
        return layer;
    }

    /** How it is drawn, for what has no level of its own; the same whatever else is shown. */
    public LayerStyle style() {
        return style;
    }

    public boolean hasPoints() {
        return layer.items().stream().anyMatch(item -> item.shape().getDimension() == 0);
    }

    public boolean hasLines() {
        return layer.items().stream().anyMatch(item -> item.shape().getDimension() > 0);
    }

    /** The items that a view meets, bottom first. */
    public List<Drawn> meeting(Envelope seen) {
        List<Drawn> met = new ArrayList<>();
        index.query(seen, found -> met.add((Drawn) found));
        met.sort(Comparator.comparingInt(Drawn::order));
        return met;
    }
}
