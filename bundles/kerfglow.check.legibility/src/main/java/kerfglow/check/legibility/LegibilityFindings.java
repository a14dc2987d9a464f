// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.legibility;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import kerfglow.api.Finding;
import kerfglow.api.Inspection;
import kerfglow.api.Measure;
import kerfglow.api.Quantity;
import kerfglow.api.Rule;
import kerfglow.api.proof.Part;

/** Says what was measured on one line, in the units of the job. */
final class LegibilityFindings {
    private static final double PERCENT = 100;
    private static final String BY_DAY = "day";
    private static final String BY_NIGHT = "night";

    private final Inspection inspection;

    LegibilityFindings(Inspection inspection) {
        this.inspection = inspection;
    }

    List<Finding> of(LineReport report) {
        List<Finding> findings = new ArrayList<>();
        findings.add(line(report));
        tooSmall(report).ifPresent(findings::add);
        report.asked().ifPresent(rule -> {
            double cap = report.line().model().capMm();
            if (report.requiredMm().isPresent()) {
                share(report, LegibilityRules.STROKE, "stroke", report.proportions().strokeMm() / cap, rule.stroke()).ifPresent(findings::add);
                report.proportions().spacingMm().ifPresent(spacing ->
                        share(report, LegibilityRules.SPACING, "median spacing", spacing / cap, rule.spacing()).ifPresent(findings::add));
            }
        });
        contrast(report).ifPresent(findings::add);
        byNight(report).ifPresent(findings::add);
        return findings;
    }

    private Finding line(LineReport report) {
        Line line = report.line();
        String x = line.model().xMm().isPresent() ? ", x-height " + inspection.length(line.model().xMm().getAsDouble()) : "";
        String reads = report.reachMm().isPresent() ? "; by " + report.rule() + " it reads from " + inspection.length(report.reachMm().getAsDouble()) : "";
        return finding(report, LegibilityRules.LINE, name(report) + " has cap height " + inspection.length(line.model().capMm()) + x
                + (report.live() ? " (of its font: live text)" : "") + reads + ".")
                .measured(Measure.mm(line.model().capMm())).build();
    }

    private Optional<Finding> tooSmall(LineReport report) {
        if (report.requiredMm().isEmpty() || report.heightMm().isEmpty()
                || ReadingRule.isEnough(report.heightMm().getAsDouble(), report.requiredMm().getAsDouble())) {
            return Optional.empty();
        }
        double required = report.requiredMm().getAsDouble();
        ReadingRule rule = report.asked().orElseThrow();
        String which = switch (rule.about()) {
            case CAP -> "cap height ";
            case X -> report.line().model().xMm().isPresent() ? "x-height " : "only height ";
            case FIELD -> "field height ";
        };
        return Optional.of(finding(report, LegibilityRules.TOO_SMALL, name(report) + " has " + which + inspection.length(report.heightMm().getAsDouble())
                + "; to be read " + report.reader().words() + " it needs " + inspection.length(required) + " by " + rule.id()
                + ". It reads from " + inspection.length(report.reachMm().orElse(0)) + ".")
                .measured(Measure.mm(report.heightMm().getAsDouble())).required(Measure.mm(required))
                .fix("Enlarge it " + factor(report.scale().orElseThrow()) + " times, or ask from where it really must be read. Rule: " + rule.source() + ".").build());
    }

    private Optional<Finding> share(LineReport report, Rule rule, String what, double measured, ReadingRule.Range allowed) {
        if (allowed.holds(measured)) {
            return Optional.empty();
        }
        double nearest = measured < allowed.least() ? allowed.least() : allowed.most();
        return Optional.of(finding(report, rule, name(report) + " has a " + what + " of " + percent(measured) + " of its cap height, "
                + inspection.length(measured * report.line().model().capMm()) + "; " + report.rule() + " allows " + percent(allowed.least()) + " to "
                + percent(allowed.most()) + ".")
                .measured(new Measure(measured, Quantity.RATIO)).required(new Measure(nearest, Quantity.RATIO)).build());
    }

    private Optional<Finding> contrast(LineReport report) {
        Part first = report.line().first();
        double leastRatio = inspection.settings().get(LegibilitySettings.LEAST_CONTRAST, first);
        double leastReflectance = inspection.settings().get(LegibilitySettings.LEAST_REFLECTANCE, first);
        Optional<Backdrop.Pair> worst = report.worst();
        if (worst.isEmpty()) {
            return Optional.empty();
        }
        boolean lowRatio = worst.get().ratio() < leastRatio;
        if (!lowRatio && report.leastReflectance().orElse(1) >= leastReflectance) {
            return Optional.empty();
        }
        Backdrop.Pair pair = lowRatio ? worst.get() : report.backdrop().pairs().stream()
                .min(Comparator.comparingDouble(Backdrop.Pair::reflectance)).orElseThrow();
        Finding.Builder finding = finding(report, LegibilityRules.CONTRAST, name(report) + " is " + LineReport.hex(pair.letter()) + " on "
                + (pair.wall() ? "the wall's " : "") + LineReport.hex(pair.behind()) + (pair.gradient() ? " where it is worst" : "") + ": by day a contrast ratio of " + factor(pair.ratio())
                + " (at least " + factor(leastRatio) + ") and a reflectance contrast of " + percent(pair.reflectance())
                + (leastReflectance > 0 ? " (at least " + percent(leastReflectance) + ")" : "") + ".")
                .measured(new Measure(lowRatio ? pair.ratio() : pair.reflectance(), Quantity.RATIO))
                .required(new Measure(lowRatio ? leastRatio : leastReflectance, Quantity.RATIO)).cause(BY_DAY);
        return Optional.of((pair.gradient() ? finding.at(pair.place()) : finding).build());
    }

    private Optional<Finding> byNight(LineReport report) {
        double least = inspection.settings().get(LegibilitySettings.LEAST_NIGHT_CONTRAST, report.line().first());
        return report.night().filter(night -> night.ratio() < least).map(night -> finding(report, LegibilityRules.CONTRAST, name(report) + " has "
                + luminance(night.letter()) + " against " + luminance(night.behind()) + " behind it: by night a ratio of luminances of "
                + factor(night.ratio()) + " (at least " + factor(least) + ").")
                .measured(new Measure(night.ratio(), Quantity.RATIO)).required(new Measure(least, Quantity.RATIO)).cause(BY_NIGHT)
                .fix("Light one of the two more or the other less, or take a film that lets more or less light through.").build());
    }

    private static String luminance(double value) {
        return String.format(Locale.ROOT, "%.1f cd/m²", value);
    }

    private Finding.Builder finding(LineReport report, Rule rule, String message) {
        return Finding.of(rule, message).place(report.line().place()).at(report.line().letters().get(0).piece().shape().getInteriorPoint().getCoordinate())
                .parts(report.partIds());
    }

    private static String name(LineReport report) {
        Line line = report.line();
        String layer = line.first().layer().isBlank() ? "" : " on layer \"" + line.first().layer() + "\"";
        String text = report.text().isBlank() ? "" : " \"" + report.text() + "\"";
        int count = line.letters().size();
        return "Line " + report.id() + text + layer + " (" + (line.isJoined() ? "a word in " + count + (count == 1 ? " piece" : " pieces")
                : count + (count == 1 ? " letter" : " letters")) + ", " + LegibilityTables.form(line) + ")";
    }

    private static String factor(double value) {
        return String.format(Locale.ROOT, "%.2f", value);
    }

    private static String percent(double share) {
        return String.format(Locale.ROOT, "%.1f %%", share * PERCENT);
    }
}
