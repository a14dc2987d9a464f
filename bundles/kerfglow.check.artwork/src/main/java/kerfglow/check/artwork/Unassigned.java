// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.artwork;

import java.util.List;
import java.util.stream.Collectors;
import kerfglow.api.Finding;
import kerfglow.api.Measure;
import kerfglow.api.Rule;
import kerfglow.api.Severity;
import kerfglow.api.proof.Part;

/** Parts that nobody gave a role: said once for the whole proof. */
final class Unassigned {
    static final Rule RULE = new Rule("artwork.unassigned", Severity.REVIEW, "Parts have no role",
            "They count as faces for want of better, so they are checked against limits that may not be theirs.",
            "Give their layer or colour a role in the job sheet; note or unused for what is not made.", "common practice, no source");

    private Unassigned() {
    }

    static List<Finding> find(Artwork artwork) {
        List<Part> parts = artwork.inspection().parts().stream().filter(part -> !part.isAssigned()).toList();
        if (parts.isEmpty()) {
            return List.of();
        }
        String layers = parts.stream().map(part -> part.layer().isEmpty() ? "no layer" : part.layer()).distinct()
                .collect(Collectors.joining(", "));
        String message = (parts.size() == 1 ? "1 part has" : parts.size() + " parts have") + " no role, in: " + layers
                + "; they count as faces";
        return List.of(Finding.of(RULE, message).place(parts.get(0).shape().getFactory().buildGeometry(parts.stream().map(Part::shape).toList()))
                .at(parts.get(0).shape().getInteriorPoint().getCoordinate()).parts(parts.stream().map(Part::id).toList())
                .measured(Measure.count(parts.size())).required(Measure.count(0)).build());
    }
}
