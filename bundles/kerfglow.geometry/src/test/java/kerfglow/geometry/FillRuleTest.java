// SPDX-License-Identifier: Apache-2.0
package kerfglow.geometry;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.algorithm.locate.IndexedPointInAreaLocator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Location;
import org.locationtech.jts.geom.Point;
import org.locationtech.jts.geom.util.AffineTransformation;
import org.locationtech.jts.operation.distance.IndexedFacetDistance;

class FillRuleTest {
    private static final GeometryFactory FACTORY = new GeometryFactory();

    /** Rings as "x y x y ..." with "/" between them; areas by hand. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            one square              | 0 0 10 0 10 10 0 10                                   | 100 | 100
            closed by hand          | 0 0 10 0 10 10 0 10 0 0                               | 100 | 100
            hole turning apart      | 0 0 10 0 10 10 0 10 / 2 2 2 8 8 8 8 2                 | 64  | 64
            hole turning alike      | 0 0 10 0 10 10 0 10 / 2 2 8 2 8 8 2 8                 | 100 | 64
            island in a hole        | 0 0 10 0 10 10 0 10 / 2 2 2 8 8 8 8 2 / 4 4 6 4 6 6 4 6 | 68 | 68
            the same ring twice     | 0 0 10 0 10 10 0 10 / 0 0 10 0 10 10 0 10             | 100 | 0
            twice, turning apart    | 0 0 10 0 10 10 0 10 / 0 0 0 10 10 10 10 0             | 0   | 0
            overlap                 | 0 0 6 0 6 6 0 6 / 4 4 10 4 10 10 4 10                 | 68  | 64
            overlap, turning apart  | 0 0 6 0 6 6 0 6 / 4 4 4 10 10 10 10 4                 | 64  | 64
            figure of eight         | 0 0 10 10 10 0 0 10                                   | 50  | 50
            touching along an edge  | 0 0 5 0 5 10 0 10 / 5 0 10 0 10 10 5 10               | 100 | 100
            touching in a corner    | 0 0 5 0 5 5 0 5 / 5 5 10 5 10 10 5 10                 | 50  | 50
            hole touching the shell | 0 0 10 0 10 10 0 10 / 0 5 5 8 5 2                     | 85  | 85
            spike                   | 0 0 10 0 10 10 5 10 5 20 5 10 0 10                    | 100 | 100
            there and back          | 0 0 10 0                                              | 0   | 0
            flat ring               | 0 0 5 0 10 0                                          | 0   | 0
            repeated corners        | 0 0 0 0 10 0 10 0 10 10 0 10 0 10                     | 100 | 100
            run round twice         | 0 0 10 0 10 10 0 10 0 0 10 0 10 10 0 10               | 100 | 0
            """)
    void areas_by_hand(String name, String rings, double nonzero, double evenodd) {
        Geometry byNonzero = FillRule.NONZERO.area(parse(rings), FACTORY);
        Geometry byEvenodd = FillRule.EVENODD.area(parse(rings), FACTORY);
        assertEquals(nonzero, byNonzero.getArea(), 1e-9, "nonzero");
        assertEquals(evenodd, byEvenodd.getArea(), 1e-9, "even-odd");
        assertTrue(byNonzero.isValid() && byEvenodd.isValid());
    }

    /** A line that runs back over itself paints nothing; in a turned drawing rounding gives it a width that nobody drew. */
    @Test
    void a_spike_without_width_leaves_no_corner_however_it_is_turned() {
        Coordinate[] spiked = {new Coordinate(0, 0), new Coordinate(100, 0), new Coordinate(100, -2), new Coordinate(100, 80), new Coordinate(0, 80)};
        for (int degrees = 0; degrees < 360; degrees += 7) {
            AffineTransformation turn = AffineTransformation.rotationInstance(Math.toRadians(degrees), 500, 300);
            Coordinate[] turned = Arrays.stream(spiked).map(each -> turn.transform(each, new Coordinate())).toArray(Coordinate[]::new);
            Geometry area = FillRule.NONZERO.area(List.<Coordinate[]>of(turned), new GeometryFactory());
            assertEquals(8000, area.getArea(), 1e-3, degrees + " degrees");
            assertEquals(360, area.getLength(), 1e-3, degrees + " degrees");
        }
    }

    @Test
    void no_rings_paint_nothing() {
        assertTrue(FillRule.NONZERO.area(List.of(), FACTORY).isEmpty());
        assertTrue(FillRule.NONZERO.area(List.<Coordinate[]>of(new Coordinate[0]), FACTORY).isEmpty());
    }

    /** Regular five-pointed star of circumradius R drawn in one stroke: the inner pentagon has circumradius R / phi². */
    @Test
    void star() {
        double r = 10;
        Coordinate[] star = new Coordinate[5];
        for (int i = 0; i < 5; i++) {
            double a = Math.toRadians(144 * i);
            star[i] = new Coordinate(r * Math.cos(a), r * Math.sin(a));
        }
        double inner = r / Math.pow((1 + Math.sqrt(5)) / 2, 2);
        double core = 2.5 * inner * inner * Math.sin(Math.toRadians(72));
        double whole = 5 * r * inner * Math.sin(Math.toRadians(36));
        assertEquals(whole, FillRule.NONZERO.area(List.<Coordinate[]>of(star), FACTORY).getArea(), 1e-9);
        assertEquals(whole - core, FillRule.EVENODD.area(List.<Coordinate[]>of(star), FACTORY).getArea(), 1e-9);
    }

