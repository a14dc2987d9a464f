// SPDX-License-Identifier: Apache-2.0
package kerfglow.papers;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import kerfglow.api.OverlayLayer;
import kerfglow.api.Quantity;
import kerfglow.api.Severity;
import kerfglow.api.UnitSystem;
import kerfglow.api.Units;
import kerfglow.host.GivenValue;
import kerfglow.host.Result;
import kerfglow.views.FindingText;
import kerfglow.views.Review;

/**
 * What a report says, in words, the same as web page and on paper. It picks and words what the result holds and measures nothing.
 *
 * @param result what was found
 * @param review what people decided about it
 * @param layers of checks, shown on the picture
 * @param day of the report, UTC
 */
public record Report(Result result, Review review, List<OverlayLayer> layers, LocalDate day) {
    /** Said wherever a figure could be taken for a permission. */
    private static final String CAUTION = "Figures on electricity, weight and wind are estimates for planning. The local electrical code (NEC Article 600 or its local "
            + "equivalent), the local building code and licensed practice decide.";
    private static final int SHORT_DIGEST = 12;

    public Report {
        layers = List.copyOf(layers);
    }

    /**
     * Findings of one rule and weight, which stand together.
     *
     * @param first number of the first of them
     * @param findings in order
     */
    record Group(int first, List<Result.ReportedFinding> findings) {
        Result.ReportedFinding example() {
            return findings.get(0);
        }

        /** {@code 3} or {@code 3–7}. */
        String numbers() {
            return findings.size() == 1 ? Integer.toString(first) : first + "–" + (first + findings.size() - 1);
        }

        int places() {
            return findings.stream().mapToInt(Result.ReportedFinding::count).sum();
        }

        /** The check that found them: the rule's id less its last word. */
        String check() {
            String rule = example().rule().id();
            return rule.substring(0, rule.lastIndexOf('.'));
        }
    }

    String title() {
        return result.job().title().isEmpty() ? FindingText.fileName(result) : result.job().title();
    }

    /** What was looked at. */
    List<Paper.Labelled> facts() {
        UnitSystem units = result.units();
        List<Paper.Labelled> facts = new ArrayList<>();
        facts.add(new Paper.Labelled("proof", FindingText.fileName(result) + ", SHA-256 " + result.proof().sha256()));
        facts.add(new Paper.Labelled("size", Units.format(result.proof().widthMm(), Quantity.LENGTH, units) + " × " + Units.format(result.proof().heightMm(), Quantity.LENGTH, units)
                + ", " + count(result.parts().stream().filter(part -> part.role().isChecked()).count(), "part") + " checked"));
        facts.add(new Paper.Labelled("job sheet", result.job().from().isEmpty() ? "none" : result.job().from()));
        facts.add(new Paper.Labelled("shop sheet", result.shop().from().isEmpty() ? "none"
                : result.shop().from() + (result.shop().name().isEmpty() ? "" : " of " + result.shop().name())));
        result.job().build().ifPresent(build -> facts.add(new Paper.Labelled("build", build)));
        facts.add(new Paper.Labelled("date", day.toString()));
        return facts;
    }

    /** {@code 2 stop, 3 review, 1 info}, with how many of each are waived. */
    String counts() {
        List<String> counts = new ArrayList<>();
        for (Severity severity : List.of(Severity.STOP, Severity.REVIEW, Severity.INFO)) {
            List<Result.ReportedFinding> of = result.findings().stream().filter(finding -> finding.severity() == severity).toList();
            long waived = of.stream().filter(review::isWaived).count();
            counts.add(of.size() + " " + severity.word() + (waived > 0 ? " (" + waived + " waived)" : ""));
        }
        return String.join(", ", counts);
    }

    /** What follows, in a sentence or two. */
    String verdict() {
        long open = result.findings().stream().filter(finding -> finding.severity() == Severity.STOP && !review.isWaived(finding)).count();
        String verdict = open == 0 ? "No stop is open." : (open == 1 ? "One stop is open" : open + " stops are open") + ": it cannot be made as it is, or it will fail.";
        String broken = result.checks().stream().filter(row -> isBroken(row) && !isAccepted(row)).map(row -> row.check() + " " + row.status().word()).collect(Collectors.joining(", "));
        long unmeasured = result.checks().stream().filter(row -> row.status() == Result.Status.NOT_MEASURED).count();
        return verdict + (broken.isEmpty() ? "" : " The result is not whole: " + broken + ".") + (unmeasured == 0 ? "" : " " + count(unmeasured, "check") + " could not measure.") + " "
                + signedOff().map(line -> "Signed off by " + line.author() + " on " + line.day() + ".").orElse("Not signed off.");
    }

    private Optional<Review.SignOffLine> signedOff() {
        return review.signOffs().stream().filter(Review.SignOffLine::holds).reduce((older, newer) -> newer);
    }

    private static boolean isBroken(Result.CheckRow row) {
        return row.status() == Result.Status.FAILED || row.status() == Result.Status.TIMED_OUT;
    }

    private boolean isAccepted(Result.CheckRow row) {
        return review.acceptedChecks().containsKey(row.check());
    }

    /** The findings by rule, in order; numbers run through all of them as in the text and on the picture. */
    List<Group> groups() {
        List<Group> groups = new ArrayList<>();
        int start = 0;
        List<Result.ReportedFinding> findings = result.findings();
        for (int i = 1; i <= findings.size(); i++) {
            if (i == findings.size() || !findings.get(i).rule().equals(findings.get(start).rule()) || findings.get(i).severity() != findings.get(start).severity()) {
                groups.add(new Group(start + 1, findings.subList(start, i)));
                start = i;
            }
        }
        return findings.isEmpty() ? List.of() : groups;
    }

