// SPDX-License-Identifier: Apache-2.0
package kerfglow.host;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import kerfglow.api.Quantity;
import kerfglow.api.UnitSystem;
import kerfglow.api.Units;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Role;

/**
 * What a value holds for. All that is given must fit; {@code *} in layer and part stands for any characters.
 *
 * @param role the part's role
 * @param material the part's material
 * @param thicknessMm the thickness of its material, mm
 * @param layer the part's layer
 * @param part the part's id, or the id of an element that it is made of
 */
public record Scope(Optional<Role> role, Optional<String> material, OptionalDouble thicknessMm, Optional<String> layer, Optional<String> part) {
    /** Everything. */
    public static final Scope ALL = new Scope(Optional.empty(), Optional.empty(), OptionalDouble.empty(), Optional.empty(), Optional.empty());

    /** Thicknesses are typed in mm or inches; 3/16 in and 4.76 mm are the same sheet. */
    private static final double SAME_THICKNESS_MM = 0.01;

    public Scope {
        Objects.requireNonNull(role, "role");
        Objects.requireNonNull(material, "material");
        Objects.requireNonNull(thicknessMm, "thicknessMm");
        Objects.requireNonNull(layer, "layer");
        Objects.requireNonNull(part, "part");
    }

    /** True when the value holds for a part. */
    public boolean fits(Part candidate) {
        return role.map(each -> each == candidate.role()).orElse(true)
                && material.map(each -> candidate.sheetMaterial().filter(each::equalsIgnoreCase).isPresent()).orElse(true)
                && (thicknessMm.isEmpty() || candidate.thicknessMm().isPresent()
                        && Math.abs(candidate.thicknessMm().getAsDouble() - thicknessMm.getAsDouble()) <= SAME_THICKNESS_MM)
                && layer.map(each -> Glob.matches(each, candidate.layer())).orElse(true)
                && part.map(each -> Glob.matches(each, candidate.id()) || candidate.elements().stream().anyMatch(id -> Glob.matches(each, id)))
                        .orElse(true);
    }

    /** Higher is more specific: a part outweighs a layer, that a thickness, that a material, that a role. */
    int weight() {
        return (role.isPresent() ? 1 : 0) + (material.isPresent() ? 2 : 0) + (thicknessMm.isPresent() ? 4 : 0) + (layer.isPresent() ? 8 : 0)
                + (part.isPresent() ? 16 : 0);
    }

    /** For a person and for JSON: {@code all}, or {@code role=face, material=acrylic}. */
    @Override
    public String toString() {
        List<String> words = new ArrayList<>();
        role.ifPresent(each -> words.add("role=" + each.word()));
        material.ifPresent(each -> words.add("material=" + each));
        thicknessMm.ifPresent(each -> words.add("thickness=" + Units.format(each, Quantity.LENGTH, UnitSystem.METRIC)));
        layer.ifPresent(each -> words.add("layer=" + each));
        part.ifPresent(each -> words.add("part=" + each));
        return words.isEmpty() ? "all" : String.join(", ", words);
    }
}
