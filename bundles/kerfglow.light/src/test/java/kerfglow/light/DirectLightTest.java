// SPDX-License-Identifier: Apache-2.0
package kerfglow.light;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.io.ParseException;
import org.locationtech.jts.io.WKTReader;

class DirectLightTest {
    private static final double MM2_PER_M2 = 1e6;

    static Polygon polygon(String wkt) {
        try {
            return (Polygon) new WKTReader().read(wkt);
        } catch (ParseException wrong) {
            throw new IllegalArgumentException(wkt, wrong);
        }
    }

    static Polygon box(double x, double y, double width, double height) {
        return polygon("POLYGON ((%s %s, %s %s, %s %s, %s %s, %s %s))".formatted(x, y, x + width, y, x + width, y + height, x, y + height, x, y));
    }

    /** A point source at the very back. */
    static LightModuleType point(double fluxLm, double beamDegrees) {
        return new LightModuleType("", fluxLm, beamDegrees, 0, 0, 0, 1, 0);
    }

    private static double[] lux(Polygon inside, double depth, double cell, List<LightModule> modules) {
        DirectLight light = new DirectLight(inside, depth, cell);
        double[] lux = new double[light.grid().size()];
        modules.forEach(module -> light.add(module, 1, lux));
        return lux;
    }

    /** E = (m + 1) flux / (2 pi h²) cos^(m + 3), the closed form, at the centre of a cell. */
    private static double closedForm(double flux, double m, double h, double r) {
        double cos = h / Math.hypot(h, r);
        return (m + 1) * flux / (2 * Math.PI * h * h) * Math.pow(cos, m + 3) * MM2_PER_M2;
    }

    // powers for half angles as listed for generalised Lambertian sources: m = ln 0.5 / ln cos(half angle)
    @ParameterizedTest
    @CsvSource({"10, 181.806", "20, 45.2776", "30, 19.9937", "40, 11.1434", "60, 4.81884", "80, 2.60078", "90, 2", "120, 1", "140, 0.646059"})
    void the_power_of_the_cosine_follows_from_the_beam(double beam, double power) {
        assertEquals(power, point(1, beam).exponent(), power * 1e-5);
    }

    @ParameterizedTest
    @ValueSource(doubles = {10, 60, 90, 120, 170})
    void one_source_gives_inverse_square_and_cosine(double beam) {
        Polygon plain = box(-1000, -1000, 2000, 2000);
        LightModule module = new LightModule(3.3, -7.1, 0, point(120, beam));
        DirectLight light = new DirectLight(plain, 80, 10);
        double[] lux = lux(plain, 80, 10, List.of(module));
        double m = module.type().exponent();
        double peak = closedForm(120, m, 80, 0);
        for (int i = 0; i < lux.length; i++) {
            Coordinate at = light.grid().at(i);
            assertEquals(closedForm(120, m, 80, at.distance(new Coordinate(3.3, -7.1))), lux[i], 1e-6 * peak, at.toString());
        }
    }

    // cos^4 of 15, 30, 45, 60, 75 degrees
    @ParameterizedTest
    @CsvSource({"15, 0.870513", "30, 0.5625", "45, 0.25", "60, 0.0625", "75, 0.0044873"})
    void a_lambertian_source_falls_as_the_fourth_power_of_the_cosine(double angle, double share) {
        Falloff falloff = new Falloff(1, 1, 100);
        double r = 100 * Math.tan(Math.toRadians(angle));
        assertEquals(share, falloff.at(r * r) / falloff.at(0), 1e-6);
    }

    @Test
    void all_of_the_flux_falls_on_a_wide_face() {
        // beyond 4 m at depth 40 a Lambertian source leaves h²/(h² + r²) = 1e-4 of its flux
        double[] lux = lux(box(-4000, -4000, 8000, 8000), 40, 5, List.of(new LightModule(0.7, 1.3, 0, point(200, 120))));
        double flux = 0;
        for (double each : lux) {
            flux += each * 25 / MM2_PER_M2;
        }
        assertEquals(200, flux, 200 * 3e-4);
    }

    /** Two sources: the middle is flattest at d = h sqrt(4 / (m + 4)), where the second derivative of the sum vanishes. */
    @ParameterizedTest
    @CsvSource({"120, 0.894427", "90, 0.816497"})
    void two_sources_are_flattest_at_the_spacing_where_the_second_derivative_vanishes(double beam, double spacing) {
        double h = 100;
        double[] curvature = new double[2];
        for (int k = 0; k < 2; k++) {
            double d = spacing * h * (k == 0 ? 0.98 : 1.02);
            // an odd number of cells about 0 puts a centre there
            DirectLight light = new DirectLight(box(-100.5, -100.5, 201, 201), h, 1);
            double[] lux = new double[light.grid().size()];
            light.add(new LightModule(-d / 2, 0, 0, point(1, beam)), 1, lux);
            light.add(new LightModule(d / 2, 0, 0, point(1, beam)), 1, lux);
            int middle = light.grid().cell(0, 0);
            curvature[k] = (lux[middle + 10] + lux[middle - 10] - 2 * lux[middle]) / lux[middle];
        }
        assertTrue(curvature[0] < 0, "closer, the middle is a hump: " + curvature[0]);
        assertTrue(curvature[1] > 0, "wider, the middle is a dip: " + curvature[1]);
    }

