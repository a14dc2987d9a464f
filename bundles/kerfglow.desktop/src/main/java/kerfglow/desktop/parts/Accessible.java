// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.parts;

import org.eclipse.swt.accessibility.AccessibleAdapter;
import org.eclipse.swt.accessibility.AccessibleEvent;
import org.eclipse.swt.widgets.Control;

/** Names for controls, for those who hear the window instead of seeing it. */
final class Accessible {
    private Accessible() {
    }

    static void name(Control control, String name) {
        control.setData("kerfglow.name", name);
        control.getAccessible().addAccessibleListener(new AccessibleAdapter() {
            @Override
            public void getName(AccessibleEvent event) {
                event.result = name;
            }
        });
    }
}
