// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.parts;

import java.io.IOException;
import java.nio.file.Path;
import kerfglow.desktop.desk.Desk;
import kerfglow.job.JobFile;
import kerfglow.job.JobFileException;
import kerfglow.job.JobNames;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.FileDialog;
import org.eclipse.swt.widgets.Shell;

/** Saves the job; where that cannot be, says why and offers another place. */
final class Saving {
    private static final String NOT_SAVED = "The job is not saved";

    private final Shell shell;
    private final Desk desk;
    private final JobFile.Options options;

    Saving(Shell shell, Desk desk, JobFile.Options options) {
        this.shell = shell;
        this.desk = desk;
        this.options = options;
    }

    /** Saves where the job is kept; says what is wrong when that cannot be. */
    boolean save() {
        try {
            desk.kept().save(false);
            return true;
        } catch (JobFileException refused) {
            if (refused.kind() == JobFileException.Kind.CHANGED_ON_DISK) {
                return overwrite(refused);
            }
            return elsewhere(NOT_SAVED, refused.getMessage());
        } catch (IOException failed) {
            return elsewhere(NOT_SAVED, failed.getMessage());
        }
    }

    /** Something cannot be written where it belongs; true when the person has saved it under another name instead. */
    boolean elsewhere(String title, String words) {
        return new Question(shell, desk, title, words, "Go on without saving", "Save as...").ask() == 1 && saveElsewhere();
    }

    private boolean overwrite(JobFileException refused) {
        int answer = new Question(shell, desk, "The job changed on the disk", refused.getMessage(), "Go on without saving", "Write over it", "Save as...").ask();
        if (answer != 1) {
            return answer == 2 && saveElsewhere();
        }
        try {
            desk.kept().save(true);
            return true;
        } catch (IOException failed) {
            return elsewhere(NOT_SAVED, failed.getMessage());
        }
    }

    /** Saves under another name, and goes on there; true when it is saved. */
    boolean saveElsewhere() {
        FileDialog dialog = new FileDialog(shell, SWT.SAVE);
        dialog.setText("Save the job as");
        dialog.setFilterExtensions(new String[] {"*" + JobNames.ENDING});
        desk.kept().file().ifPresent(file -> {
            dialog.setFilterPath(file.file().getParent().toString());
            dialog.setFileName(file.file().getFileName().toString());
        });
        dialog.setOverwrite(true);
        String chosen = dialog.open();
        return chosen != null && saveIn(Path.of(chosen.endsWith(JobNames.ENDING) ? chosen : chosen + JobNames.ENDING));
    }

    private boolean saveIn(Path path) {
        try {
            if (desk.kept().file().filter(open -> open.file().equals(path.toAbsolutePath().normalize())).isPresent()) {
                desk.kept().save(true);
            } else {
                desk.kept().saveIn(JobFile.open(path, options));
            }
            return true;
        } catch (IOException failed) {
            return elsewhere(NOT_SAVED, failed.getMessage());
        }
    }
}
