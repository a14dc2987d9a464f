// SPDX-License-Identifier: Apache-2.0
package kerfglow.invariants;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import kerfglow.api.Measure;
import kerfglow.api.Quantity;
import kerfglow.host.Result;
import org.locationtech.jts.algorithm.distance.DiscreteHausdorffDistance;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.util.AffineTransformation;

/**
 * One place of a finding as it can be compared between two drawings of one sign.
 *
 * @param rule the rule
 * @param measured what was measured there
 * @param required what is asked for
 * @param shape the place in the first drawing; empty when the finding is about the whole proof
 * @param elements ids of what it is about; empty when the host has collected several places, of which it keeps the ids together
 */
record Sighting(String rule, Optional<Measure> measured, Optional<Measure> required, Optional<Geometry> shape, Set<String> elements) {
    /** Every place of every finding, taken back into the first drawing. */
    static List<Sighting> of(Result result, AffineTransformation back) {
        List<Sighting> all = new ArrayList<>();
        for (Result.ReportedFinding finding : result.findings()) {
            Set<String> elements = finding.count() > 1 ? Set.of() : finding.elements().stream().map(id -> id.replaceFirst("^of-", "")).collect(Collectors.toSet());
            if (finding.places().isEmpty()) {
                all.add(new Sighting(finding.rule().id(), finding.measured(), finding.required(), Optional.empty(), elements));
            }
            for (Result.Place place : finding.places()) {
                all.add(new Sighting(finding.rule().id(), place.measured(), finding.required(), Optional.of(back.transform(place.shape())), elements));
            }
        }
        return all;
    }

    /** Every place of every finding of the sign made k times larger, taken back to its own size: lengths by k, areas by k², masses by k³. */
    static List<Sighting> scaled(Result result, double k) {
        return of(result, AffineTransformation.scaleInstance(1 / k, 1 / k)).stream()
                .map(each -> new Sighting(each.rule, each.measured.map(measure -> shrunk(measure, k)), each.required.map(measure -> shrunk(measure, k)), each.shape, each.elements)).toList();
    }

    private static Measure shrunk(Measure measure, double k) {
        int power = switch (measure.quantity()) {
            case LENGTH -> 1;
            case AREA, FORCE -> 2; // at one pressure a force grows with the area
            case MASS -> 3;
            default -> 0;
        };
        return new Measure(measure.value() / Math.pow(k, power), measure.quantity());
    }

    /** The rules that were broken. */
    static TreeSet<String> rules(List<Sighting> sightings) {
        TreeSet<String> rules = new TreeSet<>();
        sightings.forEach(each -> rules.add(each.rule));
        return rules;
    }

    /** What one list has and the other lacks, in words; empty when they agree. */
    static List<String> differences(List<Sighting> expected, List<Sighting> actual, Latitude latitude) {
        List<Sighting> left = new ArrayList<>(actual);
        left.removeIf(each -> latitude.isLeftOut(each.rule));
        List<String> differences = new ArrayList<>();
        for (Sighting each : expected) {
            Optional<Sighting> match = left.stream().filter(other -> each.agrees(other, latitude)).findFirst();
            if (match.isPresent()) {
                left.remove(match.get());
            } else if (!latitude.isLeftOut(each.rule)) {
                differences.add("lost   " + each);
            }
        }
        left.forEach(each -> differences.add("gained " + each));
        return differences;
    }

    private boolean agrees(Sighting other, Latitude latitude) {
        boolean areKnown = !elements.isEmpty() && !other.elements.isEmpty();
        return rule.equals(other.rule) && (!areKnown || elements.equals(other.elements)) && same(measured, other.measured, latitude.share(rule)) && same(required, other.required, latitude.share(rule))
                && shape.isPresent() == other.shape.isPresent() && (shape.isEmpty() || near(shape.get(), other.shape.get(), latitude.placeMm(rule)));
    }

    private static boolean same(Optional<Measure> a, Optional<Measure> b, double share) {
        if (a.isEmpty() || b.isEmpty()) {
            return a.isEmpty() && b.isEmpty();
        }
        double x = a.get().value();
        double allowed = a.get().quantity() == Quantity.COUNT ? 0 : Latitude.MEASURE_MM + share * Math.abs(x);
        return a.get().quantity() == b.get().quantity() && Math.abs(x - b.get().value()) <= allowed;
    }

    private static boolean near(Geometry a, Geometry b, double toleranceMm) {
        if (a.isEmpty() || b.isEmpty()) {
            return a.isEmpty() && b.isEmpty();
        }
        if (Double.isInfinite(toleranceMm)) {
            return true;
        }
        Envelope one = a.getEnvelopeInternal();
        Envelope other = b.getEnvelopeInternal();
        return Math.abs(one.getMinX() - other.getMinX()) <= toleranceMm && Math.abs(one.getMaxX() - other.getMaxX()) <= toleranceMm
                && Math.abs(one.getMinY() - other.getMinY()) <= toleranceMm && Math.abs(one.getMaxY() - other.getMaxY()) <= toleranceMm
                && DiscreteHausdorffDistance.distance(a, b) <= toleranceMm;
    }

    @Override
    public String toString() {
        return rule + " " + measured.map(each -> each.value() + " " + each.quantity().unit()).orElse("-") + " of "
                + required.map(each -> each.value() + " " + each.quantity().unit()).orElse("-") + " at "
                + shape.map(each -> each.getEnvelopeInternal() + " " + each.getGeometryType() + " " + each.getNumPoints()).orElse("the proof") + " " + elements;
    }
}
