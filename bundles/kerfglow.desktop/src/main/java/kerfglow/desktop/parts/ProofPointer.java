// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.parts;

import java.util.Optional;
import kerfglow.desktop.desk.Desk;
import kerfglow.desktop.paint.FindingPainter;
import kerfglow.desktop.scene.Badges;
import kerfglow.desktop.scene.Marker;
import kerfglow.job.Mark;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.widgets.Canvas;
import org.eclipse.swt.widgets.Event;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.GeometryFactory;

/** What the pointer does on the proof: it serves the tool in hand, else it moves the chosen mark, else a click chooses and pulling moves the drawing. */
final class ProofPointer {
    /** Twice as large in five notches of the wheel. */
    private static final double WHEEL_FACTOR = Math.pow(2, 0.2);
    /** A press that moves less than this chooses, one that moves more pulls the drawing. */
    private static final int CLICK_PX = 4;

    private final Canvas canvas;
    private final Desk desk;
    private final Lookout lookout;
    private final ToolInHand hand;
    private final ProofPicture picture;
    private Point pressed;
    private Point last = new Point(-1, -1);
    private boolean pulling;
    private boolean holdsMark;

    ProofPointer(Canvas canvas, Desk desk, Lookout lookout, ToolInHand hand, ProofPicture picture) {
        this.canvas = canvas;
        this.desk = desk;
        this.lookout = lookout;
        this.hand = hand;
        this.picture = picture;
    }

    void wheel(Event event) {
        lookout.zoom(event.x, event.y, Math.pow(WHEEL_FACTOR, Integer.signum(event.count)));
    }

    private double reachMm() {
        return 2 * CLICK_PX / lookout.view().pixelsPerMm();
    }

    private Coordinate at(Event event) {
        return lookout.view().toMm(event.x, event.y);
    }

    void press(Event event) {
        canvas.setFocus();
        lookout.stay();
        if (event.button == 1 && hand.press(at(event), reachMm())) {
            return;
        }
        pressed = new Point(event.x, event.y);
        pulling = false;
        holdsMark = event.button == 1 && badgeAt(event).isEmpty() && desk.marks().take(at(event), reachMm());
    }

    void move(Event event) {
        if (pressed == null) {
            hand.move(at(event), reachMm());
        } else if (!pulling && Math.hypot(event.x - pressed.x, event.y - pressed.y) > CLICK_PX) {
            pulling = true;
            last = pressed;
        }
        if (pulling && holdsMark) {
            desk.marks().pull(at(event));
        } else if (pulling) {
            lookout.show(lookout.view().moved(event.x - last.x, event.y - last.y));
        }
        last = new Point(event.x, event.y);
        if (pressed == null && hand.tool().isEmpty()) {
            canvas.setCursor(desk.marks().isHold(at(event), reachMm()) ? canvas.getDisplay().getSystemCursor(SWT.CURSOR_SIZEALL) : null);
        }
    }

    void release(Event event) {
        if (hand.release(at(event), reachMm())) {
            return;
        }
        if (holdsMark) {
            desk.marks().letGo();
        } else if (pressed != null && !pulling && event.button == 1) {
            choose(event);
        }
        pressed = null;
        pulling = false;
        holdsMark = false;
    }

    /** A badge that stands for one marker chooses it; one that stands for several comes nearer. A mark's line lies over the places of findings. */
    private void choose(Event event) {
        Optional<Badges.Badge> badge = badgeAt(event);
        if (badge.isPresent()) {
            choose(badge.get());
            return;
        }
        Optional<Mark> mark = desk.marks().near(at(event), reachMm());
        if (mark.isPresent()) {
            desk.marks().choose(mark.get().id());
            return;
        }
        desk.marks().chooseNone();
        double reachMm = reachMm();
        Envelope around = new Envelope(at(event));
        around.expandBy(reachMm);
        org.locationtech.jts.geom.Point point = new GeometryFactory().createPoint(at(event));
        picture.places().meeting(around).stream().filter(place -> place.at().shape().isWithinDistance(point, reachMm)).findFirst()
                .ifPresentOrElse(place -> desk.findings().choose(place.finding().id(), place.place()), desk.findings()::chooseNone);
    }

    private Optional<Badges.Badge> badgeAt(Event event) {
        return !desk.shown().isFindings() ? Optional.empty() : picture.badges(lookout.view()).stream().filter(badge -> {
            Point at = FindingPainter.place(badge, lookout.view());
            return Math.hypot(at.x - event.x, at.y - event.y) <= FindingPainter.BADGE_RADIUS_PX * 1.4;
        }).findFirst();
    }

    private void choose(Badges.Badge badge) {
        Envelope places = new Envelope();
        badge.markers().forEach(marker -> places.expandToInclude(marker.at()));
        if (badge.markers().size() == 1 || !lookout.comeNearer(places)) {
            Marker first = badge.markers().get(0);
            desk.findings().choose(first.finding(), first.place());
        }
    }
}
