// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.desk;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import kerfglow.api.UnitSystem;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Proof;
import kerfglow.desktop.scene.Marker;
import kerfglow.desktop.scene.OldRevision;
import kerfglow.desktop.scene.Scene;
import kerfglow.host.Result;
import kerfglow.job.FindingFilter;
import kerfglow.job.FindingItem;
import kerfglow.job.FindingList;
import kerfglow.job.FindingOrder;
import kerfglow.job.Job;
import kerfglow.job.JobFile;
import kerfglow.job.JobState;
import kerfglow.job.MarkMerge;
import kerfglow.job.ProofComparison;
import kerfglow.job.ReviewedResult;
import kerfglow.job.Snapshot;
import kerfglow.job.Station;
import org.locationtech.jts.geom.Envelope;

/**
 * What lies on the desk: the job with its proof, what was found, what is chosen and shown. The panes show it and change it; none knows
 * another. It knows no widget. Touched from the window's thread alone.
 */
public final class Desk {
    private final Map<Topic, List<Runnable>> listeners = new EnumMap<>(Topic.class);
    private final Shown shown = new Shown(() -> tell(Topic.SHOWN));
    private Optional<Job> job = Optional.empty();
    private Optional<JobFile> jobFile = Optional.empty();
    private Optional<Path> proofFile = Optional.empty();
    private String proofName = "";
    private Optional<Proof> proof = Optional.empty();
    private List<Part> parts = List.of();
    private Scene scene = Scene.EMPTY;
    private Optional<ReviewedResult> reviewed = Optional.empty();
    private boolean whole;
    private Optional<ProofComparison> comparison = Optional.empty();
    private OldRevision old = OldRevision.NONE;
    private Envelope aim = new Envelope();
    private Optional<Listing> listing = Optional.empty();
    private FindingFilter filter = FindingFilter.ALL;
    private FindingOrder order = FindingOrder.SEVERITY;
    private UnitSystem units = UnitSystem.METRIC;
    private Optional<Choice> choice = Optional.empty();
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
    public void begin(Path proof, JobFile file, JobState state) {
        putAway();
        Job begun = file.unsaved().isPresent() ? new Job(state, file.contents().state(), Clock.systemUTC()) : new Job(state, Clock.systemUTC());
        begun.listen(this::jobChanged);
        job = Optional.of(begun);
        jobFile = Optional.of(file);
        proofFile = Optional.of(proof);
        proofName = state.proof().file();
        this.proof = Optional.empty();
        parts = List.of();
        scene = Scene.EMPTY;
        reviewed = Optional.empty();
        whole = false;
        comparison = Optional.empty();
        old = OldRevision.NONE;
        choice = Optional.empty();
        filter = FindingFilter.ALL;
        listing = Optional.empty();
        shown.reset();
        for (Topic topic : List.of(Topic.PROOF, Topic.FINDINGS, Topic.CHOICE, Topic.JOB)) {
            tell(topic);
        }
    }

    /** Ends autosave and gives the job back to others; what is not saved stays in the side file. */
    public void putAway() {
        jobFile.ifPresent(file -> {
            try {
                file.close();
            } catch (IOException unwritable) {
                setWork(WorkState.failed(file.file().getFileName() + ": what was not saved could not be kept (" + unwritable.getMessage() + ")"));
            }
        });
        jobFile = Optional.empty();
    }

    private void jobChanged() {
        Job current = job.orElseThrow();
        jobFile.filter(file -> !current.state().proof().file().equals(proofName)).ifPresent(file -> {
            proofName = current.state().proof().file();
            proofFile = Optional.of(JobFile.proofFile(file.file(), current.state()));
        });
        jobFile.ifPresent(file -> {
            if (current.isChanged()) {
                file.changed(current.state());
            }
        });
        if (whole) {
            take(current.reviewed());
        }
        tell(Topic.JOB);
    }

    public Optional<Job> job() {
        return job;
    }

