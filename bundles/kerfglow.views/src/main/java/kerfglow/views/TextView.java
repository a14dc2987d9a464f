// SPDX-License-Identifier: Apache-2.0
package kerfglow.views;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import kerfglow.api.Quantity;
import kerfglow.api.Severity;
import kerfglow.api.UnitSystem;
import kerfglow.api.Units;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Role;
import kerfglow.host.Result;
import kerfglow.job.Decision;
import kerfglow.job.Mark;
import kerfglow.job.ReviewedResult;

/** A result as text for a person at a terminal: what, where, measured against required, why, what to do. */
public final class TextView {
    private static final int WIDTH = 100;
    private static final String INDENT = " ".repeat(7);

    private final ReviewedResult reviewed;
    private final boolean colour;
    private final StringBuilder out = new StringBuilder();

    private TextView(ReviewedResult reviewed, boolean colour) {
        this.reviewed = reviewed;
        this.colour = colour;
    }

    /**
     * The text of a result about which nothing is decided.
     *
     * @param result what to show
     * @param colour true on a terminal that shows colour
     */
    public static String of(Result result, boolean colour) {
        return of(ReviewedResult.undecided(result), colour);
    }

    /**
     * The text, with what was decided.
     *
     * @param reviewed what to show
     * @param colour true on a terminal that shows colour
     */
    public static String of(ReviewedResult reviewed, boolean colour) {
        Result result = reviewed.result();
        TextView view = new TextView(reviewed, colour);
        view.heading(result);
        for (int i = 0; i < result.findings().size(); i++) {
            Result.ReportedFinding finding = result.findings().get(i);
            if (i == 0 || !finding.rule().equals(result.findings().get(i - 1).rule())) {
                view.rule(finding);
            }
            view.finding(i + 1, finding, result.units());
        }
        view.job();
        view.checks(result);
        return view.out.toString();
    }

    private void heading(Result result) {
        UnitSystem units = result.units();
        List<Part> checked = result.parts().stream().filter(part -> part.role().isChecked()).toList();
        List<Part> others = result.parts().stream().filter(part -> !part.role().isChecked()).toList();
        line(bold(PlainText.of(result.proof().file())) + "  " + Units.format(result.proof().widthMm(), Quantity.LENGTH, units) + " x "
                + Units.format(result.proof().heightMm(), Quantity.LENGTH, units) + ", " + count(checked.size(), "part") + (checked.isEmpty() ? "" : " (" + roles(checked) + ")")
                + (others.isEmpty() ? "" : "; not checked: " + roles(others)));
        if (!result.job().title().isEmpty()) {
            line(PlainText.of(result.job().title() + (result.shop().name().isEmpty() ? "" : ", for " + result.shop().name())));
        }
        line("Curves are flattened to " + Units.format(result.proof().chordErrorMm(), Quantity.LENGTH, UnitSystem.METRIC) + " at real size; places are x, y from the top left.");
        result.remarks().forEach(remark -> line(PlainText.of(remark)));
        line("");
    }

    private static String roles(List<Part> parts) {
        return Arrays.stream(Role.values()).map(role -> {
            long count = parts.stream().filter(part -> part.role() == role).count();
            return count == 0 ? "" : count + " " + role.word();
        }).filter(text -> !text.isEmpty()).collect(Collectors.joining(", "));
    }

    /** What all findings of a rule have in common, said once above them. */
    private void rule(Result.ReportedFinding first) {
        line(badge(first.severity()) + " " + bold(PlainText.of(first.rule().summary())) + "  " + first.rule().id());
        paragraph("why    ", first.rule().why());
        paragraph("from   ", first.rule().source() + (first.severityReason().isEmpty() ? "" : "; weighed as " + first.severity().word() + " here: " + first.severityReason()));
        line("");
    }

    private void finding(int number, Result.ReportedFinding finding, UnitSystem units) {
        List<String> message = Wrap.lines(PlainText.of(finding.message()), WIDTH - INDENT.length());
        line(String.format(Locale.ROOT, "%4d   ", number) + message.get(0));
        message.stream().skip(1).forEach(rest -> line(INDENT + rest));
        paragraph("where  ", FindingText.where(finding, units));
        if (finding.measured().isPresent() || finding.required().isPresent()) {
            paragraph("found  ", FindingText.measures(finding, units));
        }
        paragraph("do     ", finding.fix());
        decision(reviewed.decision(finding));
        line(INDENT + "id     " + finding.id());
        line("");
    }

