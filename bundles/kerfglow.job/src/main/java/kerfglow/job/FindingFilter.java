// SPDX-License-Identifier: Apache-2.0
package kerfglow.job;

import java.util.EnumSet;
import java.util.Locale;
import java.util.Set;
import kerfglow.api.Severity;

/**
 * Which findings are shown; all that is given must fit.
 *
 * @param severities the weights shown
 * @param checks ids of the checks shown; empty for all
 * @param parts ids of the parts shown; empty for all, findings without parts among them
 * @param decided by how far the decision is
 * @param words shown are those in whose message, rule or summary all of these words occur, in any case; empty for all
 */
public record FindingFilter(Set<Severity> severities, Set<String> checks, Set<String> parts, Decided decided, String words) {
    /** Everything. */
    public static final FindingFilter ALL = new FindingFilter(EnumSet.allOf(Severity.class), Set.of(), Set.of(), Decided.ANY, "");

    /** By how far the decision is. */
    public enum Decided {
        ANY,
        /** A person must still decide: stop or review, and not waived, or to be decided again. */
        TO_DECIDE,
        /** Waived. */
        WAIVED
    }

    public FindingFilter {
        severities = Set.copyOf(severities);
        checks = Set.copyOf(checks);
        parts = Set.copyOf(parts);
    }

    public FindingFilter withSeverities(Set<Severity> value) {
        return new FindingFilter(value, checks, parts, decided, words);
    }

    public FindingFilter withChecks(Set<String> value) {
        return new FindingFilter(severities, value, parts, decided, words);
    }

    public FindingFilter withParts(Set<String> value) {
        return new FindingFilter(severities, checks, value, decided, words);
    }

    public FindingFilter withDecided(Decided value) {
        return new FindingFilter(severities, checks, parts, value, words);
    }

    public FindingFilter withWords(String value) {
        return new FindingFilter(severities, checks, parts, decided, value);
    }

    boolean shows(FindingItem item) {
        return severities.contains(item.finding().severity())
                && (checks.isEmpty() || checks.contains(item.check()))
                && (parts.isEmpty() || item.finding().parts().stream().anyMatch(parts::contains))
                && switch (decided) {
                    case ANY -> true;
                    case TO_DECIDE -> item.isToDecide();
                    case WAIVED -> item.decision().isWaived();
                }
                && says(item);
    }

    private boolean says(FindingItem item) {
        String text = (item.finding().message() + " " + item.finding().rule().id() + " " + item.finding().rule().summary()).toLowerCase(Locale.ROOT);
        for (String word : words.strip().toLowerCase(Locale.ROOT).split("\\s+")) {
            if (!text.contains(word)) {
                return false;
            }
        }
        return true;
    }
}
