// SPDX-License-Identifier: Apache-2.0
package kerfglow.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.util.List;
import java.util.Set;
import kerfglow.api.PlacedModule;
import kerfglow.host.Result;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Envelope;

class SelectionTest {
    private static final Selection.Thing MARK = new Selection.Thing(Selection.Kind.MARK, "m");
    private static final Selection.Thing FINDING = new Selection.Thing(Selection.Kind.FINDING, "f");
    private static final Selection.Thing PART = new Selection.Thing(Selection.Kind.PART, "p1");

    @Test
    void a_click_takes_the_uppermost_and_a_click_again_goes_one_deeper() {
        List<Selection.Thing> under = List.of(MARK, FINDING, PART);
        Selection first = Selection.NONE.clicked(under, false);
        assertEquals(List.of(MARK), first.things());
        Selection second = first.clicked(under, false);
        assertEquals(List.of(FINDING), second.things());
        assertEquals(List.of(MARK), second.clicked(under, false).clicked(under, false).things(), "and round again");
        assertEquals(List.of(PART), second.clicked(List.of(PART), false).things());
        assertEquals(Selection.NONE, second.clicked(List.of(), false));
    }

    @Test
    void with_the_key_for_more_things_join_and_leave() {
        Selection two = Selection.NONE.clicked(List.of(PART), true).clicked(List.of(MARK, PART), true);
        assertEquals(List.of(PART, MARK), two.things());
        assertEquals(MARK, two.lead().orElseThrow());
        assertEquals(List.of(PART), two.clicked(List.of(MARK), true).things());
        assertEquals(two, two.clicked(List.of(), true));
        assertEquals(List.of(PART, MARK, FINDING), two.framed(List.of(FINDING, PART), true).things());
        assertEquals(List.of(FINDING), two.framed(List.of(FINDING), false).things());
    }

    @Test
    void what_is_gone_is_not_selected_any_more() {
        Selection all = new Selection(List.of(PART, MARK));
        assertEquals(List.of(PART), all.kept(Set.of(PART, FINDING)).things());
        assertFalse(all.kept(Set.of()).lead().isPresent());
    }

    @Test
    void under_the_pointer_marks_lie_above_findings_lights_and_parts() {
        Result result = Samples.result("one", Samples.letters(), List.of(Samples.finding("f", Samples.GAP, 2, 3, "LINESTRING (5 50, 15 50)")));
        Job job = new Job(Samples.state(), Samples.CLOCK);
        String mark = job.mark(new MarkShape.Arrow(new PointMm(50, 50), new PointMm(10, 50)), "", "Rhea");
        String ring = job.mark(new MarkShape.Ring(new PointMm(10, 50), 9, 9), "", "Rhea");
        job.changeSheet("Place light", sheet -> SheetEdits.withModule(sheet, new PlacedModule(10, 52, 0)));
        Under under = new Under(job.state(), result);
        assertEquals(List.of(new Selection.Thing(Selection.Kind.MARK, mark), FINDING, new Selection.Thing(Selection.Kind.LIGHT, "0"), PART), under.at(new PointMm(10, 51), 1.5));
        assertEquals(List.of(new Selection.Thing(Selection.Kind.MARK, ring), PART), under.at(new PointMm(10, 59), 0.5), "a ring is taken by its line");
        assertEquals(List.of(), under.at(new PointMm(-50, -50), 1));
        assertEquals(List.of(new Selection.Thing(Selection.Kind.PART, "p3")), under.inside(new Envelope(199, 300, -1, 101)));
        assertEquals(7, under.all().size());
    }
}
