// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.desk;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import kerfglow.desktop.scene.Marker;
import kerfglow.job.FindingFilter;
import kerfglow.job.FindingItem;
import kerfglow.job.FindingList;
import kerfglow.job.FindingOrder;
import kerfglow.job.ReviewedResult;
import kerfglow.job.Station;

/** The list of what was found: which findings it shows in which order, and which of them is chosen. */
public final class Findings {
    private final Consumer<Topic> tell;
    private Optional<ReviewedResult> reviewed = Optional.empty();
    private Optional<Listing> listing = Optional.empty();
    private FindingFilter filter = FindingFilter.ALL;
    private FindingOrder order = FindingOrder.SEVERITY;
    private Optional<Choice> choice = Optional.empty();

    Findings(Consumer<Topic> tell) {
        this.tell = tell;
    }

    /** Another job: nothing is found yet, nothing is hidden. */
    void reset() {
        reviewed = Optional.empty();
        listing = Optional.empty();
        filter = FindingFilter.ALL;
        choice = Optional.empty();
    }

    /** Lists another result; the chosen finding stays chosen while it is there. */
    void take(Optional<ReviewedResult> next) {
        boolean same = next.isPresent() && reviewed.filter(each -> each.decidesAs(next.get())).isPresent();
        reviewed = next;
        if (same) { // something else of the job was changed
            return;
        }
        listing = Optional.empty();
        Optional<Choice> before = choice;
        choice = before.flatMap(old -> item(old.finding().id()).map(item -> new Choice(item, Math.min(old.place(), Math.max(0, item.finding().places().size() - 1)))));
        tell.accept(Topic.FINDINGS);
        if (!before.equals(choice)) {
            tell.accept(Topic.CHOICE);
        }
    }

    Optional<ReviewedResult> reviewed() {
        return reviewed;
    }

    // What is listed ----------------------------------------------------------------------------------------------------------

    public FindingFilter filter() {
        return filter;
    }

    public void setFilter(FindingFilter value) {
        if (!filter.equals(value)) {
            filter = value;
            listing = Optional.empty();
            tell.accept(Topic.LISTED);
        }
    }

    public FindingOrder order() {
        return order;
    }

    public void setOrder(FindingOrder value) {
        order = value;
        listing = Optional.empty();
        tell.accept(Topic.LISTED);
    }

    /** Ids of the checks that found something, as their findings stand. */
    public List<String> checks() {
        return reviewed.map(each -> FindingList.of(each, FindingFilter.ALL, FindingOrder.SEVERITY).items().stream().map(FindingItem::check).distinct().toList()).orElse(List.of());
    }

    /** Ids of the parts that findings concern, in the order of the proof. */
    public List<String> parts() {
        Set<String> concerned = reviewed.stream().flatMap(each -> each.result().findings().stream()).flatMap(finding -> finding.parts().stream()).collect(Collectors.toSet());
        return reviewed.stream().flatMap(each -> each.result().parts().stream()).map(part -> part.id()).filter(concerned::contains).toList();
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

    // What is chosen ----------------------------------------------------------------------------------------------------------

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
            tell.accept(Topic.CHOICE);
        }
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
}
