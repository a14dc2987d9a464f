// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.fit;

import static kerfglow.check.fit.Drawings.number;
import static kerfglow.check.fit.Drawings.rules;
import static kerfglow.check.fit.Drawings.tester;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import kerfglow.api.Outcome;
import kerfglow.api.SharedSettings;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Role;
import kerfglow.testkit.CheckTester;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.util.AffineTransformation;
import org.locationtech.jts.operation.union.UnaryUnionOp;

/** Outlined lettering, held against GEOS through shapely, which is not what the program measures with. */
class LetteringTest {
    private static final double SIDE_MM = 25.4 * 3 / 32;
    private static final String LETTERS = "RagSB8&";
    /** Coarse on purpose: GEOS drops nodes nearer to a line than a hundredth of the distance before it offsets. */
    private static final double FLATNESS_MM = 0.2;
    /** JTS joins offset edges that lie nearer to each other than about a thousandth of the distance. */
    private static final double OFFSET_MM = 0.005;
    private static final String PYTHON = "/usr/bin/python3";
    /** Area by mitred and by round offset; least, greatest and mean distance of the second shape's edge, tried every 0.1 mm. */
    private static final String SCRIPT = """
            import sys
            from shapely import wkt
            for line in sys.stdin:
                side, face, back = line.split(';')
                side, face, back = float(side), wkt.loads(face), wkt.loads(back)
                mitred = face.buffer(-side, join_style=2, mitre_limit=4).area
                round_ = face.buffer(-side, 64).area
                least, most, total, count = 1e9, -1e9, 0.0, 0
                edge = face.boundary
                for ring in [back.exterior] + list(back.interiors):
                    steps = int(ring.length / 0.1)
                    for i in range(steps):
                        d = edge.distance(ring.interpolate((i + 0.5) / steps, normalized=True))
                        least, most, total, count = min(least, d), max(most, d), total + d, count + 1
                print(mitred, round_, least, most, total / count)
            """;

    private static List<double[]> shapely(List<String> lines, Path folder) throws IOException, InterruptedException {
        Path in = Files.writeString(folder.resolve("in"), String.join("\n", lines));
        Path out = folder.resolve("out");
        Process process;
        try {
            process = new ProcessBuilder(PYTHON, "-c", SCRIPT).redirectInput(in.toFile()).redirectOutput(out.toFile()).redirectErrorStream(true).start();
        } catch (IOException absent) {
            throw new AssertionError("this test needs Debian's packages python3 and python3-shapely; install them", absent);
        }
        int status = process.waitFor();
        String said = Files.readString(out, StandardCharsets.UTF_8);
        assertEquals(0, status, () -> "this test needs Debian's package python3-shapely; install it. " + said);
        List<double[]> rows = new ArrayList<>();
        said.lines().forEach(line -> rows.add(Arrays.stream(line.split(" ")).mapToDouble(Double::parseDouble).toArray()));
        return rows;
    }

    @Test
    void made_backs_and_clearances_agree_with_geos(@TempDir Path folder) throws Exception {
        List<Polygon> faces = new ArrayList<>();
        List<Outcome> made = new ArrayList<>();
        List<Outcome> round = new ArrayList<>();
        List<Outcome> drawn = new ArrayList<>();
        List<String> lines = new ArrayList<>();
        for (char letter : LETTERS.toCharArray()) {
            Polygon face = Lettering.letter(letter, 300, FLATNESS_MM).get(0);
            Part part = Part.builder("f", Role.FACE, face).build();
            Outcome mitred = tester().part(part).run();
            // a back as a hand would draw it: turned a little, moved a little
            Polygon back = (Polygon) AffineTransformation.rotationInstance(0.002, 100, -150).translate(0.3, -0.2)
                    .transform((Polygon) Drawings.cell(mitred, "made-backs", 0, "shape"));
            faces.add(face);
            made.add(mitred);
            round.add(tester().with(SharedSettings.BACK_JOINS, "round").part(part).run());
            drawn.add(tester().part(part).part(Part.builder("b", Role.BACK, back).build()).run());
            lines.add(SIDE_MM + ";" + face.toText() + ";" + back.toText());
        }
        List<double[]> expected = shapely(lines, folder);
        assertEquals(LETTERS.length(), expected.size());
        for (int i = 0; i < expected.size(); i++) {
            String letter = "letter " + LETTERS.charAt(i);
            double[] geos = expected.get(i);
            assertEquals(geos[0], number(made.get(i), "made-backs", 0, "area"), 1.0, letter + ", mitred");
            assertEquals(geos[1], number(round.get(i), "made-backs", 0, "area"), 1.0, letter + ", round");
            // GEOS is asked every 0.1 mm, so that it misses an extreme by 0.05 mm at most
            double least = number(drawn.get(i), "pairs", 0, "least");
            double greatest = number(drawn.get(i), "pairs", 0, "greatest");
            assertTrue(least <= geos[2] + 0.001 && least >= geos[2] - 0.05, letter + ", least " + least + " against " + geos[2]);
            assertTrue(greatest >= geos[3] - 0.001 && greatest <= geos[3] + 0.05, letter + ", greatest " + greatest + " against " + geos[3]);
            assertEquals(geos[4], number(drawn.get(i), "pairs", 0, "mean"), 0.002, letter + ", mean");
            assertTrue(geos[3] - geos[2] > 0.5, letter + " must depart for the test to mean anything");
        }
    }

