// SPDX-License-Identifier: Apache-2.0
package kerfglow.job;

import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeSet;
import kerfglow.api.Measure;
import kerfglow.api.proof.Part;
import kerfglow.host.Result;
import org.locationtech.jts.geom.util.AffineTransformation;

/**
 * As much of a finding as is needed to know it again in another run.
 *
 * @param id its id in that run
 * @param rule id of the rule
 * @param message what was found, for a person; empty where an older job file does not hold it
 * @param roles what the parts concerned become, as words; empty when it concerns no part
 * @param parts ids of the parts concerned in that run
 * @param elements ids of the elements concerned
 * @param measured what was measured
 * @param required what the rule asked for
 * @param places top to bottom; empty when it concerns the whole proof
 */
public record SeenFinding(String id, String rule, String message, SortedSet<String> roles, List<String> parts, List<String> elements, Optional<Measure> measured,
        Optional<Measure> required, List<SeenPlace> places) {
    public SeenFinding {
        roles = Collections.unmodifiableSortedSet(new TreeSet<>(roles));
        parts = List.copyOf(parts);
        elements = List.copyOf(elements);
        places = List.copyOf(places);
    }

    /** What is seen of a finding of this result. */
    public static SeenFinding of(Result result, Result.ReportedFinding finding) {
        return of(roles(result), finding);
    }

    /** Everything that a result found, in its order. */
    static List<SeenFinding> all(Result result) {
        Map<String, String> roles = roles(result);
        return result.findings().stream().map(finding -> of(roles, finding)).toList();
    }

    private static Map<String, String> roles(Result result) {
        Map<String, String> roles = new HashMap<>();
        for (Part part : result.parts()) {
            roles.put(part.id(), part.role().word());
        }
        return roles;
    }

    private static SeenFinding of(Map<String, String> roles, Result.ReportedFinding finding) {
        TreeSet<String> own = new TreeSet<>();
        finding.parts().forEach(part -> Optional.ofNullable(roles.get(part)).ifPresent(own::add));
        return new SeenFinding(finding.id(), finding.rule().id(), finding.message(), own, finding.parts(), finding.elements(), finding.measured(), finding.required(),
                finding.places().stream().map(place -> new SeenPlace(PointMm.of(place.at()), place.shape())).toList());
    }

    /** How much it falls short of what is required, or exceeds it; absent where nothing was measured or required. */
    Optional<Double> shortfall() {
        return measured.flatMap(found -> required.map(needed -> Math.abs(needed.value() - found.value())));
    }

    /** The same with other places. */
    SeenFinding withPlaces(List<SeenPlace> value) {
        return new SeenFinding(id, rule, message, roles, parts, elements, measured, required, value);
    }

    SeenFinding moved(AffineTransformation motion) {
        return withPlaces(places.stream().map(place -> place.moved(motion)).toList());
    }
}
