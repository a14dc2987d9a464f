// SPDX-License-Identifier: Apache-2.0
package kerfglow.geometry;

/** Rings cross more often than {@link FillRule#MOST_CROSSINGS}. */
public final class FillRuleLimitException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    FillRuleLimitException() {
        super("outlines cross each other more than " + FillRule.MOST_CROSSINGS + " times (limit on crossings)");
    }
}
