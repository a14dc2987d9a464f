// SPDX-License-Identifier: Apache-2.0
package kerfglow.api;

import java.util.Objects;
import java.util.regex.Pattern;

/**
 * One thing that can be wrong. Ids are kept for ever.
 *
 * @param id {@code check.rule}, lower case with hyphens, for instance {@code router.narrow-gap}
 * @param severity the default weight
 * @param summary the fault as a sentence without full stop: "The bit does not pass between two walls"
 * @param why why it matters on the floor, one or two sentences
 * @param fix what to do about it, one or two sentences
 * @param source where the rule comes from: a published source, or "common practice, no source", or "geometry"
 */
public record Rule(String id, Severity severity, String summary, String why, String fix, String source) {
    private static final Pattern ID = Pattern.compile("[a-z][a-z0-9-]*(\\.[a-z][a-z0-9-]*)+");

    public Rule {
        if (!ID.matcher(id).matches()) {
            throw new IllegalArgumentException("rule id must read check.rule, lower case: " + id);
        }
        Objects.requireNonNull(severity, "severity");
        requireText(id, "summary", summary);
        requireText(id, "why", why);
        requireText(id, "fix", fix);
        requireText(id, "source", source);
    }

    private static void requireText(String id, String name, String text) {
        if (text == null || text.isBlank()) {
            throw new IllegalArgumentException("rule " + id + " has no " + name);
        }
    }
}
