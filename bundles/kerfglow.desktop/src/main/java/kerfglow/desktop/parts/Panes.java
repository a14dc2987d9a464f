// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.parts;

import java.util.ArrayList;
import java.util.List;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.CTabFolder;
import org.eclipse.swt.custom.CTabItem;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Event;

/** The panes of the window, gone through by keys: those in front one after the other, and every one by its name. */
final class Panes {
    private final Composite window;

    Panes(Composite window) {
        this.window = window;
    }

    /** What the panes are called, from the upper left to the lower right. */
    List<String> names() {
        return folders(window).stream().flatMap(folder -> List.of(folder.getItems()).stream()).map(CTabItem::getText).toList();
    }

    /** Brings a pane to the front and goes into it. */
    void show(String name) {
        for (CTabFolder folder : folders(window)) {
            for (CTabItem item : folder.getItems()) {
                if (item.getText().equals(name)) {
                    enter(folder, item);
                    return;
                }
            }
        }
    }

    /** Goes to the next (1) or the one before (-1) of the panes in front. */
    void step(int by) {
        List<CTabFolder> folders = folders(window).stream().filter(folder -> folder.getSelection() != null && folder.isVisible()).toList();
        if (folders.isEmpty()) {
            return;
        }
        int at = 0;
        for (int i = 0; i < folders.size(); i++) {
            if (holdsFocus(folders.get(i))) {
                at = i;
            }
        }
        CTabFolder next = folders.get(Math.floorMod(at + by, folders.size()));
        enter(next, next.getSelection());
    }

    private static void enter(CTabFolder folder, CTabItem item) {
        folder.setSelection(item);
        Event chosen = new Event(); // the framework makes a pane when its tab is chosen
        chosen.item = item;
        folder.notifyListeners(SWT.Selection, chosen);
        if (item.getControl() == null || !item.getControl().setFocus()) {
            folder.setFocus();
        }
    }

    private static boolean holdsFocus(Control folder) {
        for (Control at = folder.getDisplay().getFocusControl(); at != null; at = at.getParent()) {
            if (at == folder) {
                return true;
            }
        }
        return false;
    }

    private static List<CTabFolder> folders(Composite in) {
        List<CTabFolder> folders = new ArrayList<>();
        for (Control child : in.getChildren()) {
            if (child instanceof CTabFolder folder) {
                folders.add(folder);
            } else if (child instanceof Composite inner) {
                folders.addAll(folders(inner));
            }
        }
        return folders;
    }
}