    /** All that is known of one finding. */
    List<Paper.Labelled> details(Result.ReportedFinding finding) {
        UnitSystem units = result.units();
        Map<String, String> details = new LinkedHashMap<>();
        details.put("weight", finding.severity().word() + (finding.severityReason().isEmpty() ? "" : " in this shop: " + finding.severityReason()));
        details.put("where", FindingText.where(finding, units));
        details.put("measured", FindingText.measured(finding, units));
        details.put("required", FindingText.required(finding, units));
        details.put("why", finding.rule().why());
        details.put("do", finding.fix());
        details.put("source", finding.rule().source());
        review.ruling(finding).ifPresent(ruling -> details.put("decision", decision(ruling)));
        details.put("id", finding.id() + ", rule " + finding.rule().id());
        return details.entrySet().stream().filter(entry -> !entry.getValue().isEmpty()).map(entry -> new Paper.Labelled(entry.getKey(), entry.getValue())).toList();
    }

    private static String decision(Review.Ruling ruling) {
        String waived = "waived by " + ruling.author() + " on " + ruling.day() + ": " + ruling.reason();
        return ruling.holds() ? waived : "to be decided again, " + ruling.again() + "; it was " + waived;
    }

    /** Which of a finding's places the picture shows; empty when it has but one. */
    static String places(Result.ReportedFinding finding) {
        return finding.count() > 1 ? "the first of " + finding.count() + " places" : "";
    }

    /** Marks: letter, what, who and when, text with answers, whether settled. */
    List<List<String>> marks() {
        return review.marks().stream().map(mark -> List.of(mark.letter(), mark.kind(), mark.author() + ", " + mark.day(),
                mark.text() + mark.answers().stream().map(answer -> "\n" + answer).collect(Collectors.joining()), mark.settled().isEmpty() ? "open" : mark.settled())).toList();
    }

    /** Waivers: number or check, what was found, who and when, the reason. */
    List<List<String>> waivers() {
        List<List<String>> rows = new ArrayList<>();
        for (int i = 0; i < result.findings().size(); i++) {
            Result.ReportedFinding finding = result.findings().get(i);
            String number = Integer.toString(i + 1);
            review.ruling(finding).ifPresent(ruling -> rows.add(waiver(number, finding.message(), ruling)));
        }
        for (Result.CheckRow row : result.checks()) {
            Optional.ofNullable(review.acceptedChecks().get(row.check())).ifPresent(ruling -> rows.add(waiver(row.check(), "The check " + row.status().word() + ".", ruling)));
        }
        return rows;
    }

    private static List<String> waiver(String what, String message, Review.Ruling ruling) {
        return List.of(what, message, ruling.author() + ", " + ruling.day(), ruling.reason() + (ruling.holds() ? "" : "\nTo be decided again: " + ruling.again() + "."));
    }

    /** Sign-offs: who and when, whether it holds, remark, what was open then. */
    List<List<String>> signOffs() {
        return review.signOffs().stream().map(line -> List.of(line.author() + ", " + line.day(), line.holds() ? "holds" : "void: " + String.join(" ", line.voidBecause()),
                line.remark(), line.open().isEmpty() ? "nothing" : String.join("\n", line.open()))).toList();
    }

    /** Every check and how it ended, those that did not measure everything first. */
    List<List<String>> checks() {
        List<List<String>> rows = new ArrayList<>();
        for (boolean whole : new boolean[] {false, true}) {
            result.checks().stream().filter(row -> isWhole(row) == whole).forEach(row -> rows.add(List.of(row.check(), row.title(), row.status().word(), row.why(), row.version())));
        }
        return rows;
    }

    private static boolean isWhole(Result.CheckRow row) {
        return row.why().isEmpty() && (row.status() == Result.Status.PASSED || row.status() == Result.Status.FINDINGS);
    }

    /** Values that a job sheet or the command line gave otherwise than the shop sheet: setting, scope, value, where from, what the shop sheet says. */
    List<List<String>> otherSettings() {
        Set<String> ofShop = result.shop().settings().stream().map(GivenValue::from).collect(Collectors.toSet());
        List<List<String>> rows = new ArrayList<>();
        for (Result.SettingUsed used : result.settings()) {
            if (used.from().equals("check") || ofShop.contains(used.from())) {
                continue;
            }
            String value = FindingText.value(used, result.units());
            Optional<String> shop = result.shop().settings().stream().filter(given -> given.key().equals(used.key()) && given.scope().toString().equals(used.scope()))
                    .map(GivenValue::text).reduce((first, last) -> last);
            if (!shop.equals(Optional.of(value))) {
                rows.add(List.of(used.key(), used.scope(), value, used.from(), shop.orElse("nothing")));
            }
        }
        return rows;
    }

    /** What the reader must know about the run. */
    List<String> notes() {
        List<String> notes = new ArrayList<>(result.remarks());
        if (review.carriedOver()) {
            notes.add("The proof was changed since the job was saved; waivers and marks are carried over to it.");
        }
        notes.add("Curves are flattened to " + Units.format(result.proof().chordErrorMm(), Quantity.LENGTH, UnitSystem.METRIC)
                + " at real size; places are x, y from the upper left corner of the proof.");
        notes.add(CAUTION);
        return notes;
    }

    /** One line for the foot of pages. */
    String footer() {
        return "Kerfglow report, " + day + ", proof " + result.proof().sha256().substring(0, SHORT_DIGEST) + "…";
    }

    private static String count(long number, String noun) {
        return number + " " + noun + (number == 1 ? "" : "s");
    }
}
