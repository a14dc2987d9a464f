// SPDX-License-Identifier: Apache-2.0
package kerfglow.job;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import kerfglow.host.JobSheet;
import org.locationtech.jts.geom.util.AffineTransformation;

/**
 * Everything that a job file holds; immutable. Lights placed by hand stand in the job sheet.
 *
 * @param proof the proof that it is about
 * @param sheet the job sheet
 * @param marks in the order made
 * @param waivers in the order made
 * @param signOffs in the order made, void ones too
 * @param seen what the run showed that the decisions stand on
 */
public record JobState(ProofRef proof, JobSheet sheet, List<Mark> marks, List<Waiver> waivers, List<SignOff> signOffs, Snapshot seen) {
    public JobState {
        Objects.requireNonNull(proof, "proof");
        Objects.requireNonNull(sheet, "sheet");
        Objects.requireNonNull(seen, "seen");
        marks = List.copyOf(marks);
        waivers = List.copyOf(waivers);
        signOffs = List.copyOf(signOffs);
    }

    /** A job in which nothing is decided yet. */
    public static JobState of(ProofRef proof, JobSheet sheet) {
        return new JobState(proof, sheet, List.of(), List.of(), List.of(), Snapshot.NONE);
    }

    public JobState withProof(ProofRef value) {
        return new JobState(value, sheet, marks, waivers, signOffs, seen);
    }

    public JobState withSheet(JobSheet value) {
        return new JobState(proof, value, marks, waivers, signOffs, seen);
    }

    public JobState withMarks(List<Mark> value) {
        return new JobState(proof, sheet, value, waivers, signOffs, seen);
    }

    public JobState withWaivers(List<Waiver> value) {
        return new JobState(proof, sheet, marks, value, signOffs, seen);
    }

    public JobState withSignOffs(List<SignOff> value) {
        return new JobState(proof, sheet, marks, waivers, value, seen);
    }

    JobState withSeen(Snapshot value) {
        return new JobState(proof, sheet, marks, waivers, signOffs, value);
    }

    public Optional<Mark> mark(String id) {
        return marks.stream().filter(mark -> mark.id().equals(id)).findFirst();
    }

    /** With one mark more. */
    public JobState plus(Mark mark) {
        return withMarks(added(marks, mark));
    }

    /**
     * With one mark changed.
     *
     * @throws IllegalArgumentException when there is no such mark
     */
    public JobState changed(String markId, UnaryOperator<Mark> change) {
        if (mark(markId).isEmpty()) {
            throw new IllegalArgumentException("there is no mark " + markId);
        }
        return withMarks(marks.stream().map(mark -> mark.id().equals(markId) ? change.apply(mark) : mark).toList());
    }

    /** With one waiver more. A waiver of the same check or of the same finding takes the place of the older one. */
    public JobState plus(Waiver waiver) {
        return withWaivers(added(waivers.stream().filter(each -> !sameSubject(each, waiver)).toList(), waiver));
    }

    private static boolean sameSubject(Waiver a, Waiver b) {
        if (a instanceof Waiver.OfFinding one && b instanceof Waiver.OfFinding other) {
            return one.decided().rule().equals(other.decided().rule()) && one.findingId().equals(other.findingId());
        }
        return a instanceof Waiver.OfCheck one && b instanceof Waiver.OfCheck other && one.check().equals(other.check());
    }

    public JobState plus(SignOff signOff) {
        return withSignOffs(added(signOffs, signOff));
    }

    /** Without the mark, waiver or sign-off of this id. */
    public JobState without(String id) {
        return new JobState(proof, sheet, others(marks, Mark::id, id), others(waivers, Waiver::id, id), others(signOffs, SignOff::id, id), seen);
    }

    /** The same with the marks where they are at another scale of the same proof; unchanged for another proof. */
    JobState atScaleOf(ProofRef other) {
        double ratio = other.scale() / proof.scale();
        if (ratio == 1 || proof.sha256().isEmpty() || !proof.sha256().equals(other.sha256())) {
            return this;
        }
        return withMarks(marks.stream().map(mark -> mark.moved(AffineTransformation.scaleInstance(ratio, ratio), mark.proofSha256())).toList());
    }

    private static <T> List<T> others(List<T> all, Function<T, String> id, String gone) {
        return all.stream().filter(each -> !id.apply(each).equals(gone)).toList();
    }

    private static <T> List<T> added(List<T> all, T one) {
        List<T> more = new ArrayList<>(all);
        more.add(one);
        return more;
    }
}
