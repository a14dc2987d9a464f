// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.router;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import kerfglow.api.Finding;
import kerfglow.api.Inspection;
import kerfglow.api.Measure;
import kerfglow.api.Quantity;
import kerfglow.api.Settings;
import kerfglow.api.Units;
import kerfglow.geometry.Residue;

/**
 * What each bit leaves on all parts of one sheet.
 *
 * @param sheet material and thickness
 * @param parts their ids
 * @param tallies one for each bit, smallest first
 */
record SheetSummary(Sheet sheet, List<String> parts, List<Tally> tallies) {
    /**
     * What one bit leaves.
     *
     * @param bit the bit
     * @param reaches true when it cuts through the sheet, or nothing is known of its thickness
     * @param gaps places that it does not pass
     * @param corners inside corners that it leaves filled deeper than anything may stay uncut
     * @param areaMm2 of all these
     * @param deepestMm the deepest inside corner, mm; 0 where there is none
     * @param isEnough true when it reaches through, passes everywhere, and fills no corner deeper than the allowance
     */
    record Tally(Bit bit, boolean reaches, long gaps, long corners, double areaMm2, double deepestMm, boolean isEnough) {
        static Tally of(Bit bit, boolean reaches, List<Residue> left, double cornerAllowanceMm) {
            long gaps = left.stream().filter(residue -> residue.kind() == Residue.Kind.GAP).count();
            double deepest = left.stream().filter(residue -> residue.kind() == Residue.Kind.CORNER).mapToDouble(Residue::depthMm).max()
                    .orElse(0);
            double area = left.stream().mapToDouble(residue -> residue.area().getArea()).sum();
            return new Tally(bit, reaches, gaps, left.size() - gaps, area, deepest,
                    reaches && gaps == 0 && deepest <= cornerAllowanceMm);
        }

        boolean leavesNothing() {
            return gaps == 0 && corners == 0;
        }
    }

    static List<SheetSummary> of(List<PartResult> results, Settings settings) {
        Map<Sheet, List<PartResult>> bySheet = new LinkedHashMap<>();
        results.forEach(result -> bySheet.computeIfAbsent(result.task().sheet(), sheet -> new ArrayList<>()).add(result));
        List<SheetSummary> summaries = new ArrayList<>();
        bySheet.forEach((sheet, own) -> {
            double allowance = own.stream().mapToDouble(result -> settings.get(RouterSettings.CORNER_ALLOWANCE, result.part())).min()
                    .orElseThrow();
            List<Tally> tallies = own.get(0).task().bits().stream().map(bit -> Tally.of(bit, sheet.isReachedBy(bit),
                    own.stream().flatMap(result -> result.left().get(bit).stream()).toList(), allowance)).toList();
            summaries.add(new SheetSummary(sheet, own.stream().map(result -> result.part().id()).toList(), tallies));
        });
        return summaries;
    }

    Optional<Tally> largestEnough() {
        return tallies.stream().filter(Tally::isEnough).reduce((smaller, larger) -> larger);
    }

    /** The note for the floor; none when no bit is stocked for the sheet. */
    Optional<Finding> finding(Inspection inspection) {
        if (tallies.isEmpty()) {
            return Optional.empty();
        }
        Optional<Tally> best = largestEnough();
        StringBuilder text = new StringBuilder("For ").append(sheet.words(inspection)).append(": ");
        if (best.isPresent()) {
            text.append("the largest bit that cuts everything is ").append(called(best.get(), inspection)).append("; it leaves ")
                    .append(left(best.get(), inspection));
        } else {
            text.append("no stocked bit cuts everything");
        }
        for (Tally other : tallies) {
            if (best.isEmpty()) {
                text.append("; ").append(called(other, inspection)).append(other.reaches() ? " leaves " : " does not reach through and leaves ")
                        .append(left(other, inspection));
            } else if (other.bit().diameterMm() < best.get().bit().diameterMm() && !best.get().leavesNothing()) {
                text.append("; ").append(called(other, inspection)).append(" would gain ")
                        .append(Units.format(best.get().areaMm2() - other.areaMm2(), Quantity.AREA, inspection.units())).append(" and leave ")
                        .append(left(other, inspection)).append(other.reaches() ? "" : ", but does not reach through");
            }
        }
        Finding.Builder finding = Finding.of(RouterRules.BIT, text.append('.').toString()).parts(parts);
        best.ifPresent(tally -> finding.measured(Measure.mm(tally.bit().diameterMm())));
        return Optional.of(finding.build());
    }

    private static String called(Tally tally, Inspection inspection) {
        return "\"" + tally.bit().name() + "\" (" + inspection.length(tally.bit().diameterMm()) + ")";
    }

    private static String left(Tally tally, Inspection inspection) {
        if (tally.leavesNothing()) {
            return "nothing";
        }
        List<String> words = new ArrayList<>();
        if (tally.gaps() > 0) {
            words.add(tally.gaps() + (tally.gaps() == 1 ? " gap" : " gaps"));
        }
        if (tally.corners() > 0) {
            words.add(tally.corners() + (tally.corners() == 1 ? " corner" : " corners") + " up to " + inspection.length(tally.deepestMm()));
        }
        return String.join(" and ", words);
    }
}
