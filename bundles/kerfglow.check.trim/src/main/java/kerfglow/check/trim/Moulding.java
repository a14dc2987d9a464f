// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.trim;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import kerfglow.api.Inspection;
import kerfglow.api.StockItem;
import kerfglow.api.proof.Part;

/**
 * The edge moulding of a face.
 *
 * @param name what the shop sheet calls it, or empty
 * @param lipMm how much of the face a lip covers, mm
 * @param outsideRadiusMm least radius round a bulge, mm
 * @param insideRadiusMm least radius in a hollow or counter, mm
 * @param rollMm length of a roll, mm
 */
record Moulding(String name, double lipMm, double outsideRadiusMm, double insideRadiusMm, double rollMm) {
    /**
     * The moulding that a face gets.
     *
     * @param missing told when a moulding is named that is not stocked
     */
    static Moulding of(Inspection inspection, Part face, Set<String> missing) {
        List<StockItem> stock = inspection.stock(TrimSettings.MOULDINGS);
        String wanted = inspection.settings().get(TrimSettings.MOULDING, face).strip();
        Optional<StockItem> found = stock.stream().filter(item -> wanted.isEmpty() || item.name().equalsIgnoreCase(wanted)).findFirst();
        if (found.isPresent()) {
            StockItem item = found.get();
            return new Moulding(item.name(), item.get(TrimSettings.STOCK_LIP), item.get(TrimSettings.STOCK_OUTSIDE),
                    item.get(TrimSettings.STOCK_INSIDE), item.get(TrimSettings.STOCK_ROLL));
        }
        Moulding usual = new Moulding(wanted, inspection.settings().get(TrimSettings.LIP, face),
                inspection.settings().get(TrimSettings.OUTSIDE_RADIUS, face),
                inspection.settings().get(TrimSettings.INSIDE_RADIUS, face), inspection.settings().get(TrimSettings.ROLL_LENGTH, face));
        missing.add((wanted.isEmpty() ? "The shop sheet lists no edge moulding" : "The shop sheet lists no edge moulding \"" + wanted + "\"")
                + "; measured with a lip of " + inspection.length(usual.lipMm()) + ".");
        return usual;
    }

    String words() {
        return name.isEmpty() ? "Edge moulding" : "Edge moulding \"" + name + "\"";
    }
}
