// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.desk;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.function.Consumer;
import kerfglow.host.JobSheet;
import kerfglow.host.SheetException;
import kerfglow.job.JobFile;
import kerfglow.job.JobState;
import kerfglow.job.ProofRef;

/**
 * A file that was opened, and the job that it belongs to. A job file names its proof. A proof belongs to the job file of its name beside it;
 * where there is none, a job begins with the job sheet beside the proof, if there is one.
 *
 * @param proof the proof's file
 * @param file the job file, held for changes
 * @param state the job; with what was entered but not saved before the window was last killed
 * @param remark what the person should know about the file, in a sentence
 */
record OpenedJob(Path proof, JobFile file, JobState state, Optional<String> remark) {
    private static final String SHEET_ENDING = ".job.yaml";

    /**
     * Opens.
     *
     * @param path a proof or a job file
     * @param onProblem told when autosave fails, from a thread of its own
     */
    static OpenedJob of(Path path, Consumer<String> onProblem) throws IOException, SheetException {
        Path file = path.toAbsolutePath().normalize();
        boolean isJob = JobFile.isJobFile(file);
        Path jobPath = isJob ? file : file.resolveSibling(bare(file) + JobFile.ENDING);
        JobFile jobFile = JobFile.open(jobPath, JobFile.Options.of(onProblem));
        try {
            JobFile.Contents contents = jobFile.contents();
            JobState saved = contents.isNew() && !isJob ? JobState.of(ProofRef.of(JobFile.proofName(jobPath, file)), sheetBeside(file)) : contents.state();
            JobState state = jobFile.unsaved().isPresent() ? jobFile.takeUnsaved() : saved;
            return new OpenedJob(JobFile.proofFile(jobPath, state), jobFile, state, remark(jobFile));
        } catch (SheetException | RuntimeException failed) {
            jobFile.close();
            throw failed;
        }
    }

    private static Optional<String> remark(JobFile file) {
        String name = file.file().getFileName().toString();
        if (!file.contents().problems().isEmpty()) {
            return Optional.of(name + " was damaged; what can be read is shown: " + String.join("; ", file.contents().problems()) + file.contents().kept().map(kept -> ". The original is kept as "
                    + kept.getFileName()).orElse(""));
        }
        if (file.heldBy().isPresent()) {
            return Optional.of("Decisions cannot be saved to " + name + ": it is held by " + file.heldBy().get());
        }
        return file.unsaved().map(unsaved -> "What was entered before the window ended without saving is here again. Save to keep it.");
    }

    private static JobSheet sheetBeside(Path proof) throws SheetException {
        Path sheet = proof.resolveSibling(bare(proof) + SHEET_ENDING);
        return Files.isRegularFile(sheet) ? JobSheet.read(sheet) : JobSheet.NONE;
    }

    private static String bare(Path file) {
        String name = file.getFileName().toString();
        int point = name.lastIndexOf('.');
        return point > 0 ? name.substring(0, point) : name;
    }
}
