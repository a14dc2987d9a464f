// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.returns;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import kerfglow.api.Finding;
import kerfglow.api.Outcome;
import kerfglow.api.SharedSettings;
import kerfglow.api.Table;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Role;
import kerfglow.testkit.CheckTester;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.util.AffineTransformation;

/** Outlined lettering of an open font (Debian's package fonts-dejavu-core). */
class ReturnsLetteringTest {
    private static final double T = 0.6;
    private static final double FOLD_MM = 0.3;

    /** With K = 1/2 the neutral line is the middle of the strip, an offset curve that another program can make. */
    private static CheckTester tester() {
        return CheckTester.of(new ReturnsCheck()).with(SharedSettings.RETURN_DEPTH, 100.0).with(ReturnsSettings.THICKNESS, T)
                .with(ReturnsSettings.K_FACTOR, 0.5).with(ReturnsSettings.FOLD_K, 0.5).with(ReturnsSettings.FOLD_RADIUS, FOLD_MM)
                .with(ReturnsSettings.LEAST_ANGLE, 0.0).with(ReturnsSettings.CORNER_RADIUS, FOLD_MM);
    }

    private static Outcome run(CheckTester tester, List<Polygon> pieces) {
        for (int i = 0; i < pieces.size(); i++) {
            tester.part(Part.builder("r" + i, Role.RETURN, pieces.get(i)).build());
        }
        return tester.run();
    }

    private static Table table(Outcome outcome, int index) {
        return outcome.tables().get(index);
    }

    private static List<Double> lengths(Outcome outcome) {
        return table(outcome, 0).rows().stream().map(row -> (Double) row.get(3)).toList();
    }

    /**
     * Against GEOS, Debian's package python3-shapely: corners of the line rounded by the fold's radius where convex, by radius and
     * thickness where concave, then offset by half the thickness; the perimeter of that is the length of the middle of the strip.
     */
    @Test
    void developed_lengths_are_those_of_offset_curves_of_an_independent_program() throws Exception {
        List<Polygon> pieces = new ArrayList<>();
        for (char letter : "ABCDEFGHJLOPQRSTUZabcdegostu&8".toCharArray()) {
            pieces.addAll(Outlines.letters(String.valueOf(letter), 400));
        }
        StringBuilder program = new StringBuilder("from shapely import wkt\n");
        for (Polygon piece : pieces) {
            program.append("p = wkt.loads('").append(piece.toText()).append("')\n")
                    .append("p = p.buffer(-%1$s, 64).buffer(%1$s, 64).buffer(%2$s, 64).buffer(-%2$s, 64)%n".formatted(FOLD_MM, FOLD_MM + T))
                    .append("print(p.buffer(%s, 64).length)%n".formatted(T / 2));
        }
        double[] expected = Outlines.shapely(program.toString());
        Outcome outcome = run(tester(), pieces);
        double[] total = new double[pieces.size()];
        for (List<Object> row : table(outcome, 0).rows()) {
            total[piece(row)] += (Double) row.get(3);
        }
        // legs of sharper corners than this, which no default folds, are taken off as if they were straight
        List<Integer> sharp = table(outcome, 1).rows().stream().filter(row -> (Double) row.get(6) > 150).map(ReturnsLetteringTest::piece).toList();
        int compared = 0;
        for (int i = 0; i < total.length; i++) {
            if (!sharp.contains(i)) {
                assertEquals(expected[i], total[i], 1e-4 * expected[i], "piece " + i);
                compared++;
            }
        }
        assertTrue(compared >= 20, compared + " compared");
    }

    private static int piece(List<Object> row) {
        return Integer.parseInt(((String) row.get(0)).substring(1));
    }

