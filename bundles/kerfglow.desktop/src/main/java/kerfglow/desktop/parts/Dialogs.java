// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.parts;

import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.widgets.Shell;

/** Where dialogs stand. */
final class Dialogs {
    private Dialogs() {
    }

    /** In the middle of the window, its upper edge at a third, so that the proof is still seen below it. */
    static void place(Shell dialog, Shell window) {
        Rectangle around = window.getBounds();
        Rectangle size = dialog.getBounds();
        dialog.setLocation(around.x + (around.width - size.width) / 2, around.y + (around.height - size.height) / 3);
    }
}
