// SPDX-License-Identifier: Apache-2.0
package kerfglow.job;

import java.nio.file.Path;
import java.util.Locale;

/** What job files are called, and how they name their proofs. */
public final class JobNames {
    /** The ending of job files. */
    public static final String ENDING = ".kerfglow";

    private static final int SHORT_DIGEST = 8;

    private JobNames() {
    }

    /** True when a name ends as those of job files do. */
    public static boolean isJobFile(Path path) {
        return String.valueOf(path.getFileName()).toLowerCase(Locale.ROOT).endsWith(ENDING);
    }

    /** The job file that belongs to a proof unless the person names another: {@code NAME.kerfglow} beside {@code NAME.svg}. */
    public static Path beside(Path proof) {
        return proof.resolveSibling(bare(String.valueOf(proof.getFileName())) + ENDING);
    }

    /** The same job for a job file in another place: the proof is named from there. */
    public static JobState relocated(JobState state, Path from, Path to) {
        return state.withProof(state.proof().withFile(proofName(to, proofFile(from, state))));
    }

    /** The proof's file as the job names it, found from the job file's folder. */
    public static Path proofFile(Path jobFile, JobState state) {
        return jobFile.toAbsolutePath().resolveSibling(state.proof().file()).normalize();
    }

    /** The name by which a job file in this place names a proof. */
    public static String proofName(Path jobFile, Path proof) {
        return SheetJson.relative(jobFile.toAbsolutePath().getParent(), proof);
    }

    /** A name beside the job file that the same content always gets. */
    static Path named(Path file, String what, String contentDigest) {
        return file.resolveSibling(bare(String.valueOf(file.getFileName())) + "." + what + "-" + contentDigest.substring(0, SHORT_DIGEST) + ENDING);
    }

    static String bare(String name) {
        return name.replaceFirst("\\.[^.]*$", "");
    }
}
