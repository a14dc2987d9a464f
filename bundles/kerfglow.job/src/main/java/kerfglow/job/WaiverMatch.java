// SPDX-License-Identifier: Apache-2.0
package kerfglow.job;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import kerfglow.api.Measure;
import kerfglow.api.Quantity;
import kerfglow.api.UnitSystem;
import kerfglow.api.Units;
import kerfglow.host.Result;
import org.locationtech.jts.geom.util.AffineTransformation;

/**
 * Holds the waivers of a job against a result. A waiver follows its finding as {@link FindingMatch} knows it again. It returns for decision when
 * the shortfall, the amount by which what was measured misses what is required, has grown since the decision by more than 0.05 mm or by
 * more than 2 %, when it misses to the other side, or when the finding has places that were not waived.
 */
final class WaiverMatch {
    /** Growth that returns a waiver for decision (requirement on waivers). */
    static final double MOST_GROWTH_MM = 0.05;
    /** Growth that returns a waiver for decision, as a share of the shortfall (requirement on waivers). */
    static final double MOST_GROWTH_SHARE = 0.02;
    /** Below the resolution of the import nothing has grown. */
    private static final double ROUNDING = 0.001;

    private final List<Waiver.OfFinding> waivers;
    private final List<SeenFinding> old = new ArrayList<>();
    private final List<SeenFinding> young;
    private final FindingMatch match;
    private final UnitSystem units;
    private final Map<String, Decision> decisions = new LinkedHashMap<>();

    /**
     * Matches.
     *
     * @param state the job, as it was before the result came
     * @param result the new result
     * @param motion takes the proof of the job onto that of the result
     */
    WaiverMatch(JobState state, Result result, AffineTransformation motion) {
        waivers = state.waivers().stream().filter(Waiver.OfFinding.class::isInstance).map(Waiver.OfFinding.class::cast)
                .map(waiver -> waiver.withPlaces(moved(waiver.places(), motion))).toList();
        units = result.units();
        young = SeenFinding.all(result);
        for (Waiver.OfFinding waiver : waivers) {
            old.add(waiver.decided().withPlaces(waiver.places()));
        }
        old.addAll(state.seen().moved(motion).findings()); // so that what was there without a waiver does not slip under a neighbour's
        match = FindingMatch.of(old, young);
        for (int i = 0; i < young.size(); i++) {
            decisions.put(young.get(i).id(), decision(i));
        }
    }

    private static List<SeenPlace> moved(List<SeenPlace> places, AffineTransformation motion) {
        return places.stream().map(place -> place.moved(motion)).toList();
    }

    /** What has been decided about each finding of the result, by its id. */
    Map<String, Decision> decisions() {
        return decisions;
    }

    private Decision decision(int index) {
        SeenFinding finding = young.get(index);
        Set<Waiver.OfFinding> own = new LinkedHashSet<>();
        int uncovered = 0;
        for (FindingMatch.Spot spot : FindingMatch.spots(index, finding)) {
            Optional<Waiver.OfFinding> waiver = match.old(spot).filter(before -> before.finding() < waivers.size()).map(before -> waivers.get(before.finding()));
            waiver.ifPresent(own::add);
            uncovered += waiver.isPresent() ? 0 : 1;
        }
        if (own.isEmpty()) {
            return Decision.OPEN;
        }
        Waiver.OfFinding first = own.iterator().next();
        for (Waiver.OfFinding waiver : own) {
            Optional<String> worse = worse(waiver.decided(), finding);
            if (worse.isPresent()) {
                return new Decision(Decision.Kind.DECIDE_AGAIN, Optional.of(waiver), worse.get());
            }
        }
        return uncovered == 0 ? new Decision(Decision.Kind.WAIVED, Optional.of(first), "")
                : new Decision(Decision.Kind.DECIDE_AGAIN, Optional.of(first),
                        uncovered == 1 ? "there is one place that was not waived" : "there are " + uncovered + " places that were not waived");
    }

    private Optional<String> worse(SeenFinding before, SeenFinding now) {
        Optional<Double> was = before.shortfall();
        Optional<Double> is = now.shortfall();
        if (was.isEmpty() || is.isEmpty()) {
            return was.isEmpty() && is.isEmpty() ? Optional.empty() : Optional.of("it is measured otherwise than when it was waived");
        }
        Measure found = now.measured().orElseThrow();
        boolean sameSide = Math.signum(before.required().orElseThrow().value() - before.measured().orElseThrow().value())
                == Math.signum(now.required().orElseThrow().value() - found.value());
        if (found.quantity() != before.measured().orElseThrow().quantity() || !sameSide && is.get() > ROUNDING) {
            return Optional.of("it misses what is required in another way than when it was waived");
        }
        double growth = is.get() - was.get();
        boolean grown = found.quantity() == Quantity.LENGTH && growth > MOST_GROWTH_MM + ROUNDING || growth > MOST_GROWTH_SHARE * was.get() + ROUNDING;
        return grown ? Optional.of(String.format(Locale.ROOT, "it misses what is required by %s now, by %s when it was waived",
                Units.format(is.get(), found.quantity(), units), Units.format(was.get(), found.quantity(), units))) : Optional.empty();
    }

    /**
     * The waivers where they are now: at the places of the findings that they follow; where none is left, at their old places, moved.
     */
    Map<String, Waiver.OfFinding> followed() {
        Map<String, Waiver.OfFinding> followed = new HashMap<>();
        for (int i = 0; i < waivers.size(); i++) {
            List<SeenPlace> places = new ArrayList<>();
            for (FindingMatch.Spot spot : FindingMatch.spots(i, old.get(i))) {
                match.young(spot).filter(now -> now.place() >= 0).ifPresent(now -> places.add(young.get(now.finding()).places().get(now.place())));
            }
            followed.put(waivers.get(i).id(), places.isEmpty() ? waivers.get(i) : waivers.get(i).withPlaces(places));
        }
        return followed;
    }
}
