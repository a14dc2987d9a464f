// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.parts;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import kerfglow.desktop.desk.Background;
import kerfglow.desktop.desk.Desk;
import kerfglow.desktop.desk.FloorFile;
import kerfglow.host.SafeFile;
import kerfglow.job.ReviewedResult;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.FileDialog;
import org.eclipse.swt.widgets.Shell;

/** Asks where a file of the shown result goes, and writes it in the background: whole or not at all. */
final class HandOn {
    private final Shell shell;
    private final Desk desk;
    private final Background background;

    HandOn(Shell shell, Desk desk, Background background) {
        this.shell = shell;
        this.desk = desk;
        this.background = background;
    }

    boolean isPossible() {
        return desk.result().isPresent();
    }

    void ask(FloorFile kind) {
        if (desk.work().busy()) { // half of the checks would be missing from it
            tell("Not yet: the " + kind.title(), "The checks are still at work. Ask again when they have ended.");
            return;
        }
        FileDialog dialog = new FileDialog(shell, SWT.SAVE);
        dialog.setText("Write the " + kind.title());
        dialog.setFilterNames(kind.forms().stream().map(form -> form.name() + " (" + form.ending() + ")").toArray(String[]::new));
        dialog.setFilterExtensions(kind.forms().stream().map(form -> "*" + form.ending()).toArray(String[]::new));
        desk.proofFile().ifPresent(proof -> {
            Optional.ofNullable(proof.getParent()).ifPresent(folder -> dialog.setFilterPath(folder.toString()));
            dialog.setFileName(kind.nameFor(proof) + kind.forms().get(0).ending());
        });
        dialog.setOverwrite(true);
        Optional<ReviewedResult> shown = desk.reviewed(); // what is seen now, whatever is checked meanwhile
        String chosen = dialog.open();
        if (chosen != null && shown.isPresent()) {
            FloorFile.Form form = kind.formOf(Path.of(chosen), dialog.getFilterIndex());
            Path file = form.named(Path.of(chosen));
            write(form, shown.get(), file, file.equals(Path.of(chosen))); // a name with its ending added was not asked about
        }
    }

    private void write(FloorFile.Form form, ReviewedResult result, Path file, boolean replace) {
        List<Path> inputs = new ArrayList<>();
        desk.proofFile().ifPresent(inputs::add);
        desk.kept().file().ifPresent(job -> inputs.add(job.file()));
        desk.setWork(desk.work().withRemark("Writing " + file.getFileName() + " ..."));
        background.execute(() -> {
            String outcome;
            try {
                SafeFile.writeOver(file, inputs, replace, out -> form.write(result, Instant.now(), out));
                outcome = "";
            } catch (IOException refused) {
                outcome = refused.getMessage().replace("or add --replace to write over it", "or choose it again with its ending");
            } catch (RuntimeException defect) {
                outcome = file.getFileName() + ": the program failed: " + defect + ". This is a defect of the program; please report it with the proof";
            }
            String words = outcome;
            if (!shell.getDisplay().isDisposed()) {
                shell.getDisplay().asyncExec(() -> done(file, words));
            }
        });
    }

    private void done(Path file, String problem) {
        if (shell.isDisposed()) {
            return;
        }
        desk.setWork(desk.work().withRemark(problem.isEmpty() ? file + " is written." : problem));
        if (!problem.isEmpty()) {
            tell("The file is not written", problem);
        }
    }

    private void tell(String title, String words) {
        Question.tell(shell, desk, title, words);
    }
}