    /** A simple closed line turns once; every arc states how far it lies from the outline. */
    @Test
    void bends_of_every_letter_turn_once_and_state_their_fit() throws Exception {
        List<Polygon> pieces = Outlines.letters("Skelderfen Observatory & 1896 Lumber Wharf gjQ", 300);
        Outcome outcome = run(tester().with(ReturnsSettings.CORNER_ANGLE, 1.0), pieces);
        Table strips = table(outcome, 0);
        assertEquals(pieces.stream().mapToInt(piece -> 1 + piece.getNumInteriorRing()).sum(), strips.rows().size());
        for (List<Object> strip : strips.rows()) {
            List<List<Object>> bends = table(outcome, 1).rows().stream().filter(row -> row.subList(0, 2).equals(strip.subList(0, 2))).toList();
            double turn = bends.stream().mapToDouble(row -> (row.get(8).equals("towards") ? 1 : -1) * (Double) row.get(6)).sum();
            assertEquals(strip.get(2).equals("counter") ? -360 : 360, turn, 2.5, () -> strip + " " + bends); // straights may turn a little
            double before = 0;
            for (List<Object> bend : bends) {
                assertTrue((Double) bend.get(4) >= before - 1e-6, () -> "positions go along the strip: " + bends);
                before = (Double) bend.get(4);
            }
            assertTrue(before <= (Double) strip.get(3));
            assertTrue((Double) strip.get(6) <= 0.1, () -> "residual " + strip);
        }
    }

    @Test
    void joined_script_is_one_piece_with_all_its_counters() throws Exception {
        Geometry[] letters = Outlines.letters("loose bagged", 300).toArray(new Geometry[0]);
        Geometry joined = Outlines.FACTORY.createGeometryCollection(letters).union().buffer(18).buffer(5).buffer(-5);
        Polygon piece = (Polygon) joined.getGeometryN(0);
        for (int i = 1; i < joined.getNumGeometries(); i++) {
            piece = joined.getGeometryN(i).getNumPoints() > piece.getNumPoints() ? (Polygon) joined.getGeometryN(i) : piece;
        }
        assertTrue(piece.getNumInteriorRing() >= 5, "the sample must hold joined letters with counters");
        Outcome outcome = run(tester(), List.of(piece));
        assertEquals(1 + piece.getNumInteriorRing(), table(outcome, 0).rows().size());
        double middle = piece.buffer(T / 2).getLength();
        assertEquals(middle, lengths(outcome).stream().mapToDouble(Double::doubleValue).sum(), 2e-3 * middle);
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void moving_reordering_and_drawing_the_other_way_round_changes_no_length(long seed) throws Exception {
        Random random = new Random(seed);
        List<Polygon> pieces = Outlines.letters("Rabid 68 &", 300);
        AffineTransformation motion = AffineTransformation.translationInstance(random.nextDouble() * 9000, random.nextDouble() * 500);
        List<Polygon> moved = new ArrayList<>();
        pieces.forEach(piece -> moved.add((Polygon) motion.transform(random.nextBoolean() ? piece.reverse() : piece)));
        Collections.shuffle(moved, random);
        double[] before = lengths(run(tester(), pieces)).stream().mapToDouble(Double::doubleValue).sorted().toArray();
        double[] after = lengths(run(tester(), moved)).stream().mapToDouble(Double::doubleValue).sorted().toArray();
        assertTrue(before.length > 10);
        assertEquals(before.length, after.length);
        for (int i = 0; i < before.length; i++) {
            assertEquals(before[i], after[i], 0.02); // how chords are joined may depend on where the ring begins
        }
    }

    @Test
    void a_stricter_limit_never_loses_a_finding() throws Exception {
        List<Polygon> pieces = Outlines.letters("Skelderfen&g8", 300);
        List<Finding> before = List.of();
        for (double radius : new double[] {5, 10, 20, 40}) {
            List<Finding> found = run(tester().with(ReturnsSettings.LEAST_RADIUS, radius), pieces).findings().stream()
                    .filter(finding -> finding.rule() == ReturnsRules.TIGHT_RADIUS).toList();
            for (Finding earlier : before) {
                Geometry at = Outlines.FACTORY.createPoint(earlier.at().orElseThrow());
                assertTrue(found.stream().anyMatch(each -> each.place().orElseThrow().isWithinDistance(at, 1e-6)), earlier::toString);
            }
            before = found;
        }
        assertTrue(before.size() > 3, "the sample must hold tight curves");
    }
}