    private void decision(Decision decision) {
        decision.waiver().ifPresent(waiver -> paragraph("", (decision.isWaived() ? "waived by " : "decide again, since " + decision.why() + "; waived by ")
                + waiver.author() + ": " + waiver.reason()));
    }

    /** Marks that are open, and who signed off. */
    private void job() {
        if (reviewed.isNewRevision()) {
            paragraph("", "The proof was changed since the job was saved; waivers and marks are carried over to it.");
            line("");
        }
        List<Mark> open = reviewed.job().map(job -> job.marks().stream().filter(mark -> mark.settled().isEmpty()).toList()).orElse(List.of());
        for (Mark mark : open) {
            paragraph("", "open " + mark.shape().word() + " by " + mark.author() + " at " + FindingText.point(mark.shape().anchor().coordinate(), reviewed.result().units())
                    + (mark.text().isEmpty() ? "" : ": " + mark.text()));
        }
        for (ReviewedResult.SignOffStand stand : reviewed.signOffs()) {
            paragraph("", "signed off by " + stand.signOff().author() + ", " + stand.signOff().at() + (stand.holds() ? "" : "; void: " + String.join(" ", stand.voidBecause())));
        }
        if (!open.isEmpty() || !reviewed.signOffs().isEmpty()) {
            line("");
        }
    }

    private void checks(Result result) {
        for (Result.CheckRow row : result.checks()) {
            String status = row.status().word();
            boolean bad = row.status() == Result.Status.FAILED || row.status() == Result.Status.TIMED_OUT;
            line(String.format(Locale.ROOT, "%-12s %s  %d ms", row.check(), bad ? paint("31", status) : status, row.millis()));
            if (!row.why().isEmpty()) {
                paragraph("", row.why());
            }
            reviewed.waiver(row).ifPresent(waiver -> paragraph("", "accepted by " + waiver.author() + ": " + waiver.reason()));
        }
        line(summary(reviewed));
    }

    /** One line: how many of each weight. */
    public static String summary(Result result) {
        return summary(ReviewedResult.undecided(result));
    }

    /** One line: how many of each weight, those that are waived apart. */
    public static String summary(ReviewedResult reviewed) {
        Result result = reviewed.result();
        long waived = result.findings().stream().filter(finding -> reviewed.decision(finding).isWaived()).count();
        String counts = Arrays.stream(Severity.values()).sorted((a, b) -> b.compareTo(a))
                .map(severity -> result.findings().stream().filter(finding -> finding.severity() == severity && !reviewed.decision(finding).isWaived()).count() + " " + severity.word())
                .collect(Collectors.joining(", "));
        Optional<String> unmeasured = result.checks().stream().filter(row -> row.status() == Result.Status.NOT_MEASURED).map(Result.CheckRow::check)
                .reduce((a, b) -> a + ", " + b);
        return PlainText.of(result.proof().file()) + ": " + counts + (waived == 0 ? "" : ", " + waived + " waived") + unmeasured.map(checks -> "; not measured: " + checks).orElse("")
                + (reviewed.isBroken() ? "; not whole, a check failed" : "");
    }

    private static String count(long number, String noun) {
        return number + " " + noun + (number == 1 ? "" : "s");
    }

    private void paragraph(String label, String text) {
        List<String> lines = Wrap.lines(PlainText.of(text), WIDTH - INDENT.length() - label.length());
        for (int i = 0; i < lines.size(); i++) {
            line(INDENT + (i == 0 ? label : " ".repeat(label.length())) + lines.get(i));
        }
    }

    private void line(String text) {
        out.append(text).append('\n');
    }

    private String badge(Severity severity) {
        String word = String.format(Locale.ROOT, "%-6s", severity.word());
        return switch (severity) {
            case STOP -> paint("1;31", word);
            case REVIEW -> paint("1;33", word);
            case INFO -> paint("1;36", word);
        };
    }

    private String bold(String text) {
        return paint("1", text);
    }

    /** Control sequences of ECMA-48, select graphic rendition. */
    private String paint(String code, String text) {
        return colour ? "\u001b[" + code + "m" + text + "\u001b[0m" : text;
    }
}
