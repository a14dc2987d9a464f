// SPDX-License-Identifier: Apache-2.0
package kerfglow.fuzz;

import com.code_intelligence.jazzer.api.FuzzedDataProvider;
import java.util.List;
import kerfglow.api.Quantity;
import kerfglow.api.UnitSystem;
import kerfglow.api.Units;

/** Any text as a number with a unit: refused in words, or finite; a length as it is shown is read again. */
public final class Lengths {
    private Lengths() {
    }

    public static void fuzzerTestOneInput(FuzzedDataProvider data) {
        Quantity quantity = data.pickValue(Quantity.values());
        UnitSystem system = data.pickValue(UnitSystem.values());
        String text = data.consumeRemainingAsString();
        Guard.over("", () -> {
            double value = Units.parse(text, quantity);
            Guard.require(Double.isFinite(value), "\"" + text + "\" reads as " + value);
            String shown = Units.format(value, quantity, system);
            if (quantity == Quantity.LENGTH) {
                Units.lengthMm(shown);
            }
        }, List.of(IllegalArgumentException.class));
    }
}
