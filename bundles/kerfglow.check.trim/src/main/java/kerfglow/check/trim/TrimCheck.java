// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.trim;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import kerfglow.api.Check;
import kerfglow.api.CheckInfo;
import kerfglow.api.Finding;
import kerfglow.api.Inspection;
import kerfglow.api.Outcome;
import kerfglow.api.OverlayLayer;
import kerfglow.api.Workers;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Role;
import org.osgi.service.component.annotations.Component;

/**
 * Finds what the edge moulding of lit faces hides, and where it cannot follow the edge; says how much of it is needed.
 *
 * <p>The moulding covers a lip's width on both edges of each stroke, so that of the local width ({@link kerfglow.geometry.LocalWidth})
 * two lips stay dark. Curves tighter than it follows are bends of the edge; sharp corners are notched and are none.
 *
 * <p>Cost: near n log n in the vertices of each face.
 */
@Component
public final class TrimCheck implements Check {
    private final CheckInfo info = new CheckInfo("trim", "What edge moulding hides and where it does not follow", TrimRules.ALL, TrimSettings.ALL,
            List.of(TrimSettings.MOULDINGS), TrimTables.ALL, CheckInfo.page(TrimCheck.class, "page.md"));

    @Override
    public CheckInfo info() {
        return info;
    }

    @Override
    public Outcome inspect(Inspection inspection) {
        List<Part> faces = inspection.parts(Role.FACE).stream().filter(face -> isTrimmed(inspection, face)).toList();
        if (faces.isEmpty()) {
            return Outcome.notMeasured("no part of this proof is a face with edge moulding (trim.faces)");
        }
        Set<String> missing = new LinkedHashSet<>();
        Workers workers = new Workers(inspection);
        workers.expect(faces.size());
        List<TrimmedFace> trimmed = workers.map(faces.stream().map(face -> TrimmedFace.Task.of(inspection, face, missing)).toList(),
                task -> task.measure(workers::pulse));
        List<MouldingNeed> needs = MouldingNeed.of(trimmed);
        TrimFindings writer = new TrimFindings(inspection);
        List<Finding> findings = new ArrayList<>();
        trimmed.forEach(face -> findings.addAll(writer.of(face)));
        needs.forEach(need -> findings.add(writer.of(need)));
        return Outcome.of(findings).withTables(TrimTables.of(trimmed, needs)).withLayers(layers(trimmed)).withMissing(List.copyOf(missing));
    }

    private static boolean isTrimmed(Inspection inspection, Part face) {
        return switch (inspection.settings().get(TrimSettings.FACES, face)) {
            case TrimSettings.EVERY -> true;
            case TrimSettings.ASSIGNED -> face.isAssigned();
            default -> false;
        };
    }

    private static List<OverlayLayer> layers(List<TrimmedFace> trimmed) {
        List<OverlayLayer.Item> lit = new ArrayList<>();
        trimmed.stream().filter(face -> !face.lit().isEmpty()).forEach(face -> lit.add(new OverlayLayer.Item(face.lit(), Double.NaN, "")));
        return List.of(new OverlayLayer("lit", "What stays lit between the lips", lit));
    }
}
