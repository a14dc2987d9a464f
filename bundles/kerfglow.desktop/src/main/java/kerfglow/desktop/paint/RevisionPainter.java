// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.paint;

import java.util.List;
import kerfglow.desktop.desk.Shown;
import kerfglow.desktop.scene.OldRevision;
import kerfglow.desktop.scene.View;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Path;
import org.eclipse.swt.graphics.Rectangle;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;

/** Paints the revision before: over the new one the outlines that are no more, with broken lines; beside it all of them. */
public final class RevisionPainter {
    private static final int CHANGE_ALPHA = 80;
    private static final int REACH_PX = 8;
    private static final int CASING_PX = 5;
    private static final int LEAST_FRAME_PX = 24;

    private RevisionPainter() {
    }

    /**
     * Paints.
     *
     * @param young what the new revision takes up, mm
     */
    public static void paint(GC gc, OldRevision old, Shown.Old how, Envelope young, View view, Rectangle exposed, Palette palette) {
        if (how == Shown.Old.NOT || old.isEmpty()) {
            return;
        }
        gc.setAntialias(SWT.ON);
        changes(gc, old, view, exposed, palette);
        if (how == Shown.Old.OVER) {
            lines(gc, old.outlines().stream().filter(OldRevision.Line::changed).toList(), view, exposed, palette, SWT.LINE_DASH);
            gone(gc, old, view, palette);
            return;
        }
        Coordinate by = old.besides(young);
        View beside = new View(view.pixelsPerMm(), view.leftMm() - by.x, view.topMm() - by.y);
        Envelope paper = new Envelope(old.extent());
        paper.expandToInclude(young);
        int left = (int) Math.round(beside.toPixelX(paper.getMinX()));
        int top = (int) Math.round(beside.toPixelY(paper.getMinY()));
        gc.setBackground(palette.page);
        gc.fillRectangle(left, top, (int) Math.round(beside.toPixelX(paper.getMaxX())) - left, (int) Math.round(beside.toPixelY(paper.getMaxY())) - top);
        changes(gc, old, beside, exposed, palette);
        lines(gc, old.outlines(), beside, exposed, palette, SWT.LINE_SOLID);
        gone(gc, old, beside, palette);
        gc.setForeground(palette.mark);
        gc.drawString("the revision before", left + REACH_PX, top + REACH_PX, true);
    }

    /** A dotted frame where a finding was, wide enough to be seen from any height. */
    private static void gone(GC gc, OldRevision old, View view, Palette palette) {
        for (Envelope place : old.gone()) {
            int width = (int) Math.round(Math.max(LEAST_FRAME_PX, place.getWidth() * view.pixelsPerMm() + 2 * REACH_PX));
            int height = (int) Math.round(Math.max(LEAST_FRAME_PX, place.getHeight() * view.pixelsPerMm() + 2 * REACH_PX));
            int left = (int) Math.round(view.toPixelX(place.centre().x)) - width / 2;
            int top = (int) Math.round(view.toPixelY(place.centre().y)) - height / 2;
            gc.setForeground(palette.casing);
            gc.setLineWidth(CASING_PX);
            gc.setLineStyle(SWT.LINE_SOLID);
            gc.drawRoundRectangle(left, top, width, height, REACH_PX, REACH_PX);
            gc.setForeground(palette.mark);
            gc.setLineWidth(2);
            gc.setLineStyle(SWT.LINE_DOT);
            gc.drawRoundRectangle(left, top, width, height, REACH_PX, REACH_PX);
        }
        gc.setLineStyle(SWT.LINE_SOLID);
    }

    private static void changes(GC gc, OldRevision old, View view, Rectangle exposed, Palette palette) {
        gc.setBackground(palette.mark);
        gc.setAlpha(CHANGE_ALPHA);
        Envelope seen = view.seen(exposed.x, exposed.y, exposed.width, exposed.height, REACH_PX);
        for (OldRevision.Line change : old.changes()) {
            if (seen.intersects(change.extent())) {
                Path path = Paths.path(gc.getDevice(), change.outlines().at(view.pixelsPerMm()), view);
                gc.fillPath(path);
                path.dispose();
            }
        }
        gc.setAlpha(255);
    }

    private static void lines(GC gc, List<OldRevision.Line> lines, View view, Rectangle exposed, Palette palette, int style) {
        Envelope seen = view.seen(exposed.x, exposed.y, exposed.width, exposed.height, REACH_PX);
        for (OldRevision.Line line : lines) {
            if (seen.intersects(line.extent())) {
                Path path = Paths.path(gc.getDevice(), line.outlines().at(view.pixelsPerMm()), view);
                gc.setForeground(palette.casing); // told apart from artwork of any colour
                gc.setLineWidth(CASING_PX);
                gc.setLineStyle(SWT.LINE_SOLID);
                gc.drawPath(path);
                gc.setForeground(palette.mark);
                gc.setLineWidth(line.changed() ? 2 : 1);
                gc.setLineStyle(line.changed() ? style : SWT.LINE_SOLID);
                gc.drawPath(path);
                path.dispose();
            }
        }
        gc.setLineStyle(SWT.LINE_SOLID);
    }
}
