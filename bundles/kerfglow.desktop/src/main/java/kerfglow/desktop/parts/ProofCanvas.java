// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.parts;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import kerfglow.desktop.desk.Choice;
import kerfglow.desktop.desk.Desk;
import kerfglow.desktop.desk.Shown;
import kerfglow.desktop.desk.Topic;
import kerfglow.desktop.paint.FindingPainter;
import kerfglow.desktop.paint.RulerPainter;
import kerfglow.desktop.scene.Badges;
import kerfglow.desktop.scene.View;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.widgets.Canvas;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Event;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;

/**
 * The proof with the findings on it. The only place where events of pointer and keys become movements of the view. Wheel zooms to the
 * pointer, dragging moves; keys are told in the menu.
 */
public final class ProofCanvas {
    /** Twice as large in five notches of the wheel. */
    private static final double WHEEL_FACTOR = Math.pow(2, 0.2);
    private static final double KEY_FACTOR = Math.sqrt(2);
    /** A press that moves less than this chooses, one that moves more pulls the drawing. */
    private static final int CLICK_PX = 4;
    private static final int KEY_STEP_PX = 60;
    private static final int MIDDLE_PX = 14;
    private static final int FIT_MARGIN_PX = 24;
    /** A chosen place fills this much of the canvas... */
    private static final double CHOSEN_SHARE = 0.3;
    /** ...but at least this much of the sign is seen around it. */
    private static final double LEAST_SEEN_MM = 40;

    private final Desk desk;
    private final Canvas canvas;
    private final List<Consumer<View>> viewListeners = new ArrayList<>();
    private final List<Consumer<Optional<Coordinate>>> pointerListeners = new ArrayList<>();
    private final ProofPicture picture;
    private final Flight flight;
    private View view = new View(1, 0, 0);
    private boolean fitted = true;
    private Envelope shownExtent = new Envelope();
    private Optional<PointerTool> tool = Optional.empty();
    private final List<Runnable> toolListeners = new ArrayList<>();
    private Point pressed;
    private Point last = new Point(-1, -1);
    private boolean dragging;
    private boolean toolHeld;
    private boolean keyed;

    public ProofCanvas(Composite parent, Desk desk) {
        this.desk = desk;
        canvas = new Canvas(parent, SWT.DOUBLE_BUFFERED | SWT.NO_BACKGROUND);
        Accessible.name(canvas, "Proof with findings; arrow keys move, plus and minus zoom, N and P go through the findings");
        picture = new ProofPicture(canvas, desk);
        flight = new Flight(canvas, this::show);
        canvas.addListener(SWT.Dispose, event -> picture.dispose());
        canvas.addListener(SWT.Paint, event -> {
            picture.paint(event.gc, view, canvas.getSize(), last, tool);
            if (keyed && tool.isPresent()) {
                paintMiddle(event.gc);
            }
        });
        canvas.addListener(SWT.Resize, event -> {
            if (fitted) {
                fit();
            }
        });
        canvas.addListener(SWT.MouseWheel, event -> zoom(event.x, event.y, Math.pow(WHEEL_FACTOR, Integer.signum(event.count))));
        canvas.addListener(SWT.MouseDown, this::press);
        canvas.addListener(SWT.MouseMove, this::move);
        canvas.addListener(SWT.MouseUp, this::release);
        canvas.addListener(SWT.MouseExit, event -> {
            last = new Point(-1, -1);
            pointerListeners.forEach(each -> each.accept(Optional.empty()));
            canvas.redraw();
        });
        canvas.addListener(SWT.KeyDown, this::key);
        Listening.to(desk, canvas, Topic.PROOF, this::showProof);
        Listening.to(desk, canvas, Topic.FINDINGS, this::showFindings);
        Listening.to(desk, canvas, Topic.LISTED, this::showFindings);
        Listening.to(desk, canvas, Topic.SHOWN, this::paintAnew);
        Listening.to(desk, canvas, Topic.CHOICE, this::flyToChoice);
        Listening.to(desk, canvas, Topic.JOB, this::paintAnew);
        Listening.to(desk, canvas, Topic.AIM, () -> flyTo(desk.aim()));
        Listening.to(desk, canvas, Topic.LOOK, this::paintAnew);
    }

    public Canvas control() {
        return canvas;
    }

    public View view() {
        return view;
    }

    /** Told whenever the view changes. */
    public void onView(Consumer<View> listener) {
        viewListeners.add(listener);
    }

    /** Told where on the proof the pointer stands, mm; empty when it leaves. */
    public void onPointer(Consumer<Optional<Coordinate>> listener) {
        pointerListeners.add(listener);
    }

