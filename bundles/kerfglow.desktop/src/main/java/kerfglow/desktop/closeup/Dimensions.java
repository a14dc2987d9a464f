// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.closeup;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import kerfglow.api.proof.Part;
import kerfglow.host.Result;

/** The dimensions of a result's findings, each worked out the first time that it is asked for. For one thread. */
public final class Dimensions {
    /** A place of a finding. */
    private record Key(String finding, int place) {
    }

    private final Map<String, Part> parts = new HashMap<>();
    private final Map<Key, Optional<Dimension>> known = new HashMap<>();

    public Dimensions(List<Part> parts) {
        parts.forEach(part -> this.parts.put(part.id(), part));
    }

    /** The dimension at a place; empty when there is none to draw. */
    public Optional<Dimension> of(Result.ReportedFinding finding, int place) {
        return known.computeIfAbsent(new Key(finding.id(), place), key -> Dimension.of(finding, finding.places().get(place),
                finding.parts().stream().filter(parts::containsKey).map(parts::get).toList()));
    }
}
