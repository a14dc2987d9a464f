// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.parts;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import kerfglow.desktop.desk.Choice;
import kerfglow.desktop.desk.Desk;
import kerfglow.desktop.desk.Topic;
import kerfglow.desktop.paint.RulerPainter;
import kerfglow.job.Mark;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.widgets.Canvas;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Event;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;

/** The proof with the findings on it: shows what lies on the desk where the lookout looks, and hands pointer and keys to those who know what they mean. */
public final class ProofCanvas {
    private static final int MIDDLE_PX = 14;
    private static final Point OUTSIDE = new Point(-1, -1);

    private final Desk desk;
    private final Canvas canvas;
    private final ProofPicture picture;
    private final Lookout lookout;
    private final ToolInHand hand;
    private final List<Consumer<Optional<Coordinate>>> pointerListeners = new ArrayList<>();
    private Envelope shownExtent = new Envelope();
    private Optional<String> shownMark = Optional.empty();
    private List<Mark> shownMarks = List.of();
    private Point pointer = OUTSIDE;
    private boolean keyed;

    public ProofCanvas(Composite parent, Desk desk) {
        this.desk = desk;
        canvas = new Canvas(parent, SWT.DOUBLE_BUFFERED | SWT.NO_BACKGROUND);
        Accessible.name(canvas, "Proof with findings; arrow keys move, plus and minus zoom, N and P go through the findings, M through the marks");
        picture = new ProofPicture(canvas, desk);
        lookout = new Lookout(canvas, desk);
        hand = new ToolInHand(canvas);
        canvas.addListener(SWT.Dispose, event -> picture.dispose());
        canvas.addListener(SWT.Paint, event -> paint(event.gc));
        listenToPointer(new ProofPointer(canvas, desk, lookout, hand, picture));
        ProofKeys keys = new ProofKeys(desk, lookout, hand);
        canvas.addListener(SWT.Traverse, event -> event.doit = event.detail == SWT.TRAVERSE_TAB_NEXT || event.detail == SWT.TRAVERSE_TAB_PREVIOUS); // else the keys end here
        canvas.addListener(SWT.KeyDown, event -> {
            keyed = true;
            keys.key(event);
        });
        canvas.addListener(SWT.KeyUp, event -> keys.keyUp());
        canvas.addListener(SWT.FocusOut, event -> keys.keyUp());
        Listening.to(desk, canvas, Topic.PROOF, this::showProof);
        Listening.to(desk, canvas, Topic.FINDINGS, this::showFindings);
        Listening.to(desk, canvas, Topic.LISTED, this::showFindings);
        Listening.to(desk, canvas, Topic.SHOWN, this::paintAnew);
        Listening.to(desk, canvas, Topic.CHOICE, this::flyToChoice);
        Listening.to(desk, canvas, Topic.JOB, this::showMarks);
        Listening.to(desk, canvas, Topic.MARK, this::showMark);
        Listening.to(desk, canvas, Topic.AIM, () -> lookout.flyTo(desk.aim()));
        Listening.to(desk, canvas, Topic.LOOK, this::paintAnew);
    }

    private void listenToPointer(ProofPointer deeds) {
        canvas.addListener(SWT.MouseWheel, deeds::wheel);
        canvas.addListener(SWT.MouseDown, deeds::press);
        canvas.addListener(SWT.MouseMove, event -> {
            keyed = false;
            deeds.move(event);
            stand(event);
        });
        canvas.addListener(SWT.MouseUp, deeds::release);
        canvas.addListener(SWT.MouseExit, event -> {
            pointer = OUTSIDE;
            pointerListeners.forEach(each -> each.accept(Optional.empty()));
            canvas.redraw();
        });
    }

    public Canvas control() {
        return canvas;
    }

    /** Where it looks. */
    public Lookout lookout() {
        return lookout;
    }

    /** What the pointer is used as. */
    ToolInHand hand() {
        return hand;
    }

    /** Told where on the proof the pointer stands, mm; empty when it leaves. */
    void onPointer(Consumer<Optional<Coordinate>> listener) {
        pointerListeners.add(listener);
    }

    private void stand(Event event) {
        pointer = new Point(event.x, event.y);
        if (desk.shown().isRulers()) {
            canvas.redraw(0, 0, canvas.getSize().x, RulerPainter.WIDTH_PX, false);
            canvas.redraw(0, 0, RulerPainter.WIDTH_PX, canvas.getSize().y, false);
        }
        pointerListeners.forEach(each -> each.accept(Optional.of(lookout.view().toMm(event.x, event.y))));
    }

    private void paint(GC gc) {
        picture.paint(gc, lookout.view(), canvas.getSize(), pointer, hand.tool());
        if (keyed && hand.tool().isPresent()) {
            paintMiddle(gc);
        }
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
            lookout.fit();
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

    /** Of a job the marks alone are painted. */
    private void showMarks() {
        List<Mark> marks = desk.job().map(job -> job.state().marks()).orElse(List.of());
        if (!marks.equals(shownMarks)) {
            shownMarks = marks;
            paintAnew();
        }
    }

    /** While a hand moves a mark nothing else changes, so the rest is painted as it was kept. */
    private void showMark() {
        Optional<String> chosen = desk.marks().chosen().map(Mark::id);
        if (!chosen.equals(shownMark)) {
            shownMark = chosen;
            picture.forget();
        }
        canvas.redraw();
    }

    private void flyToChoice() {
        paintAnew();
        desk.findings().choice().flatMap(Choice::at).ifPresent(place -> lookout.flyTo(place.shape().getEnvelopeInternal()));
    }
}
