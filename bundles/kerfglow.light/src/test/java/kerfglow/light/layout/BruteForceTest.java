// SPDX-License-Identifier: Apache-2.0
package kerfglow.light.layout;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import kerfglow.light.Accuracy;
import kerfglow.light.Can;
import kerfglow.light.Cavity;
import kerfglow.light.Finish;
import kerfglow.light.LightMap;
import kerfglow.light.LightModule;
import kerfglow.light.LightModuleType;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Polygon;

/**
 * Five small letters: how many modules do at least, by trying every set of places of a lattice that lies anywhere in the letter, not on its
 * centre line alone, and how many the layout takes.
 */
class BruteForceTest {
    private static final double DEPTH_MM = 40;
    private static final double STEP_MM = 11;
    private static final double UNIFORMITY = 0.5;
    private static final Accuracy ACCURACY = new Accuracy(3, 1, 8);
    /** A point, so that the lattice needs no turns. */
    private static final LightModuleType POINT = new LightModuleType("", 50, 120, 0, 0, 0, 1, 0);
    private static final int MOST = 6;

    private static List<Polygon> letters() {
        List<Polygon> letters = new ArrayList<>();
        letters.add(Letters.wkt("POLYGON ((0 0, 26 0, 26 110, 0 110, 0 0))")); // I
        letters.add(Letters.wkt("POLYGON ((0 0, 26 0, 26 84, 80 84, 80 110, 0 110, 0 0))")); // L
        letters.add(Letters.wkt("POLYGON ((0 0, 90 0, 90 26, 58 26, 58 110, 32 110, 32 26, 0 26, 0 0))")); // T
        letters.add(Letters.wkt("POLYGON ((0 0, 24 0, 45 70, 66 0, 90 0, 58 100, 32 100, 0 0))")); // V
        letters.add(Letters.wkt("POLYGON ((0 0, 90 0, 90 90, 0 90, 0 0), (26 26, 64 26, 64 64, 26 64, 26 26))")); // O
        return letters;
    }

    @Test
    void takes_at_most_a_tenth_more_modules_than_the_least() {
        int least = 0;
        int taken = 0;
        StringBuilder counts = new StringBuilder();
        for (Polygon letter : letters()) {
            Can can = new Can(letter, DEPTH_MM, Finish.black());
            int fewest = fewest(can);
            Layout layout = Layouter.layout(LayoutRequest.of(can, POINT, UNIFORMITY), () -> { });
            assertTrue(layout.reached(), () -> letter + " " + layout);
            LightMap map = Cavity.of(can, ACCURACY, () -> { }).light(layout.modules(), () -> { });
            assertTrue(map.luminanceLevels().uniformity() >= UNIFORMITY - 0.005, () -> map.luminanceLevels().toString());
            counts.append(' ').append(layout.modules().size()).append('/').append(fewest);
            assertTrue(layout.modules().size() <= Math.floor(1.1 * fewest + 1e-9), counts::toString);
            least += fewest;
            taken += layout.modules().size();
        }
        assertTrue(least >= 10, counts::toString); // the sample must need several modules a letter
        assertTrue(taken <= 1.1 * least, counts::toString);
    }

    private static int fewest(Can can) {
        Cavity cavity = Cavity.of(can, ACCURACY, () -> { });
        List<float[]> light = new ArrayList<>();
        for (double y = can.inside().getEnvelopeInternal().getMinY() + STEP_MM / 2; y < can.inside().getEnvelopeInternal().getMaxY(); y += STEP_MM) {
            for (double x = can.inside().getEnvelopeInternal().getMinX() + STEP_MM / 2; x < can.inside().getEnvelopeInternal().getMaxX(); x += STEP_MM) {
                if (can.inside().contains(can.inside().getFactory().createPoint(new Coordinate(x, y)))) {
                    light.add(lit(cavity.light(List.of(new LightModule(x, y, 0, POINT)), () -> { })));
                }
            }
        }
        for (int count = 1; count <= MOST; count++) {
            if (reaches(light, 0, count, new float[light.get(0).length])) {
                return count;
            }
        }
        return MOST + 1;
    }

    private static float[] lit(LightMap map) {
        float[] lit = new float[map.litCells()];
        int next = 0;
        for (int cell = 0; cell < map.grid().size(); cell++) {
            if (map.isLit(cell)) {
                lit[next++] = (float) map.luminance()[cell];
            }
        }
        return lit;
    }

    /** True when some set of places from one on reaches the target together with what is lit already. */
    private static boolean reaches(List<float[]> light, int from, int left, float[] sum) {
        if (left == 0) {
            double total = 0;
            float least = Float.MAX_VALUE;
            for (float each : sum) {
                total += each;
                least = Math.min(least, each);
            }
            return least >= UNIFORMITY * total / sum.length;
        }
        for (int i = from; i <= light.size() - left; i++) {
            float[] more = sum.clone();
            float[] own = light.get(i);
            for (int k = 0; k < more.length; k++) {
                more[k] += own[k];
            }
            if (reaches(light, i + 1, left - 1, more)) {
                return true;
            }
        }
        return false;
    }
}
