// SPDX-License-Identifier: Apache-2.0
package kerfglow.acceptance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.locationtech.jts.io.WKTReader;

/** The commands that README.md shows, and what they promise. */
class CommandLineTest {
    private static final Path DEMO = Kerfglow.TESTDATA.resolve("skelderfen.svg");
    private static final Path PLAIN = Kerfglow.TESTDATA.resolve("plain-letters.svg");

    @TempDir
    private Path folder;

    @Test
    void the_demo_has_findings_that_a_person_can_read() throws Exception {
        Kerfglow.Ran ran = Kerfglow.run("check", DEMO.toString());
        assertEquals(1, ran.status(), ran::toString);
        for (String words : List.of("router.narrow-gap", "router.thin-stroke", "artwork.", "where", "found", "why", "do", "from", " stop, ")) {
            assertTrue(ran.out().contains(words), words + "\n" + ran.out());
        }
        assertFalse(ran.out().contains("\u001b"), "colour only on a terminal");
        assertTrue(ran.err().isEmpty(), ran::err);
    }

    @Test
    void json_keeps_to_the_schema_and_two_runs_agree() throws Exception {
        JsonNode first = json(Kerfglow.run("check", "--format", "json", DEMO.toString()).out());
        var schema = JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012).getSchema(Files.newInputStream(
                Kerfglow.TOP.resolve("bundles/kerfglow.views/src/main/resources/kerfglow/views/result.schema.json")));
        assertEquals(List.of(), List.copyOf(schema.validate(first)));
        JsonNode second = json(Kerfglow.run("check", "--format", "json", DEMO.toString()).out());
        assertEquals(first.get("findings"), second.get("findings"));
        assertEquals(first.get("parts"), second.get("parts"));
    }

    @Test
    void the_wkt_of_a_part_has_the_area_that_is_stated() throws Exception {
        JsonNode json = json(Kerfglow.run("check", "--format", "json", PLAIN.toString()).out());
        assertTrue(json.get("parts").size() > 0);
        for (JsonNode part : json.get("parts")) {
            assertEquals(part.get("areaMm2").asDouble(), new WKTReader().read(part.get("wkt").asText()).getArea(), 0.01);
        }
    }

    private static JsonNode json(String text) throws IOException {
        return new ObjectMapper().readTree(text);
    }

    @Test
    void the_pictures_are_written() throws Exception {
        Path svg = folder.resolve("marked/proof.svg");
        Path png = folder.resolve("marked/proof.png");
        Kerfglow.run("check", "--overlay", svg.toString(), "--overlay", png.toString(), DEMO.toString());
        assertTrue(Files.readString(svg).contains("<svg"));
        assertEquals(2000, ImageIO.read(png.toFile()).getWidth());
    }

    @Test
    void one_bad_file_does_not_stop_the_rest() throws Exception {
        Path bad = Files.writeString(folder.resolve("bad.svg"), "no");
        Kerfglow.Ran ran = Kerfglow.run("check", bad.toString(), PLAIN.toString());
        assertEquals(2, ran.status());
        assertTrue(ran.out().contains("plain-letters.svg: ") && ran.out().contains("bad.svg: not checked"), ran::out);
        assertTrue(json(Kerfglow.run("check", "--format", "json", bad.toString(), PLAIN.toString()).out()).get("results").size() == 1);
    }

    @Test
    void a_folder_is_checked_file_by_file() throws Exception {
        Files.copy(PLAIN, folder.resolve("a.svg"));
        Files.copy(PLAIN, folder.resolve("b.SVG"));
        Files.writeString(folder.resolve("c.txt"), "no proof");
        Kerfglow.Ran ran = Kerfglow.run("check", folder.toString(), "--overlay", folder.resolve("out").toString());
        assertTrue(ran.out().contains("a.svg: ") && ran.out().contains("b.SVG: "), ran::out);
        assertTrue(Files.exists(folder.resolve("out/a.overlay.svg")) && Files.exists(folder.resolve("out/b.overlay.png")));
    }

    @Test
    void the_threshold_decides_the_status() throws Exception {
        Path proof = Files.writeString(folder.resolve("box.svg"),
                "<svg xmlns='http://www.w3.org/2000/svg' width='400mm' height='300mm' viewBox='0 0 400 300'><rect x='50' y='50' width='300' height='200'/></svg>");
        assertEquals(0, Kerfglow.run("check", proof.toString()).status());
        assertEquals(1, Kerfglow.run("check", "--threshold", "info", proof.toString()).status());
    }

    @Test
    void a_check_that_runs_out_of_time_is_status_3() throws Exception {
        Kerfglow.Ran ran = Kerfglow.run("check", "--set", "host.check-time-limit=0.01", DEMO.toString());
        assertEquals(3, ran.status(), ran::toString);
        assertTrue(ran.out().contains("timed out"), ran::out);
    }

    @Test
    void wrong_words_are_status_2_with_advice() throws Exception {
        for (String[] words : new String[][] {{}, {"chekc"}, {"check"}, {"check", "--threshold", "bad", PLAIN.toString()}, {"check", "--set", "router.nothing=1", PLAIN.toString()},
                {"check", "--only", "nothing", PLAIN.toString()}, {"check", "--overlay", "x.gif", PLAIN.toString()}, {"check", "--job", "none.yaml", PLAIN.toString()},
                {"explain", "router.nothing"}}) {
            Kerfglow.Ran ran = Kerfglow.run(words);
            assertEquals(2, ran.status(), ran::toString);
            assertFalse((ran.out() + ran.err()).isBlank());
            assertFalse(ran.err().contains("\tat "), ran::err);
        }
    }

    @Test
    void the_checks_are_listed_and_every_rule_has_a_page() throws Exception {
        String listed = Kerfglow.run("checks").out();
        List<String> rules = listed.lines().filter(line -> line.matches("  (stop|review|info) .*")).map(line -> line.strip().split("\\s+")[1]).toList();
        assertTrue(rules.size() > 15, listed);
        for (String rule : List.of("router.narrow-gap", "router.inside-corner", "router.thin-stroke", "router.small-part", "router.loose-island", "router.too-deep", "router.bit")) {
            assertTrue(rules.contains(rule), rule);
            Kerfglow.Ran ran = Kerfglow.run("explain", rule);
            assertEquals(0, ran.status());
            assertTrue(ran.out().contains(rule) && ran.out().length() > 300, ran::out);
        }
    }

    @Test
    void two_at_once_do_not_disturb_each_other() throws Exception {
        List<Process> processes = List.of(start(), start(), start());
        for (Process process : processes) {
            assertEquals(0, process.waitFor());
        }
    }

    private static Process start() throws IOException {
        return new ProcessBuilder(Kerfglow.program().toString(), "explain", "router.bit").redirectErrorStream(true).redirectOutput(ProcessBuilder.Redirect.DISCARD).start();
    }
}
