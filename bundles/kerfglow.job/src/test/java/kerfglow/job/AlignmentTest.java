// SPDX-License-Identifier: Apache-2.0
package kerfglow.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import kerfglow.testkit.CheckTester;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.util.AffineTransformation;

/** The motion is known, since the test makes it; the search has to find it again. */
class AlignmentTest {
    private static Snapshot snapshot(List<? extends Geometry> shapes) {
        return Snapshot.of(Samples.result("x", shapes, List.of()));
    }

    private static List<Geometry> moved(List<Geometry> shapes, AffineTransformation motion) {
        return shapes.stream().map(motion::transform).toList();
    }

    /** How far the corners of the sign are from where they belong, mm. */
    private static double error(AffineTransformation expected, AffineTransformation found) {
        double worst = 0;
        for (Coordinate corner : new Coordinate[] {new Coordinate(0, 0), new Coordinate(260, 0), new Coordinate(260, 100), new Coordinate(0, 100)}) {
            worst = Math.max(worst, expected.transform(corner, new Coordinate()).distance(found.transform(corner, new Coordinate())));
        }
        return worst;
    }

    @Test
    void what_was_not_moved_stays_exactly() {
        assertTrue(Alignment.best(snapshot(Samples.letters()), snapshot(Samples.letters())).isIdentity());
        assertTrue(Alignment.best(Snapshot.NONE, snapshot(Samples.letters())).isIdentity());
    }

    @ParameterizedTest
    @CsvSource({"0, 300, -40", "90, 0, 0", "180, 500, 500", "-7.5, 12, 9", "0, 0.5, 0", "33, 4000, 0"})
    void shifts_and_turns_are_found_again(double degrees, double x, double y) {
        AffineTransformation motion = AffineTransformation.rotationInstance(Math.toRadians(degrees)).translate(x, y);
        assertEquals(0, error(motion, Alignment.best(snapshot(Samples.letters()), snapshot(moved(Samples.letters(), motion)))), 0.01);
    }

    @Test
    void a_redrawn_letter_does_not_pull_at_the_others() {
        AffineTransformation motion = AffineTransformation.rotationInstance(0.1).translate(80, 20);
        List<Geometry> edited = new ArrayList<>(moved(Samples.letters(), motion));
        edited.set(1, motion.transform(CheckTester.wkt("POLYGON ((60 0, 163 0, 163 24, 120 24, 120 100, 95 100, 95 24, 60 24, 60 0))")));
        assertEquals(0, error(motion, Alignment.best(snapshot(Samples.letters()), snapshot(edited))), 0.05);
    }

    @Test
    void added_and_removed_letters_do_not_pull_either() {
        AffineTransformation motion = AffineTransformation.translationInstance(50, 0);
        List<Geometry> edited = new ArrayList<>(moved(Samples.letters().subList(0, 2), motion));
        edited.add(CheckTester.wkt("POLYGON ((400 0, 480 0, 440 100, 400 0))"));
        assertEquals(0, error(motion, Alignment.best(snapshot(Samples.letters()), snapshot(edited))), 0.01);
    }

    @Test
    void a_single_letter_that_was_edited_and_moved_is_found_by_its_axes() {
        List<Geometry> one = List.of(CheckTester.wkt("POLYGON ((0 0, 200 0, 200 40, 40 40, 40 100, 0 100, 0 0))"));
        List<Geometry> edited = List.of(CheckTester.wkt("POLYGON ((0 0, 200 0, 200 41, 40 41, 40 100, 0 100, 0 0))"));
        AffineTransformation motion = AffineTransformation.rotationInstance(0.7).translate(30, 40);
        assertEquals(0, error(motion, Alignment.best(snapshot(one), snapshot(moved(edited, motion)))), 1.5, "the edited edge itself may pull by up to the edit");
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 5, 8})
    void a_row_of_equal_studs_follows_the_letters_around_it(long seed) {
        Random random = new Random(seed);
        List<Geometry> shapes = new ArrayList<>(Samples.letters());
        for (int i = 0; i < 20; i++) {
            shapes.add(CheckTester.wkt("POINT (" + random.nextInt(260) + " " + (130 + random.nextInt(200)) + ")").buffer(3));
        }
        AffineTransformation motion = AffineTransformation.rotationInstance(random.nextDouble() * 6).translate(random.nextInt(500), random.nextInt(500));
        AffineTransformation found = Alignment.best(snapshot(shapes), snapshot(moved(shapes, motion)));
        assertTrue(error(motion, found) < 0.01, () -> motion + " but " + found);
    }
}
