// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.artwork;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.concurrent.CancellationException;
import java.util.stream.Collectors;
import kerfglow.api.CheckInfo;
import kerfglow.api.Finding;
import kerfglow.api.Measure;
import kerfglow.api.Setting;
import kerfglow.api.proof.Element;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Role;
import kerfglow.testkit.CheckTester;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.util.AffineTransformation;

class ArtworkPropertyTest {
    private static final GeometryFactory FACTORY = new GeometryFactory();
    /** The page is axis-parallel, so turning a proof may push shapes over its edge; everything else must stay. */
    private static final List<String> ABOUT_THE_PAGE = List.of("artwork.off-page", "artwork.over-page-edge", "artwork.implausible-size");

    /** Overlapping stars, some open, some doubled, some with a hundred times the nodes that they need. */
    private static Drawn sample(Random random) {
        Drawn drawn = new Drawn();
        for (int i = 0; i < 24; i++) {
            Coordinate[] star = star(random, 100 + random.nextInt(800), 100 + random.nextInt(800), 40 + random.nextInt(80), 5 + random.nextInt(20));
            Geometry line = FACTORY.createLineString(star);
            switch (i % 6) {
                case 0 -> line = FACTORY.createLineString(Arrays.copyOf(star, star.length - 1));
                case 1 -> line = OutlineRulesTest.circle(star[0].x, star[0].y, 30 + random.nextInt(60), 400);
                default -> { }
            }
            drawn.path("e" + i, line, element -> element);
            if (i % 6 == 2) {
                drawn.path("copy" + i, line, element -> element);
            }
        }
        return drawn;
    }

    private static Coordinate[] star(Random random, double x, double y, double radius, int points) {
        Coordinate[] star = new Coordinate[points + 1];
        for (int i = 0; i < points; i++) {
            double angle = 2 * Math.PI * i / points;
            double r = radius * (0.4 + 0.6 * random.nextDouble());
            star[i] = new Coordinate(x + r * Math.cos(angle), y + r * Math.sin(angle));
        }
        star[points] = star[0].copy();
        return star;
    }

    /** The sum of what each rule measured, and how often it was broken. */
    private static Map<String, double[]> sums(CheckTester tester) {
        Map<String, double[]> sums = new TreeMap<>();
        for (Finding finding : tester.run().findings()) {
            if (!ABOUT_THE_PAGE.contains(finding.rule().id())) {
                double[] sum = sums.computeIfAbsent(finding.rule().id(), id -> new double[2]);
                sum[0]++;
                sum[1] += finding.measured().map(Measure::value).orElse(0.0);
            }
        }
        return sums;
    }

