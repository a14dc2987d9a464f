// SPDX-License-Identifier: Apache-2.0
package kerfglow.host;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import kerfglow.api.Finding;
import kerfglow.api.Measure;
import kerfglow.api.Rule;
import kerfglow.api.Severity;
import kerfglow.testkit.CheckTester;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.util.AffineTransformation;

class RepeatsTest {
    private static final Rule RULE = new Rule("trial.rule", Severity.REVIEW, "a", "b", "c", "d");
    private static final String HOOK = "POLYGON ((0 0, 7 0, 7 1, 2 1, 2 4, 0 4, 0 0))";

    private static Finding finding(Geometry place, double measured) {
        return Finding.of(RULE, "m").place(place).measured(Measure.mm(measured)).build();
    }

    private static List<Integer> sizes(List<Finding> findings) {
        return Repeats.collect(findings).stream().map(List::size).sorted().toList();
    }

    @Test
    void turned_moved_and_mirrored_places_of_equal_measure_are_one() {
        Random random = new Random(5);
        List<Finding> findings = new ArrayList<>();
        for (int i = 0; i < 40; i++) {
            AffineTransformation motion = AffineTransformation.rotationInstance(random.nextDouble() * 7).scale(i % 2 == 0 ? 1 : -1, 1)
                    .translate(random.nextDouble() * 900, random.nextDouble() * 900);
            findings.add(finding(motion.transform(CheckTester.wkt(HOOK)), 2 + 0.0001 * i));
        }
        assertEquals(List.of(40), sizes(findings));
    }

    @Test
    void another_measure_another_shape_or_another_size_is_another_finding() {
        Geometry hook = CheckTester.wkt(HOOK);
        Geometry larger = AffineTransformation.scaleInstance(1.02, 1.02).transform(hook);
        Geometry other = CheckTester.wkt("POLYGON ((0 0, 7 0, 7 1, 4 1, 4 4, 2 4, 2 1, 0 1, 0 0))");
        assertEquals(List.of(1, 1, 1, 1), sizes(List.of(finding(hook, 2), finding(hook, 2.03), finding(larger, 2), finding(other, 2))));
    }

    @Test
    void what_concerns_the_whole_proof_stays_alone() {
        assertEquals(List.of(1, 1), sizes(List.of(Finding.of(RULE, "x").build(), Finding.of(RULE, "x").build())));
    }

    @Test
    void findings_of_different_causes_stay_apart() {
        Geometry hook = CheckTester.wkt(HOOK);
        assertEquals(List.of(1, 1), sizes(List.of(Finding.of(RULE, "m").place(hook).cause("hidden").build(), Finding.of(RULE, "m").place(hook).cause("unpainted").build())));
    }

    @Test
    void points_of_one_rule_are_one() {
        assertEquals(List.of(3), sizes(List.of(finding(CheckTester.wkt("POINT (1 1)"), 1), finding(CheckTester.wkt("POINT (5 1)"), 1), finding(CheckTester.wkt("POINT (1 9)"), 1.015))));
    }
}
