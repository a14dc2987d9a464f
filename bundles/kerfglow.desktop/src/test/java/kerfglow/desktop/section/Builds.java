// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.section;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import kerfglow.api.UnitSystem;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Proof;
import kerfglow.api.proof.Role;
import kerfglow.host.JobSheet;
import kerfglow.host.Result;
import kerfglow.host.Scope;
import kerfglow.host.ShopSheet;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;

/** One sign of each build, as a run gives it. */
public enum Builds {
    FACE_LIT("face-lit letters", List.of(part(Role.FACE, "acrylic", 4.5), part(Role.BACK, "aluminium", 3)), 100),
    FACE_LIT_SHALLOW("face-lit letters", List.of(part(Role.FACE, "acrylic", 3), part(Role.PANEL, "aluminium composite", 3), part(Role.VINYL, "film", 0.1)), 40),
    HALO_LIT("halo-lit letters", List.of(part(Role.FACE, "stainless steel", 1.5), part(Role.BACK, "polycarbonate", 3)), 60),
    CABINET("cabinet", List.of(part(Role.FACE, "flexible polyester", 0.6), part(Role.PRINT, "film", 0.1)), 150),
    PANEL_OPEN("routed panel", List.of(part(Role.PANEL, "aluminium", 3), part(Role.OPENING, "aluminium", 3)), 0),
    PANEL_PUSH_THROUGH("routed panel", List.of(part(Role.PANEL, "aluminium", 3), part(Role.OPENING, "aluminium", 3), part(Role.PUSH_THROUGH, "acrylic", 12)), 120),
    PANEL_WITH_LETTERS("routed panel", List.of(part(Role.PANEL, "aluminium", 3), part(Role.OPENING, "aluminium", 3), part(Role.FACE, "acrylic", 4.5), part(Role.BACK, "aluminium", 3),
            part(Role.VINYL, "film", 0.1)), 60),
    FLAT_CUT("flat cut letters", List.of(part(Role.FACE, "acrylic", 10), part(Role.HOLE, "acrylic", 10)), 0),
    VINYL("vinyl", List.of(part(Role.VINYL, "film", 0.1), part(Role.PANEL, "aluminium composite", 3)), 0);

    private final String word;
    private final List<Part> parts;
    private final double depthMm;

    Builds(String word, List<Part> parts, double depthMm) {
        this.word = word;
        this.parts = parts;
        this.depthMm = depthMm;
    }

    private static Part part(Role role, String material, double thicknessMm) {
        return Part.builder(role.word(), role, (Polygon) new GeometryFactory().toGeometry(new Envelope(0, 10, 0, 10))).sheetMaterial(material).thicknessMm(thicknessMm).build();
    }

    /** A run of the sign with values that shops use. */
    public Result result(UnitSystem units) {
        JobSheet job = new JobSheet("", "", Optional.empty(), Optional.of(units), OptionalDouble.empty(), Optional.empty(), Optional.of(word), List.of(), List.of(), Set.of(), List.of(), List.of());
        ShopSheet shop = new ShopSheet("", "", Optional.empty(), Map.of("light-modules", List.of(new ShopSheet.RawItem(Map.of("name", field("two-lens"), "length", field("62 mm"), "width", field("14 mm"),
                "emitter-height", field("6 mm")), ""))), List.of(), List.of());
        List<Result.SettingUsed> settings = new ArrayList<>(List.of(mm("returns.thickness", 1), mm("back.allowance", 4.7625), mm("trim.lip", 6.35), mm("glow.stand-off", 38.1),
                mm("fit.push-through-allowance", 1.5875)));
        if (depthMm > 0) {
            settings.add(mm("returns.depth", depthMm));
        }
        Proof proof = new Proof("x.svg", "", 100, 100, 1, 0.02, List.of(), List.of());
        return new Result(proof, job, shop, units, parts, List.of(), List.of(), settings, List.of());
    }

    private static ShopSheet.RawField field(String text) {
        return new ShopSheet.RawField(text, "");
    }

    private static Result.SettingUsed mm(String key, double value) {
        return new Result.SettingUsed(key, Scope.ALL.toString(), value, "mm", "check");
    }
}
