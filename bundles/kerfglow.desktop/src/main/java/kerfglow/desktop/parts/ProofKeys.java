// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.parts;

import java.util.Optional;
import kerfglow.desktop.desk.Desk;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Event;

/** What the keys do on the proof; those of the menu come on top. */
final class ProofKeys {
    private static final int STEP_PX = 60;
    private static final double STEP_MM = 1;
    private static final double WIDE_STEP_MM = 10;

    private final Desk desk;
    private final Lookout lookout;
    private final ToolInHand hand;

    ProofKeys(Desk desk, Lookout lookout, ToolInHand hand) {
        this.desk = desk;
        this.lookout = lookout;
        this.hand = hand;
    }

    void key(Event event) {
        boolean wide = (event.stateMask & SWT.SHIFT) != 0;
        if (!hand.key(event.keyCode, event.character, wide, lookout.middle()) && !mark(event.keyCode, wide) && !code(event.keyCode)) {
            letter(event.character);
        }
    }

    /** A key that is held moves the mark on and on; that is one step to take back. */
    void keyUp() {
        desk.marks().letGo();
    }

    /** What a key does with the chosen mark; false when none is chosen or the key is not for it. */
    private boolean mark(int keyCode, boolean wide) {
        if (desk.marks().chosen().isEmpty()) {
            return false;
        }
        double step = wide ? WIDE_STEP_MM : STEP_MM;
        switch (keyCode) {
            case SWT.ARROW_LEFT -> desk.marks().nudge(-step, 0);
            case SWT.ARROW_RIGHT -> desk.marks().nudge(step, 0);
            case SWT.ARROW_UP -> desk.marks().nudge(0, -step);
            case SWT.ARROW_DOWN -> desk.marks().nudge(0, step);
            case SWT.DEL -> desk.marks().remove();
            case 'h' -> desk.marks().stepGrip();
            case SWT.ESC -> {
                if (!desk.marks().putBack()) {
                    desk.marks().chooseNone();
                }
            }
            default -> {
                return false;
            }
        }
        return true;
    }

    private boolean code(int keyCode) {
        switch (keyCode) {
            case SWT.ARROW_LEFT -> move(STEP_PX, 0);
            case SWT.ARROW_RIGHT -> move(-STEP_PX, 0);
            case SWT.ARROW_UP -> move(0, STEP_PX);
            case SWT.ARROW_DOWN -> move(0, -STEP_PX);
            case SWT.HOME -> lookout.fit();
            case SWT.ESC -> putAway();
            default -> {
                return false;
            }
        }
        return true;
    }

    private void move(int dx, int dy) {
        lookout.show(lookout.view().moved(dx, dy));
    }

    private void putAway() {
        if (hand.tool().isPresent()) {
            hand.take(Optional.empty());
        } else {
            desk.findings().chooseNone();
        }
    }

    private void letter(char character) {
        switch (character) {
            case '+', '=' -> lookout.zoomIn();
            case '-' -> lookout.zoomOut();
            case '0' -> lookout.fit();
            case 'n', 'N' -> desk.findings().step(1);
            case 'p', 'P' -> desk.findings().step(-1);
            case 'm' -> stepMark(1);
            case 'M' -> stepMark(-1);
            case '.' -> desk.findings().stepPlace(1);
            case ',' -> desk.findings().stepPlace(-1);
            default -> {
                // no movement of the view; the menu may know the key
            }
        }
    }

    private void stepMark(int by) {
        desk.marks().step(by);
        desk.marks().chosen().ifPresent(mark -> desk.aimAt(mark.shape().outline().getEnvelopeInternal()));
    }
}
