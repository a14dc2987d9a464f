// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.paint;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import kerfglow.api.Quantity;
import kerfglow.api.Severity;
import kerfglow.api.UnitSystem;
import kerfglow.api.Units;
import kerfglow.desktop.closeup.Dimensions;
import kerfglow.desktop.desk.Choice;
import kerfglow.desktop.scene.Badges;
import kerfglow.desktop.scene.Outlines;
import kerfglow.desktop.scene.PlaceIndex;
import kerfglow.desktop.scene.View;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Color;
import org.eclipse.swt.graphics.Font;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Path;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.graphics.Rectangle;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;

/** Paints findings where they are, and the badges that name them. Weight shows in colour, in the kind of line and in the shape of the badge. */
public final class FindingPainter {
    /** Half the size of a badge, pixels. */
    public static final int BADGE_RADIUS_PX = 11;
    /** Markers nearer than a badge is wide gather. */
    public static final double GATHER_PX = 2.4 * BADGE_RADIUS_PX;
    /** Places smaller than this are shown by a ring around them. */
    private static final double SMALL_PX = 8;
    /** A ring and its casing reach this far from its place. */
    private static final int RING_PX = 12;
    /** A badge reaches this far from its marker, a gathered one with three figures farthest. */
    private static final int BADGE_REACH_PX = 5 * BADGE_RADIUS_PX;
    /** A dimension with its text reaches this far beyond its place. */
    private static final int LABEL_REACH_PX = 120;
    /** Shorter ones are two arrow heads and no line. */
    private static final double READABLE_PX = 18;
    private static final int AREA_ALPHA = 70;
    private static final int CASING_ALPHA = 180;

    /**
     * Paints the outlines of the places that a view meets. Numbers for the floor are no faults: they are drawn only when chosen. Places too
     * small to be seen get a ring, unless their badge stands for several.
     */
    public void paintPlaces(GC gc, PlaceIndex places, Set<Badges.Spot> gathered, View view, Rectangle exposed, Optional<Choice> choice, Palette palette) {
        gc.setAntialias(SWT.ON);
        Envelope seen = view.seen(exposed.x, exposed.y, exposed.width, exposed.height, RING_PX);
        for (PlaceIndex.Drawn place : places.meeting(seen)) {
            boolean chosen = choice.filter(each -> each.finding().id().equals(place.finding().id())).isPresent();
            if (chosen || place.finding().severity() != Severity.INFO) {
                paintPlace(gc, place, view, chosen, !gathered.contains(new Badges.Spot(place.finding().id(), place.place())), palette);
            }
        }
        if (places.hasSuggestions()) {
            places.meeting(seen).forEach(place -> place.suggestion()
                    .ifPresent(outlines -> paintSuggestion(gc, outlines, view, choice.filter(each -> each.finding().id().equals(place.finding().id())).isPresent(), palette)));
        }
        gc.setAlpha(255);
        gc.setLineStyle(SWT.LINE_SOLID);
    }

    /** The outline as it would be right: dashed, so that it is told from what was drawn without colour too. */
    static void paintSuggestion(GC gc, Outlines outlines, View view, boolean chosen, Palette palette) {
        Path path = Paths.path(gc.getDevice(), outlines.at(view.pixelsPerMm()), view);
        gc.setLineStyle(SWT.LINE_SOLID);
        gc.setAlpha(CASING_ALPHA);
        gc.setForeground(palette.casing);
        gc.setLineWidth(chosen ? 5 : 4);
        gc.drawPath(path);
        gc.setAlpha(255);
        gc.setForeground(palette.suggested);
        gc.setLineWidth(chosen ? 3 : 2);
        gc.setLineStyle(SWT.LINE_DASH);
        gc.drawPath(path);
        gc.setLineStyle(SWT.LINE_SOLID);
        path.dispose();
    }

    /** Paints measured lengths from wall to wall, where they are long enough on the screen to be read. */
    public void paintDimensions(GC gc, PlaceIndex places, Dimensions dimensions, View view, Rectangle exposed, UnitSystem units, Palette palette) {
        gc.setAntialias(SWT.ON);
        Envelope seen = view.seen(exposed.x, exposed.y, exposed.width, exposed.height, LABEL_REACH_PX);
        for (PlaceIndex.Drawn place : places.meeting(seen)) {
            Optional<Double> lengthMm = place.at().measured().or(place.finding()::measured).filter(measure -> measure.quantity() == Quantity.LENGTH).map(measure -> Math.abs(measure.value()));
            if (lengthMm.filter(mm -> mm * view.pixelsPerMm() >= READABLE_PX).isPresent()) { // what was measured is written, be the line a little longer
                String text = Units.format(lengthMm.get(), Quantity.LENGTH, units);
                dimensions.of(place.finding(), place.place()).ifPresent(dimension -> CloseUpPainter.paintDimension(gc, dimension, view, text, palette.of(place.finding().severity())));
            }
        }
    }

