// SPDX-License-Identifier: Apache-2.0
package kerfglow.geometry;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.util.AffineTransformation;

/** What holds for every shape. */
class NarrowPropertyTest {
    private static final double LIMIT_MM = 3;
    private static final double FACING = 150;

    /** Blobs on a winding line of changing width: necks, stubs and corners of every kind. */
    private static Polygon shape(long seed) {
        Random random = new Random(seed);
        Geometry all = Shapes.FACTORY.createPolygon();
        Coordinate from = new Coordinate(0, 0);
        for (int i = 0; i < 8; i++) {
            Coordinate to = new Coordinate(from.x + 12 + 14 * random.nextDouble(), from.y + 30 * random.nextDouble() - 15);
            LineString line = Shapes.FACTORY.createLineString(new Coordinate[] {from, to});
            all = all.union(line.buffer(0.6 + 1.6 * random.nextDouble(), 6 + random.nextInt(10)));
            all = all.union(Shapes.FACTORY.createPoint(to).buffer(2 + 4 * random.nextDouble(), 12));
            from = to;
        }
        return (Polygon) all;
    }

    private static List<Stretch> narrower(Geometry area, double limit) {
        return LocalWidth.narrowerThan(area, limit, FACING, Shapes.NO_PULSE);
    }

    private static List<String> summary(List<Stretch> stretches, double scale) {
        return stretches.stream().map(s -> "%s %.4f %.2f".formatted(s.kind(), s.widthMm() / scale, s.lengthMm() / scale)).sorted().toList();
    }

    private static List<String> left(Polygon area, double diameter, double scale) {
        List<Residue> all = new ArrayList<>(new BitReach(diameter, 0.1 * scale, FACING, Shapes.NO_PULSE).aroundPart(area, ring -> true));
        return all.stream().map(r -> "%s %.4f %.3f".formatted(r.kind(), r.widthMm() / scale, r.depthMm() / scale)).sorted().toList();
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 5, 8, 13, 21, 34})
    void rigid_motions_mirroring_and_vertex_order_change_nothing(long seed) {
        Random random = new Random(seed);
        Polygon shape = shape(seed);
        List<String> thin = summary(narrower(shape, LIMIT_MM), 1);
        List<String> left = left(shape, 6, 1);
        assertTrue(!thin.isEmpty() && !left.isEmpty(), "the sample must hold something narrow");
        AffineTransformation motion = AffineTransformation.scaleInstance(random.nextBoolean() ? -1 : 1, 1)
                .rotate(random.nextDouble() * 7).translate(500, -200);
        Polygon moved = (Polygon) motion.transform(shape);
        assertEquals(thin, summary(narrower(moved, LIMIT_MM), 1));
        assertEquals(left, left(moved, 6, 1));
        assertEquals(thin, summary(narrower(shape.reverse(), LIMIT_MM), 1));
        assertEquals(left, left(shape.reverse(), 6, 1));
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 5, 8, 13})
    void scaling_shape_and_limit_together_scales_the_findings(long seed) {
        Polygon shape = shape(seed);
        Polygon larger = (Polygon) AffineTransformation.scaleInstance(4, 4).transform(shape);
        assertEquals(summary(narrower(shape, LIMIT_MM), 1).size(), summary(narrower(larger, 4 * LIMIT_MM), 4).size());
        List<Stretch> small = narrower(shape, LIMIT_MM);
        List<Stretch> large = narrower(larger, 4 * LIMIT_MM);
        assertEquals(small.size(), large.size());
        for (int i = 0; i < small.size(); i++) {
            assertEquals(small.get(i).kind(), large.get(i).kind());
            assertEquals(4 * small.get(i).widthMm(), large.get(i).widthMm(), 0.004);
        }
        assertEquals(left(shape, 6, 1), left(larger, 24, 4));
    }

    /** Stretches may grow together when the limit rises, but every narrow place stays inside one. */
    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 5, 8, 13})
    void a_stricter_limit_never_loses_a_stretch(long seed) {
        Polygon shape = shape(seed);
        List<Stretch> before = narrower(shape, 1.6);
        for (double limit = 1.8; limit < 6; limit += 0.7) {
            List<Stretch> after = narrower(shape, limit);
            for (Stretch lost : before) {
                assertTrue(after.stream().anyMatch(s -> s.axis().isWithinDistance(Shapes.FACTORY.createPoint(lost.at()), 1e-3)
                        && s.widthMm() <= lost.widthMm() + 1e-9), () -> "lost " + lost.kind() + " " + lost.widthMm() + " at " + lost.at());
            }
            before = after;
        }
        assertTrue(!before.isEmpty());
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3})
    void the_shape_is_unchanged_and_two_runs_agree(long seed) {
        Polygon shape = shape(seed);
        Geometry copy = shape.copy();
        List<Stretch> first = narrower(shape, LIMIT_MM);
        List<Stretch> second = narrower(shape, LIMIT_MM);
        assertEquals(first.toString(), second.toString());
        assertEquals(new BitReach(6, 0.1, FACING, Shapes.NO_PULSE).aroundPart(shape, ring -> true).toString(),
                new BitReach(6, 0.1, FACING, Shapes.NO_PULSE).aroundPart(shape, ring -> true).toString());
        assertTrue(shape.equalsExact(copy));
    }

    /**
     * A brute-force twin for the widths: at every point of an axis the distance to the nearest wall is half the width there, and
     * nowhere in a stretch is it less than half the least width, ends of strokes left out.
     */
    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 5, 8, 13})
    void the_least_width_is_the_least_distance_to_the_walls_along_the_axis(long seed) {
        Polygon shape = shape(seed);
        int seen = 0;
        for (Stretch stretch : narrower(shape, LIMIT_MM)) {
            double least = Double.POSITIVE_INFINITY;
            for (Coordinate centre : stretch.axis().getCoordinates()) {
                double distance = shape.getBoundary().distance(Shapes.FACTORY.createPoint(centre));
                assertTrue(2 * distance <= LIMIT_MM + 1e-3);
                least = Math.min(least, 2 * distance);
                seen++;
            }
            assertEquals(least, stretch.widthMm(), 0.01);
        }
        assertTrue(seen > 20);
    }
}
