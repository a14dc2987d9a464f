// SPDX-License-Identifier: Apache-2.0
package kerfglow.geometry;

import static kerfglow.geometry.Shapes.annulus;
import static kerfglow.geometry.Shapes.polygon;
import static kerfglow.geometry.Shapes.rectangle;
import static kerfglow.geometry.Shapes.stroke;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.locationtech.jts.geom.Polygon;

/** Areas: derived, geometry (erosion A - P r + S r², opening A - (S - pi) r² of a convex polygon, S the sum of cot(angle / 2)). */
class OpeningTest {
    private static final double CHORD_ERROR_MM = 1e-5;
    private static final double AREA_TOLERANCE_MM2 = 2e-3;

    @ParameterizedTest
    @CsvSource({"1, 64, 99.14159265", "2, 36, 96.56637061"})
    void a_square_of_10(double radius, double eroded, double opened) {
        assertAreas(rectangle(0, 0, 10, 10), radius, eroded, opened);
    }

    @Test
    void a_triangle_and_a_pentagon() {
        assertAreas(polygon("POLYGON ((0 0, 10 0, 5 8.660254037844386, 0 0))"), 1, 18.4974226119, 41.2467104);
        assertAreas(polygon("POLYGON ((0 0, 30 0, 40 15, 25 30, 5 22, 0 0))"), 3, 531.6010153808, 831.6453763411);
    }

    @Test
    void a_stadium_and_an_annulus_survive_a_disc_that_fits_and_no_other() {
        Polygon stadium = stroke("LINESTRING (0 0, 20 0)", 10, true);
        assertEquals(210.2654825, Opening.erosion(stadium, 1, CHORD_ERROR_MM).getArea(), 0.05);
        assertEquals(stadium.getArea(), Opening.opening(stadium, 4.9, CHORD_ERROR_MM).getArea(), 0.05);
        assertEquals(100.5309649, Opening.erosion(annulus(6, 10, 1e-4), 1, CHORD_ERROR_MM).getArea(), 0.02);
        assertTrue(Opening.opening(annulus(6, 10, 1e-4), 2.1, CHORD_ERROR_MM).isEmpty());
    }

    @ParameterizedTest
    @CsvSource({"2, 3373.132741", "2.9, 3365.561588", "3.1, 3204.110862", "4, 3183.794444", "6, 3144.716868", "10, 3032.020709"})
    void a_dumbbell(double radius, double opened) {
        assertEquals(opened, Opening.opening(polygon(Shapes.DUMBBELL), radius, CHORD_ERROR_MM).getArea(), 0.01);
    }

    @Test
    void the_reach_of_a_bit_is_what_an_opening_loses() {
        Polygon comb = polygon("POLYGON ((0 0, 70 0, 65 40, 50 12, 47 40, 30 30, 28 8, 24 33, 10 40, 8 20, 0 30, 0 0))");
        for (double diameter : new double[] {1, 3.175, 6.35, 12.7}) {
            double lost = Opening.difference(comb, Opening.opening(comb, diameter / 2, CHORD_ERROR_MM)).getArea();
            double left = new BitReach(diameter, 0, 150, () -> { }).inOpening(comb).stream().mapToDouble(r -> r.area().getArea()).sum();
            assertTrue(lost > 0.1);
            assertEquals(lost, left, 0.002 * Math.PI * diameter * 3);
        }
    }

    @Test
    void chords_stay_within_their_error() {
        int segments = Opening.quadrantSegments(1.5875, 0.002);
        assertTrue(1.5875 * (1 - Math.cos(Math.PI / 4 / segments)) <= 0.002);
        assertTrue(1.5875 * (1 - Math.cos(Math.PI / 4 / (segments - 1))) > 0.002);
        assertThrows(IllegalArgumentException.class, () -> Opening.quadrantSegments(0, 0.1));
    }

    private static void assertAreas(Polygon shape, double radius, double eroded, double opened) {
        assertEquals(eroded, Opening.erosion(shape, radius, CHORD_ERROR_MM).getArea(), AREA_TOLERANCE_MM2);
        assertEquals(opened, Opening.opening(shape, radius, CHORD_ERROR_MM).getArea(), AREA_TOLERANCE_MM2);
    }
}
