// SPDX-License-Identifier: Apache-2.0
package kerfglow.job;

import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import kerfglow.host.JobSheet;
import kerfglow.host.Result;

/**
 * The one model of a window: the job, its history, and the result that it is looked at with. Every change is a named step that can be taken back.
 * One listener hears of every change. Belongs to the thread that made it; calls from others are refused.
 */
public final class Job {
    /** Hears of every change of job, history or result. */
    @FunctionalInterface
    public interface Listener {
        void changed();
    }

    private final Thread owner = Thread.currentThread();
    private final History<JobState> history;
    private final Clock clock;
    private Listener listener = () -> { };
    private Optional<Result> result = Optional.empty();
    private Optional<ReviewedResult> reviewed = Optional.empty();

    /** A job as it is on disk. */
    public Job(JobState start, Clock clock) {
        this(start, start, clock);
    }

    /** A job that goes on from what was not saved; it counts as changed until it is. */
    public Job(JobState start, JobState onDisk, Clock clock) {
        history = new History<>(start, onDisk);
        this.clock = clock;
    }

    /** The one that hears of changes; takes the place of an earlier one. */
    public void listen(Listener value) {
        requireOwner();
        listener = value;
    }

    public JobState state() {
        requireOwner();
        return history.present();
    }

    /** The result in the light of the job as it is now; absent before the first run. */
    public Optional<ReviewedResult> reviewed() {
        requireOwner();
        return reviewed;
    }

    /**
     * A run ended: proof, waivers and marks are carried over to its result. This is no step of its own, since nothing is decided by it.
     * Compare with {@link ProofComparison} before, if the old revision is still wanted.
     */
    public void show(Result value) {
        requireOwner();
        result = Optional.of(value);
        changed();
    }

    /** A step of any kind; the named ones below are made with it. */
    public void perform(String name, UnaryOperator<JobState> change) {
        requireOwner();
        history.perform(name, change.apply(history.present()));
        changed();
    }

    public void undo() {
        requireOwner();
        history.undo();
        changed();
    }

    public void redo() {
        requireOwner();
        history.redo();
        changed();
    }

    /** The name of the step that undo takes back. */
    public Optional<String> undoName() {
        return history.undoName();
    }

    /** The name of the step that redo does again. */
    public Optional<String> redoName() {
        return history.redoName();
    }

    /** True when something is not saved. */
    public boolean isChanged() {
        return history.isChanged();
    }

    /** What is now is on the disk. */
    public void markSaved() {
        requireOwner();
        history.markSaved();
        listener.changed();
    }

    /** The job is saved in another file, which names the proof from its own folder; no step of its own. */
    public void moved(Path from, Path to) {
        requireOwner();
        history.changeAll(state -> JobNames.relocated(state, from, to));
        history.markSaved();
        listener.changed();
    }

    /** What undo brings back may have been made on an older revision than the one that is shown; then it is carried over as well. */
    private void changed() {
        result.ifPresent(value -> {
            ReviewedResult.Carried carried = ReviewedResult.seen(history.present(), value);
            history.amend(state -> carried.state());
            reviewed = Optional.of(carried.reviewed());
        });
        listener.changed();
    }

    private void requireOwner() {
        if (Thread.currentThread() != owner) {
            throw new IllegalStateException("the job belongs to the thread " + owner.getName() + ", not to " + Thread.currentThread().getName());
        }
    }

    /** Thousandths of a second are as much as job files keep for people to read. */
    private Instant now() {
        return clock.instant().truncatedTo(ChronoUnit.MILLIS);
    }

    // Setting up ------------------------------------------------------------------------------------------------------------

    /** Changes the job sheet, see {@link SheetEdits}. */
    public void changeSheet(String name, UnaryOperator<JobSheet> change) {
        perform(name, state -> state.withSheet(change.apply(state.sheet())));
    }

