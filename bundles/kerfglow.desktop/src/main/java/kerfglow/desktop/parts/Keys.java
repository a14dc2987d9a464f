// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.parts;

import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;

/** Controls that a key leads to; they are found by name, since the panes do not know each other. */
final class Keys {
    /** Under this name a control carries what it is. */
    static final String WIDGET = "kerfglow.widget";
    /** The field of words in the list of findings. */
    static final String FIND = "find";
    /** How the key to it reads. */
    static final String FIND_NAME = "Ctrl+F";

    private Keys() {
    }

    /** Puts the focus on a control of the window; does nothing when the window has none of that name. */
    static boolean focus(Composite window, String name) {
        for (Control child : window.getChildren()) {
            if (name.equals(child.getData(WIDGET))) {
                return child.setFocus();
            }
            if (child instanceof Composite inner && focus(inner, name)) {
                return true;
            }
        }
        return false;
    }
}
