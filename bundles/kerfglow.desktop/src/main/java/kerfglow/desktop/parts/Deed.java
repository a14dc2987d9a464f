// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.parts;

import java.util.function.BooleanSupplier;
import java.util.function.Supplier;
import org.eclipse.jface.action.Action;
import org.eclipse.jface.action.IAction;

/** One line of the menu: a name, a key, what it does. */
final class Deed extends Action {
    private final Runnable work;
    private final BooleanSupplier possible;
    private final BooleanSupplier on;
    private Supplier<String> name;

    private Deed(String text, int key, Runnable work, BooleanSupplier possible, BooleanSupplier on) {
        super(text, on == null ? IAction.AS_PUSH_BUTTON : IAction.AS_CHECK_BOX);
        this.work = work;
        this.possible = possible;
        this.on = on;
        setAccelerator(key);
        refresh();
    }

    /** Something that can be done while {@code possible}; {@code key} is 0 for none. */
    static Deed of(String text, int key, Runnable work, BooleanSupplier possible) {
        return new Deed(text, key, work, possible, null);
    }

    /** Something whose name changes, for instance with the step that it takes back. */
    static Deed named(Supplier<String> name, int key, Runnable work, BooleanSupplier possible) {
        Deed deed = of(name.get(), key, work, possible);
        deed.name = name;
        return deed;
    }

    /** Something that can always be done. */
    static Deed of(String text, int key, Runnable work) {
        return of(text, key, work, () -> true);
    }

    /** Something that is on or off. */
    static Deed tick(String text, int key, Runnable work, BooleanSupplier on) {
        return new Deed(text, key, work, () -> true, on);
    }

    /** Asks again whether it is possible, and whether it is on. */
    void refresh() {
        if (name != null) {
            setText(name.get());
        }
        setEnabled(possible.getAsBoolean());
        if (on != null) {
            setChecked(on.getAsBoolean());
        }
    }

    @Override
    public void run() {
        work.run();
    }
}
