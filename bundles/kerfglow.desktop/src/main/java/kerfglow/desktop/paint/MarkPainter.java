// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.paint;

import java.util.List;
import kerfglow.api.Quantity;
import kerfglow.api.UnitSystem;
import kerfglow.api.Units;
import kerfglow.desktop.desk.MarkGrips;
import kerfglow.desktop.scene.Outlines;
import kerfglow.desktop.scene.View;
import kerfglow.job.Mark;
import kerfglow.job.MarkShape;
import kerfglow.job.PointMm;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Color;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Path;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.graphics.Rectangle;
import org.locationtech.jts.geom.Envelope;

/** Paints reviewers' marks with their text; settled ones with broken lines. */
public final class MarkPainter {
    private static final int HEAD_PX = 12;
    private static final int NOTE_PX = 7;
    private static final int GRIP_PX = 4;
    private static final int FRAME_PX = 14;
    private static final int TEXT_REACH_PX = 320;
    private static final int MOST_LETTERS = 48;

    private MarkPainter() {
    }

    public static void paint(GC gc, List<Mark> marks, View view, Rectangle exposed, UnitSystem units, Palette palette) {
        gc.setAntialias(SWT.ON);
        gc.setFont(null); // the window's own, whatever was painted before
        Envelope seen = view.seen(exposed.x, exposed.y, exposed.width, exposed.height, TEXT_REACH_PX);
        for (Mark mark : marks) {
            if (seen.intersects(mark.shape().outline().getEnvelopeInternal())) {
                paintShape(gc, mark.shape(), view, palette.mark, mark.settled().isPresent());
                paintText(gc, mark, view, units, palette);
            }
        }
    }

    /** The mark that a hand has chosen, with its grips; one without grips wears a frame. */
    public static void paintChosen(GC gc, Mark mark, int grip, View view, UnitSystem units, Palette palette) {
        gc.setAntialias(SWT.ON);
        paintShape(gc, mark.shape(), view, palette.mark, mark.settled().isPresent());
        paintText(gc, mark, view, units, palette);
        List<PointMm> grips = MarkGrips.of(mark.shape());
        for (int i = 0; i < grips.size(); i++) {
            paintGrip(gc, (int) Math.round(view.toPixelX(grips.get(i).xMm())), (int) Math.round(view.toPixelY(grips.get(i).yMm())), i == grip, palette);
        }
        if (grips.isEmpty()) {
            Envelope extent = mark.shape().outline().getEnvelopeInternal();
            int left = (int) Math.round(view.toPixelX(extent.getMinX())) - FRAME_PX;
            int top = (int) Math.round(view.toPixelY(extent.getMinY())) - FRAME_PX;
            gc.setForeground(palette.mark);
            gc.setLineWidth(1);
            gc.setLineStyle(SWT.LINE_DOT);
            gc.drawRectangle(left, top, (int) Math.round(view.toPixelX(extent.getMaxX())) + FRAME_PX - left, (int) Math.round(view.toPixelY(extent.getMaxY())) + FRAME_PX - top);
            gc.setLineStyle(SWT.LINE_SOLID);
        }
    }

    private static void paintGrip(GC gc, int x, int y, boolean chosen, Palette palette) {
        int half = chosen ? GRIP_PX + 1 : GRIP_PX;
        gc.setLineWidth(2);
        gc.setForeground(palette.mark);
        gc.setBackground(chosen ? palette.mark : palette.page);
        gc.fillRectangle(x - half, y - half, 2 * half + 1, 2 * half + 1);
        gc.drawRectangle(x - half, y - half, 2 * half + 1, 2 * half + 1);
    }

    /** The shape alone, for a mark that is being drawn. */
    public static void paintShape(GC gc, MarkShape shape, View view, Color colour, boolean broken) {
        for (int layer = 0; layer < 2; layer++) { // a pale casing, then the ink
            gc.setForeground(layer == 0 ? Palette.colour(0xffffff) : colour);
            gc.setBackground(gc.getForeground());
            gc.setLineWidth(layer == 0 ? 5 : 2);
            gc.setLineStyle(broken && layer == 1 ? SWT.LINE_DASH : SWT.LINE_SOLID);
            Path path = Paths.path(gc.getDevice(), Outlines.of(shape.outline()).at(view.pixelsPerMm()), view);
            gc.drawPath(path);
            path.dispose();
            if (shape instanceof MarkShape.Note note) {
                int x = (int) Math.round(view.toPixelX(note.at().xMm()));
                int y = (int) Math.round(view.toPixelY(note.at().yMm()));
                gc.drawLine(x - NOTE_PX, y, x + NOTE_PX, y);
                gc.drawLine(x, y - NOTE_PX, x, y + NOTE_PX);
            } else if (shape instanceof MarkShape.Arrow arrow) {
                head(gc, view, arrow.from().xMm(), arrow.from().yMm(), arrow.tip().xMm(), arrow.tip().yMm());
            } else if (shape instanceof MarkShape.Dimension line) {
                head(gc, view, line.from().xMm(), line.from().yMm(), line.to().xMm(), line.to().yMm());
                head(gc, view, line.to().xMm(), line.to().yMm(), line.from().xMm(), line.from().yMm());
            }
        }
        gc.setLineStyle(SWT.LINE_SOLID);
    }

    private static void head(GC gc, View view, double fromX, double fromY, double tipX, double tipY) {
        double x = view.toPixelX(tipX);
        double y = view.toPixelY(tipY);
        double dx = view.toPixelX(fromX) - x;
        double dy = view.toPixelY(fromY) - y;
        double length = Math.hypot(dx, dy);
        if (length > 0) {
            dx *= HEAD_PX / length;
            dy *= HEAD_PX / length;
            gc.setLineStyle(SWT.LINE_SOLID);
            gc.drawLine((int) Math.round(x), (int) Math.round(y), (int) Math.round(x + dx - dy * 0.4), (int) Math.round(y + dy + dx * 0.4));
            gc.drawLine((int) Math.round(x), (int) Math.round(y), (int) Math.round(x + dx + dy * 0.4), (int) Math.round(y + dy - dx * 0.4));
        }
    }

    private static void paintText(GC gc, Mark mark, View view, UnitSystem units, Palette palette) {
        String length = mark.shape() instanceof MarkShape.Dimension line ? Units.format(line.lengthMm(), Quantity.LENGTH, units) : "";
        String text = mark.text().length() > MOST_LETTERS ? mark.text().substring(0, MOST_LETTERS) + "\u2026" : mark.text();
        String all = (length + (length.isEmpty() || text.isEmpty() ? "" : "  ") + text).replace('\n', ' ') + (mark.settled().isPresent() ? "  (settled)" : "");
        if (all.isBlank()) {
            return;
        }
        int x = (int) Math.round(view.toPixelX(mark.shape().anchor().xMm())) + NOTE_PX + 4;
        int y = (int) Math.round(view.toPixelY(mark.shape().anchor().yMm())) + 4;
        Point extent = gc.stringExtent(all);
        gc.setBackground(palette.page);
        gc.setForeground(palette.mark);
        gc.setLineWidth(1);
        gc.fillRectangle(x - 4, y - 1, extent.x + 8, extent.y + 2);
        gc.drawRectangle(x - 4, y - 1, extent.x + 8, extent.y + 2);
        gc.drawString(all, x, y, true);
    }
}
