// SPDX-License-Identifier: Apache-2.0
package kerfglow.light;

import static kerfglow.light.DirectLightTest.box;
import static kerfglow.light.DirectLightTest.point;
import static kerfglow.light.DirectLightTest.polygon;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.CancellationException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.util.AffineTransformation;

class CavityTest {
    private static final Runnable NO_PULSE = () -> { };
    /** A letter with a counter, a leg and slanting walls, 300 mm high, strokes about 60 mm. */
    static final Polygon LETTER = polygon("POLYGON ((0 0, 130 0, 165 12, 188 36, 196 75, 188 114, 168 138, 140 150, 205 300, 138 300, 80 165, 60 165, "
            + "60 300, 0 300, 0 0), (60 52, 60 115, 112 115, 128 106, 134 84, 128 61, 112 52, 60 52))");
    private static final Finish WHITE = new Finish(0.8, 0.8, 0.35, 0.5, 0);

    static List<LightModule> modules() {
        LightModuleType type = new LightModuleType("", 60, 150, 50, 15, 6, 2, 30);
        List<LightModule> modules = new ArrayList<>();
        for (double[] at : new double[][] {{30, 30, 90}, {30, 95, 90}, {30, 160, 90}, {30, 225, 90}, {30, 280, 90}, {90, 26, 0}, {150, 40, 30},
            {162, 90, 90}, {120, 140, 0}, {130, 195, 65}, {155, 250, 65}}) {
            modules.add(new LightModule(at[0], at[1], at[2], type));
        }
        return modules;
    }

    private static LightMap light(Can can, Accuracy accuracy, List<LightModule> modules) {
        return Cavity.of(can, accuracy, NO_PULSE).light(modules, NO_PULSE);
    }

    // view factors of equal squares from the radiative heat transfer literature: parallel, a side apart 0.1998; at right angles with an edge
    // in common 0.2000
    @Test
    void view_factors_of_a_cube_are_those_of_the_literature() {
        Polygon square = box(0, 0, 100, 100);
        Outline outline = new Outline(square);
        Patches patches = Patches.of(square, outline, 100, 100 / 6.0, 1600);
        Exchange exchange = new Exchange(outline, patches, 100, 48, NO_PULSE);
        int perWall = (patches.size() - 2 * patches.plan) / 4;
        assertEquals(0.1998, between(exchange, patches, 0, patches.plan, patches.plan, 2 * patches.plan), 0.002, "back to face");
        for (int wall = 0; wall < 4; wall++) {
            int first = 2 * patches.plan + wall * perWall;
            assertEquals(0.2000, between(exchange, patches, 0, patches.plan, first, first + perWall), 0.002, "back to wall");
            int next = 2 * patches.plan + (wall + 1) % 4 * perWall;
            assertEquals(0.2000, between(exchange, patches, first, first + perWall, next, next + perWall), 0.002, "wall to the wall beside it");
            int other = 2 * patches.plan + (wall + 2) % 4 * perWall;
            assertEquals(0.1998, between(exchange, patches, first, first + perWall, other, other + perWall), 0.002, "wall to the wall across");
        }
    }

    private static double between(Exchange exchange, Patches patches, int from, int fromEnd, int to, int toEnd) {
        double sum = 0;
        double area = 0;
        for (int i = from; i < fromEnd; i++) {
            area += patches.areas[i];
            for (int j = to; j < toEnd; j++) {
                sum += patches.areas[i] * exchange.viewFactor(i, j);
            }
        }
        return sum / area;
    }

    // flux rho / (A (1 - rho)), the geometric series: exact for the mean over the whole inner area, whatever the shape
    @ParameterizedTest
    @ValueSource(doubles = {0.5, 0.8, 0.95, 0.99})
    void a_closed_white_cavity_fills_with_the_geometric_series(double reflectance) {
        Can cube = new Can(box(0, 0, 100, 100), 100, new Finish(reflectance, reflectance, reflectance, 0, 0));
        LightMap.Balance balance = light(cube, Accuracy.usual(), List.of(new LightModule(50, 50, 0, point(100, 120)))).balance();
        double area = 6 * 100 * 100;
        double arriving = (balance.back() + balance.walls() + balance.faceLost()) / (1 - reflectance);
        double series = 100 * reflectance / (area * (1 - reflectance)) * 1e6;
        assertEquals(series, (arriving - 100) / area * 1e6, series * 0.01);
    }

    @Test
    void black_surfaces_leave_exactly_the_direct_sum() {
        LightMap map = light(new Can(LETTER, 80, Finish.black()), Accuracy.usual(), modules());
        DirectLight direct = new DirectLight(LETTER, 80, 2);
        double[] lux = new double[direct.grid().size()];
        modules().forEach(module -> direct.add(module, 1, lux));
        assertArrayEquals(lux, map.lux(), 0);
        assertEquals(1, map.directShare());
        for (int i = 0; i < lux.length; i++) {
            assertEquals(lux[i] / Math.PI, map.luminance()[i], 1e-9 * lux[i], "no diffuser, all let through");
        }
    }

