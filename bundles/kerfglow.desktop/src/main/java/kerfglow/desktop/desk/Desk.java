// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.desk;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import kerfglow.api.UnitSystem;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Proof;
import kerfglow.desktop.scene.OldRevision;
import kerfglow.desktop.scene.Scene;
import kerfglow.host.Result;
import kerfglow.job.Job;
import kerfglow.job.JobFile;
import kerfglow.job.JobState;
import kerfglow.job.ProofComparison;
import kerfglow.job.ReviewedResult;
import kerfglow.job.Snapshot;
import org.locationtech.jts.geom.Envelope;

/**
 * What lies on the desk: the proof with its job, what was found, how it is shown. The panes show it and change it; none knows another. It
 * knows no widget. Touched from the window's thread alone.
 */
public final class Desk {
    private final Map<Topic, List<Runnable>> listeners = new EnumMap<>(Topic.class);
    private final KeptJob kept = new KeptJob(this::jobChanged, problem -> setWork(WorkState.failed(problem)));
    private final Findings findings = new Findings(this::tell);
    private final Marks marks = new Marks(this::job, () -> tell(Topic.MARK));
    private final Shown shown = new Shown(() -> tell(Topic.SHOWN));
    private Optional<Proof> proof = Optional.empty();
    private List<Part> parts = List.of();
    private Scene scene = Scene.EMPTY;
    private UnitSystem units = UnitSystem.METRIC;
    private boolean whole;
    private Optional<Result> soFar = Optional.empty();
    private Optional<ProofComparison> comparison = Optional.empty();
    private OldRevision old = OldRevision.NONE;
    private Envelope aim = new Envelope();
    private WorkState work = WorkState.IDLE;
    private Screen screen = Screen.ASSUMED;
    private boolean dark;

    /** Calls back whenever the topic changes, until {@link #forget}. */
    public void listen(Topic topic, Runnable listener) {
        listeners.computeIfAbsent(topic, key -> new ArrayList<>()).add(listener);
    }

    public void forget(Topic topic, Runnable listener) {
        listeners.getOrDefault(topic, List.of()).remove(listener);
    }

    private void tell(Topic topic) {
        List.copyOf(listeners.getOrDefault(topic, List.of())).forEach(Runnable::run);
    }

    // The job -----------------------------------------------------------------------------------------------------------------

    /** Takes up a job; the one before is put away. */
    public void begin(Path newProof, JobFile file, JobState state) {
        kept.begin(newProof, file, state);
        proof = Optional.empty();
        parts = List.of();
        scene = Scene.EMPTY;
        whole = false;
        soFar = Optional.empty();
        comparison = Optional.empty();
        old = OldRevision.NONE;
        findings.reset();
        marks.reset();
        shown.reset();
        for (Topic topic : List.of(Topic.PROOF, Topic.FINDINGS, Topic.CHOICE, Topic.JOB)) {
            tell(topic);
        }
    }

    private void jobChanged() {
        if (whole) {
            findings.take(decided());
        }
        tell(Topic.JOB);
    }

    public Optional<Job> job() {
        return kept.job();
    }

    /** The job as it is kept in files. */
    public KeptJob kept() {
        return kept;
    }

    /** The job's marks as they are handled on the proof. */
    public Marks marks() {
        return marks;
    }

    /** The proof's file. */
    public Optional<Path> proofFile() {
        return kept.proofFile();
    }

    // The proof and what was found --------------------------------------------------------------------------------------------

    public Optional<Proof> proof() {
        return proof;
    }

    public List<Part> parts() {
        return parts;
    }

    public Scene scene() {
        return scene;
    }

    /** Units that lengths are shown in. */
    public UnitSystem units() {
        return units;
    }

    /** Puts the proof on the desk as it was read; the findings of the run before stay until the new ones are known. */
    public void put(Proof newProof, List<Part> newParts, Scene newScene, UnitSystem newUnits) {
        proof = Optional.of(newProof);
        parts = List.copyOf(newParts);
        scene = newScene;
        units = newUnits;
        tell(Topic.PROOF);
    }

    /** Shows what is found so far, while other checks still run; of those stays what they found in the run before, when there was one over this proof. */
    public void showSoFar(Result partial) {
        if (!whole) {
            findings.take(Optional.of(ReviewedResult.undecided(partial)));
        } else if (result().filter(before -> before.proof() == partial.proof()).isPresent()) { // decisions are carried over to another revision when all is known
            soFar = Optional.of(partial.over(result().get()));
            parts = partial.parts();
            findings.take(decided());
        }
    }

    /** The run ended before all was checked: what was found so far goes, the whole result before stays. */
    public void forgetSoFar() {
        if (soFar.isPresent()) {
            soFar = Optional.empty();
            parts = job().orElseThrow().reviewed().orElseThrow().result().parts();
            findings.take(decided());
        }
    }

    private Optional<ReviewedResult> decided() {
        Job current = job().orElseThrow();
        return soFar.isPresent() ? soFar.map(each -> ReviewedResult.of(current.state(), each)) : current.reviewed();
    }

    /** Shows a whole result; decisions made on an earlier revision of the proof are carried over, and the two are compared. */
    public void show(Result result) {
        units = result.units();
        parts = result.parts();
        whole = true;
        soFar = Optional.empty();
        JobState before = job().orElseThrow().state();
        boolean another = !before.proof().sha256().isEmpty() && !before.proof().sha256().equals(result.proof().sha256());
        if (another) {
            comparison = Optional.of(ProofComparison.of(before.seen(), Snapshot.of(result), before.marks()));
            old = OldRevision.of(before.seen(), comparison.get());
        }
        job().orElseThrow().show(result); // comes back as a change of the job
        if (another) {
            setWork(work.withRemark("Another revision of the proof: " + RevisionList.of(this).summary()));
        }
    }

    /** The result as it is looked at; absent until the first check has ended. */
    public Optional<ReviewedResult> reviewed() {
        return findings.reviewed();
    }

    /** The result of the last whole run, with what the present run has found so far. */
    public Optional<Result> result() {
        return whole ? reviewed().map(ReviewedResult::result) : Optional.empty();
    }

    /** What was found, as it is listed and chosen from. */
    public Findings findings() {
        return findings;
    }

    /** What became of the revision that the job was last seen with; absent when the proof is the same. */
    public Optional<ProofComparison> comparison() {
        return comparison;
    }

    /** The revision before, where it lies best on this one; empty when the proof is the same. */
    public OldRevision old() {
        return old;
    }

    // How it is shown ---------------------------------------------------------------------------------------------------------

    public Shown shown() {
        return shown;
    }

    /** Asks to look at a place of the proof, mm. */
    public void aimAt(Envelope placeMm) {
        aim = new Envelope(placeMm);
        tell(Topic.AIM);
    }

    /** The place that was last asked for, mm. */
    public Envelope aim() {
        return new Envelope(aim);
    }

    public WorkState work() {
        return work;
    }

    /** How the work in the background stands. */
    public void setWork(WorkState value) {
        work = value;
        tell(Topic.WORK);
    }

    /** How large a pixel is. */
    public Screen screen() {
        return screen;
    }

    public void setScreen(Screen value) {
        screen = value;
        tell(Topic.LOOK);
    }

    public boolean isDark() {
        return dark;
    }

    public void setDark(boolean value) {
        if (dark != value) {
            dark = value;
            tell(Topic.LOOK);
        }
    }
}
