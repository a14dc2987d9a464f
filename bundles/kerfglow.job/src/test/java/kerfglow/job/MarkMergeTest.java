// SPDX-License-Identifier: Apache-2.0
package kerfglow.job;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;

class MarkMergeTest {
    private static final Mark ORIGINAL = Mark.of(new MarkShape.Note(new PointMm(1, 1)), "first", "Rhea", Samples.NOON, "");

    private static MarkMerge.Report report(int added, int changed, int conflicts, int same) {
        return new MarkMerge.Report(added, changed, conflicts, same);
    }

    @Test
    void new_marks_come_and_equal_ones_stay() {
        Mark other = Mark.of(new MarkShape.Note(new PointMm(2, 2)), "other", "Odo", Samples.NOON, "");
        MarkMerge merge = MarkMerge.of(List.of(ORIGINAL), List.of(ORIGINAL, other));
        assertEquals(List.of(ORIGINAL, other), merge.marks());
        assertEquals(report(1, 0, 0, 1), merge.report());
    }

    @Test
    void a_version_that_came_of_the_other_takes_its_place_from_either_side() {
        Mark later = ORIGINAL.withText("second", Samples.NOON.plusSeconds(5));
        assertEquals(List.of(later), MarkMerge.of(List.of(ORIGINAL), List.of(later)).marks());
        assertEquals(report(0, 1, 0, 0), MarkMerge.of(List.of(ORIGINAL), List.of(later)).report());
        assertEquals(List.of(later), MarkMerge.of(List.of(later), List.of(ORIGINAL)).marks());
        assertEquals(report(0, 0, 0, 1), MarkMerge.of(List.of(later), List.of(ORIGINAL)).report());
    }

    @Test
    void a_clock_that_runs_behind_does_not_bring_the_older_version_back() {
        Mark later = ORIGINAL.withText("second", Samples.NOON.minusSeconds(100));
        assertEquals("second", MarkMerge.of(List.of(ORIGINAL), List.of(later)).marks().get(0).text());
    }

    @Test
    void of_two_changed_apart_the_newer_wins_and_the_older_is_kept_beside_it_once() {
        Mark ours = ORIGINAL.withText("ours", Samples.NOON.plusSeconds(5));
        Mark theirs = ORIGINAL.withText("theirs", Samples.NOON.plusSeconds(9));
        MarkMerge merge = MarkMerge.of(List.of(ours), List.of(theirs));
        assertEquals(List.of("theirs", "ours"), merge.marks().stream().map(Mark::text).toList());
        assertEquals(ORIGINAL.id(), merge.marks().get(0).id());
        assertEquals(report(0, 0, 1, 0), merge.report());
        assertEquals(merge.marks(), MarkMerge.of(merge.marks(), List.of(theirs)).marks(), "merging again adds nothing");
        assertEquals(merge.marks(), MarkMerge.of(merge.marks(), List.of(ours)).marks(), "nor does the other one");
    }

    @Test
    void answers_of_both_are_kept_in_order() {
        Mark ours = ORIGINAL.answered("one", "Rhea", Samples.NOON.plusSeconds(1)).answered("three", "Rhea", Samples.NOON.plusSeconds(3));
        Mark theirs = ORIGINAL.answered("two", "Odo", Samples.NOON.plusSeconds(2));
        for (MarkMerge merge : List.of(MarkMerge.of(List.of(ours), List.of(theirs)), MarkMerge.of(List.of(theirs), List.of(ours)))) {
            assertEquals(1, merge.marks().size(), "answers alone are no conflict");
            assertEquals(List.of("one", "two", "three"), merge.marks().get(0).answers().stream().map(Mark.Answer::text).toList());
        }
    }

    @Test
    void marks_of_a_job_at_another_scale_come_to_where_they_belong() {
        Job job = new Job(Samples.state(), Samples.CLOCK);
        job.show(Samples.result("one", Samples.letters(), List.of()));
        ProofRef tenfold = new ProofRef("sign.svg", Samples.digest("one"), 3000, 1200, 10);
        MarkMerge.Report report = job.merge(Samples.state().withProof(tenfold).plus(Mark.of(new MarkShape.Note(new PointMm(100, 50)), "x", "Odo", Samples.NOON, Samples.digest("one"))));
        assertEquals(report(1, 0, 0, 0), report);
        assertEquals(new PointMm(10, 5), job.state().marks().get(0).shape().anchor());
    }
}
