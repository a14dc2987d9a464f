// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.parts;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import kerfglow.desktop.closeup.Dimensions;
import kerfglow.desktop.desk.Desk;
import kerfglow.desktop.paint.Backing;
import kerfglow.desktop.paint.FindingPainter;
import kerfglow.desktop.paint.LegendPainter;
import kerfglow.desktop.paint.MarkPainter;
import kerfglow.desktop.paint.OverlayPainter;
import kerfglow.desktop.paint.Palette;
import kerfglow.desktop.paint.RevisionPainter;
import kerfglow.desktop.paint.RulerPainter;
import kerfglow.desktop.paint.ScenePainter;
import kerfglow.desktop.scene.Badges;
import kerfglow.desktop.scene.OverlayDrawing;
import kerfglow.desktop.scene.PlaceIndex;
import kerfglow.desktop.scene.View;
import kerfglow.host.Result;
import kerfglow.job.FindingItem;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Font;
import org.eclipse.swt.graphics.FontData;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.widgets.Canvas;
import org.eclipse.swt.widgets.Listener;

/** What is seen on the proof's canvas: artwork, overlays, findings, marks, rulers, prepared once for each change of the desk. Must be disposed. */
final class ProofPicture {
    private static final double PERCENT = 100;

    private final Canvas canvas;
    private final Desk desk;
    private final ScenePainter scenePainter = new ScenePainter();
    private final FindingPainter findingPainter = new FindingPainter();
    private final OverlayPainter overlayPainter = new OverlayPainter();
    private final RulerPainter rulerPainter = new RulerPainter();
    private final Backing backing = new Backing();
    private final Font badgeFont;
    private final Font rulerFont;
    private final Listener zoomed = event -> askZoom();
    private Palette palette;
    private List<OverlayDrawing> overlays = List.of();
    private Dimensions dimensions = new Dimensions(List.of());
    private PlaceIndex places = new PlaceIndex(List.of());
    private List<Badges.Badge> badges = List.of();
    private Set<Badges.Spot> gathered = Set.of();
    private double gatheredFor;
    /** Pixels of the screen that make one of the canvas; asked for seldom, since the toolkit asks the system about every screen, which takes longer than painting. */
    private int zoom;

    ProofPicture(Canvas canvas, Desk desk) {
        this.canvas = canvas;
        this.desk = desk;
        palette = Palette.of(desk.isDark());
        askZoom();
        canvas.addListener(SWT.Resize, event -> askZoom());
        canvas.getShell().addListener(SWT.ZoomChanged, zoomed);
        FontData data = canvas.getFont().getFontData()[0];
        badgeFont = new Font(canvas.getDisplay(), data.getName(), Math.max(7, data.getHeight() - 2), SWT.BOLD);
        rulerFont = new Font(canvas.getDisplay(), data.getName(), Math.max(6, data.getHeight() - 3), SWT.NORMAL);
    }

    private void askZoom() {
        zoom = Math.max(1, (int) Math.ceil(canvas.getMonitor().getZoom() / PERCENT));
    }

    /** Paints a view; the pointer's place shows on the rulers. */
    void paint(GC gc, View view, Point size, Point pointer, Optional<PointerTool> tool) {
        backing.paint(gc, view, size, zoom, this::paintExposed);
        desk.marks().chosen().ifPresent(mark -> MarkPainter.paintChosen(gc, mark, desk.marks().grip(), view, desk.units(), palette));
        tool.ifPresent(each -> each.paint(gc, view, palette));
        gc.setFont(null);
        LegendPainter.paint(gc, shownOverlays(), desk.shown().isFindings() && places.hasSuggestions(), size, palette);
        if (desk.shown().isRulers()) {
            gc.setFont(rulerFont);
            rulerPainter.paint(gc, view, size, desk.units(), pointer, palette);
        }
    }

    private void paintExposed(GC gc, View view, Rectangle exposed) {
        gc.setBackground(palette.surround);
        gc.fillRectangle(exposed);
        scenePainter.paint(gc, desk.scene(), view, exposed, desk.shown()::shows, desk.shown().isEdgesAlone(), palette);
        overlayPainter.paint(gc, shownOverlays(), view, exposed, palette);
        RevisionPainter.paint(gc, desk.old(), desk.shown().old(), desk.scene().extent(), view, exposed, palette);
        if (desk.shown().isFindings()) {
            List<Badges.Badge> shown = badges(view);
            findingPainter.paintPlaces(gc, places, gathered, view, exposed, desk.findings().choice(), palette);
            findingPainter.paintDimensions(gc, places, dimensions, view, exposed, desk.units(), palette);
            findingPainter.paintBadges(gc, shown, view, exposed, desk.findings().choice(), badgeFont, palette);
        }
        MarkPainter.paint(gc, desk.marks().others(), view, exposed, desk.units(), palette);
    }

    private List<OverlayDrawing> shownOverlays() {
        return overlays.stream().filter(each -> desk.shown().showsOverlay(each.name())).toList();
    }

    /** Something is seen differently, be it in the same view. */
    void forget() {
        palette = Palette.of(desk.isDark());
        backing.forget();
    }

    /** Other findings are to be seen. */
    void prepareFindings() {
        List<Result.ReportedFinding> listed = desk.findings().listed().stream().map(FindingItem::finding).toList();
        dimensions = dimensions.with(desk.parts(), listed);
        List<OverlayDrawing> before = overlays;
        overlays = desk.result().map(result -> OverlayDrawing.of(result, before)).orElse(List.of());
        overlayPainter.keepOnly(overlays);
        places = places.with(listed);
        gatheredFor = 0;
        forget();
    }

    /** The badges at the scale of a view. */
    List<Badges.Badge> badges(View view) {
        if (gatheredFor != view.pixelsPerMm()) {
            gatheredFor = view.pixelsPerMm();
            badges = Badges.gather(desk.findings().markers(), gatheredFor, FindingPainter.GATHER_PX);
            gathered = Badges.gathered(badges);
        }
        return badges;
    }

    PlaceIndex places() {
        return places;
    }

    void dispose() {
        canvas.getShell().removeListener(SWT.ZoomChanged, zoomed);
        backing.dispose();
        overlayPainter.dispose();
        badgeFont.dispose();
        rulerFont.dispose();
    }
}
