// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.closeup;

import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import kerfglow.api.proof.Part;
import kerfglow.host.Result;

/** The dimensions of a result's findings, each worked out the first time that it is asked for. For one thread. */
public final class Dimensions {
    private final Map<String, Part> parts = new HashMap<>();
    private final List<Part> all;
    private final Map<Result.Place, Optional<Dimension>> known = new IdentityHashMap<>();

    public Dimensions(List<Part> parts) {
        all = parts;
        parts.forEach(part -> this.parts.put(part.id(), part));
    }

    /** For other findings; what is known of the very same places of the same parts is taken over. */
    public Dimensions with(List<Part> newParts, List<Result.ReportedFinding> findings) {
        Dimensions next = new Dimensions(newParts);
        if (newParts.equals(all)) {
            findings.stream().flatMap(finding -> finding.places().stream()).forEach(place -> Optional.ofNullable(known.get(place)).ifPresent(dimension -> next.known.put(place, dimension)));
        }
        return next;
    }

    /** The dimension at a place; empty when there is none to draw. */
    public Optional<Dimension> of(Result.ReportedFinding finding, int place) {
        return known.computeIfAbsent(finding.places().get(place), at -> Dimension.of(finding, at,
                finding.parts().stream().filter(parts::containsKey).map(parts::get).toList()));
    }
}
