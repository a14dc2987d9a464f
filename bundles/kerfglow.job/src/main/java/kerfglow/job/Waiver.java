// SPDX-License-Identifier: Apache-2.0
package kerfglow.job;

import java.time.Instant;
import java.util.List;
import java.util.Objects;
import kerfglow.host.Result;

/** A named person's reasoned decision to accept what was found, or what could not be found out. */
public sealed interface Waiver {
    /** A URI of its own, kept for ever. */
    String id();

    String reason();

    /** Who decided. */
    String author();

    Instant at();

    /**
     * A finding is accepted.
     *
     * @param findingId the finding's id when it was decided
     * @param severity its weight then, as {@code stop}
     * @param message what was found then
     * @param decided what was decided on, without its places: measured and required stay as they were then
     * @param places where it is now; follows the finding from revision to revision
     */
    record OfFinding(String id, String findingId, String severity, String message, SeenFinding decided, List<SeenPlace> places, String reason, String author,
            Instant at) implements Waiver {
        public OfFinding {
            places = List.copyOf(places);
            Objects.requireNonNull(decided, "decided");
            Names.requireGiven("the reason of the waiver", reason);
            Names.requireGiven("the name of who waives it", author);
        }

        /** A new waiver of a finding of this result. */
        public static OfFinding of(Result result, Result.ReportedFinding finding, String reason, String author, Instant at) {
            SeenFinding seen = SeenFinding.of(result, finding);
            return new OfFinding(Names.newId(), finding.id(), finding.severity().word(), finding.message(), seen.withPlaces(List.of()), seen.places(), reason, author, at);
        }

        OfFinding withPlaces(List<SeenPlace> value) {
            return new OfFinding(id, findingId, severity, message, decided, value, reason, author, at);
        }
    }

    /**
     * It is accepted that a check failed or timed out.
     *
     * @param check the check's id
     * @param version its version then
     * @param status how it ended then; a check that ends otherwise later is to be decided again
     */
    record OfCheck(String id, String check, String version, Result.Status status, String reason, String author, Instant at) implements Waiver {
        public OfCheck {
            Names.requireGiven("the id of the check", check);
            Names.requireGiven("the reason of the waiver", reason);
            Names.requireGiven("the name of who waives it", author);
            if (status != Result.Status.FAILED && status != Result.Status.TIMED_OUT) {
                throw new IllegalArgumentException("only a check that failed or timed out can be waived, not one that ended as " + status.word());
            }
        }

        /** A new waiver of a check that failed or timed out. */
        public static OfCheck of(Result.CheckRow row, String reason, String author, Instant at) {
            return new OfCheck(Names.newId(), row.check(), row.version(), row.status(), reason, author, at);
        }

        boolean holdsFor(Result.CheckRow row) {
            return row.check().equals(check) && row.status() == status && row.version().equals(version);
        }
    }
}
