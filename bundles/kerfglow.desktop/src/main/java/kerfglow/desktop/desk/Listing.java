// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.desk;

import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import kerfglow.api.Severity;
import kerfglow.host.Result;

/** Which findings the list shows. */
public final class Listing {
    private final Runnable changed;
    private final Set<Severity> severities = EnumSet.allOf(Severity.class);
    private String words = "";

    Listing(Runnable changed) {
        this.changed = changed;
    }

    /** Stations in the order of the floor, in each the most severe first, then as the result has them. */
    static List<Result.ReportedFinding> floorOrder(List<Result.ReportedFinding> findings) {
        return findings.stream().sorted(Comparator.comparing((Result.ReportedFinding finding) -> Station.ofRule(finding.rule().id()))
                .thenComparing(Result.ReportedFinding::severity, Comparator.reverseOrder())).toList();
    }

    List<Result.ReportedFinding> of(List<Result.ReportedFinding> findings) {
        return findings.stream().filter(this::lists).toList();
    }

    private boolean lists(Result.ReportedFinding finding) {
        if (!severities.contains(finding.severity())) {
            return false;
        }
        String text = String.join(" ", finding.rule().id(), finding.rule().summary(), finding.message(), finding.id(), String.join(" ", finding.parts()),
                String.join(" ", finding.elements())).toLowerCase(Locale.ROOT);
        for (String word : words.toLowerCase(Locale.ROOT).split("\\s+")) {
            if (!text.contains(word)) {
                return false;
            }
        }
        return true;
    }

    public boolean lists(Severity severity) {
        return severities.contains(severity);
    }

    public void setSeverity(Severity severity, boolean list) {
        if (list ? severities.add(severity) : severities.remove(severity)) {
            changed.run();
        }
    }

    /** Words that a listed finding must all have: in its text, its rule, the ids of its parts or elements. */
    public String words() {
        return words;
    }

    public void setWords(String value) {
        if (!words.equals(value.strip())) {
            words = value.strip();
            changed.run();
        }
    }
}