    /** Where a tool works that is used by keys. */
    private void paintMiddle(GC gc) {
        Point size = canvas.getSize();
        gc.setForeground(canvas.getDisplay().getSystemColor(SWT.COLOR_BLACK));
        gc.setLineWidth(1);
        gc.drawLine(size.x / 2 - MIDDLE_PX, size.y / 2, size.x / 2 + MIDDLE_PX, size.y / 2);
        gc.drawLine(size.x / 2, size.y / 2 - MIDDLE_PX, size.x / 2, size.y / 2 + MIDDLE_PX);
    }

    /** Another proof is shown whole; the same one, read or checked again, stays as it is seen. */
    private void showProof() {
        picture.forget();
        if (desk.scene().extent().equals(shownExtent)) {
            canvas.redraw();
        } else {
            shownExtent = desk.scene().extent();
            fit();
        }
    }

    private void showFindings() {
        picture.prepareFindings();
        canvas.redraw();
    }

    /** Something on the proof changed, be it the same view. */
    private void paintAnew() {
        picture.forget();
        canvas.redraw();
    }

    /** Shows another part of the proof. */
    public void show(View next) {
        view = next;
        fitted = false;
        canvas.redraw();
        viewListeners.forEach(each -> each.accept(view));
    }

    /** Shows the whole page. */
    public void fit() {
        flight.end();
        Point size = canvas.getSize();
        Envelope extent = desk.scene().extent();
        show(View.fitting(desk.shown().old() == Shown.Old.BESIDE ? desk.old().both(extent) : extent, size.x, size.y, FIT_MARGIN_PX));
        fitted = true;
    }

    /** Zooms about a pixel. */
    public void zoom(int x, int y, double factor) {
        flight.end();
        show(view.zoomedAbout(x, y, factor));
    }

    /** Zooms about the pointer, or about the middle when the pointer is elsewhere. */
    public void zoom(double factor) {
        Point size = canvas.getSize();
        boolean inside = last.x >= 0;
        zoom(inside ? last.x : size.x / 2, inside ? last.y : size.y / 2, factor);
    }

    /** Shows the sign as large as it will be, about the middle of what is seen. */
    public void showRealSize() {
        Point size = canvas.getSize();
        flyTo(View.centred(view.toMm(size.x / 2.0, size.y / 2.0), desk.screen().pixelsPerMm(), size.x, size.y));
    }

    public void zoomIn() {
        zoom(KEY_FACTOR);
    }

    public void zoomOut() {
        zoom(1 / KEY_FACTOR);
    }

    private void flyToChoice() {
        paintAnew();
        desk.choice().flatMap(Choice::at).ifPresent(place -> flyTo(place.shape().getEnvelopeInternal()));
    }

    private void flyTo(Envelope place) {
        Point size = canvas.getSize();
        double wanted = Math.max(LEAST_SEEN_MM, Math.max(place.getWidth(), place.getHeight()) / CHOSEN_SHARE);
        flyTo(View.centred(place.centre(), Math.min(size.x, size.y) / wanted, size.x, size.y));
    }

    private void flyTo(View target) {
        flight.begin(view, target);
    }

    /** Takes up a tool; empty puts the one in use away. */
    void take(Optional<PointerTool> next) {
        tool = next;
        if (next.isPresent()) {
            canvas.setFocus(); // its keys are the proof's
        }
        canvas.setCursor(next.isPresent() ? canvas.getDisplay().getSystemCursor(SWT.CURSOR_CROSS) : null);
        canvas.redraw();
        toolListeners.forEach(Runnable::run);
    }

    /** The tool in use. */
    Optional<PointerTool> tool() {
        return tool;
    }

    /** Told when a tool is taken up or put away. */
    void onTool(Runnable listener) {
        toolListeners.add(listener);
    }

    private double reachMm() {
        return 2 * CLICK_PX / view.pixelsPerMm();
    }

    private void press(Event event) {
        canvas.setFocus();
        flight.end();
        if (tool.isPresent() && event.button == 1) {
            tool.get().press(view.toMm(event.x, event.y), reachMm());
            toolHeld = true;
            canvas.redraw();
            return;
        }
        pressed = new Point(event.x, event.y);
        dragging = false;
    }

