// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.section;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import kerfglow.desktop.closeup.Scale;
import kerfglow.desktop.scene.View;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;

/**
 * Where the section and its labels stand on a canvas. Labels stand in two columns below the drawing, a leader line from each to its
 * dimension, so that they never lie on each other however thin the pieces are.
 *
 * @param view of the section
 * @param scale the scale of the drawing on this screen
 * @param labels one for each dimension, in their order
 */
public record SectionLayout(View view, Scale scale, List<Label> labels) {
    /**
     * The label of a dimension, pixels.
     *
     * @param x left edge
     * @param y upper edge
     * @param width of its room
     * @param height of its room
     */
    public record Label(int x, int y, int width, int height) {
        boolean contains(int px, int py) {
            return px >= x && px < x + width && py >= y && py < y + height;
        }
    }

    private static final int MARGIN_PX = 10;

    /**
     * Lays out.
     *
     * @param section what is drawn
     * @param widthPx width of the canvas
     * @param heightPx its height
     * @param lineHeightPx height of a line of text
     * @param pixelsPerMm pixels in a millimetre of the screen
     */
    public static SectionLayout of(Section section, int widthPx, int heightPx, int lineHeightPx, double pixelsPerMm) {
        int row = lineHeightPx + 6;
        int labelsTop = heightPx - MARGIN_PX / 2 - row * section.measures().size();
        double across = Math.max(10, widthPx - 2 * MARGIN_PX);
        double down = Math.max(10, labelsTop - 3 * MARGIN_PX - lineHeightPx);
        double fit = Math.min(across / section.extent().getWidth(), down / section.extent().getHeight()) / pixelsPerMm;
        Scale scale = scale(fit);
        double drawn = scale.factor() * pixelsPerMm;
        Envelope extent = section.extent();
        View view = View.centred(new Coordinate(extent.centre().x, extent.getMinY()), drawn, widthPx, 0);
        view = view.moved(0, MARGIN_PX + lineHeightPx);
        List<Label> labels = new ArrayList<>();
        for (int i = 0; i < section.measures().size(); i++) {
            labels.add(new Label(MARGIN_PX, labelsTop + i * row, widthPx - 2 * MARGIN_PX, row - 2));
        }
        return new SectionLayout(view, scale, labels);
    }

    /** The largest of half steps that fits: a pane is small, and the steps of drawings would leave half of it empty. */
    private static Scale scale(double fit) {
        return fit >= 1 ? new Scale(Math.floor(fit)) : new Scale(1 / (Math.ceil(2 / fit) / 2));
    }

    /** The dimension whose label lies at a pixel. */
    public Optional<Integer> labelAt(int x, int y) {
        for (int i = 0; i < labels.size(); i++) {
            if (labels.get(i).contains(x, y)) {
                return Optional.of(i);
            }
        }
        return Optional.empty();
    }

    /** The piece at a pixel; of several the front-most. */
    public Optional<Section.Kind> pieceAt(Section section, int x, int y) {
        Coordinate at = view.toMm(x, y);
        double reach = 2 / view.pixelsPerMm();
        Optional<Section.Kind> found = Optional.empty();
        for (Section.Piece piece : section.pieces()) {
            for (Envelope area : piece.areas()) {
                Envelope near = new Envelope(area);
                near.expandBy(reach);
                if (near.contains(at)) {
                    found = Optional.of(piece.kind());
                }
            }
        }
        return found;
    }
}
