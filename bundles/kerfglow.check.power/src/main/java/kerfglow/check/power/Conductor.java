// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.power;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import kerfglow.api.UnitSystem;

/**
 * A stranded copper conductor.
 *
 * @param name as settings write it, for instance {@code 18 AWG}
 * @param areaMm2 its area
 * @param ohmPerM one conductor, one way, at the temperature of its table
 * @param tableCelsius the temperature that {@code ohmPerM} already holds for
 * @param perKelvin how much more at each degree above that, as a share
 */
record Conductor(String name, double areaMm2, double ohmPerM, double tableCelsius, double perKelvin) {
    /** Exact: 1000 ft. */
    private static final double M_PER_KFT = 304.8;
    private static final double M_PER_KM = 1000;
    /** Resistivity of annealed copper at 20 °C, Ω mm²/m, and its rise: IACS, 1.7241e-8 Ω m and 0.00393/K. */
    private static final double RHO_20 = 0.017241;
    private static final double RISE_20 = 0.00393;
    private static final double CELSIUS_20 = 20;
    /** NEC chapter 9, table 8, already holds for 75 °C; its note 2 gives the rise from there. */
    private static final double RISE_75 = 0.00323;
    private static final double CELSIUS_75 = 75;
    /** Strands lie in a spiral and are longer than the conductor. Assumed from NEC chapter 9, table 8: 7.95 to 7.77, 4.99 to 4.89, 3.14 to 3.07 and so on, at most this. */
    private static final double LAY = 1.025;
    /** Diameters in AWG: ASTM B258, 36 AWG is 0.005 in and 39 steps make 92 times that. */
    private static final double AWG_36_MM = 0.127;
    private static final double AWG_RATIO = 92;
    private static final double AWG_STEPS = 39;

    /** Ω per 1000 ft at 75 °C, uncoated, stranded: NEC chapter 9, table 8. The table begins at 18; what is thinner follows from the area. */
    static final List<Conductor> AWG = List.of(thin(22), thin(20), table(18, 7.95), table(16, 4.99), table(14, 3.14), table(12, 1.98), table(10, 1.24));

    /** Ω per km at 20 °C, class 5, plain: IEC 60228, table of flexible conductors (greatest allowed). */
    static final List<Conductor> METRIC = List.of(metric("0.5", 39.0), metric("0.75", 26.0), metric("1", 19.5), metric("1.5", 13.3), metric("2.5", 7.98),
            metric("4", 4.95), metric("6", 3.30));

    private static Conductor table(int awg, double ohmPerKft) {
        return new Conductor(awg + " AWG", awgAreaMm2(awg), ohmPerKft / M_PER_KFT, CELSIUS_75, RISE_75);
    }

    private static Conductor thin(int awg) {
        return new Conductor(awg + " AWG", awgAreaMm2(awg), solidOhmPerM(awg, CELSIUS_20) * LAY, CELSIUS_20, RISE_20);
    }

    private static Conductor metric(String mm2, double ohmPerKm) {
        return new Conductor(mm2 + " mm2", Double.parseDouble(mm2), ohmPerKm / M_PER_KM, CELSIUS_20, RISE_20);
    }

    /** The area of a solid wire, mm²: ASTM B258. */
    static double awgAreaMm2(int awg) {
        double diameterMm = AWG_36_MM * Math.pow(AWG_RATIO, (36 - awg) / AWG_STEPS);
        return Math.PI / 4 * diameterMm * diameterMm;
    }

    /** One solid wire of annealed copper, Ω per metre. */
    static double solidOhmPerM(int awg, double celsius) {
        return RHO_20 / awgAreaMm2(awg) * (1 + RISE_20 * (celsius - CELSIUS_20));
    }

    /** One conductor, one way, Ω per metre. A value of the 75 °C table is taken as it is at 75 °C and not corrected up once more. */
    double ohmPerM(double celsius) {
        return ohmPerM * (1 + perKelvin * (celsius - tableCelsius));
    }

    static List<String> names() {
        return Stream.concat(AWG.stream(), METRIC.stream()).map(Conductor::name).toList();
    }

    static Optional<Conductor> of(String name) {
        return Stream.concat(AWG.stream(), METRIC.stream()).filter(each -> each.name.equals(name)).findFirst();
    }

    /** The sizes that a supply's cable is chosen from, thinnest first; what is thinner than the first of them tears when it is pulled in: common practice, no source. */
    static List<Conductor> forFeeds(UnitSystem units) {
        return units == UnitSystem.INCH ? AWG.subList(2, AWG.size()) : METRIC.subList(1, METRIC.size());
    }
}
