// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.legibility;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import kerfglow.api.Check;
import kerfglow.api.CheckInfo;
import kerfglow.api.Finding;
import kerfglow.api.Inspection;
import kerfglow.api.Outcome;
import kerfglow.api.OverlayLayer;
import kerfglow.api.StockKind;
import kerfglow.api.proof.Element;
import org.osgi.service.component.annotations.Component;

/**
 * Finds the lettering of a proof from outlines alone, measures it, and compares it with what its readers need.
 *
 * <p>Heights are measured whether or not a reading distance is known; what lacks a distance, a height above the floor or the wall's
 * colour is said to be not compared. Cost: near n log n in the parts for finding lines, times the vertices of each part.
 */
@Component
public final class LegibilityCheck implements Check {
    /** The kind of stock that holds a shop's own reading rules. */
    public static final StockKind RULES = LegibilitySettings.RULES;
    private static final double AFTER_FINDING = 0.6;

    private final CheckInfo info = new CheckInfo("legibility", "Whether it can be read", LegibilityRules.ALL, LegibilitySettings.ALL, List.of(RULES),
            LegibilityTables.ALL, CheckInfo.page(LegibilityCheck.class, "page.md"));

    @Override
    public CheckInfo info() {
        return info;
    }

    @Override
    public List<String> reads() {
        return List.of(Night.CHECK);
    }

    @Override
    public Outcome inspect(Inspection inspection) {
        inspection.checkpoint(0);
        Lettering lettering = Lettering.of(inspection, () -> inspection.checkpoint(AFTER_FINDING / 2));
        if (lettering.lines().isEmpty()) {
            return Outcome.notMeasured("no lettering was found among the parts of this proof (legibility.lettering says yes for a layer or part)")
                    .withTables(LegibilityTables.of(List.of(), lettering.graphics()));
        }
        Map<String, Element> elements = new HashMap<>();
        inspection.proof().elements().forEach(element -> elements.put(element.id(), element));
        Coats coats = new Coats(inspection);
        Backdrop backdrop = new Backdrop(inspection, coats);
        Night night = new Night(inspection, coats);
        LegibilityFindings writer = new LegibilityFindings(inspection);
        List<LineReport> reports = new ArrayList<>();
        List<Finding> findings = new ArrayList<>();
        Set<String> missing = new LinkedHashSet<>();
        for (Line line : lettering.lines()) {
            double done = AFTER_FINDING + (1 - AFTER_FINDING) * reports.size() / lettering.lines().size();
            Runnable pulse = () -> inspection.checkpoint(done);
            LineReport report = LineReport.of("L" + (reports.size() + 1), line, inspection, elements, backdrop.behind(line, pulse), night.behind(line, pulse), pulse);
            reports.add(report);
            findings.addAll(writer.of(report));
            missing.addAll(report.missing());
        }
        return Outcome.of(findings).withTables(LegibilityTables.of(reports, lettering.graphics())).withLayers(layers(reports))
                .withMissing(List.copyOf(missing));
    }

    private static List<OverlayLayer> layers(List<LineReport> reports) {
        List<OverlayLayer.Item> items = new ArrayList<>();
        for (LineReport report : reports) {
            Line line = report.line();
            items.add(new OverlayLayer.Item(line.level(0), Double.NaN, report.id()));
            items.add(new OverlayLayer.Item(line.level(line.model().capMm()), Double.NaN, "cap"));
            OptionalDouble x = line.model().xMm();
            if (x.isPresent()) {
                items.add(new OverlayLayer.Item(line.level(x.getAsDouble()), Double.NaN, "x"));
            }
        }
        return List.of(new OverlayLayer("lines", "Base line, cap height and x-height", items));
    }
}
