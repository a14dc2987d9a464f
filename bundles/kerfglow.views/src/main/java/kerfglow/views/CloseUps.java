// SPDX-License-Identifier: Apache-2.0
package kerfglow.views;

import java.util.Optional;
import kerfglow.host.Result;

/** Makes the close-ups of one result, which share what they draw. Not for several threads. */
public final class CloseUps {
    private final ProofShapes shapes;

    /** @param result whose findings are shown */
    public CloseUps(Result result) {
        shapes = new ProofShapes(result);
    }

    /**
     * The first place of a finding; absent when it concerns the whole proof.
     *
     * @param number that the finding has in the document
     */
    public Optional<CloseUp> of(Result.ReportedFinding finding, int number) {
        return finding.places().isEmpty() ? Optional.empty() : Optional.of(new CloseUp(shapes, finding, number));
    }
}
