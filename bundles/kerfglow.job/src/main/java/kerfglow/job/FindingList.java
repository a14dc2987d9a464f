// SPDX-License-Identifier: Apache-2.0
package kerfglow.job;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import kerfglow.host.Result;

/** The list of findings as a window shows it: filtered, sorted, walked through, and by station of the floor. Immutable. */
public final class FindingList {
    private final List<FindingItem> sorted;
    private final List<FindingItem> shown;

    private FindingList(List<FindingItem> sorted, FindingFilter filter) {
        this.sorted = sorted;
        this.shown = sorted.stream().filter(filter::shows).toList();
    }

    public static FindingList of(ReviewedResult reviewed, FindingFilter filter, FindingOrder order) {
        return new FindingList(items(reviewed).stream().sorted(order.comparator()).toList(), filter);
    }

    static List<FindingItem> items(ReviewedResult reviewed) {
        List<FindingItem> items = new ArrayList<>();
        for (Result.ReportedFinding finding : reviewed.result().findings()) {
            items.add(new FindingItem(items.size() + 1, finding, reviewed.decision(finding), check(reviewed.result(), finding.rule().id())));
        }
        return items;
    }

    /** Rule ids begin with the id of their check and a point. */
    private static String check(Result result, String rule) {
        return result.checks().stream().map(Result.CheckRow::check).filter(id -> rule.startsWith(id + ".")).max(Comparator.comparingInt(String::length))
                .orElse(rule.substring(0, rule.lastIndexOf('.')));
    }

    /** What is shown, in order. */
    public List<FindingItem> items() {
        return shown;
    }

    /** How many the filter hides. */
    public int hidden() {
        return sorted.size() - shown.size();
    }

    public Optional<FindingItem> item(String findingId) {
        return sorted.stream().filter(item -> item.finding().id().equals(findingId)).findFirst();
    }

    /**
     * The finding after this one, and after the last the first. From one that is not shown any more, for instance since it was waived just
     * now, it goes on where that one would be.
     *
     * @param findingId empty to begin
     */
    public Optional<FindingItem> next(Optional<String> findingId) {
        return step(sorted, findingId);
    }

    /** The finding before this one, and before the first the last; see {@link #next}. */
    public Optional<FindingItem> previous(Optional<String> findingId) {
        List<FindingItem> backwards = new ArrayList<>(sorted);
        Collections.reverse(backwards);
        return step(backwards, findingId);
    }

    private Optional<FindingItem> step(List<FindingItem> order, Optional<String> from) {
        List<String> ids = order.stream().map(item -> item.finding().id()).toList();
        int at = from.map(ids::indexOf).orElse(-1);
        for (int i = 1; i <= order.size(); i++) {
            FindingItem item = order.get((at + i) % order.size());
            if (shown.contains(item)) {
                return Optional.of(item);
            }
        }
        return Optional.empty();
    }
}
