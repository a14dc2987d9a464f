// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.parts;

import kerfglow.desktop.paint.Palette;
import kerfglow.desktop.scene.View;
import org.eclipse.swt.graphics.GC;
import org.locationtech.jts.geom.Coordinate;

/** What the pointer does on the proof instead of pulling and choosing, until it is put away. */
interface PointerTool {
    /** What it is for, shown below the proof while it is in use. */
    String words();

    /** The button went down. */
    void press(Coordinate atMm, double reachMm);

    /** The pointer moved; {@code held} while the button is down. */
    void move(Coordinate atMm, double reachMm, boolean held);

    /** The button came up; true when the tool has done its work and is put away. */
    boolean release(Coordinate atMm, double reachMm);

    /**
     * A key was pressed on the proof; true when the tool took it.
     *
     * @param wide true while Shift is held
     * @param middleMm the middle of what is seen, mm
     */
    default boolean key(int keyCode, char character, boolean wide, Coordinate middleMm) {
        return false;
    }

    /** True when a key ended its work, so that it is put away. */
    default boolean isDone() {
        return false;
    }

    /** Paints over the proof what is being made. */
    void paint(GC gc, View view, Palette palette);
}
