// SPDX-License-Identifier: Apache-2.0
package kerfglow.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.TreeSet;
import kerfglow.testkit.CheckTester;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class FindingMatchTest {
    private static SeenFinding at(double x, double y, String rule) {
        return new SeenFinding("", rule, "", new TreeSet<>(), List.of(), List.of(), Optional.empty(), Optional.empty(),
                List.of(new SeenPlace(new PointMm(x, y), CheckTester.wkt("POINT (" + x + " " + y + ")"))));
    }

    private static double distance(SeenFinding a, SeenFinding b) {
        PointMm from = a.places().get(0).at();
        PointMm to = b.places().get(0).at();
        return a.rule().equals(b.rule()) ? Math.hypot(from.xMm() - to.xMm(), from.yMm() - to.yMm()) : Double.POSITIVE_INFINITY;
    }

    private static int nearest(SeenFinding of, List<SeenFinding> among) {
        int best = -1;
        for (int i = 0; i < among.size(); i++) {
            if (distance(of, among.get(i)) <= 5 && (best < 0 || distance(of, among.get(i)) < distance(of, among.get(best)))) {
                best = i;
            }
        }
        return best;
    }

    /** Against a twin that looks at every pair. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 5, 8, 13, 21, 34})
    void places_are_matched_when_each_is_the_nearest_of_the_other_within_five_millimetres(long seed) {
        Random random = new Random(seed);
        List<SeenFinding> old = new ArrayList<>();
        List<SeenFinding> young = new ArrayList<>();
        for (int i = 0; i < 120; i++) {
            old.add(at(random.nextDouble() * 60, random.nextDouble() * 60, random.nextBoolean() ? "a.b" : "a.c"));
            young.add(at(random.nextDouble() * 60, random.nextDouble() * 60, random.nextBoolean() ? "a.b" : "a.c"));
        }
        FindingMatch match = FindingMatch.of(old, young);
        int matched = 0;
        for (int i = 0; i < young.size(); i++) {
            int before = nearest(young.get(i), old);
            boolean mutual = before >= 0 && nearest(old.get(before), young) == i;
            matched += mutual ? 1 : 0;
            assertEquals(mutual ? Optional.of(new FindingMatch.Spot(before, 0)) : Optional.empty(), match.old(new FindingMatch.Spot(i, 0)));
        }
        assertTrue(matched > 20 && matched < 120, "some match and some do not: " + matched);
    }

    /** Closed forms: how far the farthest point of either is from the other. */
    @ParameterizedTest
    @CsvSource(delimiter = ';', value = {
        "POINT (0 0); POINT (3 4); 5",
        "POINT (0 0); POINT (3 4.01); Infinity",
        "LINESTRING (0 0, 100 0); LINESTRING (0 3, 100 3); 3",
        "LINESTRING (0 0, 100 0); LINESTRING (0 0, 96 0); 4",
        "LINESTRING (0 0, 100 0); LINESTRING (0 0, 94 0); Infinity",
        "POLYGON ((0 0, 10 0, 10 10, 0 10, 0 0)); POLYGON ((1 1, 9 1, 9 9, 1 9, 1 1)); 1.4142135623730951",
        "MULTIPOINT ((0 0), (50 0)); MULTIPOINT ((0 0), (50 2)); 2",
        "GEOMETRYCOLLECTION (POINT (0 0), LINESTRING (5 0, 9 0)); GEOMETRYCOLLECTION (POINT (0 1), LINESTRING (5 0, 9 0)); 1"})
    void how_far_two_places_are_apart(String a, String b, double expected) {
        assertEquals(expected, FindingMatch.apart(CheckTester.wkt(a), CheckTester.wkt(b)), 1e-9);
        assertEquals(expected, FindingMatch.apart(CheckTester.wkt(b), CheckTester.wkt(a)), 1e-9);
    }

    @Test
    void nothing_matches_nothing() {
        assertEquals(Optional.empty(), FindingMatch.of(List.of(), List.of(at(0, 0, "a.b"))).old(new FindingMatch.Spot(0, 0)));
    }
}
