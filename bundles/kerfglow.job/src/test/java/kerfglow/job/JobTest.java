// SPDX-License-Identifier: Apache-2.0
package kerfglow.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;
import kerfglow.api.PlacedModule;
import kerfglow.api.proof.Role;
import kerfglow.testkit.CheckTester;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.util.AffineTransformation;

class JobTest {
    private final Job job = new Job(Samples.state(), Samples.CLOCK);

    @Test
    void steps_are_taken_back_and_done_again_by_name() {
        String id = job.mark(new MarkShape.Note(new PointMm(1, 1)), "a", "Rhea");
        job.rewriteMark(id, "b");
        job.changeSheet("Change role", sheet -> SheetEdits.withRoleOfLayer(sheet, "L", Role.PANEL));
        assertEquals(Optional.of("Change role"), job.undoName());
        job.undo();
        assertEquals(List.of(), job.state().sheet().roles());
        assertEquals(Optional.of("Change role"), job.redoName());
        assertEquals(Optional.of("Change text"), job.undoName());
        job.undo();
        assertEquals("a", job.state().marks().get(0).text());
        job.redo();
        job.redo();
        assertEquals(1, job.state().sheet().roles().size());
        assertEquals(Optional.empty(), job.redoName());
        job.undo();
        job.removeMark(id);
        assertEquals(Optional.empty(), job.redoName(), "a new step leaves nothing to do again");
        assertEquals(Optional.of("Remove mark"), job.undoName());
    }

    @Test
    void nothing_to_take_back_is_no_fault_and_no_step_changes_nothing() {
        job.undo();
        job.redo();
        job.perform("Nothing", state -> state);
        assertEquals(Optional.empty(), job.undoName());
        assertFalse(job.isChanged());
    }

    @Test
    void it_knows_whether_something_is_not_saved() {
        job.mark(new MarkShape.Note(new PointMm(1, 1)), "a", "Rhea");
        assertTrue(job.isChanged());
        job.markSaved();
        assertFalse(job.isChanged());
        job.undo();
        assertTrue(job.isChanged());
        job.redo();
        assertFalse(job.isChanged(), "back at what is saved");
        job.show(Samples.result("one", Samples.letters(), List.of()));
        assertFalse(job.isChanged(), "a run is no decision");
    }

    @Test
    void a_job_that_goes_on_from_unsaved_work_counts_as_changed() {
        Job restored = new Job(Samples.state().plus(Mark.of(new MarkShape.Note(new PointMm(1, 1)), "a", "Rhea", Samples.NOON, "")), Samples.state(), Samples.CLOCK);
        assertTrue(restored.isChanged());
        restored.show(Samples.result("one", Samples.letters(), List.of()));
        assertTrue(restored.isChanged());
        restored.markSaved();
        assertFalse(restored.isChanged());
    }

    @Test
    void the_listener_hears_of_every_change_and_other_threads_are_refused() throws Exception {
        List<Integer> heard = new ArrayList<>();
        job.listen(() -> heard.add(job.state().marks().size()));
        job.mark(new MarkShape.Note(new PointMm(1, 1)), "a", "Rhea");
        job.undo();
        job.redo();
        assertEquals(List.of(1, 0, 1), heard);
        FutureTask<Void> other = new FutureTask<>(() -> job.undo(), null);
        new Thread(other).start();
        assertInstanceOf(IllegalStateException.class, assertThrows(ExecutionException.class, other::get).getCause());
    }

