// SPDX-License-Identifier: Apache-2.0
package kerfglow.geometry;

import static kerfglow.geometry.Shapes.annulus;
import static kerfglow.geometry.Shapes.circle;
import static kerfglow.geometry.Shapes.geometry;
import static kerfglow.geometry.Shapes.rectangle;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.util.AffineTransformation;

class CongruenceTest {
    private static final double TOLERANCE_MM = 0.02;
    private static final List<String> SHAPES = List.of(
            "POLYGON ((0 0, 40 0, 40 10, 10 10, 10 60, 0 60, 0 0))",
            "POLYGON ((0 0, 30 0, 30 30, 0 30, 0 0))",
            "POLYGON ((0 0, 30 0, 15 25.98076211353316, 0 0))",
            "POLYGON ((0 0, 60 0, 60 40, 32 40, 32 20, 28 20, 28 40, 0 40, 0 0))",
            "POLYGON ((0 0, 100 0, 100 50, 0 50, 0 0), (10 10, 20 10, 20 40, 10 40, 10 10))",
            "LINESTRING (0 0, 10 3, 20 4, 30 1)",
            "LINESTRING (0 0, 12 0)",
            "MULTILINESTRING ((0 0, 0 30), (0 0, 26 -15), (0 0, -20 -15))",
            "MULTIPOINT ((0 0), (3 0), (0 5))",
            "MULTIPOLYGON (((0 0, 5 0, 5 5, 0 0)), ((20 0, 22 0, 22 9, 20 0)))");

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 5, 8, 13})
    void a_shape_is_congruent_to_itself_moved_turned_mirrored_and_reversed(long seed) {
        Random random = new Random(seed);
        for (String wkt : SHAPES) {
            Geometry shape = geometry(wkt);
            AffineTransformation motion = new AffineTransformation();
            if (random.nextBoolean()) {
                motion.scale(-1, 1);
            }
            motion.rotate(random.nextDouble() * 7).translate(random.nextDouble() * 3000, -random.nextDouble() * 3000);
            Geometry moved = motion.transform(shape).reverse();
            assertTrue(Congruence.congruent(shape, moved, TOLERANCE_MM), wkt);
            assertTrue(Congruence.congruent(moved, shape, TOLERANCE_MM), wkt);
            assertFalse(Collections.disjoint(Congruence.buckets(shape, TOLERANCE_MM), Congruence.buckets(moved, TOLERANCE_MM)), wkt);
        }
    }

    @Test
    void different_shapes_are_not_congruent() {
        for (int i = 0; i < SHAPES.size(); i++) {
            for (int j = i + 1; j < SHAPES.size(); j++) {
                assertFalse(Congruence.congruent(geometry(SHAPES.get(i)), geometry(SHAPES.get(j)), TOLERANCE_MM), i + " and " + j);
            }
        }
        // a tenth longer on one side; same area and length, sides exchanged
        assertFalse(Congruence.congruent(rectangle(0, 0, 30, 30), rectangle(0, 0, 30, 30.1), TOLERANCE_MM));
        assertFalse(Congruence.congruent(geometry("POLYGON ((0 0, 40 0, 40 10, 10 10, 10 60, 0 60, 0 0))"),
                geometry("POLYGON ((0 0, 40 0, 40 10, 25 10, 25 60, 15 60, 15 10, 0 10, 0 0))"), TOLERANCE_MM));
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.1, 0.5, 1.3, 2.9})
    void where_the_vertices_of_a_curve_lie_does_not_matter(double turn) {
        Geometry coarse = rectangle(0, 0, 60, 20).buffer(12, 16).difference(geometry("POINT (20 10)").buffer(6, 16));
        Geometry other = AffineTransformation.rotationInstance(turn).transform(
                rectangle(0, 0, 60, 20).buffer(12, 45).difference(geometry("POINT (20 10)").buffer(6, 33)));
        // sagittas of the coarse curves: 12 (1 - cos(pi / 64)) = 0.0145
        assertTrue(Congruence.congruent(coarse, other, TOLERANCE_MM));
        assertTrue(Congruence.congruent(circle(10, 0.01), AffineTransformation.rotationInstance(turn).transform(circle(10, 0.004)),
                TOLERANCE_MM));
        assertTrue(Congruence.congruent(annulus(8, 10, 0.01), AffineTransformation.rotationInstance(turn).transform(annulus(8, 10, 0.01)),
                TOLERANCE_MM));
        assertFalse(Congruence.congruent(circle(10, 0.001), circle(10.05, 0.001), TOLERANCE_MM));
    }

    @Test
    void points_are_congruent_to_points_and_empty_to_empty() {
        assertTrue(Congruence.congruent(geometry("POINT (1 2)"), geometry("POINT (-70 5)"), TOLERANCE_MM));
        assertEquals(Congruence.buckets(geometry("POINT (1 2)"), TOLERANCE_MM), Congruence.buckets(geometry("POINT (3 4)"), TOLERANCE_MM));
        assertTrue(Congruence.congruent(geometry("POLYGON EMPTY"), geometry("POLYGON EMPTY"), TOLERANCE_MM));
        assertTrue(Congruence.congruent(geometry("POINT EMPTY"), geometry("MULTIPOLYGON EMPTY"), TOLERANCE_MM));
        assertFalse(Congruence.congruent(geometry("POLYGON EMPTY"), geometry("POINT (1 2)"), TOLERANCE_MM));
        assertFalse(Congruence.congruent(geometry("POINT (1 2)"), geometry("MULTIPOINT ((0 0), (1 0))"), TOLERANCE_MM));
        assertThrows(IllegalArgumentException.class,
                () -> Congruence.congruent(geometry("POINT (1 2)"), geometry("POINT (1 2)"), 0));
    }

    @Test
    void shapes_near_the_border_of_a_bucket_still_share_one() {
        for (double radius = 10; radius < 13; radius += 0.013) {
            List<Long> keys = Congruence.buckets(circle(radius, 0.001), TOLERANCE_MM);
            List<Long> near = Congruence.buckets(circle(radius + 0.019, 0.001), TOLERANCE_MM);
            assertFalse(Collections.disjoint(keys, near), "radius " + radius);
        }
    }
}
