// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.vinyl;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import kerfglow.api.Finding;
import kerfglow.api.proof.Paint;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Role;
import kerfglow.testkit.CheckTester;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.util.AffineTransformation;

/** What holds for every drawing. */
class VinylPropertyTest {
    private static final int SEGMENTS = 64;

    private static Polygon disc(double x, double y, double radius) {
        return (Polygon) CheckTester.wkt("POINT (" + x + " " + y + ")").buffer(radius, SEGMENTS);
    }

    private static Part film(String id, int order, int rgb, Geometry shape) {
        return Part.builder(id, Role.VINYL, (Polygon) shape).paint(Paint.colour(rgb)).order(order).elements(List.of(id)).build();
    }

    private static List<Double> overlaps(List<Part> parts) {
        CheckTester tester = CheckTester.of(new VinylCheck()).stock(VinylCheck.ROLLS, Map.of(VinylCheck.ROLL_WIDTH, 1220.0));
        parts.forEach(tester::part);
        return tester.findings(VinylRules.OVERLAP).stream().map(finding -> finding.measured().orElseThrow().value()).sorted().toList();
    }

    /** A disc in a ring of another colour: the overlap is the difference of the radii, all round. Chords of 64 a quarter lie 0.012 mm inside at most. */
    @ParameterizedTest
    @ValueSource(doubles = {-0.7, 0, 0.3, 1.2})
    void a_disc_in_a_ring_overlaps_by_the_difference_of_their_radii(double overlap) {
        Geometry ring = disc(200, 200, 100).difference(disc(200, 200, 80));
        List<Part> parts = List.of(film("ring", 0, 0xC03020, ring), film("disc", 1, 0x2040A0, disc(200, 200, 80 + overlap)));
        CheckTester tester = CheckTester.of(new VinylCheck()).stock(VinylCheck.ROLLS, Map.of(VinylCheck.ROLL_WIDTH, 1220.0));
        parts.forEach(tester::part);
        List<Finding> found = tester.findings(VinylRules.OVERLAP);
        assertEquals(1, found.size(), found::toString);
        assertEquals(overlap, found.get(0).measured().orElseThrow().value(), 0.03);
        assertEquals(2 * Math.PI * 80, found.get(0).place().orElseThrow().getLength(), 1, "once round");
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 5, 8})
    void turning_moving_and_reordering_keep_every_overlap(long seed) {
        Random random = new Random(seed);
        List<Part> parts = new ArrayList<>();
        for (int i = 0; i < 6; i++) { // a row of boxes that meet by up to 2 mm, or stand up to 1 mm apart
            double left = 60 * i - 2 + 3 * random.nextDouble();
            parts.add(film("b" + i, i, i % 2 == 0 ? 0xC03020 : 0x2040A0, CheckTester.wkt("POLYGON ((%1$s 0, 1 0, 1 80, %1$s 80, %1$s 0))".formatted(left).replace("1 0, 1 80",
                    (60 * (i + 1)) + " 0, " + (60 * (i + 1)) + " 80"))));
        }
        List<Double> before = overlaps(parts);
        assertTrue(before.size() >= 2, "the sample must hold some: " + before);
        AffineTransformation turn = AffineTransformation.rotationInstance(2 * Math.PI * random.nextDouble()).translate(500, -300);
        List<Part> moved = new ArrayList<>();
        parts.forEach(part -> moved.add(film(part.id(), part.order(), part.paint().rgb(), turn.transform(part.shape()))));
        Collections.shuffle(moved, random);
        List<Double> after = overlaps(moved);
        assertEquals(before.size(), after.size());
        for (int i = 0; i < before.size(); i++) {
            assertEquals(before.get(i), after.get(i), 1e-6);
        }
    }

    /** A stricter limit never loses a place. */
    @Test
    void asking_for_more_overlap_finds_at_least_as_much() {
        List<Part> parts = List.of(film("a", 0, 0xC03020, CheckTester.wkt("POLYGON ((0 0, 50 0, 52 80, 0 80, 0 0))")), film("b", 1, 0x2040A0, CheckTester.wkt("POLYGON ((49 0, 100 0, 100 80, 49 80, 49 0))")));
        double before = 0;
        for (double least : new double[] {0.5, 1.5, 2.5, 4}) {
            CheckTester tester = CheckTester.of(new VinylCheck()).stock(VinylCheck.ROLLS, Map.of(VinylCheck.ROLL_WIDTH, 1220.0)).with(VinylSettings.LEAST_OVERLAP, least)
                    .with(VinylSettings.REGISTRATION, 0.0);
            parts.forEach(tester::part);
            double length = tester.findings(VinylRules.OVERLAP).stream().mapToDouble(finding -> finding.place().orElseThrow().getLength()).sum();
            assertTrue(length >= before, "at " + least + " mm: " + length);
            before = length;
        }
        assertEquals(80, before, 1, "all of the edge overlaps by less than 4 mm");
    }
}
