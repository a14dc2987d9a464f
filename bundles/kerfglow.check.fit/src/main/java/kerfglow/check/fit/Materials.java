// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.fit;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import kerfglow.api.Setting;

/** Which published coefficient a material's name stands for. */
final class Materials {
    /** Names by which a material is called, most particular first: a composite sheet is named for its skins too. */
    private static final Map<List<String>, Setting<Double>> NAMES = names();

    private Materials() {
    }

    private static Map<List<String>, Setting<Double>> names() {
        Map<List<String>, Setting<Double>> names = new LinkedHashMap<>();
        names.put(List.of("composite", "acm", "acp"), ThermalSettings.COMPOSITE);
        names.put(List.of("polycarbonate", "pc"), ThermalSettings.POLYCARBONATE);
        names.put(List.of("acrylic", "pmma"), ThermalSettings.ACRYLIC);
        names.put(List.of("pvc"), ThermalSettings.PVC);
        names.put(List.of("aluminium", "aluminum", "alu"), ThermalSettings.ALUMINIUM);
        names.put(List.of("steel"), ThermalSettings.STEEL);
        return names;
    }

    /** The setting with the coefficient; empty for names that are not known. Stainless steel expands half as much again as carbon steel. */
    static Optional<Setting<Double>> coefficient(String material) {
        List<String> words = List.of(material.toLowerCase(Locale.ROOT).split("[^a-z]+"));
        if (words.contains("stainless")) {
            return Optional.empty();
        }
        return NAMES.entrySet().stream().filter(entry -> entry.getKey().stream().anyMatch(words::contains)).map(Map.Entry::getValue).findFirst();
    }
}
