// SPDX-License-Identifier: Apache-2.0
package kerfglow.worksheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayOutputStream;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import kerfglow.api.Quantity;
import kerfglow.api.Table;
import kerfglow.api.TableInfo;
import kerfglow.api.UnitSystem;
import kerfglow.api.Units;
import kerfglow.api.proof.Part;
import kerfglow.host.Result;
import kerfglow.job.ReviewedResult;
import kerfglow.papers.Paper;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class WorksheetTest {
    private static final Instant NOON = Instant.parse("2026-03-01T12:00:00Z");
    /** One plate, 400 by 300 mm, with a return: every number of it can be worked out by hand. */
    private static final String PLATE = """
            <svg xmlns="http://www.w3.org/2000/svg" width="500mm" height="400mm" viewBox="0 0 500 400"><g id="Letters"><rect id="plate" x="50" y="50" width="400" height="300"/></g></svg>
            """;
    private static final String PLATE_JOB = """
            title: A plate
            roles:
              - {layer: Letters, role: face}
            materials:
              - {role: face, material: acrylic, thickness: 4.5 mm}
            settings:
              returns.depth: 100 mm
              returns.thickness: 1 mm
              returns.fold-radius: 1 mm
              returns.fold-k-factor: 0.4
              returns.line: outside
              mount.back-thickness: 2 mm
            """;

    private static ReviewedResult demo;
    private static Worksheet sheet;

    @TempDir
    private Path folder;

    @BeforeAll
    static void run() throws Exception {
        demo = DemoRun.of("skelderfen.svg", "mount.wind-speed=26");
        sheet = Worksheet.of(demo, "B", "2026-03-01");
    }

    private static byte[] pdf(Worksheet worksheet) throws Exception {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        WorksheetPdf.write(worksheet, Paper.Size.A4, NOON, out);
        return out.toByteArray();
    }

    private static String text(byte[] pdf) throws Exception {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            return new PDFTextStripper().getText(document).replaceAll("\\s+", " ");
        }
    }

    private static JsonNode json(Worksheet worksheet) throws Exception {
        StringWriter out = new StringWriter();
        WorksheetJson.write(worksheet, out);
        return new ObjectMapper().readTree(out.toString());
    }

    private static List<Table> allTables() {
        List<Table> tables = new ArrayList<>(sheet.totals());
        sheet.letters().forEach(letter -> {
            tables.addAll(letter.tables());
            tables.addAll(letter.bends());
        });
        return tables;
    }

    private static Table measured(Result result, String id) {
        String check = id.substring(0, id.indexOf('.'));
        String table = id.substring(id.indexOf('.') + 1).replaceFirst("-\\d+$", "");
        return result.checks().stream().filter(row -> row.check().equals(check)).flatMap(row -> row.tables().stream()).filter(each -> each.info().id().equals(table)).findFirst().orElseThrow();
    }

    /** Every row of every table must stand in the result, cell by cell, and none may be lost of what the whole sign takes. */
    @Test
    void every_number_in_a_table_is_one_of_the_result() {
        int numbers = 0;
        for (Table table : allTables()) {
            Table original = measured(demo.result(), table.info().id());
            List<String> ids = original.info().columns().stream().map(TableInfo.Column::id).toList();
            List<Integer> kept = table.info().columns().stream().map(column -> ids.indexOf(column.id())).toList();
            Set<List<Object>> there = new HashSet<>();
            original.rows().forEach(row -> there.add(kept.stream().<Object>map(row::get).map(cell -> cell == null ? "none" : cell).toList()));
            for (List<Object> row : table.rows()) {
                assertTrue(there.contains(row.stream().<Object>map(cell -> cell == null ? "none" : cell).toList()), () -> table.info().id() + " has no row " + row);
                numbers += (int) row.stream().filter(Double.class::isInstance).count();
            }
        }
        sheet.totals().forEach(table -> assertEquals(measured(demo.result(), table.info().id()).rows().size(), table.rows().size(), table.info().id()));
        assertTrue(numbers > 1000, "the sample must hold many numbers: " + numbers);
    }

    @Test
    void every_letter_has_all_its_strips_and_bends() {
        assertEquals(measured(demo.result(), "returns.strips").rows().size(), sheet.letters().stream().mapToInt(letter -> letter.bends().size()).sum());
        assertEquals(measured(demo.result(), "returns.bends").rows().size(), sheet.letters().stream().flatMap(letter -> letter.bends().stream()).mapToInt(table -> table.rows().size()).sum());
        assertEquals(10, sheet.letters().size(), "SKELDERFEN");
    }

    @Test
    void parts_have_their_size_and_their_weights_add_up() {
        double mass = 0;
        for (List<Object> row : sheet.parts().rows()) {
            Part part = demo.result().parts().stream().filter(each -> each.id().equals(row.get(0))).findFirst().orElseThrow();
            assertEquals(part.shape().getEnvelopeInternal().getWidth(), (Double) row.get(5));
            assertEquals(part.shape().getEnvelopeInternal().getHeight(), (Double) row.get(6));
            assertEquals(part.shape().getArea(), (Double) row.get(7));
            mass += row.get(12) == null ? 0 : (Double) row.get(12);
        }
        assertEquals((Double) measured(demo.result(), "mount.sign").rows().get(0).get(0), mass, 1e-9);
    }

    /** Facts of a letter that stand in a table of the result: fact, table, column that names the part, column of the number. */
    private static final List<List<String>> FACTS = List.of(List.of("area", "router.parts", "part", "area"), List.of("cut", "router.parts", "part", "perimeter"),
            List.of("angle", "sheet.parts", "part", "angle"), List.of("back-clearance", "fit.pairs", "outer", "clearance"), List.of("back-least", "fit.pairs", "outer", "least"),
            List.of("coil-length", "returns.strips", "part", "length"), List.of("moulding-length", "trim.faces", "face", "length"), List.of("weight", "mount.weights", "part", "mass"));
    private static final Set<String> OF_THE_PART = Set.of("width", "height", "thickness");

    /** Every number among the facts of every letter: one of the result, or the sum over the rows of the part. */
    @Test
    void every_fact_of_a_letter_is_one_of_the_result() {
        int checked = 0;
        for (LetterSheet letter : sheet.letters()) {
            Set<String> left = new HashSet<>();
            letter.facts().stream().filter(fact -> fact.quantity().isPresent()).forEach(fact -> left.add(fact.id()));
            left.removeAll(OF_THE_PART);
            assertEquals(letter.part().shape().getEnvelopeInternal().getWidth(), fact(letter, "width"));
            assertEquals(letter.part().shape().getEnvelopeInternal().getHeight(), fact(letter, "height"));
            assertEquals(4.5, fact(letter, "thickness"));
            for (List<String> each : FACTS) {
                Table table = measured(demo.result(), each.get(1));
                List<String> ids = table.info().columns().stream().map(TableInfo.Column::id).toList();
                double sum = table.rows().stream().filter(row -> letter.part().id().equals(row.get(ids.indexOf(each.get(2))))).mapToDouble(row -> (Double) row.get(ids.indexOf(each.get(3)))).sum();
                assertEquals(sum, fact(letter, each.get(0)), 1e-12, letter.part().id() + " " + each.get(0));
                left.remove(each.get(0));
                checked++;
            }
            assertEquals(Set.of(), left, "facts that nothing was held against");
        }
        assertEquals(10 * FACTS.size(), checked);
    }

    private static double fact(LetterSheet letter, String id) {
        return letter.facts().stream().filter(fact -> fact.id().equals(id)).findFirst().orElseThrow().number();
    }

    /**
     * By hand. Face: 0.4 by 0.3 m of 4.5 mm acrylic at 5.355 kg/m². Back: 3/16 in smaller in all. Strip: its inner face on the edge of the back, so the four sides of the back and for
     * each fold of 90 degrees the allowance pi/2 (R + K T) less twice the setback R tan 45, with R 1, K 0.4, T 1.
     */
    @Test
    void a_plate_has_the_weight_the_back_and_the_strip_that_a_hand_calculation_gives() throws Exception {
        Path proof = Files.writeString(folder.resolve("plate.svg"), PLATE);
        Files.writeString(folder.resolve("plate.job.yaml"), PLATE_JOB);
        LetterSheet plate = Worksheet.of(DemoRun.of(proof, List.of("fit", "mount", "returns")), "", "").letters().get(0);
        double backWidth = 400 - 3 * 25.4 / 16;
        double backHeight = 300 - 3 * 25.4 / 16;
        double strip = 2 * (backWidth + backHeight) + 4 * (Math.PI / 2 * (1 + 0.4 * 1) - 2 * 1);
        assertEquals(backWidth * backHeight, fact(plate, "back-area"), 0.01);
        assertEquals(strip, fact(plate, "coil-length"), 0.01);
        double weight = 0.4 * 0.3 * 5.355 + backWidth * backHeight / 1e6 * 2 * 2.70 + strip / 1000 * 0.1 * 1 * 2.70;
        assertEquals(weight, fact(plate, "weight"), 1e-4);
        assertEquals(4, plate.bends().get(0).rows().size());
        for (List<Object> bend : plate.bends().get(0).rows()) {
            assertEquals(Math.PI / 2 * 1.4, (Double) bend.get(2), 1e-3, "allowance of a fold");
            assertEquals(90, (Double) bend.get(4), 1e-6);
            assertEquals("towards", bend.get(6));
        }
    }

    /** Modules as the check of light laid them out, each with its string, and their mass in the weight. */
    @Test
    void a_lit_plate_has_its_modules_with_places_and_strings() throws Exception {
        Path proof = Files.writeString(folder.resolve("lit.svg"), PLATE.replace("width=\"400\" height=\"300\"", "width=\"240\" height=\"60\""));
        Files.writeString(folder.resolve("lit.job.yaml"), "shop: " + Path.of(System.getProperty("testdata"), "shop.yaml").toAbsolutePath() + "\nbuild: face-lit letters\n" + PLATE_JOB);
        Worksheet lit = Worksheet.of(DemoRun.of(proof, List.of()), "", "");
        Result result = lit.reviewed().result();
        int modules = measured(result, "glow.modules").rows().size();
        assertTrue(modules > 1, "modules: " + modules);
        LetterSheet plate = lit.letters().get(0);
        assertEquals(modules, fact(plate, "modules"));
        Table places = plate.tables().stream().filter(table -> table.info().id().equals("power.places")).findFirst().orElseThrow();
        assertEquals(modules, places.rows().size());
        places.rows().forEach(row -> assertTrue(row.get(0) instanceof String string && !string.isBlank(), () -> "string of " + row));
        assertEquals(List.of("string", "order", "type", "x", "y", "turn"), places.info().columns().stream().map(TableInfo.Column::id).toList());
        places.rows().forEach(row -> assertTrue(row.get(5) instanceof Double, () -> "turn of " + row));
        assertTrue(lit.totals().stream().anyMatch(table -> table.info().id().equals("power.supplies")));
        double weighed = measured(result, "mount.weights").rows().stream().filter(row -> row.get(1).equals("modules")).mapToDouble(row -> (Double) row.get(3)).sum();
        assertEquals(0.02 * modules, weighed, 1e-9, "20 g each in the shop sheet");
        assertTrue(text(pdf(lit)).contains("licensed electrician"));
    }

    @Test
    void the_pdf_says_all_of_it_in_text_with_one_embedded_font() throws Exception {
        byte[] pdf = pdf(sheet);
        String text = text(pdf);
        for (String words : List.of("Skelderfen Observatory, entrance sign", demo.result().proof().sha256(), "Revision B", "NEC Article 600", "local building code", "stop: something here cannot be made")) {
            assertTrue(text.contains(words), words);
        }
        for (List<Object> row : sheet.parts().rows()) {
            assertTrue(text.contains(Units.format((Double) row.get(5), Quantity.LENGTH, UnitSystem.METRIC)), () -> "width of " + row.get(0));
            assertTrue(text.contains(Units.format((Double) row.get(7), Quantity.AREA, UnitSystem.METRIC)), () -> "area of " + row.get(0));
        }
        for (Table table : allTables()) {
            assertTrue(text.contains(table.info().title()), table.info().title());
            for (List<Object> row : table.rows()) {
                for (int i = 0; i < row.size(); i++) {
                    if (row.get(i) instanceof Double number) {
                        String words = Units.format(number, table.info().columns().get(i).quantity(), UnitSystem.METRIC);
                        assertTrue(text.contains(words), () -> table.info().id() + ": " + words);
                    }
                }
            }
        }
        try (PDDocument document = Loader.loadPDF(pdf)) {
            long many = sheet.letters().stream().filter(letter -> letter.bends().stream().mapToInt(table -> table.rows().size()).sum() > 40).count();
            assertTrue(document.getNumberOfPages() > sheet.letters().size() + 2 && document.getNumberOfPages() <= 6 + 2 * sheet.letters().size() + many,
                    "two pages a letter, a third for more than 40 bends, and what the whole sign takes: " + document.getNumberOfPages());
            for (PDPage page : document.getPages()) {
                for (COSName name : page.getResources().getFontNames()) {
                    assertTrue(page.getResources().getFont(name).isEmbedded(), name::getName);
                }
            }
        }
    }

    @Test
    void the_proof_is_named_without_the_folder_of_one_machine() {
        assertTrue(demo.result().proof().file().length() > "skelderfen.svg".length(), "read by a path");
        assertEquals(List.of("skelderfen.svg"), sheet.header().stream().filter(fact -> fact.id().equals("proof")).map(Fact::text).toList());
    }

    @Test
    void json_and_csv_hold_the_same_numbers() throws Exception {
        JsonNode json = json(sheet);
        StringWriter out = new StringWriter();
        WorksheetCsv.write(sheet, out);
        String csv = out.toString();
        assertEquals(1, json.get("worksheet").asInt());
        assertEquals(sheet.letters().size(), json.get("letters").size());
        int numbers = 0;
        for (int i = 0; i < sheet.letters().size(); i++) {
            LetterSheet letter = sheet.letters().get(i);
            for (int f = 0; f < letter.facts().size(); f++) {
                Fact fact = letter.facts().get(f);
                if (fact.quantity().isPresent()) {
                    assertEquals(fact.number(), json.get("letters").get(i).get("facts").get(f).get("value").asDouble());
                    assertTrue(csv.contains("letter," + letter.part().id() + ",,," + fact.id() + "," + (fact.title().contains(",") ? "\"" + fact.title() + "\"" : fact.title()) + ","
                            + WorksheetCsv.number(fact.number()) + "," + fact.quantity().get().unit() + "\r\n"), () -> letter.part().id() + " " + fact.id());
                    numbers++;
                }
            }
            for (int b = 0; b < letter.bends().size(); b++) {
                for (int r = 0; r < letter.bends().get(b).rows().size(); r++) {
                    assertEquals((Double) letter.bends().get(b).rows().get(r).get(1), json.get("letters").get(i).get("bends").get(b).get("rows").get(r).get(1).asDouble());
                }
            }
        }
        assertTrue(numbers > 100, "numbers: " + numbers);
        assertEquals(sheet.parts().rows().size(), json.get("parts").get("rows").size());
        for (String line : csv.split("\r\n")) {
            assertEquals(8, line.replaceAll("\"([^\"]|\"\")*\"", "quoted").split(",", -1).length, line);
        }
    }

    @Test
    void an_inch_job_is_printed_in_inches_and_written_in_millimetres() throws Exception {
        Worksheet inches = Worksheet.of(DemoRun.of("faulty-letters.svg"), "", "");
        assertTrue(text(pdf(inches)).contains(" in "), "inches on paper");
        assertEquals("inch", json(inches).get("units").asText());
        assertEquals("mm", json(inches).get("parts").get("columns").get(5).get("unit").asText());
    }
}
