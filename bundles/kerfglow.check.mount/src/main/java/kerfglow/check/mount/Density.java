// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.mount;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import kerfglow.api.Setting;
import kerfglow.api.Settings;

/** What a square metre of a material weighs. */
final class Density {
    private static final List<String> COMPOSITE = List.of("composite", "acm", "acp");
    private static final List<String> EXPANDED = List.of("expanded", "foam", "foamed");
    /** Names by which a material is called, most particular first. */
    private static final Map<List<String>, Setting<Double>> NAMES = names();

    private Density() {
    }

    private static Map<List<String>, Setting<Double>> names() {
        Map<List<String>, Setting<Double>> names = new LinkedHashMap<>();
        names.put(List.of("polycarbonate", "pc"), MountSettings.POLYCARBONATE);
        names.put(List.of("acrylic", "pmma"), MountSettings.ACRYLIC);
        names.put(List.of("pvc"), MountSettings.PVC);
        names.put(List.of("aluminium", "aluminum", "alu"), MountSettings.ALUMINIUM);
        names.put(List.of("steel"), MountSettings.STEEL);
        names.put(List.of("brass"), MountSettings.BRASS);
        return names;
    }

    /**
     * Kilograms per square metre of a sheet: thickness in mm by density in g/cm³; for composite sheet that of its skins and its core.
     *
     * @return empty for names that are not known
     */
    static OptionalDouble kgPerM2(String material, double thicknessMm, Settings settings) {
        List<String> words = List.of(material.toLowerCase(Locale.ROOT).split("[^a-z]+"));
        if (COMPOSITE.stream().anyMatch(words::contains)) {
            double skins = Math.min(thicknessMm, 2 * settings.get(MountSettings.SKIN));
            return OptionalDouble.of(skins * settings.get(MountSettings.ALUMINIUM) + (thicknessMm - skins) * settings.get(MountSettings.CORE));
        }
        if (words.contains("pvc") && EXPANDED.stream().anyMatch(words::contains)) {
            return OptionalDouble.of(thicknessMm * settings.get(MountSettings.EXPANDED_PVC));
        }
        return NAMES.entrySet().stream().filter(entry -> entry.getKey().stream().anyMatch(words::contains))
                .mapToDouble(entry -> thicknessMm * settings.get(entry.getValue())).findFirst();
    }
}
