// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.parts;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Canvas;
import org.locationtech.jts.geom.Coordinate;

/** The tool that the pointer and the keys serve on the proof, if one is taken up; it is put away when it has done its work. */
final class ToolInHand {
    private final Canvas canvas;
    private final List<Runnable> listeners = new ArrayList<>();
    private Optional<PointerTool> tool = Optional.empty();
    private boolean held;

    ToolInHand(Canvas canvas) {
        this.canvas = canvas;
    }

    /** Takes up a tool; empty puts the one in use away. */
    void take(Optional<PointerTool> next) {
        tool = next;
        held = false;
        if (next.isPresent()) {
            canvas.setFocus(); // its keys are the proof's
        }
        canvas.setCursor(next.isPresent() ? canvas.getDisplay().getSystemCursor(SWT.CURSOR_CROSS) : null);
        tell();
    }

    /** The tool in use. */
    Optional<PointerTool> tool() {
        return tool;
    }

    /** Told when a tool is taken up, used or put away. */
    void onTool(Runnable listener) {
        listeners.add(listener);
    }

    private void tell() {
        canvas.redraw();
        listeners.forEach(Runnable::run);
    }

    /** True when a tool took the press. */
    boolean press(Coordinate atMm, double reachMm) {
        held = tool.isPresent();
        tool.ifPresent(each -> {
            each.press(atMm, reachMm);
            tell();
        });
        return held;
    }

    void move(Coordinate atMm, double reachMm) {
        tool.ifPresent(each -> {
            each.move(atMm, reachMm, held);
            tell();
        });
    }

    /** True when a tool took the release. */
    boolean release(Coordinate atMm, double reachMm) {
        boolean taken = held && tool.isPresent();
        held = false;
        if (taken && tool.get().release(atMm, reachMm)) {
            take(Optional.empty());
        } else if (taken) {
            tell();
        }
        return taken;
    }

    /** True when a tool took the key. */
    boolean key(int keyCode, char character, boolean wide, Coordinate middleMm) {
        if (tool.filter(each -> each.key(keyCode, character, wide, middleMm)).isEmpty()) {
            return false;
        }
        if (tool.filter(PointerTool::isDone).isPresent()) {
            take(Optional.empty());
        } else {
            tell();
        }
        return true;
    }
}
