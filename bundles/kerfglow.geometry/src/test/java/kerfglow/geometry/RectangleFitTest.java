// SPDX-License-Identifier: Apache-2.0
package kerfglow.geometry;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.util.AffineTransformation;

class RectangleFitTest {
    private static Optional<RectangleFit.Turned> bar(double length, double width, double sheetWidth, double sheetHeight) {
        return new RectangleFit(Shapes.rectangle(5, 7, length, width)).into(sheetWidth, sheetHeight);
    }

    /** A bar lies in a corner-to-corner slant when l cos t + w sin t and l sin t + w cos t both fit; derived: geometry. */
    @Test
    void a_long_bar_fits_at_a_slant_only() {
        RectangleFit.Turned slant = bar(2600, 20, 1220, 2440).orElseThrow();
        double t = Math.toRadians(slant.degrees());
        assertTrue(2600 * Math.abs(Math.cos(t)) + 20 * Math.sin(t) <= 1220, slant::toString);
        assertTrue(2600 * Math.sin(t) + 20 * Math.abs(Math.cos(t)) <= 2440, slant::toString);
        assertTrue(bar(2600, 20, 2440, 1220).isPresent());
        assertTrue(bar(2740, 20, 1220, 2440).isEmpty(), "longer than the diagonal, 2728 mm");
    }

    /** The longest bar of width w in a rectangle a x b, by bisection of the closed form over a fine grid of angles. */
    @ParameterizedTest
    @CsvSource({"1220, 2440, 20", "1220, 2440, 200", "100, 100, 5", "300, 1000, 290"})
    void fits_up_to_the_longest_bar_and_no_longer(double a, double b, double w) {
        double longest = 0;
        for (int i = 0; i <= 2_000_000; i++) {
            double t = Math.PI / 2 * i / 2_000_000;
            double l = Math.min(t == Math.PI / 2 ? 1e9 : (a - w * Math.sin(t)) / Math.cos(t), t == 0 ? 1e9 : (b - w * Math.cos(t)) / Math.sin(t));
            longest = Math.max(longest, l);
        }
        assertTrue(bar(longest - 0.01, w, a, b).isPresent());
        assertTrue(bar(longest + 0.01, w, a, b).isEmpty());
    }

    @Test
    void a_shape_as_large_as_the_rectangle_fits() {
        assertEquals(0, bar(1220, 2440, 1220, 2440).orElseThrow().degrees());
        assertEquals(90, bar(1220, 2440, 2440, 1220).orElseThrow().degrees());
        assertTrue(bar(1220.01, 2440, 1220, 2440).isEmpty());
        assertTrue(bar(1219.2, 2438.4, 1220, 2440).isPresent());
        assertTrue(bar(1220, 2440, 1219.2, 2438.4).isEmpty(), "a metric sheet's worth does not fit 48 in by 96 in");
    }

    @Test
    void a_circle_fits_by_its_diameter() {
        RectangleFit circle = new RectangleFit(Shapes.circle(50, Shapes.CHORD_ERROR_MM));
        assertTrue(circle.into(100, 100).isPresent());
        assertTrue(circle.into(99.9, 1000).isEmpty());
    }

