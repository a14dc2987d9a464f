// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.fit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import kerfglow.geometry.Inset;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.operation.buffer.BufferOp;
import org.locationtech.jts.operation.buffer.BufferParameters;

/** The quick answer may only be given where the slow one finds nothing. */
class ThinFaceTest {
    private static final double SIDE_MM = 2.38125;
    private static final ThinFace THIN = new ThinFace(0, 30);

    /** Strokes of all widths about two clearances, crossing at random: necks, stubs, loops, tips. */
    private static Polygon scribble(Random random) {
        Geometry strokes = Drawings.box(0, 0, 60, 60);
        for (int i = 0; i < 6; i++) {
            Coordinate[] line = {new Coordinate(10 + 40 * random.nextDouble(), 10 + 40 * random.nextDouble()),
                new Coordinate(120 * random.nextDouble() - 30, 120 * random.nextDouble() - 30)};
            BufferParameters flat = new BufferParameters(8, random.nextBoolean() ? BufferParameters.CAP_FLAT : BufferParameters.CAP_ROUND,
                    BufferParameters.JOIN_MITRE, 4);
            strokes = strokes.union(BufferOp.bufferOp(Drawings.FACTORY.createLineString(line), SIDE_MM * (0.2 + 1.6 * random.nextDouble()), flat));
        }
        Geometry largest = strokes.getGeometryN(0);
        return (Polygon) largest;
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 5})
    void the_quick_answer_never_hides_a_lost_stroke(long seed) {
        Random random = new Random(seed);
        int quick = 0;
        int slow = 0;
        for (int i = 0; i < 60; i++) {
            Polygon face = scribble(random);
            if (i % 3 == 0) { // without strokes below two clearances
                face = (Polygon) face.buffer(SIDE_MM * 0.9).getGeometryN(0);
            }
            for (Inset.Join join : Inset.Join.values()) {
                Geometry back = Inset.of(face, SIDE_MM, join, 4, 0.02);
                boolean whole = THIN.isWhole(face, back, SIDE_MM, () -> { });
                boolean lost = !THIN.stretches(face, SIDE_MM, () -> { }).isEmpty();
                String wkt = face.toText();
                assertTrue(!whole || !lost, () -> wkt);
                quick += whole ? 1 : 0;
                slow += lost ? 1 : 0;
            }
        }
        assertTrue(quick > 10 && slow > 30, "the sample must have both: " + quick + " quick, " + slow + " lost");
        assertEquals(0, THIN.stretches(Drawings.box(0, 0, 50, 50), SIDE_MM, () -> { }).size());
    }
}
