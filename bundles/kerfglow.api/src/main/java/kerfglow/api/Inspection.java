// SPDX-License-Identifier: Apache-2.0
package kerfglow.api;

import java.util.List;
import java.util.Optional;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Proof;
import kerfglow.api.proof.Role;
import org.osgi.annotation.versioning.ProviderType;

/** What a check is given for one run. */
@ProviderType
public interface Inspection {
    /** What was drawn. */
    Proof proof();

    /** What it becomes, in a fixed order; notes and leftovers are not among them. */
    List<Part> parts();

    /** The parts of the given roles, in the same order. */
    default List<Part> parts(Role... roles) {
        List<Role> wanted = List.of(roles);
        return parts().stream().filter(part -> wanted.contains(part.role())).toList();
    }

    /** The values in force of the settings that the check declares. */
    Settings settings();

    /** What the shop sheet lists of a kind that this check declares; empty when it lists none. */
    List<StockItem> stock(StockKind kind);

    /** How the sign is made, one of the words of the job sheet's key {@code build}; empty when it does not say. */
    default Optional<String> build() {
        return Optional.empty();
    }

    /** The light modules that a person placed; they stand beside those that are drawn (parts of role module). */
    default List<PlacedModule> placedModules() {
        return List.of();
    }

    /** What another check measured in this run; empty unless {@link Check#reads} names it and it measured. */
    default List<Table> tables(String check) {
        return List.of();
    }

    /** The table of that id of another check; empty as {@link #tables} is. */
    default Optional<Table> table(String check, String table) {
        return tables(check).stream().filter(each -> each.info().id().equals(table)).findFirst();
    }

    /** The units that messages are written in. */
    UnitSystem units();

    /** A length for a message, in the units of the job. */
    default String length(double mm) {
        return Units.format(mm, Quantity.LENGTH, units());
    }

    /**
     * To be called often (many times a second): tells how far the check is.
     *
     * @param fraction 0 to 1
     * @throws java.util.concurrent.CancellationException when the run was cancelled or the check's time is up; let it pass
     */
    void checkpoint(double fraction);
}
