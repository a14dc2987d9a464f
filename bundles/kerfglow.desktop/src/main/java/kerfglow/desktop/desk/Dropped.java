// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.desk;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import kerfglow.job.JobNames;

/**
 * Files that were dropped on the window.
 *
 * @param file the one to open: the first that is a proof or a job file; empty when none is
 * @param words what to tell about the others; empty when there is nothing to tell
 */
public record Dropped(Optional<Path> file, String words) {
    private static final String PROOF_ENDING = ".svg";

    /** Looks through them in the order given. */
    public static Dropped of(List<Path> files) {
        List<Path> fit = files.stream().filter(Dropped::isOpened).toList();
        if (fit.isEmpty()) {
            return new Dropped(Optional.empty(), files.isEmpty() ? "" : (files.size() == 1 ? name(files.get(0)) + " is neither" : "None of the " + files.size() + " files is")
                    + (files.size() == 1 ? " a proof (" + PROOF_ENDING + ") nor a job file (" + JobNames.ENDING + ")" : " a proof (" + PROOF_ENDING + ") or a job file (" + JobNames.ENDING + ")")
                    + "; nothing is opened.");
        }
        Path first = fit.get(0);
        List<Path> others = files.stream().filter(file -> file != first && !FirstFile.jobOf(file).equals(FirstFile.jobOf(first))).toList();
        return new Dropped(Optional.of(first), others.isEmpty() ? "" : "One proof is opened at a time: " + name(first) + " is, "
                + (others.size() == 1 ? name(others.get(0)) + " is" : name(others.get(0)) + " and " + (others.size() - 1) + " more are") + " not.");
    }

    private static boolean isOpened(Path file) {
        return Files.isRegularFile(file) && (JobNames.isJobFile(file) || name(file).toLowerCase(Locale.ROOT).endsWith(PROOF_ENDING));
    }

    private static String name(Path file) {
        return String.valueOf(file.getFileName());
    }
}