    /**
     * Another file takes the place of the proof, for instance the customer's next revision; decisions are carried over when it has been checked.
     *
     * @param file as the job file names it, see {@link JobFile#proofName}
     */
    public void takeRevision(String file) {
        perform("Take another file for the proof", state -> state.withProof(state.proof().withFile(file)));
    }

    // Marks -----------------------------------------------------------------------------------------------------------------

    /** A new mark; returns its id. */
    public String mark(MarkShape shape, String text, String author) {
        Mark mark = Mark.of(shape, text, author, now(), history.present().proof().sha256());
        perform("Add " + shape.word(), state -> state.plus(mark));
        return mark.id();
    }

    public void reshapeMark(String id, MarkShape shape) {
        perform("Move " + shape.word(), state -> state.changed(id, mark -> mark.withShape(shape, now())));
    }

    public void rewriteMark(String id, String text) {
        perform("Change text", state -> state.changed(id, mark -> mark.withText(text, now())));
    }

    public void answerMark(String id, String text, String author) {
        perform("Answer", state -> state.changed(id, mark -> mark.answered(text, author, now())));
    }

    public void settleMark(String id, String author) {
        perform("Settle mark", state -> state.changed(id, mark -> mark.settled(author, now())));
    }

    public void reopenMark(String id) {
        perform("Reopen mark", state -> state.changed(id, mark -> mark.reopened(now())));
    }

    /** The reviewer has looked: a mark that was made on another revision stands on this one too. */
    public void confirmMark(String id) {
        perform("Keep mark on this revision", state -> state.changed(id, mark -> mark.standingOn(state.proof().sha256(), now())));
    }

    public void removeMark(String id) {
        perform("Remove mark", state -> state.without(id));
    }

    /**
     * Marks of a second reviewer's job file come in. Those made on another revision of the proof come as they are, and say so by their digest.
     *
     * @return what came
     */
    public MarkMerge.Report merge(JobState other) {
        MarkMerge merge = MarkMerge.of(history.present().marks(), other.atScaleOf(history.present().proof()).marks());
        perform("Merge marks", state -> state.withMarks(merge.marks()));
        return merge.report();
    }

    // Waivers and sign-offs -------------------------------------------------------------------------------------------------

    /**
     * Accepts a finding of the result that is shown.
     *
     * @throws IllegalArgumentException when reason or name is missing
     */
    public void waive(Result.ReportedFinding finding, String reason, String author) {
        Waiver waiver = Waiver.OfFinding.of(result.orElseThrow(() -> new IllegalStateException("nothing was checked yet")), finding, reason, author, now());
        perform("Waive finding", state -> {
            JobState rest = state;
            for (Waiver.OfFinding older : reviewed.flatMap(each -> each.decision(finding).waiver()).stream().toList()) {
                rest = rest.without(older.id()); // the new decision takes the place of the one that it renews
            }
            return rest.plus(waiver);
        });
    }

    /** Accepts that a check failed or timed out. */
    public void waive(Result.CheckRow row, String reason, String author) {
        perform("Waive check", state -> state.plus(Waiver.OfCheck.of(row, reason, author, now())));
    }

    public void withdrawWaiver(String id) {
        perform("Withdraw waiver", state -> state.without(id));
    }

    /**
     * Signs off.
     *
     * @return why it is refused, one sentence each; empty when it is signed
     */
    public List<String> signOff(String author, String remark) {
        if (reviewed.isEmpty()) {
            return List.of("Nothing was checked yet.");
        }
        List<String> refusals = reviewed.get().refusals();
        if (refusals.isEmpty()) {
            SignOff signOff = new SignOff(Names.newId(), author, now(), reviewed.get().open(), DigestMaker.of(reviewed.get().result()), remark);
            perform("Sign off", state -> state.plus(signOff));
        }
        return refusals;
    }

    public void withdrawSignOff(String id) {
        perform("Withdraw sign-off", state -> state.without(id));
    }
}
