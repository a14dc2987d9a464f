// SPDX-License-Identifier: Apache-2.0
package kerfglow.geometry;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.operation.buffer.BufferOp;
import org.locationtech.jts.operation.buffer.BufferParameters;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;

/** Offsets of perforated areas against JTS's buffer in one go. */
class OffsetTest {
    private static final GeometryFactory FACTORY = new GeometryFactory();
    /** Of a plate of 100,000 mm² and more: rounding of coordinates. */
    private static final double SAME_MM2 = 1e-3;

    /** Irregular holes in a lattice; some of them C-shaped, so that they close about an island when they grow. */
    private static Polygon perforated(int side, double webMm, double atX) {
        Random random = new Random(5);
        double pitch = 12 + webMm;
        LinearRing[] holes = new LinearRing[side * side];
        for (int i = 0; i < holes.length; i++) {
            double x = atX + webMm + 8 + pitch * (i % side);
            double y = webMm + 8 + pitch * (i / side);
            holes[i] = i % 7 == 0 ? ring(x - 6, y - 6, x + 6, y - 6, x + 6, y - 1, x + 3, y - 1, x + 3, y - 4, x - 4, y - 4, x - 4, y + 4, x + 3, y + 4, x + 3, y + 1, x + 6, y + 1, x + 6, y + 6, x - 6, y + 6)
                    : irregular(random, x, y);
        }
        double far = pitch * side + webMm + 4;
        return FACTORY.createPolygon(ring(atX, 0, atX + far, 0, atX + far, far, atX, far), holes);
    }

    private static LinearRing irregular(Random random, double x, double y) {
        int corners = 5 + random.nextInt(6);
        double[] ring = new double[2 * corners];
        for (int i = 0; i < corners; i++) {
            double radius = 3.5 + 2.5 * random.nextDouble();
            ring[2 * i] = x + radius * Math.cos(2 * Math.PI * i / corners);
            ring[2 * i + 1] = y + radius * Math.sin(2 * Math.PI * i / corners);
        }
        return ring(ring);
    }

    private static LinearRing ring(double... xy) {
        Coordinate[] points = new Coordinate[xy.length / 2 + 1];
        for (int i = 0; i < xy.length / 2; i++) {
            points[i] = new Coordinate(xy[2 * i], xy[2 * i + 1]);
        }
        points[xy.length / 2] = points[0];
        return FACTORY.createLinearRing(points);
    }

    @ParameterizedTest
    @CsvSource({"6, -1, 1", "6, -2.4, 2", "2, -1.2, 1", "2, -2.4, 2", "2, -2.4, 3", "2, -4, 1", "2, 1, 1", "6, 2, 2", "2, 4, 3", "1, -60, 1"})
    void a_perforated_area_is_offset_as_by_one_buffer(double webMm, double byMm, int join) {
        BufferParameters parameters = new BufferParameters(8, BufferParameters.CAP_ROUND, join, 2);
        parameters.setSimplifyFactor(0);
        Geometry area = FACTORY.createMultiPolygon(new Polygon[] {perforated(10, webMm, 0), perforated(9, webMm, 400)});
        Geometry expected = BufferOp.bufferOp(area, byMm, parameters);
        Geometry offset = Offset.of(area, byMm, parameters);
        assertTrue(offset.isValid());
        assertEquals(expected.getNumGeometries(), offset.getNumGeometries());
        assertEquals(0, OverlayNGRobust.overlay(expected, offset, OverlayNG.SYMDIFFERENCE).getArea(), SAME_MM2);
    }

    @Test
    void nothing_is_left_of_an_area_shrunk_by_more_than_half_its_size() {
        assertTrue(Offset.of(perforated(10, 1, 0), -100, new BufferParameters(8)).isEmpty());
    }
}
