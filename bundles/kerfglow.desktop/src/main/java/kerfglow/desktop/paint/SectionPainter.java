// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.paint;

import java.util.Optional;
import kerfglow.api.Quantity;
import kerfglow.api.UnitSystem;
import kerfglow.api.Units;
import kerfglow.desktop.scene.View;
import kerfglow.desktop.section.Section;
import kerfglow.desktop.section.SectionLayout;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Color;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.graphics.Rectangle;
import org.locationtech.jts.geom.Envelope;

/** Paints the section: cut faces hatched, each kind in a direction and width of its own, dimensions with their labels. */
public final class SectionPainter {
    private static final int ARROW_PX = 4;

    /**
     * Paints.
     *
     * @param chosenPiece the piece whose settings are shown
     * @param chosenMeasure the dimension that a key would change, -1 for none
     */
    public void paint(GC gc, Section section, SectionLayout layout, Optional<Section.Kind> chosenPiece, int chosenMeasure, UnitSystem units, Palette palette) {
        gc.setAntialias(SWT.ON);
        gc.setForeground(palette.quiet);
        gc.drawString("Section, scale " + layout.scale() + ", wall to the left", 10, 6, true);
        for (Section.Piece piece : section.pieces()) {
            for (Envelope area : piece.areas()) {
                paintPiece(gc, piece.kind(), area, layout.view(), chosenPiece.filter(kind -> kind == piece.kind()).isPresent(), palette);
            }
        }
        for (int i = 0; i < section.measures().size(); i++) {
            paintMeasure(gc, section.measures().get(i), String.valueOf((char) ('a' + i)), layout.labels().get(i), layout.view(), i == chosenMeasure, units, palette);
        }
    }

    private static void paintPiece(GC gc, Section.Kind kind, Envelope area, View view, boolean chosen, Palette palette) {
        int left = (int) Math.round(view.toPixelX(area.getMinX()));
        int top = (int) Math.round(view.toPixelY(area.getMinY()));
        int width = Math.max(2, (int) Math.round(view.toPixelX(area.getMaxX())) - left);
        int height = Math.max(2, (int) Math.round(view.toPixelY(area.getMaxY())) - top);
        gc.setBackground(chosen ? palette.accent : palette.field);
        gc.setAlpha(chosen ? 110 : 255);
        gc.fillRectangle(left, top, width, height);
        gc.setAlpha(255);
        Rectangle clip = gc.getClipping();
        gc.setClipping(left, top, width, height);
        gc.setForeground(palette.quiet);
        gc.setLineWidth(1);
        int step = switch (kind) {
            case WALL -> 9;
            case BACK, PANEL -> 4;
            case CAN -> 3;
            case FACE -> 6;
            case MODULE, MOULDING, FILM -> 0;
        };
        boolean rising = kind == Section.Kind.WALL || kind == Section.Kind.BACK || kind == Section.Kind.PANEL;
        for (int d = -height; step > 0 && d < width; d += step) {
            gc.drawLine(left + d, rising ? top + height : top, left + d + height, rising ? top : top + height);
        }
        if (step == 0) { // solid: too thin for hatching
            gc.setBackground(palette.quiet);
            gc.fillRectangle(left, top, width, height);
        }
        gc.setClipping(clip);
        gc.setForeground(palette.ink);
        gc.setLineWidth(chosen ? 2 : 1);
        gc.drawRectangle(left, top, width - 1, height - 1);
    }

    private static void paintMeasure(GC gc, Section.Measure measure, String letter, SectionLayout.Label label, View view, boolean chosen, UnitSystem units, Palette palette) {
        int x1 = (int) Math.round(view.toPixelX(measure.along().getMinX()));
        int y1 = (int) Math.round(view.toPixelY(measure.along().getMinY()));
        int x2 = (int) Math.round(view.toPixelX(measure.along().getMaxX()));
        int y2 = (int) Math.round(view.toPixelY(measure.along().getMaxY()));
        Color ink = chosen ? palette.accent : palette.ink;
        gc.setForeground(ink);
        gc.setLineWidth(chosen ? 3 : 2);
        gc.drawLine(x1, y1, x2, y2);
        gc.drawLine(x1 - (y1 == y2 ? 0 : ARROW_PX), y1 - (y1 == y2 ? ARROW_PX : 0), x1 + (y1 == y2 ? 0 : ARROW_PX), y1 + (y1 == y2 ? ARROW_PX : 0));
        gc.drawLine(x2 - (y1 == y2 ? 0 : ARROW_PX), y2 - (y1 == y2 ? ARROW_PX : 0), x2 + (y1 == y2 ? 0 : ARROW_PX), y2 + (y1 == y2 ? ARROW_PX : 0));
        gc.setLineWidth(1);
        Point letterSize = gc.stringExtent(letter);
        boolean across = y1 == y2;
        int letterX = across ? (x1 + x2 - letterSize.x) / 2 : Math.max(x1, x2) + ARROW_PX + 3;
        int letterY = across ? y1 - letterSize.y - ARROW_PX : (y1 + y2 - letterSize.y) / 2;
        gc.drawString(letter, letterX, letterY, true);
        if (chosen) {
            gc.setLineStyle(SWT.LINE_DOT);
            gc.drawLine((x1 + x2) / 2, (y1 + y2) / 2, label.x() + label.width() - 4, label.y());
            gc.setLineStyle(SWT.LINE_SOLID);
        }
        gc.setBackground(palette.field);
        gc.fillRectangle(label.x(), label.y(), label.width(), label.height());
        gc.setForeground(chosen ? palette.accent : palette.line);
        gc.drawRectangle(label.x(), label.y(), label.width() - 1, label.height() - 1);
        String value = Units.format(measure.valueMm(), Quantity.LENGTH, units);
        Point extent = gc.stringExtent(value);
        gc.setForeground(ink);
        gc.setClipping(label.x(), label.y(), label.width() - extent.x - 12, label.height());
        gc.drawString(letter + "  " + measure.title(), label.x() + 5, label.y() + 2, true);
        gc.setClipping((Rectangle) null);
        gc.drawString(value, label.x() + label.width() - extent.x - 6, label.y() + 2, true);
    }
}
