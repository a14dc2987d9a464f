// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.fit;

import static kerfglow.check.fit.Drawings.box;
import static kerfglow.check.fit.Drawings.measured;
import static kerfglow.check.fit.Drawings.number;
import static kerfglow.check.fit.Drawings.of;
import static kerfglow.check.fit.Drawings.required;
import static kerfglow.check.fit.Drawings.rules;
import static kerfglow.check.fit.Drawings.tester;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import kerfglow.api.Finding;
import kerfglow.api.Outcome;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Role;
import kerfglow.testkit.CheckTester;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.util.AffineTransformation;

class ThermalTest {
    private static Part face(String material, double length) {
        return Part.builder("f", Role.FACE, box(0, 0, length, 600)).sheetMaterial(material).build();
    }

    private static CheckTester withWall(double wallMm) {
        return tester().with(ThermalSettings.WALL, wallMm);
    }

    /**
     * 2,440 mm of polycarbonate in aluminium over 40 K. Derived from dL = alpha L dT with 68 (ACS Omega 2022, 7(16), Table 1) and 23.6
     * (from memory, between 23 and 24 of Gere, Mechanics of Materials, Table 3).
     */
    @Test
    void the_worked_example_passes_gross_and_fails_net_of_two_walls() {
        Outcome gross = withWall(0).part(face("polycarbonate", 2440)).run();
        assertEquals(List.of(), rules(gross));
        assertEquals(4.33344, number(gross, "thermal", 0, "cold"), 1e-5);
        assertEquals(4.33344, number(gross, "thermal", 0, "hot"), 1e-5);
        assertEquals(4.7625, number(gross, "thermal", 0, "left"), 1e-9);
        Outcome net = withWall(1).part(face("polycarbonate", 2440)).run();
        Finding binds = of(net, FitRules.THERMAL).get(0);
        assertEquals(4.33344, measured(binds), 1e-5);
        assertEquals(2.7625, required(binds), 1e-9);
        assertTrue(binds.message().contains("binds in the cold"), binds.message());
        assertTrue(binds.message().contains("4.33 mm in the cold (40 K below assembly)"), binds.message());
        assertTrue(binds.message().contains("of 4.76 mm in total 2.76 mm are left after two walls (2 mm) and two legs (0 mm)"), binds.message());
    }

    /** Derived from dL = alpha L dT, 2,440 mm and 40 K: each material by itself, against a can that does not move. */
    @ParameterizedTest
    @CsvSource({"clear polycarbonate, 6.6368", "opal acrylic, 7.3200", "aluminium, 2.30336", "steel, 1.14192", "ACM, 2.3424"})
    void materials_are_known_by_their_names(String material, double movement) {
        // the can's coefficient cannot be 0, which is "by material"; the least that can be told apart is given instead
        Outcome outcome = tester().with(ThermalSettings.CAN_EXPANSION, 1e-9).part(face(material, 2440)).run();
        assertEquals(movement, number(outcome, "thermal", 0, "cold"), 1e-4);
    }

    @Test
    void coefficients_are_picked_on_purpose_and_shown() {
        // Callister, Table B.6, has 122 for polycarbonate: 11.9072 mm of 2,440 mm over 40 K
        Outcome outcome = tester().with(ThermalSettings.POLYCARBONATE, 122.0).with(ThermalSettings.CAN_EXPANSION, 1e-9)
                .part(face("polycarbonate", 2440)).run();
        assertEquals(11.9072, number(outcome, "thermal", 0, "cold"), 1e-4);
        assertTrue(of(outcome, FitRules.THERMAL).get(0).message().contains("122 against 0 millionths per kelvin"));
    }

    @Test
    void inches_and_fahrenheit_give_the_same() {
        // 96 in, 75e-6 per kelvin, 72 F (40 K): 0.288 in (2,438.4 mm; derived)
        Outcome outcome = tester().with(ThermalSettings.CAN_EXPANSION, 1e-9).with(ThermalSettings.ASSEMBLY, ThermalSettings.ASSEMBLY.parse("68 F"))
                .with(ThermalSettings.COLDEST, ThermalSettings.COLDEST.parse("-4 F")).part(face("acrylic", 96 * 25.4)).run();
        assertEquals(0.288 * 25.4, number(outcome, "thermal", 0, "cold"), 1e-4);
    }

