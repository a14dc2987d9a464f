// SPDX-License-Identifier: Apache-2.0
package kerfglow.job;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.locationtech.jts.geom.util.AffineTransformation;

/**
 * A reviewer's mark on the proof. In a job file it is a W3C Web Annotation.
 *
 * @param id a URI of its own, kept for ever
 * @param shape what is drawn
 * @param text what it says; may be empty
 * @param author who made it
 * @param created when
 * @param modified when anything of it, answers included, changed last
 * @param answers oldest first
 * @param settled who settled it and when; absent while it is open
 * @param earlier the times of {@code modified} before, oldest first, so that of two versions it is known whether one came of the other
 * @param proofSha256 digest of the proof that it was last seen standing on
 */
public record Mark(String id, MarkShape shape, String text, String author, Instant created, Instant modified, List<Answer> answers,
        Optional<Settled> settled, List<Instant> earlier, String proofSha256) {

    /** What somebody answered. */
    public record Answer(String id, String text, String author, Instant created) {
        public Answer {
            Names.requireGiven("an answer", text);
            Names.requireGiven("the name of who answers", author);
        }
    }

    /** Who held a mark to be done with, and when. */
    public record Settled(String author, Instant at) {
        public Settled {
            Names.requireGiven("the name of who settles it", author);
        }
    }

    public Mark {
        Objects.requireNonNull(shape, "shape");
        Objects.requireNonNull(text, "text");
        Objects.requireNonNull(proofSha256, "proofSha256");
        Names.requireGiven("the id of a mark", id);
        Names.requireGiven("the name of who makes the mark", author);
        answers = List.copyOf(answers);
        earlier = List.copyOf(earlier);
    }

    /** A new mark. */
    public static Mark of(MarkShape shape, String text, String author, Instant at, String proofSha256) {
        return new Mark(Names.newId(), shape, text, author, at, at, List.of(), Optional.empty(), List.of(), proofSha256);
    }

    public Mark withShape(MarkShape value, Instant at) {
        return new Mark(id, value, text, author, created, at, answers, settled, withNow(), proofSha256);
    }

    public Mark withText(String value, Instant at) {
        return new Mark(id, shape, value, author, created, at, answers, settled, withNow(), proofSha256);
    }

    public Mark answered(String answer, String by, Instant at) {
        List<Answer> more = new ArrayList<>(answers);
        more.add(new Answer(Names.newId(), answer, by, at));
        return new Mark(id, shape, text, author, created, at, more, settled, withNow(), proofSha256);
    }

    public Mark settled(String by, Instant at) {
        return new Mark(id, shape, text, author, created, at, answers, Optional.of(new Settled(by, at)), withNow(), proofSha256);
    }

    public Mark reopened(Instant at) {
        return new Mark(id, shape, text, author, created, at, answers, Optional.empty(), withNow(), proofSha256);
    }

    /** The same, held to stand on this revision of the proof. */
    public Mark standingOn(String sha256, Instant at) {
        return new Mark(id, shape, text, author, created, at, answers, settled, withNow(), sha256);
    }

    /** The same on another revision or at another scale; nobody changed what it says, so {@link #modified} stays. */
    Mark moved(AffineTransformation motion, String onProofSha256) {
        return new Mark(id, motion.isIdentity() ? shape : shape.moved(motion), text, author, created, modified, answers, settled, earlier, onProofSha256);
    }

    private List<Instant> withNow() {
        List<Instant> more = new ArrayList<>(earlier);
        more.add(modified);
        return more;
    }

    /** True when this version was made by changing the other. */
    boolean cameOf(Mark other) {
        return earlier.contains(other.modified);
    }
}
