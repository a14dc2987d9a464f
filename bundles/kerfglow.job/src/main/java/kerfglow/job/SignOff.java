// SPDX-License-Identifier: Apache-2.0
package kerfglow.job;

import java.time.Instant;
import java.util.List;

/**
 * A person's word that the proof may go on to the floor.
 *
 * @param id a URI of its own, kept for ever
 * @param author who signed
 * @param at when
 * @param open what was open then
 * @param digests what it is bound to
 * @param remark what the person added; may be empty
 */
public record SignOff(String id, String author, Instant at, List<OpenItem> open, Digests digests, String remark) {
    /**
     * One thing that was open when somebody signed.
     *
     * @param kind {@code finding}, {@code mark} or {@code check}
     * @param id of the finding, mark or check
     * @param text what it says
     */
    public record OpenItem(String kind, String id, String text) {
    }

    /**
     * What a sign-off is bound to: SHA-256, 64 lower-case hex digits each.
     *
     * @param proof of the proof's bytes
     * @param sheet of the job sheet, written canonically
     * @param settings of every value that could hold, and of the shop's stock and severities
     * @param checks of the checks that ran, with their versions
     */
    public record Digests(String proof, String sheet, String settings, String checks) {
    }

    public SignOff {
        Names.requireGiven("the name of who signs", author);
        open = List.copyOf(open);
    }
}
