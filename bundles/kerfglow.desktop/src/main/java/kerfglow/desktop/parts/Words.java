// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.parts;

import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.widgets.Label;

/** Words of a pane that take as many lines as they need. */
final class Words {
    private Words() {
    }

    /** Shows other words, and gives them room; the same words cost nothing, since laying out takes longer than all else of a pane. */
    static void put(Label label, String words) {
        if (!label.getText().equals(words)) {
            label.setText(words);
            Point size = label.getSize();
            if (size.x == 0 || label.computeSize(size.x, SWT.DEFAULT).y != size.y) {
                label.getParent().layout();
            }
        }
    }
}
