// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.router;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import kerfglow.api.Check;
import kerfglow.api.CheckInfo;
import kerfglow.api.Finding;
import kerfglow.api.Inspection;
import kerfglow.api.Outcome;
import kerfglow.api.OverlayLayer;
import kerfglow.api.Setting;
import kerfglow.api.StockItem;
import kerfglow.api.StockKind;
import kerfglow.api.Workers;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Role;
import kerfglow.geometry.Residue;
import kerfglow.geometry.Stretch;
import org.osgi.service.component.annotations.Component;

/**
 * Finds what a router bit cannot cut, what would break while it is cut, and what is too small or too loose to stay in place.
 *
 * <p>Each part is measured by itself: a bit runs outside it and in its holes, or inside an opening. Parts are nested apart on the
 * sheet, so the distance between two of them in the proof is no gap. An opening that reaches a panel's edge is a notch in that edge and
 * measured there. Drilled holes are no matter of the router's. How widths and
 * residues are defined: {@link kerfglow.geometry.LocalWidth}, {@link kerfglow.geometry.BitReach}.
 *
 * <p>Cost: near n log n in the vertices of each part, once for the strokes and once for each bit.
 */
@Component
public final class RouterCheck implements Check {
    /** The kind of stock that it reads. */
    public static final StockKind BITS = RouterSettings.BITS;
    /** Field of {@link #BITS}, mm. */
    public static final Setting<Double> DIAMETER = RouterSettings.DIAMETER;
    /** Field of {@link #BITS}, mm. */
    public static final Setting<Double> FLUTE_LENGTH = RouterSettings.FLUTE;

    private static final Role[] ROUTED = Stream.of(Role.values()).filter(Role::isRouted).toArray(Role[]::new);

    private final CheckInfo info = new CheckInfo("router", "What a router bit cannot cut", RouterRules.ALL, RouterSettings.ALL,
            List.of(BITS), RouterTables.ALL, CheckInfo.page(RouterCheck.class, "page.md"));

    @Override
    public CheckInfo info() {
        return info;
    }

    @Override
    public Outcome inspect(Inspection inspection) {
        List<Part> routed = inspection.parts(ROUTED);
        if (routed.isEmpty()) {
            return Outcome.notMeasured("no part of this proof is cut on the router");
        }
        Map<Boolean, List<Part>> byLine = routed.stream().collect(Collectors.partitioningBy(new CutLines(inspection)::contain));
        List<Part> lines = byLine.get(true);
        if (byLine.get(false).isEmpty()) {
            return Outcome.notMeasured(CutLines.words(lines));
        }
        List<Finding> findings = new ArrayList<>();
        PanelEdge panels = new PanelEdge(inspection);
        List<Part> parts = new ArrayList<>();
        for (Part part : byLine.get(false)) {
            inspection.checkpoint(0);
            PanelEdge.Lie lie = part.role() == Role.OPENING ? panels.of(part) : PanelEdge.Lie.INSIDE;
            if (lie == PanelEdge.Lie.INSIDE) {
                parts.add(part);
            } else if (lie != PanelEdge.Lie.AT_EDGE) {
                findings.add(panels.finding(part, lie, inspection));
            }
        }
        List<StockItem> stock = inspection.stock(BITS);
        List<Bit> bits = stock.isEmpty() ? RouterSettings.USUAL_BITS : stock.stream().map(Bit::of).toList();
        List<PartResult> results = measure(inspection, parts, bits);

        Islands.Loose islands = new Islands(parts).find(inspection);
        RouterFindings writer = new RouterFindings(inspection, islands.pieces());
        results.forEach(result -> findings.addAll(writer.of(result)));
        findings.addAll(TooDeep.findings(results, inspection));
        findings.addAll(islands.findings());
        List<SheetSummary> sheets = SheetSummary.of(results, inspection.settings());
        sheets.forEach(sheet -> sheet.finding(inspection).ifPresent(findings::add));
        return Outcome.of(findings).withTables(RouterTables.of(sheets, results, inspection)).withLayers(layers(results))
                .withMissing(missing(inspection, stock.isEmpty(), results, lines, panels.isKnown()));
    }

    private static List<PartResult> measure(Inspection inspection, List<Part> parts, List<Bit> bits) {
        OpeningEdges openings = new OpeningEdges(parts);
        Workers workers = new Workers(inspection);
        workers.expect(parts.size());
        List<PartTask> tasks = parts.stream().map(part -> PartTask.of(part, bits, inspection.settings())).toList();
        return workers.map(tasks, task -> task.measure(ring -> task.part().role() != Role.PANEL || !openings.stand(ring), workers::pulse));
    }

    private static List<OverlayLayer> layers(List<PartResult> results) {
        List<OverlayLayer.Item> left = new ArrayList<>();
        List<OverlayLayer.Item> thin = new ArrayList<>();
        for (PartResult result : results) {
            for (Residue residue : result.left(result.task().used())) {
                left.add(new OverlayLayer.Item(residue.area(), Double.NaN, ""));
            }
            for (Stretch stretch : result.thin()) {
                thin.add(new OverlayLayer.Item(stretch.axis(), Double.NaN, ""));
            }
        }
        return List.of(new OverlayLayer("uncut", "What the bit leaves uncut", left),
                new OverlayLayer("thin", "Centre lines of thin strokes", thin));
    }

    private static List<String> missing(Inspection inspection, boolean usualBits, List<PartResult> results, List<Part> lines,
            boolean hasPanels) {
        Set<String> missing = new LinkedHashSet<>();
        if (usualBits) {
            missing.add("The shop sheet lists no router bits; measured with "
                    + String.join(" and ", RouterSettings.USUAL_BITS.stream()
                            .map(bit -> inspection.length(bit.diameterMm()) + " (flute " + inspection.length(bit.fluteMm()) + ")").toList())
                    + ".");
        }
        if (!lines.isEmpty()) {
            missing.add(CutLines.words(lines));
        }
        if (!hasPanels && results.stream().anyMatch(result -> result.part().role() == Role.OPENING)) {
            missing.add("The proof has no panel, so whether its openings lie in one was not measured.");
        }
        for (PartResult result : results) {
            String what = result.part().role().word()
                    + (result.task().sheet().material().isEmpty() ? "" : " of " + result.task().sheet().material());
            if (result.task().bits().isEmpty()) {
                missing.add("The shop sheet lists no bit for " + what + ", so what a bit leaves there was not compared.");
            } else if (result.task().sheet().thickness().isEmpty()) {
                missing.add("The thickness of " + what + " is not given, so whether a bit reaches through was not measured.");
            }
        }
        return List.copyOf(missing);
    }
}
