// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import kerfglow.api.Finding;
import kerfglow.api.Inspection;
import kerfglow.api.Measure;
import kerfglow.api.Quantity;
import kerfglow.api.Units;
import kerfglow.api.proof.Part;
import kerfglow.geometry.RectangleFit;

/** Says what does not fit and what is needed, in the units of the job. */
final class SheetFindings {
    private final Inspection inspection;

    SheetFindings(Inspection inspection) {
        this.inspection = inspection;
    }

    static String words(Inspection inspection, String material, double thicknessMm) {
        String name = material.isEmpty() ? "material not named" : material;
        return Double.isNaN(thicknessMm) ? name : name + ", " + inspection.length(thicknessMm);
    }

    Finding tooLarge(Part part, Piece whole, List<StockSheet.Usable> sheets, Optional<Split> split) {
        StockSheet.Usable largest = sheets.get(sheets.size() - 1);
        // where grain forbids turning, the sides compare as they must lie; else the long with the long and the short with the short
        RectangleFit.Turned lies = largest.turns() ? whole.fit().smallestRectangle() : whole.fit().at(largest.degrees());
        boolean swaps = largest.turns();
        double partFirst = swaps ? Math.max(lies.widthMm(), lies.heightMm()) : lies.widthMm();
        double partSecond = swaps ? Math.min(lies.widthMm(), lies.heightMm()) : lies.heightMm();
        double sheetFirst = swaps ? largest.longSideMm() : largest.widthMm();
        double sheetSecond = swaps ? largest.shortSideMm() : largest.heightMm();
        boolean firstIsTooLong = partFirst > sheetFirst;
        String name = part.role().word() + " " + part.id() + (part.layer().isBlank() ? "" : " on layer \"" + part.layer() + "\"");
        String message = "The " + name + " is " + inspection.length(partFirst) + " by " + inspection.length(partSecond) + " and fits no stocked sheet "
                + (sheets.stream().anyMatch(StockSheet.Usable::turns) ? "at any angle" : "with the grain the way the job wants it")
                + "; the largest leaves " + inspection.length(sheetFirst) + " by " + inspection.length(sheetSecond)
                + " inside its margin.";
        return Finding.of(SheetRules.TOO_LARGE, message).place(part.shape())
                .measured(Measure.mm(firstIsTooLong ? partFirst : partSecond))
                .required(Measure.mm(Math.max(0, firstIsTooLong ? sheetFirst : sheetSecond)))
                .parts(part.id()).elements(part.elements()).fix(split.map(this::fix).orElse("Order a larger sheet; no plan of straight seams was found.")).build();
    }

    private String fix(Split split) {
        TreeSet<String> near = new TreeSet<>();
        List<String> lines = new ArrayList<>();
        for (Split.Cut cut : split.cuts()) {
            cut.near().forEach(obstacle -> near.add(obstacle.words()));
            lines.add(direction(cut.degrees()) + " through " + inspection.length(cut.line().getCentroid().getX()) + ", "
                    + inspection.length(cut.line().getCentroid().getY()) + " (" + inspection.length(cut.lengthMm()) + " of material)");
        }
        return "Split it into " + split.pieces().size() + " pieces: " + String.join("; ", lines) + "."
                + (near.isEmpty() ? "" : " No seam there keeps clear of " + String.join(" and ", near) + ".");
    }

    private String direction(double degrees) {
        return degrees == 0 ? "upright" : degrees == 90 ? "level" : Units.format(degrees, Quantity.ANGLE, inspection.units()) + " from upright";
    }

    Optional<Finding> count(Batch batch, List<Batch.Count> counts) {
        if (counts.isEmpty()) {
            return Optional.empty();
        }
        List<String> words = new ArrayList<>();
        int sheets = 0;
        for (Batch.Count count : counts) {
            sheets += count.sheets();
            words.add(count.sheets() + (count.sheets() == 1 ? " sheet" : " sheets") + " \"" + count.sheet().sheet().name() + "\" for "
                    + count.pieces() + (count.pieces() == 1 ? " part" : " parts") + ", by area at least " + count.atLeast());
        }
        return Optional.of(Finding.of(SheetRules.COUNT, "For " + words(inspection, batch.material(), batch.thicknessMm()) + " about "
                + String.join("; ", words) + ".").measured(Measure.count(sheets))
                .parts(batch.pieces().stream().map(piece -> piece.part().id()).distinct().toList()).build());
    }
}
