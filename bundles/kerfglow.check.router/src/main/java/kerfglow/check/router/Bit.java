// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.router;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import kerfglow.api.StockItem;

/**
 * A router bit.
 *
 * @param name what the shop calls it
 * @param diameterMm its diameter, mm
 * @param fluteMm the thickest stock that it cuts through, mm; infinite where nothing is known of it
 * @param materials what it is used for; empty for everything
 */
record Bit(String name, double diameterMm, double fluteMm, List<String> materials) {
    /** Thickness and flute length are catalogue figures; a hundredth of a millimetre between them is rounding of inches. */
    private static final double REACH_SLACK_MM = 0.01;

    static Bit of(StockItem item) {
        // a shop sheet always gives both lengths; a bit without flute length can only be measured for its diameter
        double flute = Optional.ofNullable(item.get(RouterSettings.FLUTE)).orElse(Double.POSITIVE_INFINITY);
        List<String> materials = Arrays.stream(item.get(RouterSettings.MATERIALS).split(",")).map(String::strip)
                .filter(name -> !name.isEmpty()).toList();
        return new Bit(item.name(), item.get(RouterSettings.DIAMETER), flute, materials);
    }

    /** A bit of which the job sheet gives the diameter only. */
    static Bit given(double diameterMm) {
        return new Bit("bit of the job sheet", diameterMm, Double.POSITIVE_INFINITY, List.of());
    }

    boolean isFor(String material) {
        return materials.isEmpty() || materials.stream().anyMatch(material::equalsIgnoreCase);
    }

    boolean reaches(double thicknessMm) {
        return fluteMm >= thicknessMm - REACH_SLACK_MM;
    }
}