    public Optional<JobFile> jobFile() {
        return jobFile;
    }

    /**
     * Saves the job.
     *
     * @param overwrite true to write over a file that somebody else changed
     * @throws IOException with a message for people when it cannot be saved
     */
    public void save(boolean overwrite) throws IOException {
        if (job.isPresent() && jobFile.isPresent()) {
            jobFile.get().save(job.get().state(), overwrite);
            job.get().markSaved();
        }
    }

    /** Takes another file for the job from now on, for instance to save a copy. */
    public void keepIn(JobFile file) {
        putAway();
        jobFile = Optional.of(file);
        tell(Topic.JOB);
    }

    /**
     * Takes in the marks of a second reviewer's job file, which is only read.
     *
     * @return what came
     * @throws IOException with a message for people when it cannot be read
     */
    public MarkMerge.Report merge(Path file) throws IOException {
        JobFile.Contents contents = JobFile.read(file);
        if (contents.isNew()) {
            throw new IOException(file + ": there is no such file");
        }
        return job.orElseThrow(() -> new IOException("open the proof first that the marks are about")).merge(contents.state());
    }

    // The proof and what was found --------------------------------------------------------------------------------------------

    /** The proof's file. */
    public Optional<Path> proofFile() {
        return proofFile;
    }

    public Optional<Proof> proof() {
        return proof;
    }

    public List<Part> parts() {
        return parts;
    }

    public Scene scene() {
        return scene;
    }

    /** Puts the proof on the desk as it was read; the findings of the run before stay until the new ones are known. */
    public void put(Proof newProof, List<Part> newParts, Scene newScene, UnitSystem newUnits) {
        proof = Optional.of(newProof);
        parts = List.copyOf(newParts);
        scene = newScene;
        units = newUnits;
        tell(Topic.PROOF);
    }

    /** Shows what is found so far, while other checks still run; not in the place of a whole result. */
    public void showSoFar(Result partial) {
        if (!whole) {
            take(Optional.of(ReviewedResult.undecided(partial)));
        }
    }

    /** Shows a whole result; decisions made on an earlier revision of the proof are carried over, and the two are compared. */
    public void show(Result result) {
        units = result.units();
        parts = result.parts();
        whole = true;
        JobState before = job.orElseThrow().state();
        boolean another = !before.proof().sha256().isEmpty() && !before.proof().sha256().equals(result.proof().sha256());
        if (another) {
            comparison = Optional.of(ProofComparison.of(before.seen(), Snapshot.of(result), before.marks()));
            old = OldRevision.of(before.seen(), comparison.get());
        }
        job.orElseThrow().show(result); // comes back as a change of the job
        if (another) {
            setWork(work.withRemark("Another revision of the proof: " + RevisionList.of(this).summary()));
        }
    }

    private void take(Optional<ReviewedResult> next) {
        reviewed = next;
        listing = Optional.empty();
        Optional<Choice> before = choice;
        choice = before.flatMap(old -> item(old.finding().id()).map(item -> new Choice(item, Math.min(old.place(), Math.max(0, item.finding().places().size() - 1)))));
        tell(Topic.FINDINGS);
        if (!before.equals(choice)) {
            tell(Topic.CHOICE);
        }
    }

    /** The result as it is looked at; absent until the first check has ended. */
    public Optional<ReviewedResult> reviewed() {
        return reviewed;
    }

    /** The result of the last whole run. */
    public Optional<Result> result() {
        return whole ? reviewed.map(ReviewedResult::result) : Optional.empty();
    }

    /** What became of the revision that the job was last seen with; absent when the proof is the same. */
    public Optional<ProofComparison> comparison() {
        return comparison;
    }

    /** The revision before, where it lies best on this one; empty when the proof is the same. */
    public OldRevision old() {
        return old;
    }

    /** Takes another file for the proof of this job; it is read and checked, and compared with the one before. A step that can be taken back. */
    public void revise(Path file) {
        job.ifPresent(current -> jobFile.ifPresent(kept -> current.takeRevision(JobFile.proofName(kept.file(), file.toAbsolutePath().normalize()))));
    }

