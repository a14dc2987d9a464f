// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.parts;

import kerfglow.desktop.desk.Desk;
import kerfglow.desktop.desk.Topic;
import kerfglow.desktop.paint.Palette;
import org.eclipse.swt.custom.CTabFolder;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.graphics.Color;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.Text;
import org.eclipse.swt.widgets.Tree;

/** Gives the controls of a pane the colours of the look, and again when the look changes. */
final class Skin {
    private Skin() {
    }

    static void wear(Composite pane, Desk desk) {
        Runnable colours = () -> put(pane, Palette.of(desk.isDark()));
        colours.run();
        Listening.to(desk, pane, Topic.LOOK, colours);
    }

    private static void put(Control control, Palette palette) {
        boolean field = control instanceof Tree || control instanceof Table || control instanceof Text || control instanceof StyledText || control instanceof Combo;
        Color ground = field ? palette.field : palette.ground;
        control.setBackground(ground);
        control.setForeground(palette.ink);
        if (control instanceof CTabFolder folder) { // set on the folder itself as well, since its tabs take no colours from what is around them
            folder.setSelectionBackground(palette.field);
            folder.setSelectionForeground(palette.ink);
        }
        if (control instanceof Tree tree) {
            tree.setHeaderBackground(palette.ground);
            tree.setHeaderForeground(palette.ink);
        }
        if (control instanceof Composite composite) {
            for (Control child : composite.getChildren()) {
                put(child, palette);
            }
        }
    }
}
