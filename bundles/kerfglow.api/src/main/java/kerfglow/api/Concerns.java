// SPDX-License-Identifier: Apache-2.0
package kerfglow.api;

import java.util.List;
import java.util.Set;
import kerfglow.api.proof.Role;

/**
 * What a check is about. The host does not ask a check about a proof that it does not concern; the row says so.
 *
 * @param roles a proof without a part of any of these roles does not concern it; empty for any proof
 * @param builds a sign that is made otherwise does not concern it, in the words of the job sheet's key {@code build}; empty for any. A
 *     job that does not say how the sign is made concerns every check
 */
public record Concerns(Set<Role> roles, List<String> builds) {
    /** Every proof. */
    public static final Concerns ALL = new Concerns(Set.of(), List.of());

    public Concerns {
        roles = Set.copyOf(roles);
        builds = List.copyOf(builds);
    }

    /** Proofs that have a part of one of these roles. */
    public static Concerns ofRoles(Role... roles) {
        return new Concerns(Set.of(roles), List.of());
    }

    /** The same, for signs made in one of these ways alone. */
    public Concerns inBuilds(String... words) {
        return new Concerns(roles, List.of(words));
    }
}
