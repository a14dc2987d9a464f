// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.router;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import kerfglow.api.Finding;
import kerfglow.api.Outcome;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Role;
import kerfglow.testkit.CheckTester;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.algorithm.Angle;
import org.locationtech.jts.algorithm.Orientation;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Polygon;

/** Whole letters: a sound serif alphabet 300 mm high, a 1/8 in bit, strokes of 3 mm at least. */
class RouterLettersTest {
    private static final String ALPHABET = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789&?!";
    private static final double BIT_MM = 3.175;
    /** A corner whose depth is over the quarter millimetre that counts: r (1 / sin(t / 2) - 1) with r half the bit; 119.5 degrees. */
    private static final double SHARP = 2 * Math.asin(1 / (1 + 0.25 / (BIT_MM / 2)));

    @Test
    void sound_letters_have_inside_corners_at_their_real_corners_and_nothing_else() {
        CheckTester tester = CheckTester.of(new RouterCheck())
                .stock(RouterCheck.BITS, Map.of(RouterCheck.DIAMETER, BIT_MM, RouterCheck.FLUTE_LENGTH, 12.7));
        Map<String, Integer> expected = new HashMap<>();
        int vertices = 0;
        for (char letter : ALPHABET.toCharArray()) {
            int piece = 0;
            for (Polygon shape : Letters.of(letter, 300)) {
                String id = letter + "-" + piece++;
                tester.part(Part.builder(id, Role.FACE, shape).sheetMaterial("acrylic").thicknessMm(6).build());
                expected.put(id, sharpInsideCorners(shape));
                vertices += shape.getNumPoints();
            }
        }
        Outcome outcome = tester.run();
        Map<String, Integer> found = new HashMap<>();
        List<Finding> others = new ArrayList<>();
        for (Finding finding : outcome.findings()) {
            if (finding.rule() == RouterRules.INSIDE_CORNER) {
                found.merge(finding.parts().get(0), 1, Integer::sum);
            } else if (finding.rule() != RouterRules.BIT) {
                others.add(finding);
            }
        }
        assertEquals(List.of(), others);
        assertTrue(vertices > 10_000, "vertices: " + vertices);
        int corners = found.values().stream().mapToInt(Integer::intValue).sum();
        assertTrue(corners > 100 && corners < 400, "corners: " + corners);
        expected.forEach((id, count) -> assertEquals(count, found.getOrDefault(id, 0), "inside corners of " + id));
    }

    /** Counted on the outline alone. A serif font's inside corners are single vertices; none is a curve tighter than the bit. */
    private static int sharpInsideCorners(Polygon shape) {
        int count = sharpCorners(shape.getExteriorRing(), false);
        for (int i = 0; i < shape.getNumInteriorRing(); i++) {
            count += sharpCorners(shape.getInteriorRingN(i), true);
        }
        return count;
    }

    /** Sharp corners whose point looks into the material: those of a hole that are convex, those of an outline that are not. */
    private static int sharpCorners(LinearRing ring, boolean convex) {
        Coordinate[] points = ring.getCoordinates();
        int wanted = Orientation.isCCW(points) == convex ? Orientation.COUNTERCLOCKWISE : Orientation.CLOCKWISE;
        int count = 0;
        for (int i = 0; i < points.length - 1; i++) {
            Coordinate before = points[i == 0 ? points.length - 2 : i - 1];
            Coordinate after = points[i + 1];
            if (Angle.angleBetween(before, points[i], after) < SHARP && Orientation.index(before, points[i], after) == wanted) {
                count++;
            }
        }
        return count;
    }
}