    private static void assertSame(Map<String, double[]> expected, Map<String, double[]> actual) {
        assertEquals(expected.keySet(), actual.keySet());
        expected.forEach((rule, sum) -> assertArrayEquals(sum, actual.get(rule), 1e-6, rule));
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 5, 8, 13})
    void turning_and_moving_the_proof_changes_no_finding(long seed) {
        Random random = new Random(seed);
        Drawn drawn = sample(random);
        Map<String, double[]> before = sums(drawn.tester());
        assertTrue(before.keySet().containsAll(List.of("artwork.open-outline", "artwork.doubled-outline", "artwork.overlap",
                "artwork.needless-nodes")), () -> "the sample must break these rules: " + before.keySet());
        AffineTransformation move = AffineTransformation.rotationInstance(random.nextDouble() * Math.PI, 500, 500).translate(137, -59);
        assertSame(before, sums(drawn.moved(move).tester()));
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {21, 34, 55})
    void the_order_of_elements_changes_no_finding(long seed) {
        Random random = new Random(seed);
        Drawn drawn = sample(random);
        Map<String, double[]> before = sums(drawn.tester());
        Collections.shuffle(drawn.elements(), random);
        assertSame(before, sums(drawn.tester()));
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 5, 8, 13, 21, 34})
    void crossings_agree_with_the_overlay_of_jts(long seed) {
        Random random = new Random(seed);
        Geometry one = FACTORY.createLineString(star(random, 300, 300, 150, 30));
        Geometry two = FACTORY.createLineString(star(random, 340, 320, 150, 30));
        List<Finding> found = new Drawn().path("a", one, e -> e).path("b", two, e -> e).findings(Crossings.OVERLAP);
        Geometry expected = one.intersection(two);
        assertTrue(expected.getNumGeometries() > 1, "the sample must cross");
        assertEquals(1, found.size());
        Geometry actual = found.get(0).place().orElseThrow();
        assertEquals(expected.getNumGeometries(), actual.getNumGeometries());
        for (Coordinate each : actual.getCoordinates()) {
            assertTrue(expected.distance(FACTORY.createPoint(each)) < 1e-6, () -> each + " is no crossing");
        }
    }

    @Test
    void two_runs_agree_and_leave_the_proof_as_it_was() {
        Drawn drawn = sample(new Random(7));
        List<Geometry> before = drawn.elements().stream().map(element -> element.fillArea().copy()).toList();
        String first = drawn.tester().run().findings().toString();
        assertEquals(first, drawn.tester().run().findings().toString());
        for (int i = 0; i < before.size(); i++) {
            assertTrue(before.get(i).equalsExact(drawn.elements().get(i).fillArea()));
        }
    }

    @Test
    void a_cancelled_run_ends() {
        List<Double> told = new ArrayList<>();
        sample(new Random(7)).tester().onCheckpoint(told::add).run();
        for (int i = 1; i < told.size(); i++) {
            assertTrue(told.get(i) >= told.get(i - 1), "progress never goes back: " + told);
        }
        CheckTester stopped = sample(new Random(7)).tester().onCheckpoint(fraction -> {
            if (fraction > 0.5) {
                throw new CancellationException();
            }
        });
        assertThrows(CancellationException.class, stopped::run);
    }

    @Test
    void every_setting_is_on_the_page() {
        CheckInfo info = new ArtworkCheck().info();
        List<String> missing = info.settings().stream().map(Setting::key).filter(key -> !info.page().contains("`" + key + "`"))
                .collect(Collectors.toList());
        assertEquals(List.of(), missing);
    }

    /** 2,000 letters of 250 points: the size of proof that the checks must take in their stride. */
    @Test
    void a_large_proof_takes_seconds() {
        Drawn letters = new Drawn().page(30_000, 30_000);
        for (int i = 0; i < 2000; i++) {
            Geometry line = OutlineRulesTest.circle(300 + i % 50 * 500, 300 + i / 50 * 500, 200, 250);
            letters.path("e" + i, line, element -> element);
        }
        CheckTester tester = CheckTester.of(new ArtworkCheck()).page(30_000, 30_000);
        for (Element element : letters.elements()) {
            tester.element(element).part(Part.builder(element.id(), Role.FACE, (Polygon) element.fillArea())
                    .layer("Faces").elements(List.of(element.id())).build());
        }
        long start = System.nanoTime();
        List<Finding> findings = tester.run().findings();
        double seconds = (System.nanoTime() - start) / 1e9;
        System.out.printf("500,000 points in 2,000 elements: %.2f s%n", seconds);
        assertEquals(List.of("artwork.needless-nodes"), findings.stream().map(f -> f.rule().id()).distinct().toList());
        assertTrue(seconds < 20, "took " + seconds + " s"); // a few times what a busy machine of two cores needs
    }

    /** A shape pasted 2,000 times in one place would be two million pairs if each were compared with each. */
    @Test
    void a_shape_pasted_many_times_takes_no_longer_than_others() {
        CheckTester tester = CheckTester.of(new ArtworkCheck());
        Drawn letters = new Drawn();
        for (int i = 0; i < 2000; i++) {
            letters.path("e" + i, OutlineRulesTest.circle(300, 300, 200, 150), element -> element);
        }
        letters.elements().forEach(tester::element);
        tester.part(Part.builder("p1", Role.FACE, (Polygon) letters.elements().get(0).fillArea()).layer("Faces")
                .elements(letters.elements().stream().map(Element::id).toList()).build());
        long start = System.nanoTime();
        List<Finding> findings = tester.run().findings();
        double seconds = (System.nanoTime() - start) / 1e9;
        System.out.printf("2,000 copies in one place: %.2f s%n", seconds);
        assertEquals(2000, findings.get(0).measured().orElseThrow().value());
        assertEquals(List.of("artwork.doubled-outline"), findings.stream().map(f -> f.rule().id()).distinct().toList());
        assertTrue(seconds < 20, "took " + seconds + " s");
    }

    /** One traced outline of 250,000 points in small steps: many chains, and neighbours within a hair of each other. */
    @Test
    void one_rough_outline_takes_seconds() {
        Random random = new Random(4);
        int count = 250_000;
        Coordinate[] points = new Coordinate[count + 1];
        for (int i = 0; i < count; i++) {
            double angle = 2 * Math.PI * i / count;
            double radius = 4000 + 0.03 * random.nextDouble();
            points[i] = new Coordinate(5000 + radius * Math.cos(angle), 5000 + radius * Math.sin(angle));
        }
        points[count] = points[0];
        Drawn drawn = new Drawn().page(10_000, 10_000).path("trace", FACTORY.createLineString(points), element -> element);
        long start = System.nanoTime();
        List<Finding> findings = drawn.findings(NeedlessNodes.RULE);
        double seconds = (System.nanoTime() - start) / 1e9;
        System.out.printf("250,000 rough points in one outline, parts included: %.2f s; %s%n", seconds, findings.get(0).message());
        assertTrue(seconds < 20, "took " + seconds + " s");
    }
}