    @Test
    void a_face_in_a_frame_binds_in_the_heat() {
        Outcome outcome = tester().with(ThermalSettings.FACE_SITS, ThermalSettings.INSIDE).part(face("polycarbonate", 2440)).run();
        assertTrue(of(outcome, FitRules.THERMAL).get(0).message().contains("binds in the heat"));
        Outcome steelOverAluminium = tester().part(face("steel", 600)).run();
        assertEquals("in the heat", Drawings.cell(steelOverAluminium, "thermal", 0, "binds"), "a face that moves less than its can");
    }

    @Test
    void cold_and_heat_are_reckoned_apart() {
        Outcome outcome = tester().with(ThermalSettings.COLDEST, -10.0).with(ThermalSettings.HOTTEST, 80.0).part(face("acrylic", 1000)).run();
        assertEquals((75 - 23.6) * 1e-6 * 1000 * 30, number(outcome, "thermal", 0, "cold"), 1e-9);
        assertEquals((75 - 23.6) * 1e-6 * 1000 * 60, number(outcome, "thermal", 0, "hot"), 1e-9);
        assertEquals(3.084, measured(of(outcome, FitRules.THERMAL).get(0)), 1e-3);
    }

    @Test
    void legs_use_up_the_allowance_too_and_may_leave_nothing() {
        Outcome outcome = withWall(1.5).with(ThermalSettings.LEG, 1.0).part(face("acrylic", 700)).run();
        Finding none = of(outcome, FitRules.THERMAL).get(0);
        assertEquals(4.7625 - 5, required(none), 1e-9);
        assertTrue(none.message().contains("does not even hold walls and legs"), none.message());
    }

    @Test
    void the_length_is_that_of_the_face_however_it_is_turned() {
        Part turned = Part.builder("f", Role.FACE, (Polygon) AffineTransformation.rotationInstance(0.6)
                .transform(box(0, 0, 2440, 600))).sheetMaterial("polycarbonate").build();
        assertEquals(2440, number(tester().part(turned).run(), "thermal", 0, "length"), 1e-6);
    }

    @Test
    void what_is_not_known_is_said_and_the_rest_is_measured() {
        Outcome outcome = tester().part(face("brass", 2440)).part(Part.builder("g", Role.FACE, box(0, 900, 300, 300)).build()).run();
        assertEquals(2, outcome.missing().size(), outcome.missing()::toString);
        assertTrue(outcome.missing().get(0).contains("\"brass\""), outcome.missing()::toString);
        assertEquals(2, outcome.tables().get(1).rows().size());
        assertTrue(tester().part(face("stainless steel", 500)).run().missing().get(0).contains("stainless steel"), "expands more than carbon steel");
        assertTrue(tester().with(ThermalSettings.CAN_MATERIAL, "oak").part(face("acrylic", 500)).run().missing().get(0).contains("\"oak\""));
        assertEquals(List.of(), tester().with(ThermalSettings.EXPANSION, 19.0).part(face("brass", 500)).run().missing());
    }

    @Test
    void a_face_that_moves_too_far_only_in_the_season_in_which_it_does_not_bind_works_loose() {
        // (68 - 23.6) millionths on 2440 mm: 1.08 mm over 10 K, 4.33 mm over 40 K; 2.76 mm are left
        Outcome over = tester().with(ThermalSettings.COLDEST, 10.0).part(face("polycarbonate", 2440)).run();
        assertTrue(of(over, FitRules.THERMAL).get(0).message().contains("works loose in the heat"), of(over, FitRules.THERMAL)::toString);
        Outcome frame = tester().with(ThermalSettings.HOTTEST, 30.0).with(ThermalSettings.FACE_SITS, ThermalSettings.INSIDE)
                .part(face("polycarbonate", 2440)).run();
        assertTrue(of(frame, FitRules.THERMAL).get(0).message().contains("works loose in the cold"), of(frame, FitRules.THERMAL)::toString);
    }
}
