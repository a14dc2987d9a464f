// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.vinyl;

import kerfglow.api.StockItem;

/**
 * A roll of film that is stocked.
 *
 * @param name what the shop calls it
 * @param widthMm its width, mm
 * @param lengthMm its length, mm
 * @param colour as drawn, {@code #rrggbb}; empty for any
 */
record Roll(String name, double widthMm, double lengthMm, String colour) {
    static Roll of(StockItem item) {
        return new Roll(item.name(), item.get(VinylSettings.WIDTH), item.get(VinylSettings.LENGTH), item.get(VinylSettings.COLOUR).strip());
    }

    boolean isFor(Film film) {
        return colour.isEmpty() || colour.equalsIgnoreCase(film.colour());
    }

    /** What is left of its width between the feed margins, mm; can be 0 or below. */
    double usableMm(double marginMm) {
        return widthMm - 2 * marginMm;
    }
}
