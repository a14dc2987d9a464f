// SPDX-License-Identifier: Apache-2.0
package kerfglow.job;

import kerfglow.api.Severity;
import kerfglow.host.Result;

/**
 * A line of the list of findings.
 *
 * @param number its number in the result, from 1; badges and reports show the same
 * @param finding the finding
 * @param decision what has been decided about it
 * @param check id of the check that found it
 */
public record FindingItem(int number, Result.ReportedFinding finding, Decision decision, String check) {
    /** True when a person must still decide. */
    public boolean isToDecide() {
        return finding.severity() != Severity.INFO && !decision.isWaived();
    }
}
