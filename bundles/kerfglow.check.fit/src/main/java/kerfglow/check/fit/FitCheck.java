// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.fit;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Stream;
import kerfglow.api.Check;
import kerfglow.api.CheckInfo;
import kerfglow.api.Finding;
import kerfglow.api.Inspection;
import kerfglow.api.Outcome;
import kerfglow.api.OverlayLayer;
import kerfglow.api.Setting;
import kerfglow.api.SharedSettings;
import kerfglow.api.Workers;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Role;
import org.osgi.service.component.annotations.Component;

/**
 * Finds what will not fit when face meets back and push-through meets opening.
 *
 * <p>Where backs are drawn, they are paired with their faces by where they lie, and the clearance is measured along their edges: the
 * distance from each point of the back's edge to the nearest edge of the face. Where none is drawn, backs are made from the faces, and
 * kept with the result. Thermal movement of each face against its can is held against what is left of the allowance.
 *
 * <p>Cost: near n log n in the vertices of each pair.
 */
@Component
public final class FitCheck implements Check {
    private final CheckInfo info = new CheckInfo("fit", "What will not fit when face meets back", FitRules.ALL, settings(), List.of(),
            FitTables.ALL, CheckInfo.page(FitCheck.class, "page.md"));

    private static List<Setting<?>> settings() {
        return Stream.concat(FitSettings.ALL.stream(), ThermalSettings.ALL.stream()).toList();
    }

    @Override
    public CheckInfo info() {
        return info;
    }

    @Override
    public Outcome inspect(Inspection inspection) {
        List<Part> faces = inspection.parts(Role.FACE);
        List<Part> backs = inspection.parts(Role.BACK);
        List<Part> pushThroughs = inspection.parts(Role.PUSH_THROUGH);
        List<Part> toMake = backs.isEmpty() ? faces.stream().filter(getsBack(inspection)).toList() : List.of();
        if (backs.isEmpty() && pushThroughs.isEmpty() && toMake.isEmpty()) {
            return Outcome.notMeasured(faces.isEmpty() ? "no part of this proof is a face, back or push-through"
                    : "no backs are drawn, and fit.make-backs asks for none");
        }
        Workers workers = new Workers(inspection);
        List<Finding> findings = new ArrayList<>();
        Set<Part> alone = new LinkedHashSet<>();
        List<PairMeasure> measures = new ArrayList<>();
        if (!backs.isEmpty()) {
            Pairing pairing = new Pairing(faces, backs, workers::pulse);
            // a shape that counts as a face for want of better need not have a back
            pairing.lonelyOuters().stream().filter(Part::isAssigned).forEach(alone::add);
            alone.addAll(pairing.lonelyInners());
            pairing.pairs().forEach(pair -> measures.add(new PairMeasure(inspection, pair,
                    Allowance.of(inspection, SharedSettings.BACK_ALLOWANCE, pair.outers().get(0)))));
        }
        if (!pushThroughs.isEmpty()) {
            Pairing pairing = new Pairing(inspection.parts(Role.OPENING), pushThroughs, workers::pulse);
            alone.addAll(pairing.lonelyOuters());
            alone.addAll(pairing.lonelyInners());
            pairing.pairs().forEach(pair -> measures.add(new PairMeasure(inspection, pair,
                    Allowance.of(inspection, FitSettings.PUSH_THROUGH_ALLOWANCE, pair.outers().get(0)))));
        }
        workers.expect(measures.size() + toMake.size());
        List<PairResult> pairs = workers.map(measures, each -> each.measure(workers::pulse));
        List<MadeBack> made = workers.map(toMake.stream().map(face -> MadeBack.Task.of(inspection, face)).toList(), task -> task.make(workers::pulse));

        Set<String> missing = new LinkedHashSet<>();
        List<Thermal> thermals = thermals(inspection, pairs, made, missing);
        FitFindings writer = new FitFindings(inspection);
        pairs.forEach(pair -> findings.addAll(writer.of(pair)));
        alone.forEach(part -> findings.add(writer.lonely(part)));
        made.forEach(back -> findings.addAll(writer.of(back)));
        thermals.forEach(thermal -> writer.of(thermal).ifPresent(findings::add));
        return Outcome.of(findings).withTables(FitTables.of(pairs, made, thermals)).withLayers(layers(pairs, made))
                .withMissing(List.copyOf(missing));
    }

    private static Predicate<Part> getsBack(Inspection inspection) {
        return face -> switch (inspection.settings().get(FitSettings.MAKE_BACKS, face)) {
            case FitSettings.EVERY -> true;
            case FitSettings.ASSIGNED -> face.isAssigned();
            default -> false;
        };
    }

    private static List<Thermal> thermals(Inspection inspection, List<PairResult> pairs, List<MadeBack> made, Set<String> missing) {
        List<Thermal> thermals = new ArrayList<>();
        for (PairResult pair : pairs) {
            for (Part outer : pair.pair().outers()) {
                if (outer.role() == Role.FACE) {
                    Thermal.of(inspection, outer, pair.allowance(), missing).ifPresent(thermals::add);
                }
            }
        }
        for (MadeBack back : made) {
            Thermal.of(inspection, back.face(), back.allowance(), missing).ifPresent(thermals::add);
        }
        return thermals;
    }

    private static List<OverlayLayer> layers(List<PairResult> pairs, List<MadeBack> made) {
        List<OverlayLayer.Item> departures = new ArrayList<>();
        for (PairResult pair : pairs) {
            pair.departures().forEach(departure -> departures.add(new OverlayLayer.Item(departure.place(), Double.NaN, "")));
            pair.missed().forEach(missed -> departures.add(new OverlayLayer.Item(missed.place(), Double.NaN, "")));
        }
        List<OverlayLayer.Item> backs = new ArrayList<>();
        made.stream().filter(back -> !back.shape().isEmpty()).forEach(back -> backs.add(new OverlayLayer.Item(back.shape(), Double.NaN, "")));
        return List.of(new OverlayLayer("departures", "Where the clearance departs", departures),
                new OverlayLayer("made-backs", "Backs made from faces", backs));
    }
}
