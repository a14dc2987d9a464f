// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.parts;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import kerfglow.desktop.desk.Desk;
import kerfglow.desktop.desk.Habits;
import kerfglow.desktop.desk.Worker;
import kerfglow.job.JobFile;
import org.eclipse.swt.SWT;
import org.eclipse.swt.dnd.DND;
import org.eclipse.swt.dnd.DropTarget;
import org.eclipse.swt.dnd.DropTargetAdapter;
import org.eclipse.swt.dnd.DropTargetEvent;
import org.eclipse.swt.dnd.FileTransfer;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.FileDialog;
import org.eclipse.swt.widgets.Shell;

/** The ways by which a file comes onto the desk: the menu, the list of recent ones, dropping it on the proof. */
final class Opener {
    private final Shell shell;
    private final Desk desk;
    private final Worker worker;
    private final Habits habits;
    private final Optional<Path> demo;

    Opener(Shell shell, Desk desk, Worker worker, Habits habits, Optional<Path> demo) {
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
        dialog.setFilterExtensions(new String[] {"*.svg;*.SVG;*" + JobFile.ENDING, "*"});
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
        habits.opened(file);
        worker.open(file);
    }

    void again() {
        worker.checkAgain();
    }

    boolean hasDemo() {
        return demo.filter(Files::isRegularFile).isPresent();
    }

    void openDemo() {
        demo.ifPresent(worker::open);
    }

    List<Path> recent() {
        return habits.recent();
    }

    /** Lets files be dropped on a control; of several the first is opened. */
    void acceptDrops(Control control) {
        DropTarget target = new DropTarget(control, DND.DROP_COPY | DND.DROP_MOVE | DND.DROP_LINK | DND.DROP_DEFAULT);
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
                if (event.data instanceof String[] names && names.length > 0) {
                    open(Path.of(names[0]));
                }
            }
        });
    }
}
