// SPDX-License-Identifier: Apache-2.0
package kerfglow.job;

import java.util.Objects;
import kerfglow.api.proof.Proof;

/**
 * The proof that a job is about.
 *
 * @param file its path from the job file's folder, with forward slashes; or absolute
 * @param sha256 digest of its bytes when it was last seen, 64 lower-case hex digits; empty before that
 * @param widthMm width of its viewport at the real size of the sign, mm; 0 before it was seen
 * @param heightMm height of its viewport, mm; 0 before it was seen
 * @param scale how many times larger the sign is than the file says
 */
public record ProofRef(String file, String sha256, double widthMm, double heightMm, double scale) {
    public ProofRef {
        Objects.requireNonNull(sha256, "sha256");
        Names.requireGiven("the file of the proof", file);
        if (!(scale > 0 && Double.isFinite(scale))) {
            throw new IllegalArgumentException("the scale of the proof must be above 0: " + scale);
        }
    }

    /** A proof that has not been looked into yet. */
    public static ProofRef of(String file) {
        return new ProofRef(file, "", 0, 0, 1);
    }

    /** The same, as it was seen in a run. */
    ProofRef seen(Proof proof) {
        return new ProofRef(file, proof.sha256(), proof.widthMm(), proof.heightMm(), proof.scale());
    }

    ProofRef withFile(String value) {
        return new ProofRef(value, sha256, widthMm, heightMm, scale);
    }
}
