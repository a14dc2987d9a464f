// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.paint;

import java.util.Optional;
import kerfglow.desktop.scene.View;
import kerfglow.desktop.section.Section;
import kerfglow.desktop.section.SectionLayout;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Color;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.graphics.Rectangle;
import org.locationtech.jts.geom.Envelope;

/** Paints the section as a drawing: what is cut is toned and hatched by its material, dimensions have extension lines and strokes at their ends. */
public final class SectionPainter {
    /** Half of the stroke that ends a dimension line (ISO 129-1 allows oblique strokes). */
    private static final int STROKE_PX = 3;
    /** An extension line goes on past its dimension line, and starts a little off the piece. */
    private static final int PAST_PX = 4;
    private static final int OFF_PX = 3;
    private static final int BEAM_ALPHA = 70;

    /**
     * Paints.
     *
     * @param chosenPiece the piece whose settings are shown
     * @param chosenMeasure the dimension that a key or the pointer is at, -1 for none
     */
    public void paint(GC gc, Section section, SectionLayout layout, Optional<Section.Kind> chosenPiece, int chosenMeasure, Palette palette) {
        gc.setAntialias(SWT.ON);
        gc.setForeground(palette.quiet);
        gc.drawString("Section " + layout.scale() + ", wall to the left", 10, 4, true);
        section.beams().forEach(beam -> paintBeam(gc, beam, layout.view(), palette));
        int order = 0;
        for (Section.Piece piece : section.pieces()) {
            boolean chosen = chosenPiece.filter(kind -> kind == piece.kind()).isPresent();
            for (Envelope area : piece.areas()) {
                paintArea(gc, piece, order, pixels(area, layout.view()), chosen, palette);
            }
            order++;
        }
        for (int i = 0; i < layout.lines().size(); i++) {
            paintLine(gc, layout.lines().get(i), i == chosenMeasure, palette);
        }
        for (int i = 0; i < layout.lines().size(); i++) { // texts last, so that no line crosses one
            paintText(gc, layout.lines().get(i), i == chosenMeasure, palette);
        }
        for (int i = 0; i < layout.rows().size(); i++) {
            paintRow(gc, section.measures().get(i).title(), layout.lines().get(i).text(), layout.rows().get(i), i == chosenMeasure, palette);
        }
    }

    private static Rectangle pixels(Envelope area, View view) {
        int left = (int) Math.round(view.toPixelX(area.getMinX()));
        int top = (int) Math.round(view.toPixelY(area.getMinY()));
        return new Rectangle(left, top, Math.max(2, (int) Math.round(view.toPixelX(area.getMaxX())) - left), Math.max(2, (int) Math.round(view.toPixelY(area.getMaxY())) - top));
    }

    private static void paintBeam(GC gc, Section.Beam beam, View view, Palette palette) {
        int from = (int) Math.round(view.toPixelX(beam.from().getMinX()));
        int to = (int) Math.round(view.toPixelX(beam.to().getMinX()));
        gc.setBackground(palette.light);
        gc.setAlpha(BEAM_ALPHA);
        gc.fillPolygon(new int[] {from, (int) Math.round(view.toPixelY(beam.from().getMinY())), to, (int) Math.round(view.toPixelY(beam.to().getMinY())), to,
            (int) Math.round(view.toPixelY(beam.to().getMaxY())), from, (int) Math.round(view.toPixelY(beam.from().getMaxY()))});
        gc.setAlpha(255);
    }

    private static void paintArea(GC gc, Section.Piece piece, int order, Rectangle at, boolean chosen, Palette palette) {
        gc.setBackground(switch (piece.stuff()) {
            case MASONRY -> palette.masonry;
            case METAL -> palette.metal;
            case PLASTIC -> palette.plastic;
            case FILM -> palette.accent;
            case DEVICE -> palette.device;
        });
        gc.fillRectangle(at);
        if (chosen) {
            gc.setBackground(palette.accent);
            gc.setAlpha(120);
            gc.fillRectangle(at);
            gc.setAlpha(255);
        }
        hatch(gc, piece.stuff(), order, at, palette);
        gc.setForeground(chosen ? palette.accent : palette.ink);
        gc.setLineWidth(chosen ? 2 : 1);
        if (piece.goesOn()) { // its ends are not its edges
            if (piece.kind() != Section.Kind.WALL) {
                gc.drawLine(at.x, at.y, at.x, at.y + at.height - 1);
            }
            gc.drawLine(at.x + at.width - 1, at.y, at.x + at.width - 1, at.y + at.height - 1);
        } else {
            gc.drawRectangle(at.x, at.y, at.width - 1, at.height - 1);
        }
    }

