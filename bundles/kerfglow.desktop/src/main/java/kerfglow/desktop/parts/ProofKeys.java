// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.parts;

import java.util.Optional;
import kerfglow.desktop.desk.Desk;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Event;

/** What the keys do on the proof; those of the menu come on top. */
final class ProofKeys {
    private static final int STEP_PX = 60;

    private final Desk desk;
    private final Lookout lookout;
    private final ToolInHand hand;

    ProofKeys(Desk desk, Lookout lookout, ToolInHand hand) {
        this.desk = desk;
        this.lookout = lookout;
        this.hand = hand;
    }

    void key(Event event) {
        if (!hand.key(event.keyCode, event.character, (event.stateMask & SWT.SHIFT) != 0, lookout.middle()) && !code(event.keyCode)) {
            letter(event.character);
        }
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
            case '.' -> desk.findings().stepPlace(1);
            case ',' -> desk.findings().stepPlace(-1);
            default -> {
                // no movement of the view; the menu may know the key
            }
        }
    }
}
