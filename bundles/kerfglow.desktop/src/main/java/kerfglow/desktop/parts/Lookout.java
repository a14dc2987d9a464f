// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.parts;

import kerfglow.desktop.desk.Desk;
import kerfglow.desktop.desk.Shown;
import kerfglow.desktop.scene.View;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.widgets.Canvas;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;

/** Where on the proof the canvas looks, and the ways from one view to another. */
public final class Lookout {
    private static final double KEY_FACTOR = Math.sqrt(2);
    private static final int FIT_MARGIN_PX = 24;
    /** A chosen place fills this much of the canvas... */
    private static final double CHOSEN_SHARE = 0.3;
    /** ...but at least this much of the sign is seen around it. */
    private static final double LEAST_SEEN_MM = 40;

    private final Canvas canvas;
    private final Desk desk;
    private final Flight flight;
    private View view = new View(1, 0, 0);
    private boolean fitted = true;

    Lookout(Canvas canvas, Desk desk) {
        this.canvas = canvas;
        this.desk = desk;
        flight = new Flight(canvas, this::show);
        canvas.addListener(SWT.Resize, event -> {
            if (fitted) {
                fit();
            }
        });
    }

    public View view() {
        return view;
    }

    /** Shows another part of the proof. */
    public void show(View next) {
        view = next;
        fitted = false;
        canvas.redraw();
    }

    /** Stays where it is, should it be on its way. */
    void stay() {
        flight.end();
    }

    /** Shows the whole page. */
    public void fit() {
        stay();
        Point size = canvas.getSize();
        Envelope extent = desk.scene().extent();
        show(View.fitting(desk.shown().old() == Shown.Old.BESIDE ? desk.old().both(extent) : extent, size.x, size.y, FIT_MARGIN_PX));
        fitted = true;
    }

    /** Zooms about a pixel. */
    void zoom(int x, int y, double factor) {
        stay();
        show(view.zoomedAbout(x, y, factor));
    }

    /** Zooms about the pointer, or about the middle when the pointer is elsewhere. */
    private void zoom(double factor) {
        Point pointer = canvas.toControl(canvas.getDisplay().getCursorLocation());
        Point size = canvas.getSize();
        boolean inside = canvas.getClientArea().contains(pointer);
        zoom(inside ? pointer.x : size.x / 2, inside ? pointer.y : size.y / 2, factor);
    }

    public void zoomIn() {
        zoom(KEY_FACTOR);
    }

    public void zoomOut() {
        zoom(1 / KEY_FACTOR);
    }

    /** The middle of what is seen, mm. */
    Coordinate middle() {
        Point size = canvas.getSize();
        return view.toMm(size.x / 2.0, size.y / 2.0);
    }

    /** Shows the sign as large as it will be, about the middle of what is seen. */
    public void showRealSize() {
        flyTo(middle(), desk.screen().pixelsPerMm());
    }

    /** Goes where a place of the proof is seen with what lies around it. */
    void flyTo(Envelope place) {
        Point size = canvas.getSize();
        double wanted = Math.max(LEAST_SEEN_MM, Math.max(place.getWidth(), place.getHeight()) / CHOSEN_SHARE);
        flyTo(place.centre(), Math.min(size.x, size.y) / wanted);
    }

    private void flyTo(Coordinate middle, double pixelsPerMm) {
        Point size = canvas.getSize();
        flight.begin(view, View.centred(middle, pixelsPerMm, size.x, size.y));
    }

    /**
     * Comes nearer to places that lie close together.
     *
     * @return false when no scale parts them
     */
    boolean comeNearer(Envelope places) {
        double across = Math.max(places.getWidth(), places.getHeight());
        if (across * View.MOST_PIXELS_PER_MM < 1 || view.pixelsPerMm() > View.MOST_PIXELS_PER_MM / 2) {
            return false;
        }
        Point size = canvas.getSize();
        Envelope around = new Envelope(places);
        around.expandBy(across * 0.2 + LEAST_SEEN_MM / 4);
        View nearer = View.fitting(around, size.x, size.y, FIT_MARGIN_PX);
        if (nearer.pixelsPerMm() > view.pixelsPerMm() * 1.5) {
            flight.begin(view, nearer);
        } else {
            flyTo(around.centre(), Math.min(View.MOST_PIXELS_PER_MM, view.pixelsPerMm() * 2));
        }
        return true;
    }
}
