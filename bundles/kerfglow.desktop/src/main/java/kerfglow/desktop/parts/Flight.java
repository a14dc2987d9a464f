// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.parts;

import java.util.function.Consumer;
import kerfglow.desktop.scene.View;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.widgets.Canvas;

/** Passes from one view to another in steps that the eye can follow; a new flight, or anything that a person does, ends it. */
final class Flight {
    /** Long enough for the eye to follow, short enough not to wait for. */
    private static final int MILLIS = 280;
    private static final int FRAME_MILLIS = 16;

    private final Canvas canvas;
    private final Consumer<View> show;
    private int current;

    Flight(Canvas canvas, Consumer<View> show) {
        this.canvas = canvas;
        this.show = show;
    }

    /** Stays where it is. */
    void end() {
        current++;
    }

    /** Sets out. */
    void begin(View from, View target) {
        int mine = ++current;
        long start = System.nanoTime();
        canvas.getDisplay().timerExec(FRAME_MILLIS, new Runnable() {
            @Override
            public void run() {
                if (canvas.isDisposed() || mine != current) {
                    return;
                }
                double fraction = Math.min(1, (System.nanoTime() - start) / 1e6 / MILLIS);
                Point size = canvas.getSize();
                show.accept(fraction < 1 ? from.towards(target, fraction * fraction * (3 - 2 * fraction), size.x, size.y) : target);
                if (fraction < 1) {
                    canvas.getDisplay().timerExec(FRAME_MILLIS, this);
                }
            }
        });
    }
}