    @ParameterizedTest
    @CsvSource({"0, 0, 0", "0.8, 0.8, 0.35", "0.9, 0.3, 0", "0.2, 0.9, 0.6", "0.95, 0.95, 0.5"})
    void no_light_is_lost(double back, double walls, double face) {
        LightMap.Balance balance = light(new Can(LETTER, 80, new Finish(back, walls, face, 0.4, 0)), Accuracy.usual(), modules()).balance();
        assertEquals(11 * 60, balance.emitted(), 1e-6);
        assertEquals(0, balance.error(), 0.01, balance.toString());
    }

    @Test
    void photons_traced_by_chance_agree() {
        Can can = new Can(LETTER, 80, WHITE);
        Grid coarse = Grid.over(LETTER.getEnvelopeInternal(), 20);
        PhotonTracer tracer = new PhotonTracer(can, coarse, 20);
        int photons = 40_000;
        for (LightModule module : modules()) {
            module.emitters().forEach(emitter -> tracer.send(emitter, module.type().heightMm(), module.type().exponent(), photons));
        }
        LightMap map = light(can, Accuracy.usual(), modules());
        double perPhoton = 30.0 / photons;
        double[] expected = new double[coarse.size()];
        for (int i = 0; i < map.grid().size(); i++) {
            Coordinate at = map.grid().at(i);
            expected[coarse.cell(at.x, at.y)] += map.lux()[i] * map.grid().cellMm() * map.grid().cellMm() * 1e-6 / perPhoton;
        }
        int compared = 0;
        double square = 0;
        double arrived = 0;
        double due = 0;
        for (int i = 0; i < expected.length; i++) {
            Coordinate at = coarse.at(i);
            if (LETTER.contains(box(at.x - 10, at.y - 10, 20, 20))) {
                double sigmas = (expected[i] - tracer.arrivals[i]) / Math.sqrt(tracer.squares[i]);
                assertTrue(Math.abs(sigmas) < 4, at + ": " + expected[i] + " photons were due, " + tracer.arrivals[i] + " came, " + sigmas + " sigma");
                square += sigmas * sigmas;
                arrived += tracer.arrivals[i];
                due += expected[i];
                compared++;
            }
        }
        assertTrue(compared > 40, "cells compared: " + compared);
        // of so many independent normal errors the mean square is 1 within 0.16, one sigma
        assertTrue(square / compared < 1.5, "mean square of the errors in sigmas: " + square / compared);
        assertEquals(1, due / arrived, 0.003, "the whole of them, known to about 0.001");
    }

    @Test
    void refinement_brings_the_map_nearer_to_a_fine_one() {
        Can can = new Can(LETTER, 80, WHITE);
        LightMap fine = light(can, new Accuracy(4, 1.0 / 8, 72), modules());
        Accuracy accuracy = new Accuracy(4, 1, 12);
        double first = difference(light(can, accuracy, modules()), fine);
        double second = difference(light(can, accuracy.finer(), modules()), fine);
        double third = difference(light(can, accuracy.finer().finer(), modules()), fine);
        String errors = first + ", " + second + ", " + third;
        assertTrue(second < first && third < second, errors);
        assertTrue(third < 0.6 * 0.6 * first, errors); // where the coarsest patches happen to lie moves the first by a quarter
        assertEquals(0, difference(light(can, Accuracy.usual().cellMm(4), modules()), fine), 0.007, "what Accuracy says of itself");
    }

    /** Root mean square difference over the mean. */
    private static double difference(LightMap one, LightMap other) {
        double sum = 0;
        int n = 0;
        for (int i = 0; i < one.lux().length; i++) {
            if (one.isLit(i)) {
                sum += (one.lux()[i] - other.lux()[i]) * (one.lux()[i] - other.lux()[i]);
                n++;
            }
        }
        return Math.sqrt(sum / n) / other.luxLevels().mean();
    }

