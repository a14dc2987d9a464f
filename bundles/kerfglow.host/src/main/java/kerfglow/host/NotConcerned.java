// SPDX-License-Identifier: Apache-2.0
package kerfglow.host;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import kerfglow.api.Concerns;
import kerfglow.api.Inspection;
import kerfglow.api.proof.Role;

/** Why a check need not be asked about a proof. */
final class NotConcerned {
    private NotConcerned() {
    }

    /** In words; empty when the proof concerns the check. */
    static Optional<String> why(Concerns concerns, Inspection inspection) {
        if (!concerns.roles().isEmpty() && inspection.parts().stream().noneMatch(part -> concerns.roles().contains(part.role()))) {
            return Optional.of("It is about parts of role " + concerns.roles().stream().map(Role::word).sorted().collect(Collectors.joining(", "))
                    + "; this proof has none.");
        }
        List<String> builds = concerns.builds();
        Optional<String> build = builds.isEmpty() ? Optional.empty() : inspection.build();
        return build.filter(word -> !builds.contains(word)).map(word -> "Not for this build: it is about " + String.join(", ", builds) + ", and the job says " + word + ".");
    }
}
