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
import kerfglow.api.proof.Part;
import org.locationtech.jts.geom.Point;

/** Stock that no bit cuts through, told once for each sheet and reach: it is a fact of the sheet, whatever is cut from it. */
final class TooDeep {
    /**
     * Why the stock is too thick.
     *
     * @param sheet what it is
     * @param reachMm the longest flute that would do otherwise, mm
     * @param which the bits that reach no farther, for a message
     */
    private record Cause(Sheet sheet, double reachMm, String which) {
    }

    private TooDeep() {
    }

    static List<Finding> findings(List<PartResult> results, Inspection inspection) {
        Map<Cause, List<Part>> byCause = new LinkedHashMap<>();
        results.forEach(result -> cause(result)
                .ifPresent(cause -> byCause.computeIfAbsent(cause, each -> new ArrayList<>()).add(result.part())));
        List<Finding> findings = new ArrayList<>();
        byCause.forEach((cause, parts) -> findings.add(finding(cause, parts, inspection)));
        return findings;
    }

    private static Optional<Cause> cause(PartResult result) {
        PartTask task = result.task();
        List<Bit> bits = task.bits();
        if (bits.isEmpty() || task.sheet().thickness().isEmpty()) {
            return Optional.empty();
        }
        List<Bit> fitting = bits.stream().filter(result::fits).toList();
        List<Bit> free = fitting.isEmpty() ? bits : fitting;
        List<Bit> candidates = task.isNamed() ? task.used().stream().toList() : free;
        if (candidates.stream().anyMatch(task.sheet()::isReachedBy)) {
            return Optional.empty();
        }
        double reach = candidates.stream().mapToDouble(Bit::fluteMm).max().orElseThrow();
        boolean longerDoesNotFit = bits.stream().anyMatch(task.sheet()::isReachedBy);
        return Optional.of(new Cause(task.sheet(), reach, task.isNamed() ? "the bit that the job asks for reaches"
                : longerDoesNotFit ? "the bits that pass everywhere reach" : "the longest bit reaches"));
    }

    /** Its place is one point in each part, so that the sheet's finding is drawn on all that it stops and on nothing else. */
    private static Finding finding(Cause cause, List<Part> parts, Inspection inspection) {
        Part first = parts.get(0);
        int others = parts.size() - 1;
        String names = RouterFindings.name(first) + (others == 0 ? "" : others == 1 ? " and one more part" : " and " + others + " more parts");
        Point[] points = parts.stream().map(part -> part.shape().getInteriorPoint()).toArray(Point[]::new);
        double thickness = cause.sheet.thicknessMm();
        return Finding.of(RouterRules.TOO_DEEP, "The stock of " + names + " is " + inspection.length(thickness) + " thick; " + cause.which
                + " " + inspection.length(cause.reachMm) + ".")
                .place(first.shape().getFactory().createMultiPoint(points)).at(points[0].getCoordinate()).measured(Measure.mm(thickness))
                .required(Measure.mm(cause.reachMm)).parts(parts.stream().map(Part::id).toList())
                .elements(parts.stream().flatMap(part -> part.elements().stream()).distinct().toList()).build();
    }
}
