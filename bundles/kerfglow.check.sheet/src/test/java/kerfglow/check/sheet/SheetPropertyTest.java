// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import kerfglow.geometry.RectangleFit;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Polygon;

/** What holds for every part and every load of parts. */
class SheetPropertyTest {
    private static final GeometryFactory FACTORY = new GeometryFactory();
    private static final Runnable NO_PULSE = () -> { };

    /** A packing is never better than the bound; of rectangles much smaller than the sheet it wastes no more than a fifth, and the last sheet. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 5, 8})
    void a_count_lies_between_its_bounds(long seed) {
        Random random = new Random(seed);
        List<Packing.Item> items = new ArrayList<>();
        for (int i = 0; i < 300; i++) {
            double width = 50 + 300 * random.nextDouble();
            double height = 50 + 300 * random.nextDouble();
            items.add(new Packing.Item(width, height, random.nextBoolean(), width * height));
        }
        int count = Packing.count(items, 1220, 2440, 0, NO_PULSE);
        int bound = Packing.bound(items, 1220, 2440);
        assertTrue(count >= bound && count <= Math.ceil(bound * 1.25) + 1, count + " sheets, at least " + bound);
        assertTrue(Packing.count(items, 1220, 2440, 20, NO_PULSE) >= count, "spacing never saves a sheet");
        assertTrue(Packing.count(items.subList(0, 150), 1220, 2440, 0, NO_PULSE) <= count);
    }

    /** Pieces fit, do not overlap, and are all of the part; no piece is lost in a seam. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 5, 8, 13})
    void the_pieces_of_a_split_fit_and_make_up_the_part(long seed) {
        Random random = new Random(seed);
        StockSheet sheet = new StockSheet("s", 1220, 2440, "", 0, random.nextBoolean() ? "none" : "along");
        StockSheet.Usable usable = sheet.less(10, "horizontal");
        Polygon part = blob(random);
        Splitter splitter = new Splitter(List.of(usable), new Sweep.Limits(20, 30, List.of()), 0.02, NO_PULSE);
        Optional<Split> split = splitter.split(part);
        assertTrue(split.isPresent());
        assertTrue(split.get().pieces().size() > 1, "the sample must be too large");
        double area = 0;
        for (Polygon piece : split.get().pieces()) {
            assertTrue(usable.fit(new RectangleFit(piece)).isPresent());
            area += piece.getArea();
            assertTrue(part.buffer(0.01).covers(piece));
        }
        assertEquals(part.getArea(), area, 1e-6 * part.getArea());
        double seams = 0;
        for (Split.Cut cut : split.get().cuts()) {
            assertEquals(cut.lengthMm(), cut.line().getLength(), 1e-6 * cut.lengthMm());
            seams += cut.lengthMm();
        }
        // derived: geometry. Each seam adds its length to the perimeter twice
        double perimeter = split.get().pieces().stream().mapToDouble(Geometry::getLength).sum();
        assertEquals(part.getLength() + 2 * seams, perimeter, 1e-6 * perimeter);
    }

    /** A bumpy ring, 3 to 5 m across. */
    private static Polygon blob(Random random) {
        double width = 1500 + 1000 * random.nextDouble();
        double height = 500 + 700 * random.nextDouble();
        int points = 80;
        Coordinate[] outer = new Coordinate[points + 1];
        Coordinate[] inner = new Coordinate[points + 1];
        for (int i = 0; i < points; i++) {
            double angle = 2 * Math.PI * i / points;
            double bump = 1 + 0.1 * random.nextDouble();
            outer[i] = new Coordinate(width * bump * Math.cos(angle), height * bump * Math.sin(angle));
            inner[i] = new Coordinate(width * 0.5 * Math.cos(angle), height * 0.4 * Math.sin(angle));
        }
        outer[points] = outer[0].copy();
        inner[points] = inner[0].copy();
        return FACTORY.createPolygon(FACTORY.createLinearRing(outer), new LinearRing[] {FACTORY.createLinearRing(inner)});
    }
}
