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
import kerfglow.desktop.scene.Marker;
import kerfglow.desktop.scene.Scene;
import kerfglow.host.Result;

/**
 * What lies on the desk: the proof, what was found, what is chosen. The panes show it and change it; none knows another. It knows no
 * widget. Touched from the window's thread alone.
 */
public final class Desk {
    /** A finding and one of its places. */
    public record Choice(Result.ReportedFinding finding, int place) {
        /** The place itself; absent when the finding concerns the whole proof. */
        public Optional<Result.Place> at() {
            return place < finding.places().size() ? Optional.of(finding.places().get(place)) : Optional.empty();
        }
    }

    private final Map<Topic, List<Runnable>> listeners = new EnumMap<>(Topic.class);
    private final Shown shown = new Shown(() -> tell(Topic.SHOWN));
    private final Listing listing = new Listing(() -> tell(Topic.LISTED));
    private Path file;
    private Proof proof;
    private List<Part> parts = List.of();
    private Scene scene = Scene.EMPTY;
    private Result result;
    private List<Result.ReportedFinding> findings = List.of();
    private List<Result.CheckRow> checks = List.of();
    private UnitSystem units = UnitSystem.METRIC;
    private Choice choice;
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

    /** Which file lies on the desk. */
    public Optional<Path> file() {
        return Optional.ofNullable(file);
    }

    public Optional<Proof> proof() {
        return Optional.ofNullable(proof);
    }

    public List<Part> parts() {
        return parts;
    }

    public Scene scene() {
        return scene;
    }

    /** The last complete run. */
    public Optional<Result> result() {
        return Optional.ofNullable(result);
    }

    /** What was found so far, stations in the order of the floor, the most severe first in each. */
    public List<Result.ReportedFinding> findings() {
        return findings;
    }

    /** How the checks ended that have ended so far. */
    public List<Result.CheckRow> checks() {
        return checks;
    }

    /** Units that lengths are shown in. */
    public UnitSystem units() {
        return units;
    }

    public Optional<Choice> choice() {
        return Optional.ofNullable(choice);
    }

    public Shown shown() {
        return shown;
    }

    public Listing listing() {
        return listing;
    }

    public WorkState work() {
        return work;
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

    /** Puts a proof on the desk; what was found in the last one goes. */
    public void put(Path newFile, Proof newProof, List<Part> newParts, Scene newScene, UnitSystem newUnits) {
        boolean another = !newFile.equals(file);
        file = newFile;
        proof = newProof;
        parts = List.copyOf(newParts);
        scene = newScene;
        units = newUnits;
        checks = List.of();
        if (another) {
            result = null;
            findings = List.of();
            choice = null;
            shown.reset();
        }
        tell(Topic.PROOF);
        if (another) {
            tell(Topic.FINDINGS);
            tell(Topic.CHOICE);
        }
    }

    /** Shows what a run found; a chosen finding that is still there stays chosen. */
    public void show(Result newResult) {
        result = newResult;
        parts = newResult.parts();
        checks = newResult.checks();
        units = newResult.units();
        take(newResult.findings());
    }

    /** Shows what is found so far, while other checks still run. In a run over the same proof the findings of the last run stay until all is known. */
    public void showSoFar(Result.CheckRow ended, List<Result.ReportedFinding> found) {
        List<Result.CheckRow> more = new ArrayList<>(checks);
        more.add(ended);
        checks = List.copyOf(more);
        if (result == null) {
            take(found);
        }
    }

    private void take(List<Result.ReportedFinding> found) {
        findings = Listing.floorOrder(found);
        Optional<Choice> before = choice();
        choice = before.flatMap(old -> find(old.finding().id()).map(finding -> new Choice(finding, Math.min(old.place(), Math.max(0, finding.places().size() - 1)))))
                .orElse(null);
        tell(Topic.FINDINGS);
        if (!before.equals(choice())) {
            tell(Topic.CHOICE);
        }
    }

    private Optional<Result.ReportedFinding> find(String id) {
        return findings.stream().filter(finding -> finding.id().equals(id)).findFirst();
    }

    /** Chooses a place of a finding. */
    public void choose(String id, int place) {
        find(id).ifPresent(finding -> {
            Choice next = new Choice(finding, place);
            if (!next.equals(choice)) {
                choice = next;
                tell(Topic.CHOICE);
            }
        });
    }

    /** Chooses nothing. */
    public void chooseNone() {
        if (choice != null) {
            choice = null;
            tell(Topic.CHOICE);
        }
    }

    /** The findings that the list shows, in its order. */
    public List<Result.ReportedFinding> listed() {
        return listing.of(findings);
    }

    /** The number of a finding in the whole list, from 1; it does not change with the filter. */
    public int number(Result.ReportedFinding finding) {
        return findings.indexOf(finding) + 1;
    }

    /** Goes to the next (1) or the one before (-1) among the listed findings; from the last to the first. */
    public void step(int by) {
        List<Result.ReportedFinding> listed = listed();
        if (!listed.isEmpty()) {
            int at = choice == null ? by > 0 ? -1 : 0 : listed.indexOf(choice.finding());
            choose(listed.get(Math.floorMod(at + by, listed.size())).id(), 0);
        }
    }

    /** Goes to the next (1) or the one before (-1) of the chosen finding's places. */
    public void stepPlace(int by) {
        if (choice != null && choice.finding().places().size() > 1) {
            choose(choice.finding().id(), Math.floorMod(choice.place() + by, choice.finding().places().size()));
        }
    }

    /** One marker for each place of the listed findings. */
    public List<Marker> markers() {
        List<Marker> markers = new ArrayList<>();
        for (Result.ReportedFinding finding : listed()) {
            int number = number(finding);
            for (int i = 0; i < finding.places().size(); i++) {
                markers.add(new Marker(finding.id(), i, number, finding.severity(), finding.places().get(i).at()));
            }
        }
        return markers;
    }

    /** How the work in the background stands. */
    public void setWork(WorkState value) {
        work = value;
        tell(Topic.WORK);
    }
}