    /** Units that lengths are shown in. */
    public UnitSystem units() {
        return units;
    }

    // The list ----------------------------------------------------------------------------------------------------------------

    public FindingFilter filter() {
        return filter;
    }

    public void setFilter(FindingFilter value) {
        if (!filter.equals(value)) {
            filter = value;
            listing = Optional.empty();
            tell(Topic.LISTED);
        }
    }

    /** Ids of the checks that found something, as their findings stand. */
    public List<String> checksThatFound() {
        return reviewed.map(each -> FindingList.of(each, FindingFilter.ALL, FindingOrder.SEVERITY).items().stream().map(FindingItem::check).distinct().toList()).orElse(List.of());
    }

    /** Ids of the parts that findings concern, in the order of the proof. */
    public List<String> partsWithFindings() {
        Set<String> concerned = reviewed.stream().flatMap(each -> each.result().findings().stream()).flatMap(finding -> finding.parts().stream()).collect(Collectors.toSet());
        return parts.stream().map(Part::id).filter(concerned::contains).toList();
    }

    public FindingOrder order() {
        return order;
    }

    public void setOrder(FindingOrder value) {
        order = value;
        listing = Optional.empty();
        tell(Topic.LISTED);
    }

    /** Every station of the floor with what it has to expect. */
    public List<Station.Outlook> outlooks() {
        return listing().outlooks();
    }

    /** The listed findings of one station, in the order of the list. */
    public List<FindingItem> listed(Station.Outlook outlook) {
        return listing().of(outlook);
    }

    /** The listed findings: station by station, as they stand in the list. */
    public List<FindingItem> listed() {
        return listing().all();
    }

    /** How many the filter hides. */
    public int hidden() {
        return listing().hidden();
    }

    private Listing listing() {
        Listing current = listing.orElseGet(() -> new Listing(reviewed, filter, order));
        listing = Optional.of(current);
        return current;
    }

    private Optional<FindingItem> item(String id) {
        return listing().item(id);
    }

    /** One marker for each place of the listed findings. */
    public List<Marker> markers() {
        List<Marker> markers = new ArrayList<>();
        for (FindingItem item : listed()) {
            for (int i = 0; i < item.finding().places().size(); i++) {
                markers.add(new Marker(item.finding().id(), i, item.number(), item.finding().severity(), item.finding().places().get(i).at()));
            }
        }
        return markers;
    }

    // The choice --------------------------------------------------------------------------------------------------------------

    public Optional<Choice> choice() {
        return choice;
    }

    /** Chooses a place of a finding. */
    public void choose(String id, int place) {
        choose(item(id).map(item -> new Choice(item, place)));
    }

    /** Chooses nothing. */
    public void chooseNone() {
        choose(Optional.empty());
    }

    private void choose(Optional<Choice> next) {
        if (!next.equals(choice)) {
            choice = next;
            tell(Topic.CHOICE);
        }
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

    /** Goes to the next (1) or the one before (-1) among the listed findings; from the last to the first. */
    public void step(int by) {
        List<FindingItem> listed = listed();
        if (!listed.isEmpty()) {
            List<String> ids = listed.stream().map(item -> item.finding().id()).toList();
            int at = choice.map(each -> ids.indexOf(each.finding().id())).orElse(by > 0 ? -1 : 0);
            choose(ids.get(Math.floorMod(at + by, ids.size())), 0);
        }
    }

    /** Goes to the next (1) or the one before (-1) of the chosen finding's places. */
    public void stepPlace(int by) {
        choice.filter(each -> each.finding().places().size() > 1)
                .ifPresent(each -> choose(each.finding().id(), Math.floorMod(each.place() + by, each.finding().places().size())));
    }

    // How it is shown ---------------------------------------------------------------------------------------------------------

    public Shown shown() {
        return shown;
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
