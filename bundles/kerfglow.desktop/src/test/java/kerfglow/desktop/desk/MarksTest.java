// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.desk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Clock;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import kerfglow.host.JobSheet;
import kerfglow.job.Job;
import kerfglow.job.JobState;
import kerfglow.job.MarkShape;
import kerfglow.job.PointMm;
import kerfglow.job.ProofRef;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;

class MarksTest {
    private static final double REACH_MM = 2;

    private final Job job = new Job(JobState.of(new ProofRef("proof.svg", "a", 1000, 1000, 1), JobSheet.NONE), Clock.systemUTC());
    private final Marks marks = new Marks(() -> Optional.of(job), () -> { });

    static Stream<MarkShape> shapes() {
        return Stream.of(new MarkShape.Note(new PointMm(10, 10)), new MarkShape.Arrow(new PointMm(0, 0), new PointMm(30, 40)),
                new MarkShape.Line(List.of(new PointMm(0, 0), new PointMm(5, 9), new PointMm(20, 3))), new MarkShape.Ring(new PointMm(50, 50), 30, 20),
                new MarkShape.Box(new PointMm(10, 20), 60, 40), new MarkShape.Dimension(new PointMm(0, 0), new PointMm(100, 0)));
    }

    @ParameterizedTest
    @MethodSource("shapes")
    void a_mark_that_is_pulled_at_its_line_moves_as_a_whole_and_that_is_one_step(MarkShape shape) {
        marks.choose(job.mark(shape, "words", "Rhea"));
        Coordinate onLine = shape instanceof MarkShape.Line ? new Coordinate(2.5, 4.5) : shape instanceof MarkShape.Note ? new Coordinate(10, 10)
                : shape.outline().getDimension() == 2 ? along(shape) : shape.outline().getCentroid().getCoordinate();
        assertTrue(marks.take(onLine, REACH_MM));
        for (int i = 1; i <= 5; i++) {
            marks.pull(new Coordinate(onLine.x + 7 * i, onLine.y - 2 * i));
        }
        assertEquals(shape, job.state().marks().get(0).shape(), "nothing is decided before the hand lets go");
        Envelope before = shape.outline().getEnvelopeInternal();
        Envelope shown = marks.chosen().orElseThrow().shape().outline().getEnvelopeInternal();
        assertEquals(before.getMinX() + 35, shown.getMinX(), 1e-9);
        marks.letGo();
        Envelope after = job.state().marks().get(0).shape().outline().getEnvelopeInternal();
        assertEquals(before.getMinX() + 35, after.getMinX(), 1e-9);
        assertEquals(before.getMaxX() + 35, after.getMaxX(), 1e-9);
        assertEquals(before.getMinY() - 10, after.getMinY(), 1e-9);
        assertEquals(before.getMaxY() - 10, after.getMaxY(), 1e-9);
        assertEquals(Optional.of("Move " + shape.word()), job.undoName());
        job.undo();
        assertEquals(shape, job.state().marks().get(0).shape());
        assertEquals(Optional.of("Add " + shape.word()), job.undoName(), "the whole movement was one step");
    }

    /** A point of the outline far from every grip. */
    private static Coordinate along(MarkShape shape) {
        Coordinate[] ring = shape.outline().getCoordinates();
        return shape instanceof MarkShape.Box ? new Coordinate((ring[0].x + ring[1].x) / 2, (ring[0].y + ring[1].y) / 2) : ring[MarkShape.RING_PIECES / 8];
    }

    @ParameterizedTest
    @MethodSource("shapes")
    void a_grip_that_is_pulled_goes_with_the_hand_and_leaves_the_opposite_one(MarkShape shape) {
        List<PointMm> grips = MarkGrips.of(shape);
        for (int i = 0; i < grips.size(); i++) {
            List<PointMm> moved = MarkGrips.of(MarkGrips.moved(shape, i, 3, 4));
            int opposite = (i + grips.size() / 2) % grips.size();
            boolean ring = shape instanceof MarkShape.Ring; // its tops move along their own axis, and the tops across it stay in the middle
            assertEquals(grips.get(i).xMm() + (ring && i % 2 == 0 ? 0 : 3), moved.get(i).xMm(), 1e-9);
            assertEquals(grips.get(i).yMm() + (ring && i % 2 == 1 ? 0 : 4), moved.get(i).yMm(), 1e-9);
            assertEquals(grips.get(opposite), moved.get(opposite));
        }
    }

