// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.parts;

import org.eclipse.swt.widgets.Display;

/**
 * Light or dark for what the toolkit draws in its own colours: menu bar, menus, buttons, lists to choose from. SWT has no public way to ask
 * GTK for it; where this one is not there, they stay as the system has them.
 */
final class ToolkitLook {
    private static final String GTK = "org.eclipse.swt.internal.gtk.OS";
    private static final String PREFER_DARK = "setDarkThemePreferred";

    private ToolkitLook() {
    }

    static void set(boolean dark) {
        try {
            Class.forName(GTK, true, Display.class.getClassLoader()).getMethod(PREFER_DARK, boolean.class).invoke(null, dark);
        } catch (ReflectiveOperationException | LinkageError another) {
            return; // another toolkit, or another version of it
        }
    }
}
