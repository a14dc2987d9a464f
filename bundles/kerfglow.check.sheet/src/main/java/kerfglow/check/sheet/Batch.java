// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.sheet;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Everything that is cut from one material and thickness.
 *
 * @param material the job sheet's name for it, empty when it names none
 * @param thicknessMm its thickness, mm; NaN when not known
 * @param sheets what it can be cut from, smallest first
 * @param spacingMm between parts, mm
 * @param pieces what is cut
 */
record Batch(String material, double thicknessMm, List<StockSheet.Usable> sheets, double spacingMm, List<Piece> pieces) {
    /**
     * The sheets of one size that pieces take.
     *
     * @param sheet the sheet
     * @param pieces how many pieces
     * @param sheets how many sheets the packing takes
     * @param atLeast fewer than this cannot do, by area
     * @param areaMm2 of the pieces
     */
    record Count(StockSheet.Usable sheet, int pieces, int sheets, int atLeast, double areaMm2) {
        double sheetAreaMm2() {
            return sheets * sheet.sheet().areaMm2();
        }
    }

    /** The size whose sheets take least area in all, if one takes every piece; else each piece on the smallest sheet that holds it. */
    List<Count> counts(Runnable pulse) {
        Optional<Count> best = Optional.empty();
        for (StockSheet.Usable sheet : sheets) {
            List<Packing.Item> items = new ArrayList<>();
            for (Piece piece : pieces) {
                pulse.run();
                piece.item(sheet).ifPresent(items::add);
            }
            if (items.size() == pieces.size()) {
                Count count = count(sheet, items, pulse);
                best = best.filter(other -> other.sheetAreaMm2() <= count.sheetAreaMm2()).or(() -> Optional.of(count));
            }
        }
        if (best.isPresent() || pieces.isEmpty()) {
            return best.stream().toList();
        }
        Map<StockSheet.Usable, List<Packing.Item>> mixed = new LinkedHashMap<>();
        for (Piece piece : pieces) {
            piece.lying(sheets).flatMap(lying -> piece.item(lying.sheet()).map(item -> mixed.computeIfAbsent(lying.sheet(), key -> new ArrayList<>()).add(item)));
        }
        return mixed.entrySet().stream().map(entry -> count(entry.getKey(), entry.getValue(), pulse)).toList();
    }

    private Count count(StockSheet.Usable sheet, List<Packing.Item> items, Runnable pulse) {
        return new Count(sheet, items.size(), Packing.count(items, sheet.widthMm(), sheet.heightMm(), spacingMm, pulse),
                Packing.bound(items, sheet.widthMm(), sheet.heightMm()), items.stream().mapToDouble(Packing.Item::areaMm2).sum());
    }
}
