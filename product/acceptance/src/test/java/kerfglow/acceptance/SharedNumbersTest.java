// SPDX-License-Identifier: Apache-2.0
package kerfglow.acceptance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A shop's check reads what a shipped check has measured: the lines of lettering, with their base lines and heights. */
class SharedNumbersTest {
    private static final String SOURCE = """
            package acme;
            import java.util.*;
            import kerfglow.api.*;
            import org.locationtech.jts.geom.Geometry;
            public class Lines implements Check {
                private final Rule rule = new Rule("acme.lines.height", Severity.INFO, "A line of lettering", "why", "fix", "geometry");
                public CheckInfo info() {
                    return new CheckInfo("acme.lines", "lines", List.of(rule), List.of(), List.of(), List.of(), "## acme.lines.height\\n");
                }
                @Override
                public List<String> reads() {
                    return List.of("legibility");
                }
                public Outcome inspect(Inspection inspection) {
                    Table lines = inspection.table("legibility", "lines").orElseThrow();
                    List<String> columns = new ArrayList<>();
                    lines.info().columns().forEach(column -> columns.add(column.id()));
                    List<Finding> findings = new ArrayList<>();
                    for (List<Object> row : lines.rows()) {
                        findings.add(Finding.of(rule, "parts " + row.get(columns.indexOf("parts"))).place((Geometry) row.get(columns.indexOf("base-line")))
                                .measured(Measure.mm((Double) row.get(columns.indexOf("cap-height")))).build());
                    }
                    return Outcome.of(findings);
                }
            }
            """;

    @TempDir
    private Path folder;

    @Test
    void lines_of_lettering_reach_a_check_of_a_shop() throws Exception {
        Path checks = Files.createDirectory(folder.resolve("checks"));
        ShopBundle.compile(folder.resolve("classes"), "acme.Lines", SOURCE).write(checks.resolve("lines.jar"), "acme.lines", "1.0.0", Map.of(), Map.of());
        Kerfglow.Ran ran = Kerfglow.run("check", "--checks-folder", checks.toString(), "--only", "legibility,acme.lines", "--format", "json", Kerfglow.TESTDATA.resolve("plain-letters.svg").toString());
        JsonNode result = new ObjectMapper().readTree(ran.out());
        JsonNode table = StreamSupport.stream(result.get("checks").spliterator(), false).filter(row -> row.get("check").asText().equals("legibility"))
                .flatMap(row -> StreamSupport.stream(row.get("measurements").spliterator(), false)).filter(each -> each.get("id").asText().equals("lines")).findFirst().orElseThrow();
        int capHeight = 0;
        while (!table.get("columns").get(capHeight).get("id").asText().equals("cap-height")) {
            capHeight++;
        }
        List<Double> measured = new ArrayList<>();
        for (JsonNode row : table.get("rows")) {
            measured.add(row.get(capHeight).asDouble());
        }
        List<Double> read = new ArrayList<>();
        for (JsonNode finding : result.get("findings")) {
            if (finding.get("rule").asText().equals("acme.lines.height")) {
                finding.get("places").forEach(place -> read.add(place.get("measured").asDouble()));
                assertTrue(finding.get("wkt").asText().startsWith("LINESTRING"), finding::toString);
            }
        }
        assertTrue(!measured.isEmpty(), table::toString);
        assertEquals(measured.stream().sorted().toList(), read.stream().sorted().toList());
    }
}
