// SPDX-License-Identifier: Apache-2.0
package kerfglow.host;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import kerfglow.api.Finding;
import kerfglow.api.Measure;
import kerfglow.geometry.Congruence;
import org.locationtech.jts.geom.Geometry;

/**
 * Collects repeats of one cause: findings of one rule, with the same requirement, whose places are congruent and whose measures
 * are equal. Findings that concern the whole proof stay alone.
 */
final class Repeats {
    /** Places and measures that agree to this are equal: no bit, blade or ruler in the shop tells them apart (design of the checks). */
    static final double EQUAL_MM = 0.02;

    private record Kind(String rule, Optional<Measure> required, String geometry) {
    }

    private static final Comparator<Finding> READING_ORDER = Comparator.comparingDouble((Finding finding) -> finding.at().orElseThrow().y)
            .thenComparingDouble(finding -> finding.at().orElseThrow().x).thenComparing(Finding::message);

    private Repeats() {
    }

    /** Sets of alike findings, each top to bottom. */
    static List<List<Finding>> collect(List<Finding> findings) {
        List<List<Finding>> sets = new ArrayList<>();
        Map<Kind, List<List<Finding>>> byKind = new LinkedHashMap<>();
        findings.stream().filter(finding -> finding.at().isEmpty()).forEach(finding -> sets.add(List.of(finding)));
        findings.stream().filter(finding -> finding.at().isPresent()).sorted(READING_ORDER).forEach(finding -> {
            Kind kind = new Kind(finding.rule().id(), finding.required(), finding.place().map(Geometry::getGeometryType).orElse(""));
            List<List<Finding>> candidates = byKind.computeIfAbsent(kind, each -> new ArrayList<>());
            candidates.stream().filter(set -> alike(set.get(0), finding)).findFirst().orElseGet(() -> {
                List<Finding> set = new ArrayList<>();
                candidates.add(set);
                return set;
            }).add(finding);
        });
        byKind.values().forEach(sets::addAll);
        return sets;
    }

    private static boolean alike(Finding a, Finding b) {
        if (a.measured().isPresent() != b.measured().isPresent()) {
            return false;
        }
        if (a.measured().isPresent() && (a.measured().get().quantity() != b.measured().get().quantity()
                || Math.abs(a.measured().get().value() - b.measured().get().value()) > EQUAL_MM)) {
            return false;
        }
        return a.place().isEmpty() || Congruence.congruent(a.place().get(), b.place().get(), EQUAL_MM);
    }
}
