// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.returns;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import kerfglow.api.StockItem;

/**
 * A coil of strip.
 *
 * @param name what the shop calls it
 * @param widthMm its width, mm
 * @param lengthMm its length, mm
 * @param thicknessMm its thickness, mm; 0 for any
 * @param material its material; empty for any
 */
record Coil(String name, double widthMm, double lengthMm, double thicknessMm, String material) {
    /** 0.040 in is sold as 1 mm; half a gauge between them is one coil. */
    private static final double SAME_THICKNESS_MM = 0.05;
    /** Widths and lengths are catalogue figures; a hundredth of a millimetre is rounding of inches. */
    private static final double SLACK_MM = 0.01;

    static Coil of(StockItem item) {
        return new Coil(item.name(), item.get(ReturnsSettings.COIL_WIDTH), item.get(ReturnsSettings.COIL_LENGTH),
                item.get(ReturnsSettings.COIL_THICKNESS), item.get(ReturnsSettings.COIL_MATERIAL).strip());
    }

    boolean isFor(Tooling tooling) {
        return (material.isEmpty() || material.equalsIgnoreCase(tooling.material()))
                && (thicknessMm == 0 || Math.abs(thicknessMm - tooling.thicknessMm()) <= SAME_THICKNESS_MM);
    }

    boolean isWideEnough(double depthMm) {
        return widthMm >= depthMm - SLACK_MM;
    }

    boolean isLongEnough(double stripMm) {
        return lengthMm >= stripMm - SLACK_MM;
    }

    /** The narrowest coil that is wide enough; of equals the longest. */
    static Optional<Coil> narrowest(List<Coil> coils, Tooling tooling) {
        return coils.stream().filter(coil -> coil.isFor(tooling) && coil.isWideEnough(tooling.depthMm()))
                .min(Comparator.comparingDouble(Coil::widthMm).thenComparing(Comparator.comparingDouble(Coil::lengthMm).reversed()));
    }

    /** How many of this coil a number of strips take, the longest cut first, each from the first coil with enough left; a strip longer
     * than a coil uses it up and goes on with the next. */
    int count(List<Double> stripsMm) {
        List<Double> left = new ArrayList<>();
        for (double strip : stripsMm.stream().sorted(Comparator.reverseOrder()).toList()) {
            double rest = strip;
            while (!isLongEnough(rest)) {
                rest -= lengthMm;
                left.add(0.0);
            }
            int open = 0;
            while (open < left.size() && left.get(open) < rest - SLACK_MM) {
                open++;
            }
            if (open == left.size()) {
                left.add(lengthMm);
            }
            left.set(open, left.get(open) - rest);
        }
        return left.size();
    }
}
