// SPDX-License-Identifier: Apache-2.0
package kerfglow.acceptance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.locationtech.jts.io.WKTReader;

/** From a drawn letter to the numbers of the floor: the checks of fit, returns, trim and sheet in the built program. */
class FabricationTest {
    /** 3/16 in overall: common practice, no source. */
    private static final double ALLOWANCE_MM = 3 * 25.4 / 16;

    @TempDir
    private Path folder;

    private JsonNode run(double width, double height, String sheet) throws Exception {
        return run(String.format(Locale.ROOT, "<rect x='100' y='100' width='%f' height='%f'/>", width, height), sheet);
    }

    private JsonNode run(String shapes, String sheet) throws Exception {
        Path proof = folder.resolve("bar.svg");
        Files.writeString(proof, "<svg xmlns='http://www.w3.org/2000/svg' width='3000mm' height='3000mm' viewBox='0 0 3000 3000'><g id='Faces'>" + shapes + "</g></svg>");
        Files.writeString(folder.resolve("bar.job.yaml"), "roles: [{layer: Faces, role: face}]\nmaterials: [{role: face, material: polycarbonate, thickness: 4.5 mm}]\n" + sheet);
        Kerfglow.Ran ran = Kerfglow.run("check", "--format", "json", proof.toString());
        assertTrue(ran.status() < 2, ran::toString);
        return new ObjectMapper().readTree(ran.out());
    }

    private static JsonNode table(JsonNode json, String check, String id) {
        JsonNode row = StreamSupport.stream(json.get("checks").spliterator(), false).filter(each -> each.get("check").asText().equals(check)).findFirst().orElseThrow();
        return StreamSupport.stream(row.get("measurements").spliterator(), false).filter(each -> each.get("id").asText().equals(id)).findFirst()
                .orElseThrow(() -> new AssertionError(id + " in " + row));
    }

    /** The cell of a row by the id of its column. */
    private static JsonNode cell(JsonNode table, int row, String column) {
        for (int i = 0; i < table.get("columns").size(); i++) {
            if (table.get("columns").get(i).get("id").asText().equals(column)) {
                return table.get("rows").get(row).get(i);
            }
        }
        throw new AssertionError(column + " in " + table.get("columns"));
    }

    private static boolean found(JsonNode json, String rule) {
        return StreamSupport.stream(json.get("findings").spliterator(), false).anyMatch(finding -> finding.get("rule").asText().equals(rule));
    }

    @Test
    void the_made_back_is_smaller_than_its_face_by_the_allowance() throws Exception {
        JsonNode backs = table(run(400, 150, ""), "fit", "made-backs");
        assertEquals(1, backs.get("rows").size());
        JsonNode columns = backs.get("columns");
        for (int i = 0; i < columns.size(); i++) {
            if (columns.get(i).get("type").asText().equals("geometry")) {
                assertEquals((400 - ALLOWANCE_MM) * (150 - ALLOWANCE_MM), new WKTReader().read(backs.get("rows").get(0).get(i).asText()).getArea(), 0.1);
                return;
            }
        }
        throw new AssertionError("no geometry in " + columns);
    }

    /**
     * A polycarbonate face 2,440 mm long on an aluminium can, 40 K either way: with 68 and 23.6 millionths per kelvin it moves 4.33 mm (derived: (68 - 23.6) 1e-6 x 40 x 2440),
     * which passes 4.76 mm gross and fails what two walls of 1 mm leave.
     */
    @Test
    void a_long_face_that_moves_more_than_its_play_is_found() throws Exception {
        assertTrue(found(run(2440, 300, "settings: {fit.wall-thickness: 1 mm, fit.expansion-polycarbonate: 68}\n"), "fit.thermal"));
        assertFalse(found(run(2440, 300, "settings: {fit.wall-thickness: 0 mm, fit.expansion-polycarbonate: 68}\n"), "fit.thermal"));
    }

    @Test
    void returns_are_measured_once_a_depth_is_given() throws Exception {
        JsonNode without = run(400, 150, "");
        assertTrue(without.toString().contains("No depth is given"), without.get("checks").toString());
        JsonNode strips = table(run(400, 150, "settings: {returns.depth: 100 mm}\n"), "returns", "strips");
        assertEquals(1, strips.get("rows").size());
        double inside = 2 * (400 + 150 - 2 * ALLOWANCE_MM);
        assertEquals(inside, cell(strips, 0, "length").asDouble(), 12, "four folds add a little to the length of the back's edge");
    }

    @Test
    void the_returns_follow_the_edge_of_the_back_that_is_made_counters_too() throws Exception {
        JsonNode json = run("<path fill-rule='evenodd' d='M300 50h200v200h-200z M350 100h100v100h-100z'/>", "settings: {returns.depth: 100 mm}\n");
        JsonNode strips = table(json, "returns", "strips");
        assertEquals(2, strips.get("rows").size());
        double edge = 4 * (200 - ALLOWANCE_MM) + 4 * (100 + ALLOWANCE_MM);
        assertEquals(edge, cell(table(json, "fit", "made-backs"), 0, "edge").asDouble(), 0.01);
        assertEquals(edge, cell(strips, 0, "line").asDouble() + cell(strips, 1, "line").asDouble(), 0.01);
    }

    /** A bar of 2,600 by 20 mm fits a sheet of 1,220 by 2,440 mm (diagonal 2,728 mm) only at a slant. */
    @Test
    void a_bar_longer_than_the_sheet_fits_at_a_slant() throws Exception {
        Files.writeString(folder.resolve("shop.yaml"), "stock: {sheets: [{width: 1220 mm, height: 2440 mm}]}\nsettings: {sheet.margin: 0 mm}\n");
        assertFalse(found(run(2600, 20, "shop: shop.yaml\n"), "sheet.too-large"));
        assertTrue(found(run(2750, 20, "shop: shop.yaml\n"), "sheet.too-large"));
    }
}
