// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.section;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import kerfglow.api.Quantity;
import kerfglow.api.Units;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Role;
import kerfglow.desktop.closeup.ModuleSize;
import kerfglow.host.Result;
import kerfglow.host.Scope;

/** What a run says of how the sign is made. */
final class SectionFacts {
    /** Assumed where the job names no thickness; the dimension asks for it. */
    private static final double USUAL_SHEET_MM = 3;
    /** Assumed where no check knows of modules. */
    private static final ModuleSize USUAL_MODULE = new ModuleSize("", 70, 15, 6);
    /** Words for what is no metal; common names of sheet stock. */
    private static final List<String> PLASTICS = List.of("acryl", "polycarb", "pvc", "foam", "plastic", "petg", "styrene", "polyester", "vinyl", "hdu", "abs", "wood", "mdf", "ply");

    private final Result result;

    SectionFacts(Result result) {
        this.result = result;
    }

    /** One of the words of the key build; where the job gives none, what its parts look like. */
    String build() {
        return result.job().build().orElseGet(() -> {
            if (part(Role.FACE).isPresent() && part(Role.PANEL).isEmpty()) {
                return depthMm().isPresent() ? "face-lit letters" : "flat cut letters";
            }
            return part(Role.PANEL).isPresent() ? "routed panel" : part(Role.FACE).isPresent() ? "flat cut letters" : "vinyl";
        });
    }

    /** Of several the thickest stock: the drawing shows one stroke. */
    Optional<Part> part(Role role) {
        return result.parts().stream().filter(part -> part.role() == role).max((a, b) -> Double.compare(a.thicknessMm().orElse(0), b.thicknessMm().orElse(0)));
    }

    boolean hasFilm() {
        return part(Role.VINYL).isPresent() || part(Role.PRINT).isPresent();
    }

    double thicknessMm(Part part) {
        return part.thicknessMm().orElse(USUAL_SHEET_MM);
    }

    Section.Stuff stuff(Part part) {
        String material = part.sheetMaterial().orElse(part.role() == Role.FACE || part.role() == Role.PUSH_THROUGH ? PLASTICS.get(0) : "").toLowerCase(Locale.ROOT);
        return PLASTICS.stream().anyMatch(material::contains) ? Section.Stuff.PLASTIC : Section.Stuff.METAL;
    }

    /** What a part is and of what. */
    String words(Part part) {
        return part.role().word() + part.sheetMaterial().map(material -> ", " + material).orElse("")
                + (part.thicknessMm().isPresent() ? ", " + length(part.thicknessMm().getAsDouble()) : "");
    }

    String length(double mm) {
        return Units.format(mm, Quantity.LENGTH, result.units());
    }

    /** Depth of the returns; empty for a sign without. */
    OptionalDouble depthMm() {
        OptionalDouble depth = setting("returns.depth");
        return depth.orElse(0) > 0 ? depth : OptionalDouble.empty();
    }

    double stripMm() {
        return setting("returns.thickness").orElse(1);
    }

    /** How much smaller a back is than its face, as it is told. */
    double allowanceMm() {
        return setting("back.allowance").orElse(0);
    }

    boolean isPerSide() {
        return "per side".equals(text("back.allowance-kind"));
    }

    /** Lip of the edge moulding; empty where the faces have none. */
    OptionalDouble lipMm() {
        return "none".equals(text("trim.faces")) ? OptionalDouble.empty() : setting("trim.lip");
    }

    ModuleSize module() {
        return ModuleSize.of(result).orElse(USUAL_MODULE);
    }

    String text(String key) {
        return result.settings().stream().filter(used -> used.key().equals(key) && used.scope().equals(Scope.ALL.toString())).map(used -> String.valueOf(used.value()))
                .findFirst().orElse("");
    }

    OptionalDouble setting(String key) {
        return result.settings().stream().filter(used -> used.key().equals(key) && used.scope().equals(Scope.ALL.toString()) && used.value() instanceof Number)
                .mapToDouble(used -> ((Number) used.value()).doubleValue()).findFirst();
    }
}
