// SPDX-License-Identifier: Apache-2.0
package kerfglow.views;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import javax.xml.parsers.DocumentBuilderFactory;
import kerfglow.api.Check;
import kerfglow.api.CheckInfo;
import kerfglow.api.Inspection;
import kerfglow.api.Measure;
import kerfglow.api.Outcome;
import kerfglow.api.OverlayLayer;
import kerfglow.api.Quantity;
import kerfglow.api.Rule;
import kerfglow.api.Setting;
import kerfglow.api.Severity;
import kerfglow.api.StockKind;
import kerfglow.api.Table;
import kerfglow.api.TableInfo;
import kerfglow.api.UnitSystem;
import kerfglow.api.proof.Element;
import kerfglow.api.proof.Paint;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Proof;
import kerfglow.api.proof.Role;
import kerfglow.host.CheckCatalogue;
import kerfglow.host.JobSheet;
import kerfglow.host.Result;
import kerfglow.host.ShopSheet;
import kerfglow.testkit.CheckTester;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;
import org.w3c.dom.Document;

class ViewsTest {
    private static final Rule NARROW = new Rule("trial.narrow", Severity.STOP, "Too narrow & <thin>", "It breaks.", "Widen it.", "geometry");
    private static final Rule NOTE = new Rule("trial.note", Severity.INFO, "A note", "So that you know.", "Nothing.", "common practice, no source");
    private static final String BOX = "POLYGON ((10 10, 90 10, 90 40, 10 40, 10 10), (20 20, 30 20, 30 30, 20 30, 20 20))";

    private static Result.ReportedFinding finding(String id, Rule rule, double measured, String... points) {
        List<Result.Place> places = Arrays.stream(points).map(point -> {
            Geometry geometry = CheckTester.wkt("POINT (" + point + ")");
            return new Result.Place(geometry.getCoordinate(), geometry, Optional.of(Measure.mm(measured)));
        }).toList();
        return new Result.ReportedFinding(id, rule, rule.severity(), "", List.of("p1"), List.of("bar"), Optional.of(Measure.mm(measured)), Optional.of(Measure.mm(3)), places,
                "part p1 is narrow.", rule.fix());
    }

    private static Result result(List<Result.ReportedFinding> findings) {
        Geometry box = CheckTester.wkt(BOX);
        Proof proof = new Proof("bar.svg", "ab".repeat(32), 100, 50, 1, 0.02,
                List.of(Element.builder("bar").layer("L").fill(Paint.colour(0x3366cc)).fillArea(box).build()), List.of());
        Part part = Part.builder("p1", Role.FACE, (Polygon) box).layer("L").elements(List.of("bar")).sheetMaterial("acrylic").thicknessMm(4.5)
                .drilled(CheckTester.wkt("POLYGON ((50 20, 52 20, 52 22, 50 22, 50 20))")).build();
        TableInfo info = new TableInfo("numbers", "Numbers", List.of(TableInfo.Column.text("part", "part"), TableInfo.Column.number("area", "area", Quantity.AREA),
                TableInfo.Column.flag("good", "good"), TableInfo.Column.geometry("shape", "shape")));
        Table table = new Table(info, List.of(Arrays.asList("p1", 2300.0, true, box), Arrays.asList("p2", null, false, null)));
        OverlayLayer layer = new OverlayLayer("axis", "Axis", List.of(new OverlayLayer.Item(CheckTester.wkt("LINESTRING (0 0, 5 5)"), 0.5, "a"),
                new OverlayLayer.Item(CheckTester.wkt("POINT (1 1)"), Double.NaN, "")));
        OverlayLayer map = new OverlayLayer("map", "Map", List.of(), Optional.of(new OverlayLayer.Raster(10, 10, 2.5, 2, 3, new int[6])),
                List.of(new OverlayLayer.LegendEntry(0x0B1B4A, "0 cd/m²"), new OverlayLayer.LegendEntry(0xFFF2A6, "400 cd/m²")));
        List<Result.CheckRow> rows = List.of(new Result.CheckRow("trial", "trial", "1.0.0", Result.Status.FINDINGS, 12, "", List.of(table), List.of(layer, map)),
                new Result.CheckRow("other", "other", "1.0.0", Result.Status.NOT_MEASURED, 1, "No thickness.", List.of(), List.of()));
        List<Result.SettingUsed> settings = List.of(new Result.SettingUsed("trial.width", "all", 3.0, "mm", "check"),
                new Result.SettingUsed("trial.count", "role=face", 4, "", "shop.yaml line 3"), new Result.SettingUsed("trial.flag", "all", true, "", "command line"));
        return new Result(proof, JobSheet.NONE, ShopSheet.NONE, UnitSystem.METRIC, List.of(part), findings, rows, settings, List.of("A remark."));
    }

