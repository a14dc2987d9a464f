// SPDX-License-Identifier: Apache-2.0
package kerfglow.testkit;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import kerfglow.api.Finding;
import kerfglow.api.Rule;
import org.locationtech.jts.algorithm.distance.DiscreteHausdorffDistance;
import org.locationtech.jts.geom.Geometry;

/**
 * A finding that a test says must be there.
 *
 * @param rule the rule
 * @param place where, mm: a point must lie on the found place or be its marker; any other shape must be the found place itself;
 *     empty when the place does not matter
 * @param measured what must have been measured, in the unit of its quantity; empty when it does not matter
 */
record Expectation(Rule rule, Optional<Geometry> place, OptionalDouble measured) {
    boolean fits(Finding finding, double toleranceMm) {
        return finding.rule().equals(rule) && (place.isEmpty() || isAt(finding, place.get(), toleranceMm))
                && (measured.isEmpty() || finding.measured().filter(measure -> Math.abs(measure.value() - measured.getAsDouble()) <= toleranceMm).isPresent());
    }

    private static boolean isAt(Finding finding, Geometry expected, double toleranceMm) {
        Optional<Geometry> found = finding.place();
        if (expected.getDimension() == 0) {
            return finding.at().filter(at -> expected.getFactory().createPoint(at).distance(expected) <= toleranceMm).isPresent()
                    || found.filter(shape -> shape.distance(expected) <= toleranceMm).isPresent();
        }
        return found.filter(shape -> DiscreteHausdorffDistance.distance(shape, expected) <= toleranceMm).isPresent();
    }

    /**
     * Pairs each expectation with a finding of its own.
     *
     * @return what does not fit, a line each; empty when every expectation is met and no finding is left over
     */
    static List<String> complaints(List<Expectation> expected, List<Finding> found, double toleranceMm) {
        List<Finding> left = new ArrayList<>(found);
        List<String> complaints = new ArrayList<>();
        for (Expectation each : expected) {
            Optional<Finding> met = left.stream().filter(finding -> each.fits(finding, toleranceMm)).findFirst();
            met.ifPresentOrElse(left::remove, () -> complaints.add("missing: " + each));
        }
        left.forEach(finding -> complaints.add("not expected: " + finding + finding.measured().map(measure -> ", measured " + measure.value()).orElse("")
                + finding.place().map(place -> ", place " + place).orElse("")));
        return complaints;
    }

    @Override
    public String toString() {
        return rule.id() + place.map(shape -> " at " + shape).orElse("") + (measured.isPresent() ? ", measured " + measured.getAsDouble() : "");
    }
}
