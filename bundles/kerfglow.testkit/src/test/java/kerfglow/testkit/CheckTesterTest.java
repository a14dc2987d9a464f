// SPDX-License-Identifier: Apache-2.0
package kerfglow.testkit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import kerfglow.api.Check;
import kerfglow.api.CheckInfo;
import kerfglow.api.Finding;
import kerfglow.api.Inspection;
import kerfglow.api.Measure;
import kerfglow.api.Outcome;
import kerfglow.api.Rule;
import kerfglow.api.Setting;
import kerfglow.api.Severity;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Role;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Envelope;

/** The kit passes what is so and fails what is not: a missing finding, one too many, a wrong place, a wrong measure. */
class CheckTesterTest {
    private static final Rule LOW = new Rule("acme.low.rule", Severity.STOP, "A part is low", "why", "fix", "geometry");
    private static final Setting<Double> LEAST = Setting.lengthMm("acme.low.least", "least height", 5.0, 0, 100, "reason", "source");
    private static final String BAR = "POLYGON ((0 0, 40 0, 40 2, 0 2, 0 0))";
    private static final String DRAWING = "<svg xmlns='http://www.w3.org/2000/svg' width='100mm' height='50mm' viewBox='0 0 100 50'>"
            + "<g id='Letters'><rect x='10' y='10' width='80' height='3'/><rect x='10' y='20' width='80' height='20'/></g></svg>";

    /** Finds parts that are lower than a setting, at their shape. */
    private static final class LowCheck implements Check {
        @Override
        public CheckInfo info() {
            return new CheckInfo("acme.low", "low parts", List.of(LOW), List.of(LEAST), List.of(), List.of(), "## acme.low.rule\n");
        }

        @Override
        public Outcome inspect(Inspection inspection) {
            List<Finding> findings = new ArrayList<>();
            for (Part part : inspection.parts(Role.FACE)) {
                Envelope box = part.shape().getEnvelopeInternal();
                double least = inspection.settings().get(LEAST, part);
                if (box.getHeight() < least) {
                    findings.add(Finding.of(LOW, "low").place(part.shape()).measured(Measure.mm(box.getHeight())).required(Measure.mm(least)).parts(part.id()).build());
                }
            }
            return inspection.parts().isEmpty() ? Outcome.notMeasured("nothing is drawn") : Outcome.of(findings);
        }
    }

    private static CheckTester tester() {
        return CheckTester.of(new LowCheck());
    }

    private static String complaint(CheckTester tester) {
        return assertThrows(AssertionError.class, tester::verify).getMessage();
    }

    @Test
    void what_is_so_passes() {
        tester().part("a", Role.FACE, BAR).expect(LOW).verify();
        tester().part("a", Role.FACE, BAR).expect(LOW, "POINT (5 1)").verify();
        tester().part("a", Role.FACE, BAR).expect(LOW, BAR, 2).verify();
        assertEquals(1, tester().part("a", Role.FACE, BAR).expect(LOW, BAR, 2.015).verify().findings().size(), "within 0.02");
        tester().with(LEAST, 2.0).part("a", Role.FACE, BAR).verify();
        tester().part("a", Role.BACK, BAR).verify();
    }

    @Test
    void what_is_not_so_fails_and_says_why() {
        assertTrue(complaint(tester().part("a", Role.FACE, BAR)).startsWith("not expected: acme.low.rule"));
        assertTrue(complaint(tester().with(LEAST, 2.0).part("a", Role.FACE, BAR).expect(LOW)).startsWith("missing: acme.low.rule"));
        assertTrue(complaint(tester().part("a", Role.FACE, BAR).expect(LOW, "POINT (5 3)")).contains("missing: acme.low.rule at POINT (5 3)"));
        assertTrue(complaint(tester().part("a", Role.FACE, BAR).expect(LOW, "POLYGON ((0 0, 41 0, 41 2, 0 2, 0 0))")).contains("missing"));
        assertTrue(complaint(tester().part("a", Role.FACE, BAR).expect(LOW, BAR, 2.1)).contains("measured 2.1"));
        assertTrue(complaint(tester().part("a", Role.FACE, BAR).expect(LOW).expect(LOW)).contains("missing"), "each expectation wants a finding of its own");
        assertTrue(complaint(tester()).contains("not measured: nothing is drawn"));
    }

    @Test
    void a_drawing_is_read_as_the_program_reads_it() {
        Outcome outcome = tester().svg(DRAWING).job("roles: [{layer: Letters, role: face}]").expect(LOW, "POINT (50 11.5)", 3).verify();
        assertEquals(List.of("p1"), outcome.findings().get(0).parts());
        tester().svg(DRAWING).job("roles: [{layer: Letters, role: back}]").verify();
        tester().svg(DRAWING).job("settings: {acme.low.least: 25 mm}").expect(LOW, "POINT (50 11)", 3).expect(LOW, "POINT (50 30)", 20).verify();
        tester().svg(DRAWING).with(LEAST, 2.0).job("settings: {acme.low.least: 25 mm}").verify();
        assertFalse(tester().svg("<svg xmlns='http://www.w3.org/2000/svg' width='9mm' height='9mm'/>").run().measured());
        assertTrue(complaint(tester().svg("<svg")).contains("cannot be used"));
    }
}
