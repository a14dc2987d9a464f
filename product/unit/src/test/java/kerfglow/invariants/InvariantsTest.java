// SPDX-License-Identifier: Apache-2.0
package kerfglow.invariants;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.File;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import kerfglow.api.Check;
import kerfglow.api.Rule;
import kerfglow.host.Result;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.util.AffineTransformation;

/**
 * What must not depend on how a sign lies on the page, how its file is written, or how large it is: all checks, from SVG text to findings.
 * Rule, measure, requirement, elements and place (taken back) are compared one by one. {@link Latitude} says what may differ, and why.
 */
class InvariantsTest {
    /** Rules that no sample breaks, each held by a test of its own check. */
    private static final List<String> NOT_IN_SAMPLES = List.of("artwork.assumed-size", "artwork.bad-value", "artwork.implausible-size", "artwork.not-taken-over",
            "artwork.nothing-drawn", "fit.back-splits", "fit.thermal", "glow.unlit", "legibility.spacing", "legibility.stroke");

    /**
     * The checks that are held to scale. Not glow, whose rays are as many for a large can as for a small one, so that on the coarse map of the
     * sample its darkest cell is off by a fifth; and not power, since a conductor keeps its gauge and loses more in a larger sign.
     */
    private static final List<String> SCALED = AllChecks.ALL.stream().map(check -> check.info().id()).filter(id -> !List.of("glow", "power").contains(id)).toList();

    private static final Map<String, List<Sighting>> SEEN = new HashMap<>();

    static List<Sample> samples() {
        return Samples.all();
    }

    private static Result run(Sample sample, Writing writing, AffineTransformation map, double widthMm, double heightMm, double k) throws Exception {
        Result result = AllChecks.run(writing.svg(sample, map, widthMm, heightMm), sample.job(k), sample.shop(k), List.of());
        assertFalse(result.isBroken(), () -> "a check failed or timed out: " + result.checks());
        return result;
    }

    /** As drawn: on its own page, or in the middle of one that holds it however it is turned. */
    private static synchronized List<Sighting> asDrawn(Sample sample, boolean large) throws Exception {
        String key = sample.name() + large;
        if (!SEEN.containsKey(key)) {
            AffineTransformation place = large ? middle(sample) : new AffineTransformation();
            double side = side(sample);
            SEEN.put(key, Sighting.of(run(sample, Writing.PATHS, place, large ? side : sample.widthMm(), large ? side : sample.heightMm(), 1), place.getInverse()));
        }
        return SEEN.get(key);
    }

    private static double side(Sample sample) {
        return 3 * Math.max(sample.widthMm(), sample.heightMm());
    }

    private static AffineTransformation middle(Sample sample) {
        return AffineTransformation.translationInstance(side(sample) / 3, side(sample) / 3);
    }

    private static void assertSame(String what, List<Sighting> expected, List<Sighting> actual, Latitude latitude) {
        List<String> differences = Sighting.differences(expected, actual, latitude);
        assertEquals(List.of(), differences, () -> what + ": " + differences.size() + " differences\n" + String.join("\n", differences));
    }

    /** What is compared below is worth comparing: every check has something to say about some sample. */
    @Test
    void the_samples_break_every_rule_but_the_named_ones() throws Exception {
        TreeSet<String> broken = new TreeSet<>();
        int places = 0;
        for (Sample sample : Samples.all()) {
            broken.addAll(Sighting.rules(asDrawn(sample, false)));
            places += asDrawn(sample, false).size();
        }
        TreeSet<String> expected = AllChecks.ALL.stream().flatMap(check -> check.info().rules().stream()).map(Rule::id).collect(Collectors.toCollection(TreeSet::new));
        expected.removeAll(NOT_IN_SAMPLES);
        assertEquals(expected, broken);
        assertTrue(places > 300, "places: " + places);
    }

    @Test
    void every_check_that_ships_is_here() throws Exception {
        try (Stream<Path> bundles = Files.list(Path.of(System.getProperty("testdata"), "..", "bundles"))) {
            assertEquals(bundles.map(Path::toFile).map(File::getName).filter(name -> name.startsWith("kerfglow.check.")).sorted().toList(),
                    AllChecks.ALL.stream().map(Check::info).map(info -> "kerfglow.check." + info.id()).sorted().toList());
        }
    }

    @ParameterizedTest
    @MethodSource("samples")
    void a_sign_moved_on_its_page_has_the_same_findings(Sample sample) throws Exception {
        AffineTransformation move = AffineTransformation.translationInstance(117.3, -81.71).compose(middle(sample));
        assertSame("moved", asDrawn(sample, true), Sighting.of(run(sample, Writing.PATHS, move, side(sample), side(sample), 1), move.getInverse()), Latitude.NONE);
    }

