// SPDX-License-Identifier: Apache-2.0
package kerfglow.geometry;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;

class UnionTest {
    private static final GeometryFactory FACTORY = new GeometryFactory();

    /** Against JTS's own union of all with all, which knows no clusters. */
    @ParameterizedTest(name = "seed {0}") @ValueSource(longs = {1, 2, 3, 5, 8, 13, 21, 34})
    void is_the_same_set_of_points_as_cutting_everything_with_everything(long seed) {
        Random random = new Random(seed);
        List<Geometry> areas = new ArrayList<>();
        for (int i = 0; i < 60; i++) {
            Geometry disc = FACTORY.createPoint(new Coordinate(random.nextDouble() * 400, random.nextDouble() * 400)).buffer(2 + random.nextDouble() * 30);
            areas.add(random.nextBoolean() ? disc : disc.difference(disc.buffer(-2)));
        }
        areas.add(FACTORY.toGeometry(new Envelope(100, 220, 100, 260)));
        Geometry mine = Union.of(areas);
        Geometry theirs = OverlayNGRobust.union(areas);
        assertTrue(theirs.getNumGeometries() > 1, "some lie apart, or clusters are not tried");
        assertTrue(mine.isValid());
        assertEquals(theirs.getArea(), mine.getArea(), 1e-6);
        assertEquals(0, mine.symDifference(theirs).getArea(), 1e-6);
        assertEquals(theirs.getNumGeometries(), mine.getNumGeometries());
    }

    @Test void areas_side_by_side_are_not_touched() {
        Geometry left = box(0, 10);
        Geometry right = box(20, 30);
        Geometry both = Union.of(List.of(left, right));
        assertSame(left, both.getGeometryN(0));
        assertSame(right, both.getGeometryN(1));
    }

    @Test void what_lies_within_another_is_swallowed_and_leaves_no_corner() {
        Geometry panel = FACTORY.toGeometry(new Envelope(0, 100, 0, 100));
        assertSame(panel, Union.of(List.of(box(5, 10), panel, box(0, 20))));
    }

    @Test void areas_that_share_an_edge_become_one() {
        assertTrue(Union.of(List.of(box(0, 10), box(10, 20))).equalsTopo(box(0, 20)));
    }

    @Test void empty_areas_add_nothing_and_no_area_at_all_is_refused() {
        assertTrue(Union.of(List.of(FACTORY.createPolygon())).isEmpty());
        assertEquals(100, Union.of(List.of(FACTORY.createPolygon(), box(0, 10))).getArea());
        assertThrows(IllegalArgumentException.class, () -> Union.of(List.of()));
    }

    private static Geometry box(double from, double to) {
        return FACTORY.toGeometry(new Envelope(from, to, 0, 10));
    }
}
