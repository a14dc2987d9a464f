// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.legibility;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;
import kerfglow.api.Inspection;
import kerfglow.api.proof.Element;
import kerfglow.api.proof.Part;

/**
 * One line with all that was measured and compared.
 *
 * @param id in this run, top to bottom
 * @param text the live text, or empty
 * @param live true when the heights are those of its font
 * @param night least contrast by night
 * @param rule name of the reading rule
 * @param asked the rule itself, where it is known
 * @param heightMm the height that the rule compares; empty where it could not be measured
 * @param reachMm greatest reading distance
 * @param askedMm reading distance asked for
 * @param requiredMm height required for it
 * @param missing what could not be compared, sentences
 */
record LineReport(String id, Line line, String text, boolean live, Proportions proportions, Backdrop.Seen backdrop, Optional<Night.Contrast> night, String rule, Optional<ReadingRule> asked,
        Reader reader, OptionalDouble heightMm, OptionalDouble reachMm, OptionalDouble askedMm, OptionalDouble requiredMm, Set<String> missing) {

    /** Measures one line. */
    static LineReport of(String id, Line found, Inspection inspection, Map<String, Element> elements, Backdrop.Seen backdrop, Night.Seen night, Runnable pulse) {
        Optional<Line> exact = LiveText.exact(found, elements);
        Line line = exact.orElse(found);
        Part first = line.first();
        String name = inspection.settings().get(LegibilitySettings.RULE, first).strip();
        Map<String, ReadingRule> rules = ReadingRules.all(inspection);
        Optional<ReadingRule> rule = Optional.ofNullable(rules.get(name));
        Reader reader = Reader.of(inspection, first);
        Set<String> missing = new LinkedHashSet<>(backdrop.missing());
        night.missing().ifPresent(missing::add);
        if (!reader.missing().isEmpty()) {
            missing.add(reader.missing());
        }
        OptionalDouble height = OptionalDouble.empty();
        OptionalDouble reach = OptionalDouble.empty();
        OptionalDouble required = OptionalDouble.empty();
        if (rule.isEmpty()) {
            missing.add("There is no reading rule \"" + name + "\" (legibility.rule); the rules are " + String.join(", ", rules.keySet()) + ".");
        } else {
            height = height(line, rule.get(), inspection);
            OptionalDouble floor = aboveFloorMm(line, inspection);
            Optional<ReadingRule.Step> step = rule.get().step(floor);
            if (height.isEmpty()) {
                missing.add("The rule " + name + " goes by the height of the field that lettering stands in, and no part lies behind "
                        + "all of a line; such lines were not compared.");
            } else if (step.isEmpty()) {
                missing.add(floor.isEmpty() ? "The rule " + name + " goes by the height above the floor, which is not given (legibility.above-floor)."
                        : "The rule " + name + " says nothing of base lines " + inspection.length(floor.getAsDouble()) + " above the floor; its lowest is "
                                + inspection.length(rule.get().steps().get(0).fromFloorMm()) + ".");
            } else {
                reach = OptionalDouble.of(step.get().reachMm(height.getAsDouble()));
                required = reader.isKnown() ? OptionalDouble.of(step.get().requiredMm(reader.distanceMm())) : OptionalDouble.empty();
            }
        }
        return new LineReport(id, line, LiveText.words(line, elements), exact.isPresent(), Proportions.of(line, pulse), backdrop, night.contrast(), name, rule, reader, height, reach,
                reader.isKnown() ? OptionalDouble.of(reader.distanceMm()) : OptionalDouble.empty(), required, missing);
    }

    private static OptionalDouble height(Line line, ReadingRule rule, Inspection inspection) {
        return switch (rule.about()) {
            case CAP -> OptionalDouble.of(line.model().capMm());
            // a line without small letters has one height only
            case X -> OptionalDouble.of(line.model().xMm().orElse(line.model().capMm()));
            case FIELD -> fieldMm(line, inspection);
        };
    }

    /** The height of the smallest part that lies behind all of a line. */
    private static OptionalDouble fieldMm(Line line, Inspection inspection) {
        Set<String> own = line.parts().stream().map(Part::id).collect(Collectors.toSet());
        int order = line.parts().stream().mapToInt(Part::order).min().orElse(0);
        return inspection.parts().stream()
                .filter(part -> !own.contains(part.id()) && part.order() <= order && part.shape().getEnvelopeInternal().covers(line.place().getEnvelopeInternal()))
                .mapToDouble(part -> part.shape().getEnvelopeInternal().getHeight()).min();
    }

    /** Height of the base line's middle above the floor, where the job tells where the proof's lower edge is. */
    private static OptionalDouble aboveFloorMm(Line line, Inspection inspection) {
        double edge = inspection.settings().get(LegibilitySettings.ABOVE_FLOOR, line.first());
        return edge < 0 ? OptionalDouble.empty()
                : OptionalDouble.of(edge + inspection.proof().heightMm() - line.level(0).getEnvelopeInternal().centre().y);
    }

    OptionalDouble scale() {
        return requiredMm.isPresent() && heightMm.isPresent() ? OptionalDouble.of(requiredMm.getAsDouble() / heightMm.getAsDouble()) : OptionalDouble.empty();
    }

    Optional<Backdrop.Pair> worst() {
        return backdrop.pairs().stream().findFirst();
    }

    OptionalDouble leastReflectance() {
        return backdrop.pairs().stream().mapToDouble(Backdrop.Pair::reflectance).min();
    }

    String behind() {
        return backdrop.pairs().stream().map(pair -> (pair.wall() ? "wall " : "") + hex(pair.behind())).distinct().collect(Collectors.joining(" "));
    }

    static String hex(int rgb) {
        return String.format(Locale.ROOT, "#%06x", rgb);
    }

    List<String> partIds() {
        return line.parts().stream().map(Part::id).distinct().toList();
    }
}