    @Test
    void corners_of_rings_that_do_not_meet_come_back_exactly() {
        Coordinate[] ring = {new Coordinate(0.1, 0.2), new Coordinate(1 / 3.0, Math.PI), new Coordinate(1e3 + 1e-9, 7)};
        List<Coordinate> back = Arrays.asList(FillRule.NONZERO.area(List.<Coordinate[]>of(ring), FACTORY).getCoordinates());
        assertTrue(back.containsAll(List.of(ring)));
    }

    /** Against the definition: the sum of the angles that each ring turns round a point, in full turns. */
    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 5, 8, 13})
    void random_rings_agree_with_the_winding_number(long seed) {
        Random random = new Random(seed);
        List<Coordinate[]> rings = new ArrayList<>();
        for (int i = 0; i < 6; i++) {
            Coordinate[] ring = new Coordinate[3 + random.nextInt(12)];
            for (int k = 0; k < ring.length; k++) { // on a grid, so that corners and edges fall on each other
                ring[k] = new Coordinate(random.nextInt(12), random.nextInt(12));
            }
            rings.add(ring);
        }
        Geometry nonzero = FillRule.NONZERO.area(rings, FACTORY);
        Geometry evenodd = FillRule.EVENODD.area(rings, FACTORY);
        assertTrue(nonzero.isValid() && evenodd.isValid());
        assertFalse(nonzero.equalsTopo(evenodd), "the sample must tell the rules apart");
        IndexedPointInAreaLocator inNonzero = new IndexedPointInAreaLocator(nonzero);
        IndexedPointInAreaLocator inEvenodd = new IndexedPointInAreaLocator(evenodd);
        IndexedFacetDistance edges = new IndexedFacetDistance(nonzero.getBoundary().union(evenodd.getBoundary()));
        for (int i = 0; i < 2000; i++) {
            Point point = FACTORY.createPoint(new Coordinate(random.nextDouble() * 12, random.nextDouble() * 12));
            if (edges.distance(point) < 1e-6) {
                continue;
            }
            int winding = winding(rings, point.getCoordinate());
            assertEquals(winding != 0, inNonzero.locate(point.getCoordinate()) == Location.INTERIOR, () -> "nonzero at " + point);
            assertEquals((winding & 1) != 0, inEvenodd.locate(point.getCoordinate()) == Location.INTERIOR, () -> "even-odd at " + point);
        }
    }

    @Test
    void the_order_of_rings_changes_nothing() {
        List<Coordinate[]> rings = parse("0 0 10 0 10 10 0 10 / 2 2 8 2 8 8 2 8 / 5 5 15 5 15 15 5 15 / 20 20 30 20 25 30");
        Geometry before = FillRule.EVENODD.area(rings, FACTORY);
        Collections.reverse(rings);
        assertTrue(before.equalsTopo(FillRule.EVENODD.area(rings, FACTORY)));
    }

    /** The ordinary case: letters whose outlines do not meet. Measured: a quarter of a second on one thread, cold. */
    @Test
    void half_a_million_corners_take_seconds_at_most() {
        long start = System.nanoTime();
        double area = 0;
        for (int letter = 0; letter < 2000; letter++) {
            area += FillRule.NONZERO.area(List.of(circle(10, 160), circle(5, 85)), FACTORY).getArea();
        }
        assertTrue(area > 0);
        assertTrue(System.nanoTime() - start < 5e9, "490,000 corners took " + (System.nanoTime() - start) / 1e9 + " s");
    }

    private static Coordinate[] circle(double r, int n) {
        Coordinate[] ring = new Coordinate[n];
        for (int i = 0; i < n; i++) {
            ring[i] = new Coordinate(r * Math.cos(2 * Math.PI * i / n), r * Math.sin(2 * Math.PI * i / n));
        }
        return ring;
    }

    private static int winding(List<Coordinate[]> rings, Coordinate p) {
        double turn = 0;
        for (Coordinate[] ring : rings) {
            for (int i = 0; i < ring.length; i++) {
                Coordinate a = ring[i];
                Coordinate b = ring[(i + 1) % ring.length];
                turn += Math.atan2((a.x - p.x) * (b.y - p.y) - (a.y - p.y) * (b.x - p.x), (a.x - p.x) * (b.x - p.x) + (a.y - p.y) * (b.y - p.y));
            }
        }
        return (int) Math.round(turn / (2 * Math.PI));
    }

    private static List<Coordinate[]> parse(String text) {
        List<Coordinate[]> rings = new ArrayList<>();
        for (String ring : text.split("/")) {
            String[] n = ring.strip().split("\\s+");
            Coordinate[] points = new Coordinate[n.length / 2];
            for (int i = 0; i < points.length; i++) {
                points[i] = new Coordinate(Double.parseDouble(n[2 * i]), Double.parseDouble(n[2 * i + 1]));
            }
            rings.add(points);
        }
        return rings;
    }

    @Test
    void the_same_rings_give_the_same_corners_in_the_same_order_every_time() {
        List<Coordinate[]> rings = new ArrayList<>();
        for (int i = 0; i < 12; i++) {
            rings.add(FACTORY.toGeometry(new Envelope(i * 10, i * 10 + 15, 0, 20 + i)).getCoordinates());
        }
        Geometry first = FillRule.NONZERO.area(rings, FACTORY);
        for (int i = 0; i < 20; i++) {
            assertTrue(first.equalsExact(FillRule.NONZERO.area(rings, FACTORY)));
        }
    }
}