    @Test
    void a_side_that_is_pulled_across_its_opposite_leaves_a_mark_that_can_be_kept() {
        for (MarkShape shape : List.of(new MarkShape.Box(new PointMm(0, 0), 10, 10), new MarkShape.Ring(new PointMm(5, 5), 5, 5))) {
            for (int grip = 0; grip < 4; grip++) {
                for (double far : new double[] {-100, 100}) {
                    Envelope extent = MarkGrips.moved(shape, grip, far, far).outline().getEnvelopeInternal();
                    assertTrue(extent.getWidth() > 0 && extent.getHeight() > 0);
                }
            }
        }
    }

    @Test
    void a_key_that_is_held_is_one_step_and_moves_the_grip_that_was_gone_to() {
        marks.choose(job.mark(new MarkShape.Arrow(new PointMm(0, 0), new PointMm(30, 40)), "", "Rhea"));
        marks.stepGrip();
        marks.stepGrip();
        for (int i = 0; i < 12; i++) {
            marks.nudge(1, 0);
        }
        marks.letGo();
        assertEquals(new MarkShape.Arrow(new PointMm(0, 0), new PointMm(42, 40)), job.state().marks().get(0).shape());
        marks.stepGrip();
        assertEquals(MarkGrips.WHOLE, marks.grip(), "after the last grip comes the whole");
        job.undo();
        assertEquals(new MarkShape.Arrow(new PointMm(0, 0), new PointMm(30, 40)), job.state().marks().get(0).shape());
    }

    @Test
    void a_mark_in_the_hand_can_be_put_back_and_a_click_moves_nothing() {
        MarkShape box = new MarkShape.Box(new PointMm(0, 0), 10, 10);
        marks.choose(job.mark(box, "", "Rhea"));
        assertTrue(marks.take(new Coordinate(0, 5), REACH_MM));
        marks.pull(new Coordinate(50, 50));
        assertTrue(marks.putBack());
        marks.letGo();
        assertEquals(box, marks.chosen().orElseThrow().shape());
        assertTrue(marks.take(new Coordinate(0, 5), REACH_MM));
        marks.letGo();
        assertEquals(Optional.of("Add box"), job.undoName());
        assertFalse(marks.putBack());
    }

    @Test
    void inside_a_box_nothing_is_taken_hold_of_and_of_two_the_nearer_is_met() {
        String box = job.mark(new MarkShape.Box(new PointMm(0, 0), 100, 100), "", "Rhea");
        String note = job.mark(new MarkShape.Note(new PointMm(50, 50)), "", "Rhea");
        assertTrue(marks.near(new Coordinate(20, 50), REACH_MM).isEmpty());
        assertEquals(box, marks.near(new Coordinate(1, 50), REACH_MM).orElseThrow().id());
        assertEquals(note, marks.near(new Coordinate(51, 50), 200).orElseThrow().id());
        assertFalse(marks.take(new Coordinate(1, 50), REACH_MM), "only the chosen one is moved");
    }

    @Test
    void a_chosen_mark_that_undo_takes_away_is_not_chosen_and_not_moved() {
        marks.choose(job.mark(new MarkShape.Note(new PointMm(50, 50)), "", "Rhea"));
        marks.nudge(1, 1);
        job.undo();
        marks.letGo();
        assertTrue(marks.chosen().isEmpty());
        assertEquals(Optional.empty(), job.undoName());
        marks.step(1);
        assertTrue(marks.chosen().isEmpty());
    }

    @Test
    void marks_are_gone_through_and_taken_out() {
        String first = job.mark(new MarkShape.Note(new PointMm(1, 1)), "", "Rhea");
        String second = job.mark(new MarkShape.Note(new PointMm(2, 2)), "", "Rhea");
        marks.step(1);
        assertEquals(first, marks.chosen().orElseThrow().id());
        marks.step(-1);
        assertEquals(second, marks.chosen().orElseThrow().id());
        assertEquals(List.of(first), marks.others().stream().map(mark -> mark.id()).toList());
        marks.remove();
        assertEquals(List.of(first), job.state().marks().stream().map(mark -> mark.id()).toList());
        assertEquals(Optional.of("Remove mark"), job.undoName());
    }
}
