// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.parts;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import kerfglow.desktop.desk.Desk;
import kerfglow.desktop.desk.Dropped;
import kerfglow.desktop.desk.FirstFile;
import kerfglow.desktop.desk.Habits;
import kerfglow.desktop.desk.Notices;
import kerfglow.desktop.desk.Worker;
import kerfglow.host.SafeFile;
import kerfglow.job.JobNames;
import org.eclipse.swt.SWT;
import org.eclipse.swt.dnd.DND;
import org.eclipse.swt.dnd.DropTarget;
import org.eclipse.swt.dnd.DropTargetAdapter;
import org.eclipse.swt.dnd.DropTargetEvent;
import org.eclipse.swt.dnd.FileTransfer;
import org.eclipse.swt.widgets.FileDialog;
import org.eclipse.swt.widgets.Shell;

/** The ways by which a file comes onto the desk: the menu, the list of recent ones, dropping it on the proof. */
final class Opener {
    private final Shell shell;
    private final Desk desk;
    private final Worker worker;
    private final Habits habits;
    private final Optional<Path> demo;
    private final Notices notices;
    private final Leaving leaving;
    private final Runnable show;

    /**
     * The ways.
     *
     * @param demo the demo, if there is one
     * @param leaving asks what becomes of the job before
     * @param show brings the proof to the front
     */
    Opener(Shell shell, Desk desk, Worker worker, Habits habits, Optional<Path> demo, Notices notices, Leaving leaving, Runnable show) {
        this.notices = notices;
        this.leaving = leaving;
        this.show = show;
        this.shell = shell;
        this.desk = desk;
        this.worker = worker;
        this.habits = habits;
        this.demo = demo;
    }

    Habits habits() {
        return habits;
    }

    void ask() {
        FileDialog dialog = new FileDialog(shell, SWT.OPEN);
        dialog.setText("Open a proof or a job");
        dialog.setFilterNames(new String[] {"Proofs and job files", "All files"});
        dialog.setFilterExtensions(new String[] {"*.svg;*.SVG;*" + JobNames.ENDING, "*"});
        desk.proofFile().map(Path::getParent).ifPresent(folder -> dialog.setFilterPath(folder.toString()));
        Optional.ofNullable(dialog.open()).map(Path::of).ifPresent(this::open);
    }

    /** Asks for the file of the proof's next revision; the job goes on with it. */
    void askRevision() {
        FileDialog dialog = new FileDialog(shell, SWT.OPEN);
        dialog.setText("Take another file for the proof");
        dialog.setFilterExtensions(new String[] {"*.svg;*.SVG"});
        desk.proofFile().map(Path::getParent).ifPresent(folder -> dialog.setFilterPath(folder.toString()));
        Optional.ofNullable(dialog.open()).map(Path::of).ifPresent(desk.kept()::revise);
    }

    void open(Path file) {
        if (take(file)) {
            habits.opened(file);
        }
    }

    /** A file that is open already is read again; true unless the person stays with the job before. */
    private boolean take(Path file) {
        if (isOpen(file)) {
            worker.checkAgain();
        } else if (leaving.mayLeave()) {
            worker.open(file);
        } else {
            return false;
        }
        show.run();
        return true;
    }

    private boolean isOpen(Path file) {
        try {
            Path job = SafeFile.target(FirstFile.jobOf(file));
            return desk.kept().file().filter(open -> open.file().equals(job)).isPresent();
        } catch (IOException unreadable) {
            return false; // opening it will say so
        }
    }

    void again() {
        worker.checkAgain();
    }

    boolean hasDemo() {
        return demo.filter(Files::isRegularFile).isPresent();
    }

    void openDemo() {
        demo.ifPresent(this::take);
    }

    List<Path> recent() {
        return habits.recent();
    }

    /** Lets files be dropped anywhere on the window. */
    void acceptDrops() {
        DropTarget target = new DropTarget(shell, DND.DROP_COPY | DND.DROP_MOVE | DND.DROP_LINK | DND.DROP_DEFAULT);
        target.setTransfer(FileTransfer.getInstance());
        target.addDropListener(new DropTargetAdapter() {
            @Override
            public void dragEnter(DropTargetEvent event) {
                if (event.detail == DND.DROP_DEFAULT) {
                    event.detail = DND.DROP_COPY;
                }
            }

            @Override
            public void drop(DropTargetEvent event) {
                if (event.data instanceof String[] names) {
                    shell.getDisplay().asyncExec(() -> dropped(Dropped.of(Arrays.stream(names).map(Path::of).toList()))); // the drop must end before anything is asked
                }
            }
        });
    }

    private void dropped(Dropped files) {
        files.file().ifPresent(this::open);
        if (!files.words().isEmpty()) {
            notices.tell(files.words());
        }
    }
}
