// SPDX-License-Identifier: Apache-2.0
package kerfglow.host;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import kerfglow.api.Finding;
import kerfglow.api.Measure;
import kerfglow.geometry.Congruence;
import org.locationtech.jts.geom.Geometry;

/**
 * Collects repeats of one cause: findings of one rule and cause, with the same requirement, whose places are congruent and whose measures
 * are equal. Findings that concern the whole proof stay alone.
 */
final class Repeats {
    /** Places and measures that agree to this are equal: no bit, blade or ruler in the shop tells them apart (design of the checks). */
    static final double EQUAL_MM = 0.02;

    /** What alike findings have in common for certain, so that few have to be compared; {@code bucket} is one of the place's. */
    private record Kind(String rule, String cause, Optional<Measure> required, String geometry, long bucket) {
    }

    /** Alike findings and the place of the first of them, ready to be compared. */
    private record Alike(List<Finding> findings, Optional<Congruence> place) {
        boolean takes(Finding finding, Optional<Congruence> at) {
            return sameMeasure(findings.get(0), finding) && (at.isEmpty() || place.orElseThrow().matches(at.get(), EQUAL_MM));
        }
    }

    private static final long NO_PLACE = Long.MIN_VALUE;
    private static final Comparator<Finding> READING_ORDER = Comparator.comparingDouble((Finding finding) -> finding.at().orElseThrow().y)
            .thenComparingDouble(finding -> finding.at().orElseThrow().x).thenComparing(Finding::message);

    private Repeats() {
    }

    /** Sets of alike findings, each top to bottom. */
    static List<List<Finding>> collect(List<Finding> findings) {
        List<List<Finding>> sets = new ArrayList<>();
        Map<Kind, List<Alike>> byKind = new HashMap<>();
        findings.stream().filter(finding -> finding.at().isEmpty()).forEach(finding -> sets.add(List.of(finding)));
        for (Finding finding : findings.stream().filter(each -> each.at().isPresent()).sorted(READING_ORDER).toList()) {
            Optional<Congruence> place = finding.place().map(Congruence::of);
            List<Kind> kinds = place.map(each -> each.buckets(EQUAL_MM)).orElse(List.of(NO_PLACE)).stream()
                    .map(bucket -> new Kind(finding.rule().id(), finding.cause(), finding.required(), finding.place().map(Geometry::getGeometryType).orElse(""), bucket)).toList();
            Optional<Alike> home = kinds.stream().flatMap(kind -> byKind.getOrDefault(kind, List.of()).stream()).filter(alike -> alike.takes(finding, place)).findFirst();
            if (home.isPresent()) {
                home.get().findings().add(finding);
                continue;
            }
            Alike alone = new Alike(new ArrayList<>(List.of(finding)), place);
            kinds.forEach(kind -> byKind.computeIfAbsent(kind, each -> new ArrayList<>()).add(alone));
            sets.add(alone.findings());
        }
        return sets;
    }

    private static boolean sameMeasure(Finding a, Finding b) {
        if (a.measured().isEmpty() || b.measured().isEmpty()) {
            return a.measured().isEmpty() && b.measured().isEmpty();
        }
        return a.measured().get().quantity() == b.measured().get().quantity()
                && Math.abs(a.measured().get().value() - b.measured().get().value()) <= EQUAL_MM;
    }
}
