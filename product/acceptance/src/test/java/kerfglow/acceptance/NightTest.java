// SPDX-License-Identifier: Apache-2.0
package kerfglow.acceptance;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.Test;

/** Contrast by night comes from the light that was reckoned in the same run. */
class NightTest {
    @Test
    void lit_letters_have_the_contrast_of_their_dimmest_face_to_the_wall() throws Exception {
        double wall = 2.5;
        Kerfglow.Ran ran = Kerfglow.run("check", "--only", "glow,legibility", "--format", "json", "--set", "legibility.night-wall-luminance=" + wall,
                Kerfglow.TESTDATA.resolve("glow-letters.svg").toString());
        JsonNode result = new ObjectMapper().readTree(ran.out());
        Map<String, Double> means = new HashMap<>();
        rows(result, "glow", "light").forEach(row -> means.put(row.get("part").asText(), row.get("mean-luminance").asDouble()));
        Map<String, JsonNode> line = rows(result, "legibility", "lines").get(0);
        // the dot of the i is too small for the module: it stays dark, and glow.unlit says so
        double dimmest = List.of(line.get("parts").asText().split(" ")).stream().filter(means::containsKey).mapToDouble(means::get).min().orElseThrow();
        assertEquals(dimmest, line.get("night-luminance").asDouble(), 1e-6);
        assertEquals(wall, line.get("night-luminance-behind").asDouble());
        assertEquals(dimmest / wall, line.get("night-contrast").asDouble(), 1e-6);
    }

    private static List<Map<String, JsonNode>> rows(JsonNode result, String check, String table) {
        JsonNode found = StreamSupport.stream(result.get("checks").spliterator(), false).filter(row -> row.get("check").asText().equals(check))
                .flatMap(row -> StreamSupport.stream(row.get("measurements").spliterator(), false)).filter(each -> each.get("id").asText().equals(table)).findFirst().orElseThrow();
        return StreamSupport.stream(found.get("rows").spliterator(), false).map(row -> {
            Map<String, JsonNode> cells = new HashMap<>();
            for (int i = 0; i < row.size(); i++) {
                cells.put(found.get("columns").get(i).get("id").asText(), row.get(i));
            }
            return cells;
        }).toList();
    }
}
