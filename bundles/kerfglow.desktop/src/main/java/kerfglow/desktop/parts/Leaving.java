// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.parts;

import java.io.IOException;
import kerfglow.desktop.desk.Desk;
import kerfglow.job.Job;
import org.eclipse.swt.widgets.Shell;

/** Before a job leaves the desk, because the window closes or another is opened: what becomes of what is not saved. */
final class Leaving {
    private static final int KEEP = 1;
    private static final int SAVE = 2;

    private final Shell shell;
    private final Desk desk;
    private final Saving saving;

    Leaving(Shell shell, Desk desk, Saving saving) {
        this.shell = shell;
        this.desk = desk;
        this.saving = saving;
    }

    /** True when the job may go: nothing is unsaved, or the person has saved it or had it kept. */
    boolean mayLeave() {
        if (desk.job().filter(Job::isChanged).isEmpty() || desk.kept().file().isEmpty()) {
            return true;
        }
        String name = desk.kept().file().get().file().getFileName().toString();
        int answer = new Question(shell, desk, "Not saved: " + name, "What was decided since " + name + " was saved last is not in it yet. Save it now, or keep it for the next time that this "
                + "proof is opened, which offers it.", "Stay", "Keep for the next start", "Save").ask();
        return answer == SAVE ? saving.save() : answer == KEEP && isKept();
    }

    /** True when the window may close; the job is then given back to others. */
    boolean close() {
        boolean may = mayLeave();
        if (may) {
            desk.kept().putAway();
        }
        return may;
    }

    private boolean isKept() {
        try {
            desk.kept().file().orElseThrow().keep(desk.job().orElseThrow().state());
            return true;
        } catch (IOException failed) {
            return saving.elsewhere("It is not kept", failed.getMessage());
        }
    }
}
