// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.glow;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import kerfglow.api.Check;
import kerfglow.api.CheckInfo;
import kerfglow.api.Finding;
import kerfglow.api.Inspection;
import kerfglow.api.Outcome;
import kerfglow.api.StockKind;
import kerfglow.api.Workers;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Role;
import kerfglow.light.LightModuleType;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.operation.union.UnaryUnionOp;
import org.osgi.service.component.annotations.Component;

/**
 * Reckons the light on lit faces, and on the wall behind halo-lit letters, from the modules that are drawn or placed, or else laid out; finds
 * where it is spotted, dark or uneven. Planning figures: a sample tells the truth.
 *
 * <p>Cost, for each part: cells times emitters for the direct light, the square of the patches for the light sent on; and what a layout takes.
 */
@Component
public final class GlowCheck implements Check {
    /** Kind of stock that it reads; check power reads other fields of it. */
    public static final StockKind MODULES = GlowSettings.MODULES;

    private static final Map<String, String> LIT_BY_BUILD = Map.of("face-lit letters", GlowSettings.FACE, "cabinet", GlowSettings.FACE,
            "halo-lit letters", GlowSettings.HALO);

    private final CheckInfo info = new CheckInfo("glow", "The light on lit faces: modules, spots, dark patches", GlowRules.ALL, GlowSettings.ALL, List.of(MODULES),
            GlowTables.ALL, CheckInfo.page(GlowCheck.class, "page.md"));

    @Override
    public CheckInfo info() {
        return info;
    }

    @Override
    public List<String> reads() {
        return List.of("trim");
    }

    @Override
    public Outcome inspect(Inspection inspection) {
        Map<Part, Boolean> halos = new LinkedHashMap<>();
        for (Part part : inspection.parts(Role.FACE)) {
            String lit = lit(inspection, part);
            if (part.isAssigned() && !lit.equals(GlowSettings.NONE)) {
                halos.put(part, lit.equals(GlowSettings.HALO));
            }
        }
        if (halos.isEmpty()) {
            return Outcome.notMeasured("No part of this proof is a lit face (glow.lit; by build, face-lit letters, halo-lit letters and cabinets are lit).");
        }
        Set<String> missing = new LinkedHashSet<>();
        Map<Part, List<GivenModule>> given = given(inspection, List.copyOf(halos.keySet()), missing);
        List<LitTask> tasks = new ArrayList<>();
        halos.forEach((part, halo) -> LitTask.of(inspection, part, halo, given.getOrDefault(part, List.of()), keepClear(inspection, part), missing).ifPresent(tasks::add));
        if (tasks.isEmpty()) {
            return new Outcome(List.of(), List.of(), List.of(), List.copyOf(missing), false);
        }
        Workers workers = new Workers(inspection);
        List<LitFace> faces = Twins.measure(tasks, workers);
        GlowFindings writer = new GlowFindings(inspection);
        List<Finding> findings = new ArrayList<>();
        faces.forEach(face -> findings.addAll(writer.of(face)));
        findings.addAll(writer.layouts(faces));
        return Outcome.of(findings).withTables(GlowTables.of(faces, inspection.settings().get(GlowSettings.GRID)))
                .withLayers(GlowLayers.of(faces, workers)).withMissing(List.copyOf(missing));
    }

    private static String lit(Inspection inspection, Part part) {
        String said = inspection.settings().get(GlowSettings.LIT, part);
        return said.equals(GlowSettings.BY_BUILD) ? inspection.build().map(build -> LIT_BY_BUILD.getOrDefault(build, GlowSettings.NONE)).orElse(GlowSettings.NONE) : said;
    }

    /** Which part each drawn or placed module lies in: the one that most of its plate lies on. */
    private static Map<Part, List<GivenModule>> given(Inspection inspection, List<Part> parts, Set<String> missing) {
        Map<Part, List<GivenModule>> byPart = new HashMap<>();
        Map<Part, LightModuleType> types = new HashMap<>();
        GeometryFactory factory = parts.get(0).shape().getFactory();
        for (GivenModule module : GivenModule.of(inspection)) {
            Part best = null;
            double most = 0;
            for (Part part : parts) {
                LightModuleType type = types.computeIfAbsent(part, each -> ModuleChoice.of(inspection, each, new LinkedHashSet<>()).type());
                Geometry plate = module.as(type).outline(factory).buffer(GlowFindings.TOUCH_MM);
                double overlap = plate.getEnvelopeInternal().intersects(part.shape().getEnvelopeInternal()) ? plate.intersection(part.shape()).getArea() : 0;
                if (overlap > most) {
                    most = overlap;
                    best = part;
                }
            }
            if (best == null) {
                missing.add("The " + module.how() + " " + module.name() + " at " + inspection.length(module.xMm()) + ", " + inspection.length(module.yMm())
                        + " lies on no lit part, so it lights nothing.");
            } else {
                byPart.computeIfAbsent(best, part -> new ArrayList<>()).add(module);
            }
        }
        return byPart;
    }

    private static Geometry keepClear(Inspection inspection, Part part) {
        List<Geometry> places = new ArrayList<>();
        for (Part each : inspection.parts(Role.HOLE, Role.KEEP_OUT)) {
            if (each.shape().getEnvelopeInternal().intersects(part.shape().getEnvelopeInternal())) {
                places.add(each.shape());
            }
        }
        return places.isEmpty() ? part.shape().getFactory().createPolygon() : UnaryUnionOp.union(places);
    }
}
