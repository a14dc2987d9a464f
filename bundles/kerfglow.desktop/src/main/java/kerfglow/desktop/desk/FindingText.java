// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.desk;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import kerfglow.api.Measure;
import kerfglow.api.Quantity;
import kerfglow.api.UnitSystem;
import kerfglow.api.Units;
import kerfglow.host.Result;
import kerfglow.job.Decision;

/** A finding as text: for the pane, and to be copied. */
public final class FindingText {
    /** Longer lists of names tell nobody anything. */
    private static final int MOST_NAMES = 12;

    /** A heading, may be empty, and what stands below it. */
    public record Paragraph(String head, String body) {
    }

    private FindingText() {
    }

    /** What it is, what was found and needed, why, what to do, source, where. */
    public static List<Paragraph> paragraphs(Desk desk, Choice choice) {
        Result.ReportedFinding finding = choice.finding();
        UnitSystem units = desk.units();
        List<Paragraph> paragraphs = new ArrayList<>();
        paragraphs.add(new Paragraph(choice.item().number() + "  " + finding.rule().summary(),
                finding.severity().word() + (finding.severityReason().isEmpty() ? "" : " (" + finding.severityReason() + ")") + "  \u00b7  " + finding.message()));
        finding.measured().ifPresent(measured -> paragraphs.add(new Paragraph("Found",
                format(measured, units) + finding.required().map(required -> ", needs " + format(required, units)).orElse(""))));
        if (choice.item().decision().kind() != Decision.Kind.OPEN) {
            paragraphs.add(new Paragraph("Decided", decided(choice.item().decision())));
        }
        paragraphs.add(new Paragraph("What to do", finding.fix()));
        paragraphs.add(new Paragraph("Why it matters", finding.rule().why()));
        paragraphs.add(new Paragraph("Where", where(choice, units)));
        paragraphs.add(new Paragraph("Where the rule comes from", finding.rule().source() + "  (" + finding.rule().id() + ", finding " + finding.id() + ")"));
        return paragraphs;
    }

    private static String decided(Decision decision) {
        String waived = decision.waiver().map(waiver -> "Waived by " + waiver.author() + ": " + waiver.reason()).orElse("");
        return decision.kind() == Decision.Kind.WAIVED ? waived : "To be decided again: " + decision.why() + " " + waived;
    }

    private static String format(Measure measure, UnitSystem units) {
        return Units.format(measure.value(), measure.quantity(), units);
    }

    private static String where(Choice choice, UnitSystem units) {
        Result.ReportedFinding finding = choice.finding();
        String at = choice.at().map(place -> Units.format(place.at().x, Quantity.LENGTH, units) + " from the left, " + Units.format(place.at().y, Quantity.LENGTH, units)
                + " from the top" + (finding.count() > 1 ? " (place " + (choice.place() + 1) + " of " + finding.count() + ", all alike)" : "")).orElse("the whole proof");
        return at + (finding.parts().isEmpty() ? "" : "; parts " + names(finding.parts())) + (finding.elements().isEmpty() ? "" : "; drawn as " + names(finding.elements()));
    }

    private static String names(List<String> names) {
        String first = names.stream().limit(MOST_NAMES).collect(Collectors.joining(", "));
        return names.size() > MOST_NAMES ? first + " and " + (names.size() - MOST_NAMES) + " more" : first;
    }

    /** The same as plain text, to be copied. */
    public static String plain(Desk desk, Choice choice) {
        return desk.proofFile().map(file -> file.getFileName() + "\n").orElse("") + paragraphs(desk, choice).stream()
                .map(paragraph -> paragraph.head() + (paragraph.head().isEmpty() ? "" : "\n") + paragraph.body()).collect(Collectors.joining("\n\n")) + "\n";
    }
}
