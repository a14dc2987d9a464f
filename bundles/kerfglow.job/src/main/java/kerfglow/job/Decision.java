// SPDX-License-Identifier: Apache-2.0
package kerfglow.job;

import java.util.Optional;

/**
 * What has been decided about one finding.
 *
 * @param kind whether it is open, waived, or to be decided again
 * @param waiver the waiver that follows it here; absent when it is open
 * @param why why it is to be decided again; else empty
 */
public record Decision(Kind kind, Optional<Waiver.OfFinding> waiver, String why) {
    /** How far the decision is. */
    public enum Kind {
        /** Nobody has decided. */
        OPEN,
        /** A waiver follows it. */
        WAIVED,
        /** A waiver followed it, but it is worse now, or in more places. */
        DECIDE_AGAIN
    }

    static final Decision OPEN = new Decision(Kind.OPEN, Optional.empty(), "");

    public boolean isWaived() {
        return kind == Kind.WAIVED;
    }
}
