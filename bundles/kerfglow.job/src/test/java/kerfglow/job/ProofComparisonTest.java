// SPDX-License-Identifier: Apache-2.0
package kerfglow.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import kerfglow.host.Result;
import kerfglow.testkit.CheckTester;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.util.AffineTransformation;

/** Areas and distances of the edits are plain arithmetic. */
class ProofComparisonTest {
    private static final String SLOT = "POLYGON ((10 40, 12 40, 12 60, 10 60, 10 40))";

    private static Mark mark(MarkShape shape) {
        return Mark.of(shape, "", "Rhea", Samples.NOON, Samples.digest("old"));
    }

    private static Result result(String revision, List<? extends Geometry> shapes, Result.ReportedFinding... findings) {
        return Samples.result(revision, shapes, List.of(findings));
    }

    @Test
    void nothing_changed_in_a_proof_that_was_only_shifted_and_turned() {
        AffineTransformation motion = AffineTransformation.rotationInstance(0.3).translate(100, 50);
        ProofComparison comparison = ProofComparison.of(result("old", Samples.letters()), result("new", Samples.letters().stream().map(motion::transform).toList()),
                List.of(mark(new MarkShape.Note(new PointMm(10, 50)))));
        assertEquals(List.of(), comparison.outlines());
        assertTrue(comparison.marks().get(0).stands());
        PointMm at = ((MarkShape.Note) comparison.marks().get(0).mark().shape()).at();
        assertEquals(100 + 10 * Math.cos(0.3) - 50 * Math.sin(0.3), at.xMm(), 0.01);
        assertEquals(50 + 10 * Math.sin(0.3) + 50 * Math.cos(0.3), at.yMm(), 0.01);
    }

    @Test
    void a_changed_outline_says_how_much_how_far_and_where() {
        List<Geometry> edited = new ArrayList<>(Samples.letters());
        edited.set(0, CheckTester.wkt("POLYGON ((0 0, 20 0, 20 100, 5 100, 5 98, 0 98, 0 0))"));
        ProofComparison comparison = ProofComparison.of(result("old", Samples.letters()), result("new", edited), List.of(
                mark(new MarkShape.Note(new PointMm(3, 99))), mark(new MarkShape.Ring(new PointMm(110, 50), 20, 20)), mark(new MarkShape.Box(new PointMm(-10, 50), 40, 60))));
        assertTrue(comparison.liesAsItWas());
        assertEquals(1, comparison.outlines().size());
        OutlineChange change = comparison.outlines().get(0);
        assertEquals(OutlineChange.Kind.CHANGED, change.kind());
        assertEquals("p1", change.after().orElseThrow());
        assertEquals(10, change.areaMm2(), 1e-9);
        assertEquals(2, change.greatestMm(), 1e-9, "the corner (0, 100) is 2 mm from the new outline");
        assertTrue(change.where().equalsTopo(CheckTester.wkt("POLYGON ((0 98, 5 98, 5 100, 0 100, 0 98))")));
        assertEquals(List.of(false, true, false), comparison.marks().stream().map(ProofComparison.MarkStand::stands).toList());
    }

    @Test
    void a_mark_far_from_every_outline_stands_while_what_it_lies_on_is_there() {
        List<Mark> marks = List.of(mark(new MarkShape.Note(new PointMm(10, 50))), mark(new MarkShape.Note(new PointMm(40, 50))), mark(new MarkShape.Note(new PointMm(300, 50))));
        List<Geometry> edited = new ArrayList<>(Samples.letters().subList(1, 3));
        edited.add(CheckTester.wkt("POLYGON ((280 0, 340 0, 340 90, 280 90, 280 0))"));
        ProofComparison comparison = ProofComparison.of(result("old", Samples.letters()), result("new", edited), marks);
        assertTrue(comparison.liesAsItWas());
        assertEquals(List.of(false, true, false), comparison.marks().stream().map(ProofComparison.MarkStand::stands).toList(),
                "the letter below the first is gone, the ground below the second is bare as before, there is a letter below the third now");
    }

    @Test
    void added_removed_and_moved_outlines_are_told_apart() {
        List<Geometry> edited = List.of(Samples.letters().get(0), Samples.letters().get(2), AffineTransformation.translationInstance(0, 300).transform(Samples.letters().get(1)),
                CheckTester.wkt("POLYGON ((500 0, 520 0, 520 20, 500 20, 500 0))"));
        List<Geometry> old = new ArrayList<>(Samples.letters());
        old.add(CheckTester.wkt("POLYGON ((700 0, 720 0, 710 20, 700 0))"));
        ProofComparison comparison = ProofComparison.of(result("old", old), result("new", edited), List.of());
        assertEquals(Set.of(OutlineChange.Kind.MOVED, OutlineChange.Kind.ADDED, OutlineChange.Kind.REMOVED),
                comparison.outlines().stream().map(OutlineChange::kind).collect(Collectors.toSet()));
        assertEquals(3, comparison.outlines().size());
        OutlineChange moved = comparison.outlines().stream().filter(each -> each.kind() == OutlineChange.Kind.MOVED).findFirst().orElseThrow();
        assertEquals("p2", moved.before().orElseThrow());
        assertEquals(300, moved.greatestMm(), 1e-6);
    }

    @Test
    void findings_are_gone_new_or_the_same() {
        AffineTransformation motion = AffineTransformation.translationInstance(1000, 0);
        ProofComparison comparison = ProofComparison.of(
                result("old", Samples.letters(), Samples.finding("a", Samples.GAP, 2, 3, SLOT), Samples.finding("b", Samples.GAP, 2, 3, "POINT (100 50)")),
                result("new", Samples.letters().stream().map(motion::transform).toList(),
                        Samples.finding("c", Samples.GAP, 2, 3, List.of(AffineTransformation.translationInstance(1000, 4.9).transform(CheckTester.wkt(SLOT)))),
                        Samples.finding("d", Samples.THIN, 2, 3, "POINT (1100 50)")),
                List.of());
        assertEquals(List.of("c"), ids(comparison.findings(ProofComparison.FindingChange.Kind.SAME)));
        assertEquals("a", comparison.findings(ProofComparison.FindingChange.Kind.SAME).get(0).before().orElseThrow().id());
        assertEquals(List.of("d"), ids(comparison.findings(ProofComparison.FindingChange.Kind.NEW)), "another rule at the same place is another finding");
        assertEquals("b", comparison.findings(ProofComparison.FindingChange.Kind.GONE).get(0).before().orElseThrow().id());
    }

    private static List<String> ids(List<ProofComparison.FindingChange> changes) {
        return changes.stream().map(change -> change.after().orElseThrow().id()).toList();
    }
}
