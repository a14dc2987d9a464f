// SPDX-License-Identifier: Apache-2.0
package kerfglow.acceptance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the floor works from, made by the built program: outlines, worksheet, pattern. */
class FloorFilesTest {
    /** An L, 400 by 300 mm with a notch of 200 by 200: no symmetry, so that a mirrored or turned file is seen. */
    private static final double[][] CORNERS = {{100, 100}, {200, 100}, {200, 300}, {500, 300}, {500, 400}, {100, 400}};
    private static final double AREA_MM2 = 100 * 300 + 300 * 100;
    private static final double PROOF_HEIGHT_MM = 800;
    private static final String READER = """
            import json, sys, ezdxf
            doc = ezdxf.readfile(sys.argv[1])
            print(json.dumps({'units': doc.header['$INSUNITS'], 'errors': len(doc.audit().errors),
                'faces': [[list(p) for p in e.get_points('xy')] for e in doc.modelspace().query('LWPOLYLINE[layer=="Faces"]')],
                'backs': len(doc.modelspace().query('LWPOLYLINE[layer=="Backs made"]')), 'joints': len(doc.modelspace().query('POINT[layer=="Return joints"]'))}))
            """;

    @TempDir
    private Path folder;

    private Path proof() throws Exception {
        StringBuilder points = new StringBuilder();
        Arrays.stream(CORNERS).forEach(corner -> points.append(corner[0]).append(',').append(corner[1]).append(' '));
        Files.writeString(folder.resolve("ell.job.yaml"), "title: An L\nroles: [{layer: Letters, role: face}]\nmaterials: [{role: face, material: acrylic, thickness: 4.5 mm}]\nsettings: {returns.depth: 80 mm}\n");
        return Files.writeString(folder.resolve("ell.svg"), "<svg xmlns='http://www.w3.org/2000/svg' width='1000mm' height='800mm' viewBox='0 0 1000 800'><g id='Letters'><polygon id='ell' points='"
                + points + "'/></g></svg>");
    }

    @Test
    void all_three_are_made_and_agree() throws Exception {
        Path proof = proof();
        Path made = folder.resolve("made");
        for (String command : new String[] {"outlines", "worksheet", "pattern"}) {
            Kerfglow.Ran ran = Kerfglow.run(command, proof.toString(), "--to", made.toString());
            assertTrue(ran.status() < 2, ran::toString);
        }
        JsonNode dxf = read(made.resolve("ell.outlines.dxf"));
        assertEquals(4, dxf.get("units").asInt());
        assertEquals(0, dxf.get("errors").asInt());
        assertEquals(1, dxf.get("backs").asInt());
        assertEquals(1, dxf.get("joints").asInt());
        JsonNode face = dxf.get("faces").get(0);
        assertEquals(CORNERS.length, face.size());
        double twice = 0;
        for (int i = 0; i < face.size(); i++) {
            JsonNode next = face.get((i + 1) % face.size());
            twice += face.get(i).get(0).asDouble() * next.get(1).asDouble() - next.get(0).asDouble() * face.get(i).get(1).asDouble();
        }
        assertEquals(AREA_MM2, Math.abs(twice) / 2, 0.01);
        for (double[] corner : CORNERS) {
            boolean there = false;
            for (JsonNode vertex : face) {
                there |= Math.hypot(vertex.get(0).asDouble() - corner[0], vertex.get(1).asDouble() - (PROOF_HEIGHT_MM - corner[1])) < 0.001;
            }
            assertTrue(there, () -> Arrays.toString(corner) + " in " + face);
        }
        JsonNode sheet = new ObjectMapper().readTree(Files.readString(made.resolve("ell.worksheet.json")));
        JsonNode letter = sheet.get("letters").get(0);
        assertEquals(6, letter.get("bends").get(0).get("rows").size(), "one fold a corner");
        assertTrue(Files.readString(made.resolve("ell.worksheet.csv")).contains("parts,,parts,1,area,Area," + (int) AREA_MM2 + ",mm²"));
        for (String name : new String[] {"ell.worksheet.pdf", "ell.pattern.pdf"}) {
            assertEquals("%PDF-", new String(Files.readAllBytes(made.resolve(name)), 0, 5, StandardCharsets.US_ASCII), name);
        }
    }

    @Test
    void something_newer_is_kept_and_said() throws Exception {
        Path proof = proof();
        Path mine = Files.writeString(folder.resolve("mine.dxf"), "drawn by hand");
        Files.setLastModifiedTime(mine, FileTime.fromMillis(System.currentTimeMillis() + 3_600_000));
        Kerfglow.Ran ran = Kerfglow.run("outlines", proof.toString(), "--to", mine.toString());
        assertEquals(2, ran.status(), ran::toString);
        assertTrue(ran.err().contains("--replace"), ran::toString);
        assertEquals("drawn by hand", Files.readString(mine));
    }

    private JsonNode read(Path dxf) throws Exception {
        Process python = new ProcessBuilder("/usr/bin/python3", "-", dxf.toString()).redirectError(ProcessBuilder.Redirect.INHERIT).start();
        python.getOutputStream().write(READER.getBytes(StandardCharsets.UTF_8));
        python.getOutputStream().close();
        byte[] answer = python.getInputStream().readAllBytes();
        assertEquals(0, python.waitFor(), "needs Debian's python3-ezdxf");
        return new ObjectMapper().readTree(answer);
    }
}
