// SPDX-License-Identifier: Apache-2.0
package kerfglow.job;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import kerfglow.api.Severity;
import kerfglow.host.JobSheet;
import kerfglow.host.Result;
import org.locationtech.jts.geom.util.AffineTransformation;

/** A result and what has been decided about it; immutable. What views and the command line show of decisions comes from here. */
public final class ReviewedResult {
    private final Result result;
    private final Optional<JobState> job;
    private final Map<String, Decision> decisions;
    private final boolean newRevision;
    private final List<SignOffStand> signOffs;

    /**
     * Whether a sign-off holds.
     *
     * @param signOff the sign-off
     * @param voidBecause why it does not; empty while it holds
     */
    public record SignOffStand(SignOff signOff, List<String> voidBecause) {
        public boolean holds() {
            return voidBecause.isEmpty();
        }
    }

    private ReviewedResult(Result result, Optional<JobState> job, Map<String, Decision> decisions, boolean newRevision) {
        this.newRevision = newRevision;
        this.result = result;
        this.job = job;
        this.decisions = decisions;
        this.signOffs = job.map(state -> state.signOffs().stream().map(this::stand).toList()).orElse(List.of());
    }

    /** A result about which nothing is decided. */
    public static ReviewedResult undecided(Result result) {
        return new ReviewedResult(result, Optional.empty(), Map.of(), false);
    }

    /**
     * A result in the light of a job. The job's decisions may have been made on an older revision of the proof; they are carried over by the
     * best rigid alignment.
     */
    public static ReviewedResult of(JobState state, Result result) {
        return seen(state, result).reviewed();
    }

    /**
     * The job as it stands on this result: proof, waivers and marks carried over, and what the result shows kept for next time. Marks keep the
     * digest of the proof that they were last seen standing on, unless the outline under them is as it was.
     */
    static Carried seen(JobState state, Result result) {
        boolean sameFile = state.proof().sha256().isEmpty() || state.proof().sha256().equals(result.proof().sha256());
        Snapshot now = Snapshot.of(result);
        double ratio = state.proof().sha256().isEmpty() ? 1 : result.proof().scale() / state.proof().scale();
        AffineTransformation motion = !sameFile ? Alignment.best(state.seen(), now)
                : ratio == 1 ? new AffineTransformation() : AffineTransformation.scaleInstance(ratio, ratio);
        WaiverMatch match = new WaiverMatch(state, result, motion);
        Map<String, Waiver.OfFinding> followed = match.followed();
        List<Waiver> waivers = state.waivers().stream().map(waiver -> waiver instanceof Waiver.OfFinding ? followed.get(waiver.id()) : waiver).toList();
        List<Mark> marks = state.marks().isEmpty() ? List.of() : sameFile ? onSameFile(state, motion, result) : onRevision(state, motion, now, result);
        JobSheet sheet = ratio == 1 || !sameFile ? state.sheet() : SheetEdits.withModules(state.sheet(), state.sheet().modules().stream()
                .map(module -> module.at(module.xMm() * ratio, module.yMm() * ratio, module.turnDegrees())).toList());
        JobState carried = new JobState(state.proof().seen(result.proof()), sheet, marks, waivers, state.signOffs(), now);
        return new Carried(carried, new ReviewedResult(result, Optional.of(carried), match.decisions(), !sameFile), motion);
    }

    private static List<Mark> onSameFile(JobState state, AffineTransformation motion, Result result) {
        return state.marks().stream().map(mark -> mark.moved(motion, stood(mark, state) ? result.proof().sha256() : mark.proofSha256())).toList();
    }

    private static List<Mark> onRevision(JobState state, AffineTransformation motion, Snapshot now, Result result) {
        MarkGround ground = new MarkGround(state.seen().moved(motion), now);
        return state.marks().stream().map(mark -> {
            Mark moved = mark.moved(motion, mark.proofSha256());
            return stood(mark, state) && ground.isUnchanged(moved) ? moved.moved(new AffineTransformation(), result.proof().sha256()) : moved;
        }).toList();
    }

    /** A mark that did not stand before stands only when somebody confirms it. */
    private static boolean stood(Mark mark, JobState state) {
        return mark.proofSha256().isEmpty() || mark.proofSha256().equals(state.proof().sha256());
    }

    /** A job carried over to a result. */
    record Carried(JobState state, ReviewedResult reviewed, AffineTransformation motion) {
    }

    public Result result() {
        return result;
    }

    /** The job whose decisions these are, as it stands on this result; absent when there is none. */
    public Optional<JobState> job() {
        return job;
    }

    /** True when the proof is another revision than the one that the job was last seen with, so that its decisions were carried over. */
    public boolean isNewRevision() {
        return newRevision;
    }

    /** What has been decided about a finding of this result. */
    public Decision decision(Result.ReportedFinding finding) {
        return decisions.getOrDefault(finding.id(), Decision.OPEN);
    }