    @ParameterizedTest
    @MethodSource("samples")
    void a_sign_turned_has_the_same_findings(Sample sample) throws Exception {
        for (int degrees : new int[] {3, 211}) {
            AffineTransformation turn = AffineTransformation.rotationInstance(Math.toRadians(degrees), sample.widthMm() / 2, sample.heightMm() / 2).compose(middle(sample));
            Latitude latitude = degrees > 45 ? Latitude.TURNED.and(Latitude.UPRIGHT) : Latitude.TURNED;
            assertSame(degrees + " degrees", asDrawn(sample, true), Sighting.of(run(sample, Writing.PATHS, turn, side(sample), side(sample), 1), turn.getInverse()), latitude);
        }
    }

    /** The page is mirrored and turned with the sign, so that what concerns the page holds too. */
    @ParameterizedTest
    @MethodSource("samples")
    void a_sign_mirrored_and_turned_by_a_quarter_with_its_page_has_the_same_findings(Sample sample) throws Exception {
        AffineTransformation mirror = AffineTransformation.scaleInstance(-1, 1).translate(sample.widthMm(), 0);
        Latitude latitude = Latitude.NONE.and(Latitude.UPRIGHT);
        assertSame("mirrored", asDrawn(sample, false), Sighting.of(run(sample, Writing.PATHS, mirror, sample.widthMm(), sample.heightMm(), 1), mirror.getInverse()), latitude);
        AffineTransformation quarter = new AffineTransformation(0, -1, sample.heightMm(), 1, 0, 0);
        assertSame("a quarter", asDrawn(sample, false), Sighting.of(run(sample, Writing.PATHS, quarter, sample.heightMm(), sample.widthMm(), 1), quarter.getInverse()), latitude);
    }

    @ParameterizedTest
    @MethodSource("samples")
    void a_sign_written_otherwise_has_the_same_findings(Sample sample) throws Exception {
        for (Writing writing : Writing.values()) {
            if (writing != Writing.PATHS) {
                List<Sighting> seen = Sighting.of(run(sample, writing, new AffineTransformation(), sample.widthMm(), sample.heightMm(), 1), new AffineTransformation());
                assertSame(writing.toString(), asDrawn(sample, false), seen, Latitude.NONE);
            }
        }
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 5, 8, 13})
    void random_stars_moved_turned_and_written_otherwise_have_the_same_findings(long seed) throws Exception {
        Sample sample = Samples.random(seed);
        List<Sighting> expected = asDrawn(sample, true);
        assertTrue(expected.size() > 20, "places: " + expected.size());
        AffineTransformation turn = AffineTransformation.rotationInstance(seed, sample.widthMm() / 2, sample.heightMm() / 2).compose(middle(sample));
        Latitude latitude = Latitude.TURNED.and(Latitude.UPRIGHT);
        assertSame("turned", expected, Sighting.of(run(sample, Writing.PATHS, turn, side(sample), side(sample), 1), turn.getInverse()), latitude);
        for (Writing writing : List.of(Writing.REORDERED, Writing.GROUPS, Writing.NUMBERS)) {
            assertSame(writing.toString(), expected, Sighting.of(run(sample, writing, middle(sample), side(sample), side(sample), 1), middle(sample).getInverse()), Latitude.NONE);
        }
    }

    /** All settings, stock and thicknesses k times as long, areas k² times: then every measured length is k times as long. */
    @ParameterizedTest
    @ValueSource(doubles = {2, 1 / 3.0, 10})
    void a_sign_made_larger_has_findings_as_much_larger(double k) throws Exception {
        AffineTransformation none = new AffineTransformation();
        for (Sample sample : Samples.all()) {
            List<Sighting> expected = Sighting.of(AllChecks.run(Writing.PATHS.svg(sample, none, sample.widthMm(), sample.heightMm()), sample.job(1), sample.shop(1), SCALED), none);
            Result larger = AllChecks.run(Writing.PATHS.svg(sample, AffineTransformation.scaleInstance(k, k), k * sample.widthMm(), k * sample.heightMm()), sample.job(k), sample.shop(k), SCALED);
            assertSame(sample.name(), expected, Sighting.scaled(larger, k), Latitude.SCALED);
            Result byScale = AllChecks.run(Writing.PATHS.svg(sample, none, sample.widthMm(), sample.heightMm()), "scale: " + Figure.number(k) + "\n" + sample.job(k), sample.shop(k), SCALED);
            assertSame(sample.name() + " by the job sheet's scale", expected, Sighting.scaled(byScale, k), Latitude.SCALED);
        }
    }
}
