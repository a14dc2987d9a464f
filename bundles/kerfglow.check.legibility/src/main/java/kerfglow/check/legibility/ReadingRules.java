// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.legibility;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import kerfglow.api.Inspection;
import kerfglow.api.StockItem;
import kerfglow.api.Units;
import kerfglow.check.legibility.ReadingRule.Height;
import kerfglow.check.legibility.ReadingRule.Range;
import kerfglow.check.legibility.ReadingRule.Step;

/** The rules that ship, and those of the shop. A shop's rule with the name of one that ships takes its place. */
final class ReadingRules {
    /** Feet of distance for each inch of height, as a ratio of like units: 12 inches in a foot. */
    private static final double FEET_PER_INCH = Units.MM_PER_FOOT / Units.MM_PER_INCH;
    private static final double INCH = Units.MM_PER_INCH;
    /** A letter at the limit of normal sight is 5 minutes of arc high: the definition of the Snellen letter. */
    private static final double SNELLEN = Math.toRadians(5.0 / 60);

    /** 1/8 in for each foot beyond the distance of the step. */
    private static final double ACCESSIBLE_RATIO = 8 * FEET_PER_INCH;

    private ReadingRules() {
    }

    /** Everything that can be named, by name. */
    static Map<String, ReadingRule> all(Inspection inspection) {
        Map<String, ReadingRule> rules = new LinkedHashMap<>();
        shipped(inspection.settings().get(LegibilitySettings.ACUITY)).forEach(rule -> rules.put(rule.id(), rule));
        Map<String, List<StockItem>> own = new LinkedHashMap<>();
        inspection.stock(LegibilitySettings.RULES).forEach(item ->
                own.computeIfAbsent(item.get(LegibilitySettings.RULE_NAME).strip(), name -> new ArrayList<>()).add(item));
        own.forEach((name, items) -> rules.put(name, own(name, items)));
        return rules;
    }

    static List<ReadingRule> shipped(double acuity) {
        return List.of(
                index("index-30", 30, "quoted from the road-sign manual of 2009: 1 in of letter height for each 30 ft; its section is recalled, not confirmed"),
                index("index-33", 33, "Manual on Uniform Traffic Control Devices, section 2A.14 as quoted on a sign page: some research suggests 33 ft for each inch"),
                index("index-40", 40, "Manual on Uniform Traffic Control Devices, section 2A.14 as quoted on a sign page: a minimum specific ratio, such as 40 ft for each inch"),
                index("index-29", 29, "two letter visibility charts that credit a university study of 1998: capitals and small letters, sans serif, black on white, lit from outside"),
                index("index-25", 25, "the same charts, second column; that it means capitals alone is recalled, not confirmed"),
                index("least-20", 20, "trade rule, the least: a public viewing-distance table; common practice"),
                index("impact-10", 10, "trade rule, for impact: a public viewing-distance table; common practice"),
                ReadingRule.index("motorway-x-50", Height.X, 50 * FEET_PER_INCH,
                        "\"Traffic Signs for Motorways\" (1962): an x-height of 12 in is read from 600 ft; the ratio follows from these two"),
                ReadingRule.index("workplace-155", Height.CAP, 155, "ASR A6, 6.1.3: characters no lower than distance / 155, for displays at the workplace"),
                ReadingRule.index("acuity", Height.CAP, acuity / Math.tan(SNELLEN), "arithmetic: a letter of 5 minutes of arc at acuity 1, as legibility.acuity gives it"),
                ReadingRule.index("safety-lit-outside", Height.FIELD, 100, "EN 1838:2013 as summarised: distance is 100 times the height of the pictogram's field, sign lit from outside"),
                ReadingRule.index("safety-lit-inside", Height.FIELD, 200, "EN 1838:2013 as summarised: distance is 200 times the height of the pictogram's field, sign lit from inside"),
                accessibility());
    }

    private static ReadingRule index(String id, double feetPerInch, String source) {
        return ReadingRule.index(id, Height.CAP, feetPerInch * FEET_PER_INCH, source);
    }

    private static ReadingRule accessibility() {
        return new ReadingRule("accessibility", Height.CAP, List.of(
                new Step(40 * INCH, 70 * INCH, 5.0 / 8 * INCH, 72 * INCH, ACCESSIBLE_RATIO),
                new Step(70 * INCH, 120 * INCH, 2 * INCH, 180 * INCH, ACCESSIBLE_RATIO),
                new Step(120 * INCH, Double.POSITIVE_INFINITY, 3 * INCH, 252 * INCH, ACCESSIBLE_RATIO)),
                new Range(0.10, 0.30), new Range(0.10, 0.35), new Range(0.55, 1.10),
                "2010 ADA Standards, table 703.5.5 and 703.5 (visual characters)");
    }

    private static ReadingRule own(String name, List<StockItem> items) {
        List<StockItem> sorted = new ArrayList<>(items);
        sorted.sort(Comparator.comparingDouble(item -> item.get(LegibilitySettings.RULE_FLOOR)));
        List<Step> steps = new ArrayList<>();
        double from = 0;
        for (StockItem item : sorted) {
            double to = item.get(LegibilitySettings.RULE_FLOOR);
            boolean open = to >= LegibilitySettings.RULE_FLOOR.defaultValue();
            steps.add(new Step(from, open ? Double.POSITIVE_INFINITY : to, item.get(LegibilitySettings.RULE_LEAST),
                    item.get(LegibilitySettings.RULE_FROM), item.get(LegibilitySettings.RULE_RATIO)));
            from = to;
        }
        StockItem first = sorted.get(0);
        Height about = switch (first.get(LegibilitySettings.RULE_HEIGHT)) {
            case "x" -> Height.X;
            case "field" -> Height.FIELD;
            default -> Height.CAP;
        };
        return new ReadingRule(name, about, steps,
                new Range(first.get(LegibilitySettings.RULE_STROKE_LEAST), first.get(LegibilitySettings.RULE_STROKE_MOST)),
                new Range(first.get(LegibilitySettings.RULE_SPACING_LEAST), first.get(LegibilitySettings.RULE_SPACING_MOST)), Range.ANY,
                first.get(LegibilitySettings.RULE_SOURCE));
    }
}