    private static void paintPlace(GC gc, PlaceIndex.Drawn place, View view, boolean chosen, boolean alone, Palette palette) {
        Color colour = palette.of(place.finding().severity());
        Envelope extent = place.at().shape().getEnvelopeInternal();
        if (Math.max(extent.getWidth(), extent.getHeight()) * view.pixelsPerMm() < SMALL_PX) {
            if (chosen || alone) {
                paintRing(gc, view, place.at().at(), chosen, colour, palette);
            }
            return;
        }
        List<Outlines.Line> lines = place.outlines().at(view.pixelsPerMm());
        Path path = Paths.path(gc.getDevice(), lines, view);
        try {
            if (place.isArea()) {
                gc.setAlpha(AREA_ALPHA);
                gc.setBackground(colour);
                gc.fillPath(path);
            }
            gc.setLineStyle(SWT.LINE_SOLID);
            gc.setAlpha(CASING_ALPHA);
            gc.setForeground(palette.casing);
            gc.setLineWidth(chosen ? 6 : 4);
            gc.drawPath(path);
            gc.setAlpha(255);
            gc.setForeground(colour);
            gc.setLineWidth(chosen ? 3 : 2);
            gc.setLineStyle(place.finding().severity() == Severity.STOP ? SWT.LINE_SOLID : place.finding().severity() == Severity.REVIEW ? SWT.LINE_DASH : SWT.LINE_DOT);
            gc.drawPath(path);
        } finally {
            path.dispose();
        }
    }

    private static void paintRing(GC gc, View view, Coordinate at, boolean chosen, Color colour, Palette palette) {
        int x = (int) Math.round(view.toPixelX(at.x));
        int y = (int) Math.round(view.toPixelY(at.y));
        int radius = chosen ? 8 : 5;
        gc.setAlpha(255);
        gc.setLineStyle(SWT.LINE_SOLID);
        gc.setForeground(palette.casing);
        gc.setLineWidth(4);
        gc.drawOval(x - radius, y - radius, 2 * radius, 2 * radius);
        gc.setForeground(colour);
        gc.setLineWidth(2);
        gc.drawOval(x - radius, y - radius, 2 * radius, 2 * radius);
    }

    /** Paints the badges that a view meets. */
    public void paintBadges(GC gc, List<Badges.Badge> badges, View view, Rectangle exposed, Optional<Choice> choice, Font font, Palette palette) {
        gc.setAntialias(SWT.ON);
        gc.setFont(font);
        Envelope seen = view.seen(exposed.x, exposed.y, exposed.width, exposed.height, BADGE_REACH_PX);
        for (Badges.Badge badge : badges) {
            if (seen.contains(badge.xMm(), badge.yMm())) {
                boolean chosen = choice.filter(each -> badge.markers().stream().anyMatch(marker -> marker.finding().equals(each.finding().id()))).isPresent();
                Point at = place(badge, view);
                if (badge.markers().size() == 1) {
                    paintBadge(gc, at.x, at.y, badge.severity(), Integer.toString(badge.markers().get(0).number()), chosen, palette);
                } else {
                    paintGathered(gc, at.x, at.y, badge, chosen, palette);
                }
            }
        }
    }

    /** Where a badge is drawn: up and to the right of its marker, so that it does not hide it. */
    public static Point place(Badges.Badge badge, View view) {
        return new Point((int) Math.round(view.toPixelX(badge.xMm())) + BADGE_RADIUS_PX + 3, (int) Math.round(view.toPixelY(badge.yMm())) - BADGE_RADIUS_PX - 3);
    }

    /** Paints one badge with a text: a disc for stop, a square on its tip for review, an upright square for info. */
    public static void paintBadge(GC gc, int x, int y, Severity severity, String text, boolean chosen, Palette palette) {
        int r = BADGE_RADIUS_PX;
        gc.setBackground(palette.of(severity));
        gc.setForeground(chosen ? palette.accent : palette.casing);
        gc.setLineWidth(chosen ? 4 : 2);
        switch (severity) {
            case STOP -> {
                gc.fillOval(x - r, y - r, 2 * r, 2 * r);
                gc.drawOval(x - r, y - r, 2 * r, 2 * r);
            }
            case REVIEW -> {
                int reach = r * 4 / 3;
                int[] tips = {x, y - reach, x + reach, y, x, y + reach, x - reach, y};
                gc.fillPolygon(tips);
                gc.drawPolygon(tips);
            }
            case INFO -> {
                gc.fillRectangle(x - r + 1, y - r + 1, 2 * r - 2, 2 * r - 2);
                gc.drawRectangle(x - r + 1, y - r + 1, 2 * r - 2, 2 * r - 2);
            }
        }
        centre(gc, text, x, y, palette);
    }

    private static void paintGathered(GC gc, int x, int y, Badges.Badge badge, boolean chosen, Palette palette) {
        String text = "\u00d7" + badge.markers().size();
        int half = Math.max(BADGE_RADIUS_PX, gc.stringExtent(text).x / 2 + 6);
        int r = BADGE_RADIUS_PX - 1;
        gc.setLineWidth(2);
        for (int deck = 4; deck >= 0; deck -= 4) { // two decks: several lie below one another
            gc.setBackground(palette.of(badge.severity()));
            gc.setForeground(chosen && deck == 0 ? palette.accent : palette.casing);
            gc.fillRoundRectangle(x - half + deck, y - r - deck, 2 * half, 2 * r, 8, 8);
            gc.drawRoundRectangle(x - half + deck, y - r - deck, 2 * half, 2 * r, 8, 8);
        }
        centre(gc, text, x, y, palette);
    }

    private static void centre(GC gc, String text, int x, int y, Palette palette) {
        Point extent = gc.stringExtent(text);
        gc.setForeground(palette.casing);
        gc.drawString(text, x - extent.x / 2, y - extent.y / 2, true);
    }
}