    /** A mirrored shape fits when the shape does: the largest that fits is found from both sides of every slant. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 5, 8, 13})
    void the_largest_copy_that_fits_is_the_same_for_the_mirror_image(long seed) {
        Random random = new Random(seed);
        Coordinate[] corners = {new Coordinate(0, 0), new Coordinate(1000, 0), new Coordinate(1000 * random.nextDouble(), 20 + 60 * random.nextDouble())};
        Geometry shape = Shapes.FACTORY.createMultiPointFromCoords(corners);
        double largest = largest(shape);
        assertTrue(largest > 1.22, "it must fit at a slant only");
        assertEquals(largest, largest(AffineTransformation.scaleInstance(-1, 1).transform(shape)), 1e-5);
    }

    private static double largest(Geometry shape) {
        double low = 0.1;
        double high = 10;
        while (high - low > 1e-6) {
            double middle = (low + high) / 2;
            boolean fits = new RectangleFit(AffineTransformation.scaleInstance(middle, middle).transform(shape)).into(1220, 800).isPresent();
            low = fits ? middle : low;
            high = fits ? high : middle;
        }
        return low;
    }

    @Test
    void refuses_an_empty_shape() {
        Geometry empty = Shapes.FACTORY.createPolygon();
        assertThrows(IllegalArgumentException.class, () -> new RectangleFit(empty));
    }

    /** Against GEOS: area of the minimum rotated rectangle by shapely, Debian's package python3-shapely. */
    @Test
    void smallest_rectangles_are_those_of_an_independent_program() throws Exception {
        Random random = new Random(4);
        List<Geometry> shapes = new ArrayList<>();
        StringBuilder program = new StringBuilder("from shapely import wkt\n");
        for (int i = 0; i < 40; i++) {
            Coordinate[] points = new Coordinate[5 + i];
            for (int j = 0; j < points.length; j++) {
                points[j] = new Coordinate(random.nextGaussian() * 300, random.nextGaussian() * 40);
            }
            Geometry shape = AffineTransformation.rotationInstance(random.nextDouble() * 3).transform(Shapes.FACTORY.createMultiPointFromCoords(points));
            shapes.add(shape);
            program.append("print(wkt.loads('").append(shape.toText()).append("').minimum_rotated_rectangle.area)\n");
        }
        String[] areas = shapely(program.toString()).strip().split("\\s+");
        assertEquals(shapes.size(), areas.length);
        for (int i = 0; i < areas.length; i++) {
            RectangleFit.Turned smallest = new RectangleFit(shapes.get(i)).smallestRectangle();
            double area = Double.parseDouble(areas[i]);
            assertEquals(area, smallest.widthMm() * smallest.heightMm(), 1e-6 * area);
        }
    }

    private static String shapely(String program) throws IOException, InterruptedException {
        Process python;
        try {
            python = new ProcessBuilder("/usr/bin/python3", "-").redirectError(ProcessBuilder.Redirect.INHERIT).start();
        } catch (IOException missing) {
            throw new AssertionError("this test needs Debian's packages python3 and python3-shapely", missing);
        }
        python.getOutputStream().write(program.getBytes(StandardCharsets.UTF_8));
        python.getOutputStream().close();
        String out = new String(python.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertEquals(0, python.waitFor(), "this test needs Debian's package python3-shapely");
        return out;
    }

    /** Wherever a fit is claimed it is there, and where a fine sweep finds one it is claimed. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 5, 8, 13})
    void agrees_with_a_sweep_of_angles(long seed) {
        Random random = new Random(seed);
        int fits = 0;
        for (int round = 0; round < 40; round++) {
            Coordinate[] points = new Coordinate[4 + random.nextInt(8)];
            for (int j = 0; j < points.length; j++) {
                points[j] = new Coordinate(random.nextDouble() * 120, random.nextDouble() * 30);
            }
            RectangleFit fit = new RectangleFit(Shapes.FACTORY.createMultiPointFromCoords(points));
            double width = 60 + random.nextDouble() * 40;
            double height = 30 + random.nextDouble() * 70;
            Optional<RectangleFit.Turned> found = fit.into(width, height);
            boolean swept = false;
            for (int i = 0; i < 1800; i++) {
                RectangleFit.Turned turned = fit.at(i / 10.0);
                swept |= turned.widthMm() <= width && turned.heightMm() <= height;
            }
            assertTrue(!swept || found.isPresent(), "missed a fit");
            if (found.isPresent()) {
                fits++;
                assertTrue(found.get().widthMm() <= width + 1e-6 && found.get().heightMm() <= height + 1e-6, found::toString);
                assertEquals(fit.at(found.get().degrees()), found.get());
            }
        }
        assertTrue(fits > 3 && fits < 40, "the sample must hold shapes that fit and shapes that do not");
    }
}