    /** Neighbours of one material are hatched the other way round (ISO 128-50); what is too thin for it is toned alone. */
    private static void hatch(GC gc, Section.Stuff stuff, int order, Rectangle at, Palette palette) {
        int step = switch (stuff) {
            case MASONRY -> 10;
            case METAL -> 4;
            case PLASTIC -> 9;
            case FILM, DEVICE -> 0;
        };
        if (step == 0 || Math.min(at.width, at.height) < step) {
            return;
        }
        Rectangle clip = gc.getClipping();
        gc.setClipping(at.intersection(clip));
        gc.setForeground(palette.quiet);
        gc.setLineWidth(1);
        boolean rising = order % 2 == 0;
        for (int d = -at.height; d < at.width; d += step) {
            gc.drawLine(at.x + d, rising ? at.y + at.height : at.y, at.x + d + at.height, rising ? at.y : at.y + at.height);
            if (stuff == Section.Stuff.MASONRY) { // pairs of lines
                gc.drawLine(at.x + d + 3, rising ? at.y + at.height : at.y, at.x + d + 3 + at.height, rising ? at.y : at.y + at.height);
            }
        }
        gc.setClipping(clip);
    }

    private static void paintLine(GC gc, SectionLayout.Line line, boolean chosen, Palette palette) {
        gc.setLineWidth(1);
        gc.setForeground(palette.quiet);
        if (line.isUpright()) {
            extension(gc, line.fromX(), line.y1(), line.x1(), line.y1());
            extension(gc, line.fromX(), line.y2(), line.x1(), line.y2());
        } else {
            extension(gc, line.x1(), line.fromY(), line.x1(), line.y1());
            extension(gc, line.x2(), line.fromY(), line.x2(), line.y2());
        }
        gc.setForeground(chosen ? palette.accent : palette.ink);
        gc.setLineWidth(chosen ? 2 : 1);
        gc.drawLine(line.x1(), line.y1(), line.x2(), line.y2());
        stroke(gc, line.x1(), line.y1());
        stroke(gc, line.x2(), line.y2());
        SectionLayout.Box room = line.room();
        if (!line.isUpright() && room.x() > line.x2()) { // its text stands beside it
            gc.drawLine(line.x2(), line.y2(), room.x() + room.width(), line.y2());
        } else if (!line.isUpright() && room.x() + room.width() < line.x1()) {
            gc.drawLine(room.x(), line.y1(), line.x1(), line.y1());
        } else if (line.isUpright() && room.y() + room.height() <= line.y1()) { // above it
            gc.drawLine(line.x1(), line.y1(), line.x1(), room.y() + room.height());
        }
    }

    private static void extension(GC gc, int fromX, int fromY, int toX, int toY) {
        int dx = Integer.signum(toX - fromX);
        int dy = Integer.signum(toY - fromY);
        if (dx != 0 || dy != 0) {
            gc.drawLine(fromX + dx * OFF_PX, fromY + dy * OFF_PX, toX + dx * PAST_PX, toY + dy * PAST_PX);
        }
    }

    private static void stroke(GC gc, int x, int y) {
        int width = gc.getLineWidth();
        gc.setLineWidth(2);
        gc.drawLine(x - STROKE_PX, y + STROKE_PX, x + STROKE_PX, y - STROKE_PX);
        gc.setLineWidth(width);
    }

    private static void paintText(GC gc, SectionLayout.Line line, boolean chosen, Palette palette) {
        SectionLayout.Box room = line.room();
        gc.setBackground(palette.ground);
        gc.setAlpha(225);
        gc.fillRectangle(room.x() - 2, room.y() + 1, room.width() + 4, room.height() - 2);
        gc.setAlpha(255);
        gc.setForeground(chosen ? palette.accent : palette.ink);
        gc.drawString(line.text(), room.x(), room.y(), true);
    }

    private static void paintRow(GC gc, String title, String value, SectionLayout.Box row, boolean chosen, Palette palette) {
        gc.setLineWidth(1);
        gc.setBackground(palette.field);
        gc.fillRectangle(row.x(), row.y(), row.width(), row.height());
        gc.setForeground(chosen ? palette.accent : palette.line);
        gc.drawRectangle(row.x(), row.y(), row.width() - 1, row.height() - 1);
        Point extent = gc.stringExtent(value);
        gc.setForeground(chosen ? palette.accent : palette.ink);
        Rectangle clip = gc.getClipping();
        gc.setClipping(new Rectangle(row.x(), row.y(), row.width() - extent.x - 12, row.height()).intersection(clip));
        gc.drawString(title, row.x() + 5, row.y() + 2, true);
        gc.setClipping(clip);
        gc.drawString(value, row.x() + row.width() - extent.x - 6, row.y() + 2, true);
    }
}
