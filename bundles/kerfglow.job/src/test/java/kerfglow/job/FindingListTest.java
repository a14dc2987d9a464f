// SPDX-License-Identifier: Apache-2.0
package kerfglow.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import kerfglow.api.Severity;
import kerfglow.host.Result;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

class FindingListTest {
    private final Job job = new Job(Samples.state(), Samples.CLOCK);

    @BeforeEach
    void show() {
        job.show(Samples.result("one", Samples.letters(), List.of(Samples.finding("gap1", Samples.GAP, 2, 3, "POINT (90 10)"), Samples.finding("gap2", Samples.GAP, 1, 3, "POINT (10 10)"),
                Samples.finding("thin", Samples.THIN, 2.9, 3, "POINT (50 10)"), Samples.finding("used", Samples.NUMBER, 3, 3, List.of()))));
    }

    private FindingList list(FindingFilter filter, FindingOrder order) {
        return FindingList.of(job.reviewed().orElseThrow(), filter, order);
    }

    private List<String> ids(FindingFilter filter, FindingOrder order) {
        return list(filter, order).items().stream().map(item -> item.finding().id()).toList();
    }

    private static String id(Optional<FindingItem> item) {
        return item.orElseThrow().finding().id();
    }

    @Test
    void it_is_sorted_by_weight_place_check_or_shortfall() {
        assertEquals(List.of("gap1", "gap2", "thin", "used"), ids(FindingFilter.ALL, FindingOrder.SEVERITY));
        assertEquals(List.of("used", "gap2", "thin", "gap1"), ids(FindingFilter.ALL, FindingOrder.PLACE));
        assertEquals(List.of("gap1", "gap2", "thin", "used"), ids(FindingFilter.ALL, FindingOrder.CHECK));
        assertEquals(List.of("gap2", "gap1", "thin", "used"), ids(FindingFilter.ALL, FindingOrder.SHORTFALL));
    }

    @Test
    void it_is_filtered_and_says_how_many_are_hidden() {
        FindingList stops = list(FindingFilter.ALL.withSeverities(Set.of(Severity.STOP)), FindingOrder.SEVERITY);
        assertEquals(2, stops.items().size());
        assertEquals(2, stops.hidden());
        assertEquals(List.of("used"), ids(FindingFilter.ALL.withChecks(Set.of("sheet")), FindingOrder.SEVERITY));
        assertEquals(List.of(), ids(FindingFilter.ALL.withParts(Set.of("p2")), FindingOrder.SEVERITY));
        assertEquals(List.of("thin"), ids(FindingFilter.ALL.withWords("STROKE  found"), FindingOrder.SEVERITY));
        assertEquals(List.of("gap1", "gap2", "thin"), ids(FindingFilter.ALL.withDecided(FindingFilter.Decided.TO_DECIDE), FindingOrder.SEVERITY), "a number needs no decision");
    }

    @Test
    void walking_goes_round_and_goes_on_from_what_was_decided_just_now() {
        FindingFilter toDecide = FindingFilter.ALL.withDecided(FindingFilter.Decided.TO_DECIDE);
        assertEquals("gap1", id(list(toDecide, FindingOrder.SEVERITY).next(Optional.empty())));
        assertEquals("gap2", id(list(toDecide, FindingOrder.SEVERITY).next(Optional.of("gap1"))));
        assertEquals("gap1", id(list(toDecide, FindingOrder.SEVERITY).next(Optional.of("thin"))));
        assertEquals("thin", id(list(toDecide, FindingOrder.SEVERITY).previous(Optional.of("gap1"))));
        job.waive(list(toDecide, FindingOrder.SEVERITY).items().get(1).finding(), "why", "Rhea");
        assertEquals(List.of("gap1", "thin"), ids(toDecide, FindingOrder.SEVERITY));
        assertEquals("thin", id(list(toDecide, FindingOrder.SEVERITY).next(Optional.of("gap2"))));
        assertEquals("gap1", id(list(toDecide, FindingOrder.SEVERITY).previous(Optional.of("gap2"))));
        assertEquals(List.of("gap2"), ids(FindingFilter.ALL.withDecided(FindingFilter.Decided.WAIVED), FindingOrder.SEVERITY));
        assertEquals(Optional.empty(), list(FindingFilter.ALL.withWords("nowhere"), FindingOrder.SEVERITY).next(Optional.empty()));
    }

    private Station.Outlook outlook(Station station) {
        return Station.outlooks(job.reviewed().orElseThrow()).stream().filter(each -> each.station() == station).findFirst().orElseThrow();
    }

    @Test
    void stations_stand_in_the_order_of_the_floor_and_say_clear_or_how_many() {
        List<Station.Outlook> outlooks = Station.outlooks(job.reviewed().orElseThrow());
        assertEquals(List.of(Station.ROUTER, Station.BENDER, Station.ASSEMBLY, Station.LIGHT, Station.FILM, Station.WALL), outlooks.stream().map(Station.Outlook::station).toList());
        assertEquals("2 stop, 1 review", outlook(Station.ROUTER).words());
        assertEquals(3, outlook(Station.ROUTER).toDecide());
        assertEquals("not checked", outlook(Station.FILM).words());
        assertFalse(outlook(Station.FILM).isClear(), "what was not checked is not clear");
        job.reviewed().orElseThrow().result().findings().subList(0, 3).forEach(finding -> job.waive(finding, "why", "Rhea"));
        assertEquals("clear", outlook(Station.ROUTER).words());
        assertTrue(outlook(Station.ROUTER).isClear());
    }

    @Test
    void a_station_is_not_clear_while_a_check_of_it_did_not_measure() {
        Result result = Samples.with(job.reviewed().orElseThrow().result(), List.of(Samples.row("fit", Result.Status.NOT_MEASURED), Samples.row("trim", Result.Status.TIMED_OUT),
                Samples.row("acme.seams", Result.Status.PASSED)));
        job.show(result);
        assertEquals("fit not measured, trim timed out", outlook(Station.ASSEMBLY).words());
        assertFalse(outlook(Station.ASSEMBLY).isClear());
        job.waive(result.checks().get(1), "why", "Rhea");
        assertEquals("fit not measured", outlook(Station.ASSEMBLY).words());
        assertEquals("clear", outlook(Station.OTHER).words(), "a shop's own check");
    }
}
