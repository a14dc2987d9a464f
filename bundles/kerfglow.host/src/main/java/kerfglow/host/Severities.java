// SPDX-License-Identifier: Apache-2.0
package kerfglow.host;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import kerfglow.api.Rule;
import kerfglow.api.Severity;

/** What each rule weighs in this shop. */
final class Severities {
    private final Map<String, ShopSheet.SeverityChange> changes = new HashMap<>();

    private Severities() {
    }

    static Severities of(List<CheckCatalogue.Entry> checks, ShopSheet shop, List<String> remarks) throws SheetException {
        Set<String> ids = checks.stream().map(entry -> entry.info().id()).collect(Collectors.toSet());
        Set<String> known = checks.stream().flatMap(entry -> entry.info().rules().stream()).map(Rule::id).collect(Collectors.toSet());
        Severities severities = new Severities();
        for (ShopSheet.SeverityChange change : shop.severities()) {
            if (ids.stream().noneMatch(id -> change.rule().startsWith(id + "."))) {
                remarks.add(change.from() + ": " + change.rule() + " is a rule of a check that is not installed; it is left alone.");
                continue;
            }
            if (!known.contains(change.rule())) {
                throw new SheetException(change.from() + ": there is no rule " + change.rule() + "; \"checks\" lists all", null);
            }
            severities.changes.put(change.rule(), change);
        }
        return severities;
    }

    Severity of(Rule rule) {
        ShopSheet.SeverityChange change = changes.get(rule.id());
        return change == null ? rule.severity() : change.severity();
    }

    /** Why the shop weighs it otherwise, or empty. */
    String reason(Rule rule) {
        ShopSheet.SeverityChange change = changes.get(rule.id());
        return change == null ? "" : change.reason() + " (" + change.from() + ")";
    }
}