    private static Result sample() {
        return result(List.of(finding("00000001", NARROW, 2.5, "20 10", "60 40"), finding("00000002", NOTE, 2.9999)));
    }

    private static JsonSchema schema() {
        return JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012).getSchema(JsonView.class.getResourceAsStream("result.schema.json"));
    }

    private static JsonNode json(Result result) throws Exception {
        StringWriter out = new StringWriter();
        JsonView.write(result, out);
        return new ObjectMapper().readTree(out.toString());
    }

    @Test
    void json_keeps_to_its_schema() throws Exception {
        assertEquals(List.of(), List.copyOf(schema().validate(json(sample()))));
        StringWriter several = new StringWriter();
        JsonView.writeAll(List.of(sample()), List.of(new JsonView.Unusable("x.svg", "there is no such file")), several);
        assertEquals(List.of(), List.copyOf(schema().validate(new ObjectMapper().readTree(several.toString()))));
    }

    @Test
    void json_tells_where_a_picture_lies_and_what_its_colours_mean() throws Exception {
        JsonNode map = json(sample()).get("checks").get(0).get("layers").get(1);
        assertEquals(new ObjectMapper().readTree("{\"leftMm\": 10.0, \"topMm\": 10.0, \"cellMm\": 2.5, \"columns\": 2, \"rows\": 3}"), map.get("raster"));
        assertEquals("#0b1b4a", map.get("legend").get(0).get("colour").asText());
        assertEquals("400 cd/m²", map.get("legend").get(1).get("label").asText());
        assertFalse(json(sample()).get("checks").get(0).get("layers").get(0).has("raster"));
    }

    @Test
    void the_schema_refuses_what_lacks_a_field() throws Exception {
        JsonNode whole = json(sample());
        for (String field : List.of("proof", "parts", "findings", "checks", "settings", "decisions")) {
            JsonNode less = whole.deepCopy();
            ((ObjectNode) less).remove(field);
            assertFalse(schema().validate(less).isEmpty(), field);
        }
    }

    @Test
    void json_holds_what_was_measured() throws Exception {
        JsonNode json = json(sample());
        JsonNode part = json.get("parts").get(0);
        assertEquals(80 * 30 - 100 - 4, part.get("areaMm2").asDouble(), 1e-9);
        assertEquals(2 * (80 + 30) + 40 + 8, part.get("perimeterMm").asDouble(), 1e-9);
        assertEquals(2, part.get("holes").asInt());
        assertEquals("[10.0,10.0,90.0,40.0]", part.get("boundsMm").toString());
        JsonNode finding = json.get("findings").get(0);
        assertEquals("stop", finding.get("severity").asText());
        assertEquals(2, finding.get("count").asInt());
        assertEquals("[20.0,10.0]", finding.get("at").toString());
        assertEquals(2.5, finding.get("measured").asDouble());
        assertEquals(3, finding.get("required").asDouble());
        assertEquals("mm", finding.get("unit").asText());
        assertTrue(json.get("findings").get(1).get("places").isEmpty() && json.get("findings").get(1).get("at") == null);
        assertEquals("not measured", json.get("checks").get(1).get("status").asText());
        assertTrue(json.get("decisions").isEmpty());
    }

    @Test
    void json_is_the_same_from_run_to_run() {
        StringWriter first = new StringWriter();
        StringWriter second = new StringWriter();
        JsonView.write(sample(), first);
        JsonView.write(sample(), second);
        assertEquals(first.toString(), second.toString());
    }

    @Test
    void text_says_what_where_how_much_why_and_what_to_do() {
        String text = TextView.of(sample(), false);
        for (String words : List.of("Too narrow & <thin>", "trial.narrow", "part p1 is narrow", "20.0, 10.0 mm; 60.0, 40.0 mm", "2.5 mm, needs 3 mm", "It breaks.", "Widen it.",
                "A remark.", "No thickness.", "1 stop, 0 review, 1 info", "not measured: other", "1 face")) {
            assertTrue(text.contains(words), words + "\n" + text);
        }
        assertFalse(text.contains("\u001b"));
        assertTrue(TextView.of(sample(), true).contains("\u001b[1;31m"));
        assertTrue(text.lines().allMatch(line -> line.length() <= 120), "lines fit a terminal");
    }

    @Test
    void the_heading_counts_what_is_checked_apart() {
        Result sample = sample();
        Part note = Part.builder("p2", Role.NOTE, (Polygon) CheckTester.wkt(BOX)).layer("N").build();
        Result more = new Result(sample.proof(), sample.job(), sample.shop(), sample.units(), List.of(sample.parts().get(0), note), sample.findings(), sample.checks(),
                sample.settings(), sample.remarks());
        assertEquals("bar.svg  100 mm x 50 mm, 1 part (1 face); not checked: 1 note", TextView.of(more, false).lines().findFirst().orElseThrow());
    }

    @Test
    void help_says_what_a_field_is_when_it_is_left_out() {
        CheckCatalogue catalogue = new CheckCatalogue();
        StockKind tools = new StockKind("tools", "tools", List.of(Setting.text("for", "what for", "", "empty is for all", "the shop sheet")));
        CheckInfo info = new CheckInfo("trial", "trial", List.of(NARROW), List.of(), List.of(tools), List.of(), "## trial.narrow\n");
        catalogue.add(new Check() {
            @Override
            public CheckInfo info() {
                return info;
            }

            @Override
            public Outcome inspect(Inspection inspection) {
                return Outcome.of(List.of());
            }
        }, "bundle", "1.0.0");
        String help = HelpText.checks(catalogue.entries());
        assertTrue(help.contains("may be left out; range text"), help);
        assertTrue(help.contains("range 0.0005 mm to 1 mm"), help);
    }

    @Test
    void numbers_that_would_read_alike_are_shown_finer() {
        assertEquals("2.9999 mm, needs 3.0000 mm", FindingText.measures(finding("x", NOTE, 2.9999), UnitSystem.METRIC));
    }

    @Test
    void the_picture_is_well_formed_and_names_every_finding() throws Exception {
        String svg = OverlayPicture.svg(sample());
        DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
        Document document = factory.newDocumentBuilder().parse(new ByteArrayInputStream(svg.getBytes(StandardCharsets.UTF_8)));
        List<String> texts = new ArrayList<>();
        for (int i = 0; i < document.getElementsByTagName("text").getLength(); i++) {
            texts.add(document.getElementsByTagName("text").item(i).getTextContent());
        }
        assertEquals(3, texts.stream().filter("1"::equals).count(), "two places and the list");
        assertEquals(1, texts.stream().filter("2"::equals).count(), "the list alone");
        assertTrue(texts.contains("Too narrow & <thin>") && texts.contains("part p1 is narrow. 2 places."), texts::toString);
    }

    @Test
    void the_picture_shows_the_proof_in_its_colours() {
        BufferedImage image = OverlayPicture.image(result(List.of()));
        int blue = 0;
        for (int y = 0; y < image.getHeight(); y++) {
            for (int x = 0; x < image.getWidth(); x++) {
                blue += (image.getRGB(x, y) & 0xffffff) == 0x3366cc ? 1 : 0;
            }
        }
        double pixelsPerMm = 1900 / 100.0;
        assertEquals(2300 * pixelsPerMm * pixelsPerMm, blue, 0.01 * 2300 * pixelsPerMm * pixelsPerMm, "the area of the part, but for blended edges");
    }

    @Test
    void badges_stay_in_the_frame_and_cover_neither_each_other() {
        Random random = new Random(3);
        Envelope frame = new Envelope(0, 1900, 0, 800);
        List<Coordinate> places = new ArrayList<>();
        for (int i = 0; i < 60; i++) {
            places.add(new Coordinate(random.nextDouble() * 1900, random.nextDouble() * 800));
        }
        places.add(new Coordinate(0, 0));
        places.add(new Coordinate(1900, 800));
        Badges badges = new Badges(frame, 17, places);
        List<Coordinate> spots = places.stream().map(badges::put).toList();
        for (int i = 0; i < spots.size(); i++) {
            assertTrue(frame.contains(spots.get(i)), spots.get(i).toString());
            for (int j = 0; j < i; j++) {
                assertTrue(spots.get(i).distance(spots.get(j)) >= 2 * 17, i + " and " + j);
            }
        }
    }

    @Test
    void long_lists_are_cut_short_with_a_count() {
        List<Result.ReportedFinding> many = new ArrayList<>();
        for (int i = 0; i < 300; i++) {
            many.add(finding(String.format("%08x", i), NARROW, 1 + i / 1000.0, (i % 100) + " " + i / 10));
        }
        assertTrue(OverlayPicture.svg(result(many)).contains("And 294 more of this kind"));
        List<Result.ReportedFinding> kinds = new ArrayList<>();
        for (int i = 0; i < 130; i++) {
            Rule rule = new Rule("trial.r" + i, Severity.STOP, "Fault " + i, "a", "b", "c");
            kinds.add(finding(String.format("%08x", i), rule, 1, (i % 100) + " " + i / 10));
        }
        assertTrue(OverlayPicture.svg(result(kinds)).contains("And 10 more, listed in the text."));
    }
}