    /** Any sequence of steps, taken back to the start and done again to the end, passes the same states. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 5, 8, 13})
    void undo_and_redo_pass_the_same_states(long seed) {
        Random random = new Random(seed);
        job.show(Samples.result("one", Samples.letters(), List.of(Samples.finding("a", Samples.GAP, 2, 3, "POINT (10 10)"))));
        List<JobState> states = new ArrayList<>(List.of(job.state()));
        while (states.size() < 40) {
            step(random);
            if (!job.state().equals(states.get(states.size() - 1))) {
                states.add(job.state());
            }
        }
        for (int i = states.size() - 2; i >= 0; i--) {
            job.undo();
            assertEquals(states.get(i), job.state());
        }
        for (int i = 1; i < states.size(); i++) {
            job.redo();
            assertEquals(states.get(i), job.state());
        }
    }

    private void step(Random random) {
        List<Mark> marks = job.state().marks();
        switch (random.nextInt(8)) {
            case 0, 1 -> job.mark(new MarkShape.Note(new PointMm(random.nextInt(100), 1)), "text", "Rhea");
            case 2 -> job.changeSheet("Add light", sheet -> SheetEdits.withModule(sheet, new PlacedModule(random.nextInt(100), 2, 0)));
            case 3 -> job.waive(job.reviewed().orElseThrow().result().findings().get(0), "why " + random.nextInt(100), "Rhea");
            case 4 -> job.signOff("Rhea", "");
            case 5 -> marks.stream().findFirst().ifPresent(mark -> job.answerMark(mark.id(), "yes", "Odo"));
            case 6 -> marks.stream().findFirst().ifPresent(mark -> job.removeMark(mark.id()));
            default -> marks.stream().findFirst().ifPresent(mark -> job.settleMark(mark.id(), "Odo"));
        }
    }

    @Test
    void lights_are_placed_moved_and_taken_away() {
        job.changeSheet("Place light", sheet -> SheetEdits.withModule(sheet, new PlacedModule(1, 2, 0)));
        job.changeSheet("Place light", sheet -> SheetEdits.withModule(sheet, new PlacedModule(3, 4, 0)));
        job.changeSheet("Move light", sheet -> SheetEdits.withModule(sheet, 0, new PlacedModule(5, 6, 90)));
        assertEquals(List.of(new PlacedModule(5, 6, 90), new PlacedModule(3, 4, 0)), job.state().sheet().modules());
        job.changeSheet("Remove light", sheet -> SheetEdits.withoutModule(sheet, 0));
        assertEquals(List.of(new PlacedModule(3, 4, 0)), job.state().sheet().modules());
    }

    @Test
    void marks_and_lights_follow_a_change_of_scale() {
        job.show(Samples.result("one", Samples.letters(), List.of()));
        job.mark(new MarkShape.Box(new PointMm(10, 20), 30, 40), "a", "Rhea");
        job.changeSheet("Place light", sheet -> SheetEdits.withModule(sheet, new PlacedModule(5, 6, 90)));
        AffineTransformation ten = AffineTransformation.scaleInstance(10, 10);
        job.show(Samples.result("one", 10, Samples.letters().stream().map(ten::transform).toList(), List.of(), job.state().sheet()));
        assertEquals(new MarkShape.Box(new PointMm(100, 200), 300, 400), job.state().marks().get(0).shape());
        assertEquals(List.of(new PlacedModule(50, 60, 90)), job.state().sheet().modules());
        assertEquals(Samples.digest("one"), job.state().marks().get(0).proofSha256());
    }

    @Test
    void what_undo_brings_back_from_an_older_revision_is_carried_over_too() {
        job.show(Samples.result("one", Samples.letters(), List.of()));
        String id = job.mark(new MarkShape.Note(new PointMm(10, 50)), "a", "Rhea");
        job.removeMark(id);
        AffineTransformation motion = AffineTransformation.translationInstance(1000, 0);
        job.show(Samples.result("two", Samples.letters().stream().map(motion::transform).toList(), List.of()));
        job.undo();
        assertEquals(1010, job.state().mark(id).orElseThrow().shape().anchor().xMm(), 0.01);
        assertEquals(job.state(), job.reviewed().orElseThrow().job().orElseThrow());
        job.undo();
        job.redo();
        assertEquals(1010, job.state().mark(id).orElseThrow().shape().anchor().xMm(), 0.01);
    }

    @Test
    void marks_on_a_new_revision_move_along_and_those_on_changed_ground_wait_to_be_confirmed() {
        job.show(Samples.result("one", Samples.letters(), List.of()));
        String still = job.mark(new MarkShape.Note(new PointMm(10, 50)), "still", "Rhea");
        String changed = job.mark(new MarkShape.Note(new PointMm(240, 100)), "changed", "Rhea");
        AffineTransformation motion = AffineTransformation.translationInstance(1000, 0);
        List<Geometry> edited = new ArrayList<>(Samples.letters());
        edited.set(2, CheckTester.wkt("POLYGON ((200 0, 260 0, 260 95, 200 95, 200 0), (220 20, 240 20, 240 80, 220 80, 220 20))"));
        job.show(Samples.result("two", edited.stream().map(motion::transform).toList(), List.of()));
        assertTrue(job.reviewed().orElseThrow().isNewRevision());
        Mark stands = job.state().mark(still).orElseThrow();
        assertEquals(1010, stands.shape().anchor().xMm(), 0.01);
        assertEquals(Samples.digest("two"), stands.proofSha256());
        assertEquals(Samples.digest("one"), job.state().mark(changed).orElseThrow().proofSha256());
        job.show(Samples.result("three", edited.stream().map(motion::transform).toList(), List.of()));
        assertEquals(Samples.digest("three"), job.state().mark(still).orElseThrow().proofSha256());
        assertEquals(Samples.digest("one"), job.state().mark(changed).orElseThrow().proofSha256(), "nobody has confirmed it meanwhile");
        job.confirmMark(changed);
        assertEquals(Samples.digest("three"), job.state().mark(changed).orElseThrow().proofSha256());
    }
}
