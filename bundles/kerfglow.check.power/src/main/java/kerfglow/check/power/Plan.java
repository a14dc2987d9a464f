// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.power;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Strings of one type of module and the supplies that carry them.
 *
 * @param type the module
 * @param supply the kind of supply
 * @param circuitLimitWatts what one circuit may carry: its rating times the loading
 * @param circuits strings of each circuit; circuits of one supply follow one another
 */
record Plan(ModuleType type, Supply supply, double circuitLimitWatts, List<List<LightString>> circuits) {
    /** Assumed: strings shorter than this are not split again for their voltage; the feed is what loses it. */
    private static final int LEAST_SPLIT = 4;
    /** Loads nearer to a limit than this share are on it: rounding. */
    static final double ROUNDING = 1e-9;

    int supplies() {
        return (circuits.size() + supply.circuits() - 1) / supply.circuits();
    }

    List<LightString> strings() {
        return circuits.stream().flatMap(List::stream).toList();
    }

    double watts() {
        return strings().stream().mapToDouble(LightString::watts).sum();
    }

    /**
     * Plans with the kind of supply that needs fewest supplies, then fewest strings, then least rating; of equals the first.
     *
     * @param route all modules of the type, in the order of the cable
     * @param supplies of the module's voltage; not empty
     */
    static Plan best(List<Lamp> route, ModuleType type, List<Supply> supplies, Wiring wiring, double loading, boolean classTwo, Runnable pulse) {
        return supplies.stream().map(supply -> with(route, type, supply, wiring, loading, classTwo, pulse))
                .min(Comparator.comparingInt(Plan::supplies).thenComparingInt(plan -> plan.strings().size()).thenComparingDouble(plan -> plan.supply().watts()))
                .orElseThrow();
    }

    private static Plan with(List<Lamp> route, ModuleType type, Supply supply, Wiring wiring, double loading, boolean classTwo, Runnable pulse) {
        double limit = supply.circuitWatts(classTwo) * loading;
        int byLoad = (int) Math.max(1, Math.floor(limit * (1 + ROUNDING) / type.watts()));
        int most = type.longestRun() == 0 ? byLoad : Math.min(byLoad, type.longestRun());
        Map<String, List<Lamp>> named = new LinkedHashMap<>();
        route.forEach(lamp -> named.computeIfAbsent(lamp.string(), name -> new ArrayList<>()).add(lamp));
        List<LightString> strings = new ArrayList<>();
        for (Map.Entry<String, List<Lamp>> group : named.entrySet()) {
            pulse.run();
            if (group.getKey().isEmpty()) {
                Partition.of(group.getValue(), most, pulse).forEach(piece -> split(piece, type, supply, wiring, strings, pulse));
            } else {
                strings.add(wiring.string(group.getValue(), type, supply.volts(), group.getKey()));
            }
        }
        return new Plan(type, supply, limit, packed(strings, limit));
    }

    private static void split(List<Lamp> piece, ModuleType type, Supply supply, Wiring wiring, List<LightString> strings, Runnable pulse) {
        pulse.run();
        LightString string = wiring.string(piece, type, supply.volts(), "");
        if (wiring.keepsDrop(string) || piece.size() < LEAST_SPLIT) {
            strings.add(string);
            return;
        }
        List<List<Lamp>> halves = Partition.of(piece, (piece.size() + 1) / 2, pulse);
        halves.forEach(half -> split(half, type, supply, wiring, strings, pulse));
    }

    /** First fit, largest first: within 11/9 of the fewest circuits (D. S. Johnson, 1973). A string above the limit has a circuit of its own. */
    private static List<List<LightString>> packed(List<LightString> strings, double limit) {
        List<LightString> largestFirst = new ArrayList<>(strings);
        largestFirst.sort(Comparator.comparingDouble(LightString::watts).reversed());
        List<List<LightString>> circuits = new ArrayList<>();
        for (LightString string : largestFirst) {
            circuits.stream().filter(circuit -> load(circuit) + string.watts() <= limit * (1 + ROUNDING)).findFirst().orElseGet(() -> {
                circuits.add(new ArrayList<>());
                return circuits.get(circuits.size() - 1);
            }).add(string);
        }
        circuits.forEach(circuit -> circuit.sort(Comparator.comparingInt(strings::indexOf)));
        circuits.sort(Comparator.comparingInt(circuit -> strings.indexOf(circuit.get(0))));
        return circuits;
    }

    static double load(List<LightString> circuit) {
        return circuit.stream().mapToDouble(LightString::watts).sum();
    }
}
