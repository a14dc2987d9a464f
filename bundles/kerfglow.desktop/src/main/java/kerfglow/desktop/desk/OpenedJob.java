// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.desk;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import kerfglow.host.InputFile;
import kerfglow.host.JobSheet;
import kerfglow.host.SheetException;
import kerfglow.job.JobDifference;
import kerfglow.job.JobFile;
import kerfglow.job.JobNames;
import kerfglow.job.JobState;
import kerfglow.job.ProofRef;

/**
 * A file that was opened, and the job that it belongs to. A job file names its proof. A proof belongs to the job file of its name beside it;
 * where there is none, a job begins with the job sheet beside the proof, if there is one.
 *
 * @param proof the proof's file
 * @param file the job file, held for changes
 * @param state the job as it was saved; what was entered and not saved is offered by {@link Notices}
 */
record OpenedJob(Path proof, JobFile file, JobState state) {
    private static final String SHEET_ENDING = ".job.yaml";

    /**
     * Opens.
     *
     * @param path a proof or a job file
     * @param options how job files are opened here
     */
    static OpenedJob of(Path path, JobFile.Options options) throws IOException, SheetException {
        Path file = path.toAbsolutePath().normalize();
        InputFile.require(file, "a proof or a job file"); // before anything is made beside it
        boolean isJob = JobNames.isJobFile(file);
        Path jobPath = FirstFile.jobOf(file);
        JobFile jobFile = JobFile.open(jobPath, options);
        try {
            JobFile.Contents contents = jobFile.contents();
            JobState saved = contents.isNew() && !isJob ? JobState.of(ProofRef.of(JobNames.proofName(jobPath, file)), sheetBeside(file)) : contents.state();
            List<String> left = jobFile.unsaved().map(unsaved -> JobDifference.words(saved, unsaved.state())).orElse(List.of());
            if (left.isEmpty() && jobFile.unsaved().isPresent()) { // taken back before the window ended: nothing to offer
                jobFile.takeUnsaved();
                jobFile.unchanged();
            }
            return new OpenedJob(JobNames.proofFile(jobPath, saved), jobFile, saved);
        } catch (SheetException | RuntimeException failed) {
            jobFile.close();
            throw failed;
        }
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