    // two Lambertian points, unit I0/h²: E(mid) = 2/(1 + d²/4)², E(under one) = 1 + 1/(1 + d²)²
    @ParameterizedTest
    @CsvSource({"1, 1.28, 1.25", "1.5, 0.8192, 1.094675", "2, 0.5, 1.04"})
    void two_sources_add(double spacing, double middle, double under) {
        double h = 100;
        double d = spacing * h;
        DirectLight light = new DirectLight(box(-200.5, -200.5, 401, 401), h, 1);
        double[] lux = new double[light.grid().size()];
        LightModuleType pair = new LightModuleType("", 2, 120, 0, 0, 0, 2, d);
        light.add(new LightModule(0, 0, 0, pair), 1, lux);
        double unit = MM2_PER_M2 / (Math.PI * h * h);
        assertEquals(middle, lux[light.grid().cell(0, 0)] / unit, 1e-6);
        assertEquals(under, lux[light.grid().cell(d / 2, 0)] / unit, 1e-6);
    }

    // exact series of the infinite square array, m = 1: greatest, edge middle and least over the mean by pitch to height
    @ParameterizedTest
    @CsvSource({"0.5, 1.000064, 1, 0.999937", "1, 1.027053, 0.997912, 0.977380", "1.5, 1.209740, 0.968934, 0.866831",
        "2, 1.615660, 0.891275, 0.710002", "3, 3.046230, 0.672436, 0.447857"})
    void a_large_array_meets_the_series_of_the_infinite_one(double ratio, double greatest, double edge, double least) {
        double h = 20;
        double p = ratio * h;
        int half = (int) Math.ceil(25 / ratio);
        List<LightModule> modules = new ArrayList<>();
        for (int i = -half; i <= half; i++) {
            for (int j = -half; j <= half; j++) {
                modules.add(new LightModule(i * p, j * p, 0, point(1, 120)));
            }
        }
        double side = (half + 0.5) * p;
        // what lies beyond the array, as an even plane seen past the square of this half side: the disc's formula, widened to the square
        double beyond = missing(side / h);
        double mean = MM2_PER_M2 / (p * p);
        // a map of nine cells with centres at 0, a quarter and half a pitch
        DirectLight light = new DirectLight(new Outline(box(-side - 1, -side - 1, 2 * side + 2, 2 * side + 2)), new Grid(-p / 8, -p / 8, p / 4, 3, 3), h);
        double[] lux = new double[light.grid().size()];
        modules.forEach(module -> light.add(module, 1, lux));
        assertEquals(greatest, lux[light.grid().cell(0, 0)] / mean + beyond, 5e-4);
        assertEquals(edge, lux[light.grid().cell(p / 2, 0)] / mean + beyond, 5e-4);
        assertEquals(least, lux[light.grid().cell(p / 2, p / 2)] / mean + beyond, 5e-4);
    }

    // exact series of the endless row, m = 1: least over greatest by pitch to height
    @ParameterizedTest
    @CsvSource({"1, 0.947041", "1.25, 0.853535", "1.5, 0.728922", "2, 0.481393"})
    void a_long_row_meets_the_series_of_the_endless_one(double ratio, double leastToGreatest) {
        double h = 20;
        double p = ratio * h;
        DirectLight light = new DirectLight(new Outline(box(-60 * p, -60 * p, 120 * p, 120 * p)), new Grid(-p / 8, -p / 8, p / 4, 3, 1), h);
        double[] lux = new double[light.grid().size()];
        for (int i = -50; i <= 50; i++) {
            light.add(new LightModule(i * p, 0, 0, point(1, 120)), 1, lux);
        }
        assertEquals(leastToGreatest, lux[light.grid().cell(p / 2, 0)] / lux[light.grid().cell(0, 0)], 1e-5);
    }

    /** 1 minus four times the view factor of a square of half side a (in heights) from its middle. */
    private static double missing(double a) {
        double root = Math.sqrt(1 + a * a);
        return 1 - 4 / (2 * Math.PI) * 2 * a / root * Math.atan(a / root);
    }

    @Test
    void a_counter_blocks_light() {
        Polygon ring = polygon("POLYGON ((0 0, 300 0, 300 300, 0 300, 0 0), (100 100, 200 100, 200 200, 100 200, 100 100))");
        DirectLight light = new DirectLight(ring, 100, 2);
        double[] lux = new double[light.grid().size()];
        light.add(new LightModule(50, 150, 0, point(100, 120)), 1, lux);
        assertEquals(0, lux[light.grid().cell(251, 151)], "right behind the counter");
        assertEquals(0, lux[light.grid().cell(151, 151)], "in the counter");
        // the shadow's edge runs from (50, 150) through the corner (100, 100): at x = 125 it stands at y = 75
        assertTrue(lux[light.grid().cell(125, 71)] > 0);
        assertEquals(0, lux[light.grid().cell(125, 79)]);
        assertEquals(closedForm(100, 1, 100, 60), lux[light.grid().cell(51, 91)], closedForm(100, 1, 100, 0) * 1e-2);
    }

    @Test
    void an_emitter_outside_the_can_adds_nothing_and_taking_away_undoes_adding() {
        DirectLight light = new DirectLight(box(0, 0, 100, 50), 50, 2);
        double[] lux = new double[light.grid().size()];
        light.add(new LightModule(150, 25, 0, point(100, 120)), 1, lux);
        for (double each : lux) {
            assertEquals(0, each);
        }
        LightModule module = new LightModule(30, 25, 20, new LightModuleType("", 90, 150, 60, 15, 5, 3, 20));
        light.add(module, 1, lux);
        assertTrue(lux[light.grid().cell(30, 25)] > 0);
        light.add(module, -1, lux);
        for (double each : lux) {
            assertEquals(0, each, 1e-9);
        }
    }
}
