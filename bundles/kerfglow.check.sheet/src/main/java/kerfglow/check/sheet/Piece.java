// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.sheet;

import java.util.List;
import java.util.Optional;
import kerfglow.api.proof.Part;
import kerfglow.geometry.RectangleFit;
import org.locationtech.jts.geom.Polygon;

/**
 * Something that is cut in one: a part, or a piece of one that was split.
 *
 * @param part the part
 * @param fit its hull, to be turned
 * @param areaMm2 its area, mm²
 */
record Piece(Part part, RectangleFit fit, double areaMm2) {
    static Piece of(Part part, Polygon shape) {
        return new Piece(part, new RectangleFit(shape), shape.getArea());
    }

    /** The smallest sheet that holds it, and how it lies there. */
    Optional<Lying> lying(List<StockSheet.Usable> smallestFirst) {
        for (StockSheet.Usable sheet : smallestFirst) {
            Optional<RectangleFit.Turned> turned = sheet.fit(fit);
            if (turned.isPresent()) {
                return Optional.of(new Lying(sheet, turned.get()));
            }
        }
        return Optional.empty();
    }

    /** How a piece lies on a sheet. */
    record Lying(StockSheet.Usable sheet, RectangleFit.Turned turned) {
    }

    /** The rectangle that it takes on a sheet: the smallest around it where it may turn and that fits, else the one it fits by. */
    Optional<Packing.Item> item(StockSheet.Usable sheet) {
        Optional<RectangleFit.Turned> turned = sheet.fit(fit);
        if (turned.isEmpty()) {
            return Optional.empty();
        }
        RectangleFit.Turned smallest = sheet.turns() ? fit.smallestRectangle() : turned.get();
        boolean fits = sheet.holds(smallest) || sheet.turns() && sheet.holds(new RectangleFit.Turned(smallest.degrees(), smallest.heightMm(), smallest.widthMm()));
        RectangleFit.Turned taken = fits ? smallest : turned.get();
        return Optional.of(new Packing.Item(taken.widthMm(), taken.heightMm(), sheet.turns(), areaMm2));
    }
}
