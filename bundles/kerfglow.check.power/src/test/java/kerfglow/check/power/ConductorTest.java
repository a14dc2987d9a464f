// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.power;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ConductorTest {
    private static final double M_PER_FT = 0.3048;

    private static Conductor awg(int size) {
        return Conductor.of(size + " AWG").orElseThrow();
    }

    private static double ohmPerKft(double ohmPerM) {
        return ohmPerM * 1000 * M_PER_FT;
    }

    /** Area and resistance of solid copper: ASTM B258 diameters with 1.7241e-8 ohm m; wire tables print 16.14, 10.15, 6.385, 4.016, 2.525, 1.588 ohm per 1000 ft. */
    @ParameterizedTest
    @CsvSource({"22, 0.32553, 16.143, 19.632", "20, 0.51762, 10.152, 12.347", "18, 0.82305, 6.3849, 7.7650", "16, 1.30870, 4.0155, 4.8834",
        "14, 2.08091, 2.5254, 3.0712", "12, 3.30877, 1.5882, 1.9315", "10, 5.26115, 0.9988, 1.2147"})
    void gauges_have_the_area_and_resistance_of_the_standard(int size, double areaMm2, double at20, double at75) {
        assertEquals(areaMm2, Conductor.awgAreaMm2(size), 5e-6);
        assertEquals(at20, ohmPerKft(Conductor.solidOhmPerM(size, 20)), 1e-3);
        assertEquals(at75, ohmPerKft(Conductor.solidOhmPerM(size, 75)), 1e-3);
    }

    /** NEC chapter 9, table 8, stranded, 75 °C: the printed value holds at 75 °C as it is, and 0.82235 of it at 20 °C by note 2. */
    @ParameterizedTest
    @CsvSource({"18, 7.95", "16, 4.99", "14, 3.14", "12, 1.98", "10, 1.24"})
    void a_value_of_the_75_degree_table_is_not_corrected_up_again(int size, double table) {
        assertEquals(table, ohmPerKft(awg(size).ohmPerM(75)), 1e-9);
        assertEquals(table * 0.82235, ohmPerKft(awg(size).ohmPerM(20)), 1e-5);
    }

    /** Sizes below the table must lie above solid wire and, as its sizes do, not more than 2.5 % above. */
    @ParameterizedTest
    @CsvSource({"22, 19.632", "20, 12.347", "18, 7.7650", "16, 4.8834", "14, 3.0712", "12, 1.9315", "10, 1.2147"})
    void strands_resist_a_little_more_than_solid_wire(int size, double solidAt75) {
        double ratio = ohmPerKft(awg(size).ohmPerM(75)) / solidAt75;
        assertEquals(1.0225, ratio, 0.0035);
    }

    /** IEC 60228, class 5, plain copper, 20 °C: ohm per km. */
    @ParameterizedTest
    @CsvSource({"0.5, 39.0", "0.75, 26.0", "1, 19.5", "1.5, 13.3", "2.5, 7.98", "4, 4.95", "6, 3.30"})
    void metric_sizes_have_the_resistance_of_the_standard(String size, double ohmPerKm) {
        assertEquals(ohmPerKm, Conductor.of(size + " mm2").orElseThrow().ohmPerM(20) * 1000, 1e-9);
    }

    /** Worked drops: direct current, two wires, one load at the end, NEC table 8 stranded at 75 °C; Vd = 2 I L R / 1000. */
    @ParameterizedTest
    @CsvSource({"5, 25, 18, 1.9875, 16.5625, 8.28125", "5, 20, 16, 0.9980, 8.3167, 4.1583", "5, 50, 14, 1.5700, 13.0833, 6.5417",
        "4, 30, 18, 1.9080, 15.9000, 7.9500", "2.5, 40, 18, 1.5900, 13.2500, 6.6250"})
    void a_load_at_the_end_loses_what_the_worked_example_says(double amperes, double feet, int size, double volts, double of12, double of24) {
        double drop = Drop.volts(List.of(new Drop.Stretch(feet * M_PER_FT, awg(size).ohmPerM(75), amperes)));
        assertEquals(volts, drop, 1e-9);
        assertEquals(of12, drop / 12 * 100, 5e-5);
        assertEquals(of24, drop / 24 * 100, 5e-5);
    }

    /** 5 A, 18 AWG stranded, 12 V: 3 % at 4.528 ft, 10 % at 15.094 ft. */
    @ParameterizedTest
    @CsvSource({"4.528, 0.03", "15.094, 0.10"})
    void the_longest_way_for_a_drop(double feet, double share) {
        assertEquals(share, Drop.volts(List.of(new Drop.Stretch(feet * M_PER_FT, awg(18).ohmPerM(75), 5))) / 12, 1e-5);
    }

    /** A ladder of N equal loads loses (N + 1)/(2 N) of the lumped load: 1, 0.75, 0.6, 0.55, 0.525. */
    @ParameterizedTest
    @CsvSource({"1, 1", "2, 0.75", "5, 0.6", "10, 0.55", "20, 0.525"})
    void a_ladder_of_equal_loads_loses_its_share(int loads, double share) {
        double ohm = awg(18).ohmPerM(75);
        List<Drop.Stretch> ladder = new ArrayList<>();
        for (int i = 0; i < loads; i++) {
            ladder.add(new Drop.Stretch(10.0 / loads, ohm, 3.0 / loads));
        }
        assertEquals(share, Drop.volts(ladder) / Drop.volts(List.of(new Drop.Stretch(10, ohm, 3))), 1e-12);
    }

    /** NEC chapter 9, table 11(B), direct current: VA limits at 5, 12, 15, 20, 24, 30 V. */
    @ParameterizedTest
    @CsvSource({"5, 25", "12, 60", "15, 75", "20, 100", "24, 100", "30, 100"})
    void class_2_limits_are_those_of_the_table(double volts, double va) {
        assertEquals(va, Supply.classTwoVa(volts), 1e-12);
        assertEquals(va, new Supply("large", volts, 500, 1).circuitWatts(true), 1e-12);
        assertEquals(500, new Supply("large", volts, 500, 1).circuitWatts(false), 1e-12);
    }

    @Test
    void a_supply_of_several_circuits_shares_its_rating() {
        assertEquals(50, new Supply("three", 12, 150, 3).circuitWatts(true), 1e-12);
    }
}