    // patches turn with the shape, cells do not: the map keeps its mean to 0.1 % and its cells to 1 % (root mean square)
    @ParameterizedTest
    @CsvSource({"0, 1e-4, 1e-3", "90, 1e-3, 0.01", "37, 1e-3, 0.01"})
    void turning_and_moving_changes_nothing(double degrees, double meanTolerance, double tolerance) {
        AffineTransformation turn = AffineTransformation.rotationInstance(Math.toRadians(degrees)).translate(1234.567, -89.1);
        Can can = new Can(LETTER, 80, WHITE);
        Can turned = new Can((Polygon) turn.transform(LETTER), 80, WHITE);
        List<LightModule> moved = modules().stream().map(each -> {
            Coordinate at = turn.transform(new Coordinate(each.xMm(), each.yMm()), new Coordinate());
            return new LightModule(at.x, at.y, each.turnDegrees() + degrees, each.type());
        }).toList();
        LightMap before = light(can, Accuracy.usual(), modules());
        LightMap after = light(turned, Accuracy.usual(), moved);
        double mean = before.luxLevels().mean();
        assertEquals(mean, after.luxLevels().mean(), mean * meanTolerance);
        Geometry within = LETTER.buffer(-3); // the nearest cell of the turned map may lie in the wall
        double sum = 0;
        int n = 0;
        for (int i = 0; i < before.lux().length; i++) {
            Coordinate at = before.grid().at(i);
            if (within.contains(LETTER.getFactory().createPoint(at))) {
                double off = after.luxAt(turn.transform(at, new Coordinate())) - before.lux()[i];
                sum += off * off;
                n++;
            }
        }
        assertTrue(n > 5000, "the sample must not be empty");
        assertEquals(0, Math.sqrt(sum / n) / mean, tolerance);
    }

    @Test
    void a_diffuser_evens_out_and_keeps_what_is_even() {
        Finish diffuser = new Finish(0.8, 0.8, 0.35, 0.5, 8);
        Levels clear = light(new Can(LETTER, 80, WHITE), Accuracy.usual(), modules()).luminanceLevels();
        Levels spread = light(new Can(LETTER, 80, diffuser), Accuracy.usual(), modules()).luminanceLevels();
        assertEquals(clear.mean(), spread.mean(), 0.01 * clear.mean());
        assertTrue(spread.leastToGreatest() > clear.leastToGreatest());
        Grid grid = Grid.over(LETTER.getEnvelopeInternal(), 2);
        boolean[] inside = Spans.inside(grid, LETTER);
        double[] even = new double[grid.size()];
        Arrays.fill(even, 7);
        double[] blurred = Smoothing.gaussian(grid, inside, even, 4);
        for (int i = 0; i < even.length; i++) {
            assertEquals(inside[i] ? 7 : 0, blurred[i], 1e-9);
        }
    }

    // a Gaussian of sigma s makes exp(-2 (pi s / p)²) of a wave of length p
    @Test
    void the_spread_is_a_gaussian_of_its_sigma() {
        Grid grid = new Grid(0, 0, 1, 400, 400);
        boolean[] inside = new boolean[grid.size()];
        Arrays.fill(inside, true);
        double[] wave = new double[grid.size()];
        for (int i = 0; i < wave.length; i++) {
            wave[i] = Math.cos(2 * Math.PI * (grid.at(i).x + 0.5) / 40);
        }
        double[] blurred = Smoothing.gaussian(grid, inside, wave, 6);
        int crest = grid.cell(199.5, 200);
        assertEquals(1, wave[crest], 1e-9);
        assertEquals(Math.exp(-2 * Math.pow(Math.PI * 6 / 40, 2)), blurred[crest], 1e-4);
    }

    @Test
    void what_cannot_be_is_refused_by_name() {
        refused("flux must be above 0 lm", () -> point(0, 120));
        refused("beam angle must be 2.0 to 178.0 degrees", () -> point(1, 0));
        refused("beam angle must be 2.0 to 178.0 degrees", () -> point(1, 360));
        refused("depth must be above 0 mm", () -> new Can(LETTER, 0, WHITE));
        refused("back reflectance must be 0 to 0.99", () -> new Finish(1, 0, 0, 0, 0));
        refused("wall reflectance must be 0 to 0.99", () -> new Finish(0, 1, 0, 0, 0));
        refused("face reflectance must be 0 to 0.99", () -> new Finish(0, 0, 1, 0, 0));
        refused("face reflectance plus transmittance must be at most 1", () -> new Finish(0, 0, 0.6, 0.5, 0));
        refused("emitter height must be below the depth", () -> light(new Can(LETTER, 5, WHITE), Accuracy.usual(), modules()));
    }

    private static void refused(String message, Executable work) {
        String said = assertThrows(IllegalArgumentException.class, work).getMessage();
        assertTrue(said.startsWith(message), said);
    }

    @Test
    void a_cancelled_run_ends() {
        Runnable cancelled = () -> {
            throw new CancellationException();
        };
        Can can = new Can(LETTER, 80, WHITE);
        assertThrows(CancellationException.class, () -> Cavity.of(can, Accuracy.usual(), cancelled));
        Cavity cavity = Cavity.of(can, Accuracy.usual(), NO_PULSE);
        assertThrows(CancellationException.class, () -> cavity.light(modules(), cancelled));
    }
}
