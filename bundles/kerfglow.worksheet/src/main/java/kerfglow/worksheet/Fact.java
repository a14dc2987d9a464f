// SPDX-License-Identifier: Apache-2.0
package kerfglow.worksheet;

import java.util.Optional;
import kerfglow.api.Quantity;
import kerfglow.api.UnitSystem;
import kerfglow.api.Units;

/**
 * One thing that stands on a worksheet.
 *
 * @param id lower case with hyphens
 * @param title what it is
 * @param text what is said; empty for a number
 * @param number in the unit of the quantity; NaN for text
 * @param quantity what the number measures; empty for text
 */
public record Fact(String id, String title, String text, double number, Optional<Quantity> quantity) {
    static Fact text(String id, String title, String text) {
        return new Fact(id, title, text, Double.NaN, Optional.empty());
    }

    static Fact number(String id, String title, double number, Quantity quantity) {
        return new Fact(id, title, "", number, Optional.of(quantity));
    }

    /** True unless it says nothing: blank text, or a number that is not known. */
    boolean isKnown() {
        return quantity.isPresent() ? Double.isFinite(number) : !text.isBlank();
    }

    /** For a person. */
    String words(UnitSystem units) {
        return quantity.map(each -> Units.format(number, each, units)).orElse(text);
    }
}
