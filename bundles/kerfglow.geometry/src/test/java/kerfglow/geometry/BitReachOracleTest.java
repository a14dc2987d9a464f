// SPDX-License-Identifier: Apache-2.0
package kerfglow.geometry;

import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Polygon;

/** Against an independent library: areas by GEOS 3.11.1 through shapely 1.8.5; how they were made is in residues.py beside them. */
class BitReachOracleTest {
    @Test
    void residues_have_the_areas_that_geos_finds() throws IOException {
        List<String> lines;
        try (InputStream in = BitReachOracleTest.class.getResourceAsStream("residues.csv")) {
            lines = new String(in.readAllBytes(), StandardCharsets.UTF_8).lines().filter(line -> !line.startsWith("#")).toList();
        }
        assertEquals(52, lines.size());
        assertAll(lines.stream().map(line -> () -> compare(line.split(";"))));
    }

    private static void compare(String[] cells) {
        double diameter = Double.parseDouble(cells[1]);
        Polygon shape = Shapes.polygon(cells[4]);
        BitReach reach = new BitReach(diameter, 0, 150, Shapes.NO_PULSE);
        double inside = area(reach.inOpening(shape));
        double outside = area(reach.aroundPart(shape, ring -> true));
        // arcs are drawn as chords inside the bit, within 0.002 mm; no shape here has more than twelve half turns of arc
        double tolerance = 0.002 * diameter / 2 * Math.PI * 12;
        assertEquals(Double.parseDouble(cells[2]), inside, tolerance, cells[0] + ", inside, bit " + diameter);
        assertEquals(Double.parseDouble(cells[3]), outside, tolerance, cells[0] + ", outside, bit " + diameter);
        assertTrue(inside > 0 && outside >= 0);
    }

    private static double area(List<Residue> residues) {
        residues.forEach(residue -> assertTrue(residue.area().isValid(), () -> residue.area().toText()));
        return residues.stream().mapToDouble(residue -> residue.area().getArea()).sum();
    }
}
