// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.desk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import kerfglow.api.Measure;
import kerfglow.api.UnitSystem;
import kerfglow.desktop.scene.OldRevision;
import kerfglow.job.Mark;
import kerfglow.job.MarkShape;
import kerfglow.job.PointMm;
import kerfglow.job.ProofComparison;
import kerfglow.job.SeenFinding;
import kerfglow.job.SeenPlace;
import kerfglow.job.Snapshot;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;

/** Two revisions drawn by hand: two letters stay, which holds the alignment, one is moved by 80 mm, one goes. */
class RevisionListTest {
    private static final Snapshot.Outline STAYS = outline("p1", 0, 0, 30, 100);
    private static final Snapshot.Outline STAYS_TOO = outline("p4", 400, 0, 500, 120);
    private static final Snapshot BEFORE = new Snapshot(List.of(STAYS, STAYS_TOO, outline("p2", 100, 0, 160, 90), outline("p3", 300, 0, 340, 40)),
            List.of(finding("a", "router.narrow-gap", 10), finding("b", "router.thin-stroke", 310)), 0);
    private static final Snapshot AFTER = new Snapshot(List.of(STAYS, STAYS_TOO, outline("p2", 180, 0, 240, 90)),
            List.of(finding("c", "router.narrow-gap", 10), finding("d", "router.inside-corner", 150)), 0);
    private static final ProofComparison COMPARISON = ProofComparison.of(BEFORE, AFTER, List.of());

    private static Geometry box(double left, double top, double right, double bottom) {
        return new GeometryFactory().toGeometry(new Envelope(left, right, top, bottom));
    }

    private static Snapshot.Outline outline(String part, double left, double top, double right, double bottom) {
        return new Snapshot.Outline(part, "face", "Letters", box(left, top, right, bottom));
    }

    private static SeenFinding finding(String id, String rule, double x) {
        return new SeenFinding(id, rule, rule.equals("router.thin-stroke") ? "A stroke is 1 mm wide" : "", new TreeSet<>(List.of("face")), List.of(), List.of("e1"), Optional.of(Measure.mm(1)), Optional.of(Measure.mm(3)),
                List.of(new SeenPlace(new PointMm(x, 10), box(x - 1, 9, x + 1, 11))));
    }

    private static RevisionList list() {
        return RevisionList.of(Optional.of(COMPARISON), Optional.empty(), List.of(), UnitSystem.METRIC);
    }

    @Test
    void each_finding_stands_under_what_became_of_it_with_its_place() {
        assertEquals(List.of("c"), list().lines(RevisionList.Kind.SAME).stream().map(line -> line.finding().orElseThrow()).toList());
        assertEquals(List.of("d"), list().lines(RevisionList.Kind.NEW).stream().map(line -> line.finding().orElseThrow()).toList());
        RevisionList.Line gone = list().lines(RevisionList.Kind.GONE).get(0);
        assertTrue(gone.finding().isEmpty(), "it cannot be chosen any more");
        assertEquals("A stroke is 1 mm wide, was at 310 mm , 10 mm", gone.text());
        assertEquals(310, gone.where().orElseThrow().centre().x, 1e-9);
        assertTrue(gone.before(), "it is seen on the revision before");
        OldRevision old = OldRevision.of(BEFORE, COMPARISON);
        assertEquals(List.of(gone.where().orElseThrow()), old.gone());
        Envelope page = new Envelope(0, 600, 0, 200);
        assertEquals(310 + old.besides(page).x, old.seenAt(gone.where().get(), true, page).centre().x, 1e-9);
        assertEquals(10 + old.besides(page).y, old.seenAt(gone.where().get(), true, page).centre().y, 1e-9);
    }

    @Test
    void outlines_that_moved_or_went_are_told_with_how_far() {
        assertEquals(List.of("face p2 moved by 80 mm"), texts(list(), RevisionList.Kind.MOVED));
        assertEquals(List.of("face p3"), texts(list(), RevisionList.Kind.WENT));
        assertEquals("Outlines: 1 moved, 1 gone; findings: 1 new, 1 gone, 1 the same; marks to be looked at again: 0.", list().summary());
    }

    private static List<String> texts(RevisionList list, RevisionList.Kind kind) {
        return list.lines(kind).stream().map(RevisionList.Line::text).toList();
    }

    @Test
    void an_outline_that_moved_a_little_is_told_apart_from_one_of_another_shape() {
        Snapshot after = new Snapshot(List.of(STAYS, STAYS_TOO, outline("p2", 103, -4, 163, 86), outline("p3", 300, 0, 342, 40)), List.of(), 0);
        RevisionList list = RevisionList.of(Optional.of(ProofComparison.of(BEFORE, after, List.of())), Optional.empty(), List.of(), UnitSystem.METRIC);
        assertEquals(List.of("face p2 moved by 5 mm"), texts(list, RevisionList.Kind.MOVED), "3 mm to the right and 4 mm up");
        assertEquals(List.of("face p3, outlines apart by up to 2 mm"), texts(list, RevisionList.Kind.RESHAPED));
    }

    @Test
    void a_mark_that_does_not_stand_is_listed_also_without_a_revision_before() {
        Mark mark = Mark.of(new MarkShape.Note(new PointMm(7, 9)), "wider?", "M. Reviewer", Instant.EPOCH, "another");
        RevisionList list = RevisionList.of(Optional.empty(), Optional.empty(), List.of(mark), UnitSystem.METRIC);
        RevisionList.Line line = list.lines(RevisionList.Kind.MARK).get(0);
        assertEquals("note by M. Reviewer: wider?", line.text());
        assertEquals(new Coordinate(7, 9), line.where().orElseThrow().centre());
        assertEquals(mark.id(), line.mark().orElseThrow());
    }

    @Test
    void the_revision_before_lies_over_the_new_one_or_beside_it_without_meeting_it() {
        OldRevision old = OldRevision.of(BEFORE, COMPARISON);
        assertEquals(List.of(false, false, true, true), old.outlines().stream().map(OldRevision.Line::changed).toList());
        assertEquals(new Envelope(0, 500, 0, 120), old.extent());
        for (Envelope page : List.of(new Envelope(0, 600, 0, 200), new Envelope(0, 350, 0, 900), new Envelope(-20, 100, 30, 60))) {
            Envelope shifted = old.extent();
            Coordinate by = old.besides(page);
            Envelope beside = new Envelope(shifted);
            beside.translate(by.x, by.y);
            assertTrue(!beside.intersects(page), "page " + page);
            Envelope both = old.both(page);
            assertTrue(both.contains(beside) && both.contains(page));
        }
        assertEquals(new Envelope(0, 5, 0, 5), OldRevision.NONE.both(new Envelope(0, 5, 0, 5)));
    }
}