    /** Every letter of the alphabet, i and j in their pieces, accents too: what was made for a face must fit it. */
    @Test
    void what_is_made_for_lettering_passes_as_drawn_and_nothing_is_lost() throws Exception {
        CheckTester makes = tester();
        CheckTester compares = tester();
        int count = 0;
        for (char letter : "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789&é".toCharArray()) {
            for (Polygon piece : Lettering.letter(letter, 300, 0.02)) {
                Polygon moved = (Polygon) AffineTransformation.translationInstance(count * 500.0, 0).transform(piece);
                makes.part(Part.builder("f" + count, Role.FACE, moved).build());
                compares.part(Part.builder("f" + count, Role.FACE, moved).build());
                count++;
            }
        }
        Outcome made = makes.run();
        assertEquals(67, count, "i, j and é are two pieces");
        assertEquals(List.of(), rules(made), made.findings()::toString);
        for (int i = count - 1; i >= 0; i--) {
            Polygon back = (Polygon) Drawings.cell(made, "made-backs", i, "shape");
            compares.part(Part.builder("b" + i, Role.BACK, back.reverse()).build());
        }
        Outcome compared = compares.run();
        assertEquals(List.of(), rules(compared), compared.findings()::toString);
        assertEquals(count, compared.tables().get(0).rows().size());
        for (int i = 0; i < count; i++) {
            assertEquals(SIDE_MM, number(compared, "pairs", i, "least"), OFFSET_MM);
        }
    }

    /** Letters joined into one long piece, with a back of the same. */
    @Test
    void lettering_joined_into_one_piece_is_one_pair() throws Exception {
        List<Geometry> letters = new ArrayList<>();
        double x = 0;
        for (char letter : "Beadledog".toCharArray()) {
            Geometry placed = AffineTransformation.translationInstance(x, 0).transform(Lettering.letter(letter, 200, 0.02).get(0));
            letters.add(placed);
            x = placed.getEnvelopeInternal().getMaxX() - 12;
        }
        letters.add(Drawings.box(0, -40, x, 30));
        Polygon script = (Polygon) UnaryUnionOp.union(letters);
        assertTrue(script.getNumInteriorRing() >= 9, "several counters");
        Outcome made = tester().part(Part.builder("f", Role.FACE, script).build()).run();
        Geometry back = (Geometry) Drawings.cell(made, "made-backs", 0, "shape");
        CheckTester compares = tester().part(Part.builder("f", Role.FACE, script).build());
        for (int i = 0; i < back.getNumGeometries(); i++) {
            compares.part(Part.builder("b" + i, Role.BACK, (Polygon) back.getGeometryN(i)).build());
        }
        Outcome compared = compares.run();
        assertEquals(1, compared.tables().get(0).rows().size());
        assertEquals(List.of(), Drawings.of(compared, FitRules.CLEARANCE));
        assertEquals(SIDE_MM, number(compared, "pairs", 0, "least"), OFFSET_MM);
    }
}