    /** True when another is of the very same result and decides the same about its findings and checks. */
    public boolean decidesAs(ReviewedResult other) {
        return result == other.result && newRevision == other.newRevision && decisions.equals(other.decisions) && job.map(JobState::waivers).equals(other.job.map(JobState::waivers));
    }

    /** The waiver that accepts how a check ended; absent when there is none or when none is needed. */
    public Optional<Waiver.OfCheck> waiver(Result.CheckRow row) {
        return job.stream().flatMap(state -> state.waivers().stream()).filter(Waiver.OfCheck.class::isInstance).map(Waiver.OfCheck.class::cast)
                .filter(waiver -> waiver.holdsFor(row)).findFirst();
    }

    /** True when a finding weighs at least this much and is not waived. */
    public boolean has(Severity least) {
        return result.findings().stream().anyMatch(finding -> finding.severity().compareTo(least) >= 0 && !decision(finding).isWaived());
    }

    /** True when a check failed or timed out and nobody accepts that. */
    public boolean isBroken() {
        return result.checks().stream().anyMatch(row -> isBroken(row) && waiver(row).isEmpty());
    }

    /** True when the check failed or timed out. */
    public static boolean isBroken(Result.CheckRow row) {
        return row.status() == Result.Status.FAILED || row.status() == Result.Status.TIMED_OUT;
    }

    /** Every sign-off of the job and whether it holds, in the order made. */
    public List<SignOffStand> signOffs() {
        return signOffs;
    }

    /** The newest sign-off that holds. */
    public Optional<SignOff> signedOff() {
        return signOffs.stream().filter(SignOffStand::holds).map(SignOffStand::signOff).reduce((older, newer) -> newer);
    }

    /** Why nobody can sign off now, one sentence each; empty when somebody can. */
    public List<String> refusals() {
        List<String> refusals = new ArrayList<>();
        job.filter(state -> !DigestMaker.sheet(state.sheet()).equals(DigestMaker.sheet(result.job())))
                .ifPresent(state -> refusals.add("The job sheet was changed since the checks ran; run them again."));
        refusals.addAll(undecided());
        return refusals;
    }

    private List<String> undecided() {
        List<String> undecided = new ArrayList<>();
        for (Result.ReportedFinding finding : result.findings()) {
            Decision decision = decision(finding);
            if (finding.severity() == Severity.STOP && !decision.isWaived()) {
                undecided.add("The stop " + finding.id() + " (" + finding.rule().id() + ") is undecided"
                        + (decision.why().isEmpty() ? "" : " again: " + decision.why()) + ". Change the artwork, or waive it with a reason.");
            }
        }
        for (Result.CheckRow row : result.checks()) {
            if (isBroken(row) && waiver(row).isEmpty()) {
                undecided.add("The check " + row.check() + " " + row.status().word() + ". Run it again, or waive that with a reason.");
            }
        }
        return undecided;
    }

    private SignOffStand stand(SignOff signOff) {
        SignOff.Digests now = DigestMaker.of(result);
        List<String> why = new ArrayList<>();
        job.filter(state -> !DigestMaker.sheet(state.sheet()).equals(now.sheet())).ifPresent(state -> why.add("The job sheet was changed since the checks ran."));
        Map<String, Boolean> same = new HashMap<>();
        same.put("The proof", signOff.digests().proof().equals(now.proof()));
        same.put("The job sheet", signOff.digests().sheet().equals(now.sheet()));
        same.put("A setting, or the shop's stock or severities,", signOff.digests().settings().equals(now.settings()));
        same.put("The set of checks, or a check's version,", signOff.digests().checks().equals(now.checks()));
        same.keySet().stream().sorted().filter(what -> !same.get(what)).forEach(what -> why.add(what + " changed since."));
        why.addAll(undecided());
        return new SignOffStand(signOff, why);
    }

    /** What is open: undecided findings that a person must decide, marks that are not settled, checks that could not measure or were waived. */
    public List<SignOff.OpenItem> open() {
        List<SignOff.OpenItem> open = new ArrayList<>();
        for (Result.ReportedFinding finding : result.findings()) {
            if (finding.severity() != Severity.INFO && !decision(finding).isWaived()) {
                open.add(new SignOff.OpenItem("finding", finding.id(), finding.severity().word() + " " + finding.rule().id() + ": " + finding.message()));
            }
        }
        job.stream().flatMap(state -> state.marks().stream()).filter(mark -> mark.settled().isEmpty())
                .forEach(mark -> open.add(new SignOff.OpenItem("mark", mark.id(), mark.author() + ": " + mark.text())));
        for (Result.CheckRow row : result.checks()) {
            if (row.status() == Result.Status.NOT_MEASURED || isBroken(row)) {
                open.add(new SignOff.OpenItem("check", row.check(), row.status().word() + (row.why().isEmpty() ? "" : ": " + row.why())
                        + waiver(row).map(waiver -> "; accepted by " + waiver.author() + ": " + waiver.reason()).orElse("")));
            }
        }
        return open;
    }
}