    private void move(Event event) {
        keyed = false;
        if (tool.isPresent() && pressed == null) {
            tool.get().move(view.toMm(event.x, event.y), reachMm(), toolHeld);
            canvas.redraw();
            toolListeners.forEach(Runnable::run);
        }
        if (pressed != null && !dragging && Math.hypot(event.x - pressed.x, event.y - pressed.y) > CLICK_PX) {
            dragging = true;
            last = pressed;
        }
        if (dragging) {
            show(view.moved(event.x - last.x, event.y - last.y));
        } else if (desk.shown().isRulers()) {
            canvas.redraw(0, 0, canvas.getSize().x, RulerPainter.WIDTH_PX, false);
            canvas.redraw(0, 0, RulerPainter.WIDTH_PX, canvas.getSize().y, false);
        }
        last = new Point(event.x, event.y);
        pointerListeners.forEach(each -> each.accept(Optional.of(view.toMm(event.x, event.y))));
    }

    private void release(Event event) {
        if (tool.isPresent() && toolHeld) {
            toolHeld = false;
            if (tool.get().release(view.toMm(event.x, event.y), reachMm())) {
                take(Optional.empty());
            }
            canvas.redraw();
            return;
        }
        if (pressed != null && !dragging && event.button == 1) {
            choose(event.x, event.y);
        }
        pressed = null;
        dragging = false;
    }

    /** A badge that stands for one marker chooses it; one that stands for several comes nearer. */
    private void choose(int x, int y) {
        for (Badges.Badge badge : picture.badges(view)) {
            Point at = FindingPainter.place(badge, view);
            if (Math.hypot(at.x - x, at.y - y) <= FindingPainter.BADGE_RADIUS_PX * 1.4) {
                if (badge.markers().size() == 1) {
                    desk.choose(badge.markers().get(0).finding(), badge.markers().get(0).place());
                } else {
                    comeNearer(badge);
                }
                return;
            }
        }
        double reachMm = reachMm();
        Envelope around = new Envelope(view.toMm(x, y));
        around.expandBy(reachMm);
        org.locationtech.jts.geom.Point point = new org.locationtech.jts.geom.GeometryFactory().createPoint(view.toMm(x, y));
        picture.places().meeting(around).stream().filter(place -> place.at().shape().isWithinDistance(point, reachMm)).findFirst()
                .ifPresentOrElse(place -> desk.choose(place.finding().id(), place.place()), desk::chooseNone);
    }

    private void comeNearer(Badges.Badge badge) {
        Envelope extent = new Envelope();
        badge.markers().forEach(marker -> extent.expandToInclude(marker.at()));
        if (Math.max(extent.getWidth(), extent.getHeight()) * View.MOST_PIXELS_PER_MM < 1 || view.pixelsPerMm() > View.MOST_PIXELS_PER_MM / 2) {
            desk.choose(badge.markers().get(0).finding(), badge.markers().get(0).place()); // they stand at one spot: no scale parts them
            return;
        }
        Point size = canvas.getSize();
        extent.expandBy(Math.max(extent.getWidth(), extent.getHeight()) * 0.2 + LEAST_SEEN_MM / 4);
        View nearer = View.fitting(extent, size.x, size.y, FIT_MARGIN_PX);
        flyTo(nearer.pixelsPerMm() > view.pixelsPerMm() * 1.5 ? nearer : View.centred(extent.centre(), Math.min(View.MOST_PIXELS_PER_MM, view.pixelsPerMm() * 2), size.x, size.y));
    }

    private void key(Event event) {
        keyed = true;
        Point size = canvas.getSize();
        if (tool.filter(each -> each.key(event.keyCode, event.character, (event.stateMask & SWT.SHIFT) != 0, view.toMm(size.x / 2.0, size.y / 2.0))).isPresent()) {
            if (tool.filter(PointerTool::isDone).isPresent()) {
                take(Optional.empty());
            }
            canvas.redraw();
            toolListeners.forEach(Runnable::run);
            return;
        }
        switch (event.keyCode) {
            case SWT.ARROW_LEFT -> show(view.moved(KEY_STEP_PX, 0));
            case SWT.ARROW_RIGHT -> show(view.moved(-KEY_STEP_PX, 0));
            case SWT.ARROW_UP -> show(view.moved(0, KEY_STEP_PX));
            case SWT.ARROW_DOWN -> show(view.moved(0, -KEY_STEP_PX));
            case SWT.HOME -> fit();
            case SWT.ESC -> {
                if (tool.isPresent()) {
                    take(Optional.empty());
                } else {
                    desk.chooseNone();
                }
            }
            default -> {
                switch (event.character) {
                    case '+', '=' -> zoomIn();
                    case '-' -> zoomOut();
                    case '0' -> fit();
                    case 'n', 'N' -> desk.step(1);
                    case 'p', 'P' -> desk.step(-1);
                    case '.' -> desk.stepPlace(1);
                    case ',' -> desk.stepPlace(-1);
                    default -> {
                        // no movement of the view; the menu may know the key
                    }
                }
            }
        }
    }
}
