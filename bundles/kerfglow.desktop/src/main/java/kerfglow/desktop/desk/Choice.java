// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.desk;

import java.util.Optional;
import kerfglow.host.Result;
import kerfglow.job.FindingItem;

/**
 * A finding and one of its places.
 *
 * @param item the finding with its number and what was decided
 * @param place which of its places, from 0
 */
public record Choice(FindingItem item, int place) {
    public Result.ReportedFinding finding() {
        return item.finding();
    }

    /** The place itself; absent when the finding concerns the whole proof. */
    public Optional<Result.Place> at() {
        return place < finding().places().size() ? Optional.of(finding().places().get(place)) : Optional.empty();
    }
}
