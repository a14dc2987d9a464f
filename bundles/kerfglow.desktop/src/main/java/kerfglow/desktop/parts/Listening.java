// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.parts;

import kerfglow.desktop.desk.Desk;
import kerfglow.desktop.desk.Topic;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Control;

/** Binds a listener to the life of a control, so that no pane is called back after it is gone. */
final class Listening {
    private Listening() {
    }

    static void to(Desk desk, Control control, Topic topic, Runnable listener) {
        desk.listen(topic, listener);
        control.addListener(SWT.Dispose, event -> desk.forget(topic, listener));
    }
}
