// SPDX-License-Identifier: Apache-2.0
package kerfglow.host;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import kerfglow.api.Quantity;
import kerfglow.api.Setting;
import kerfglow.api.StockKind;
import kerfglow.api.UnitSystem;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Role;
import kerfglow.testkit.CheckTester;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.locationtech.jts.geom.Polygon;

class SheetsTest {
    private static final Setting<Double> WIDTH = Setting.lengthMm("trial.width", "width", 3.0, 0.1, 25.0, "reason", "source");
    private static final Setting<Double> DIAMETER = Setting.lengthMm("diameter", "diameter", null, 0.1, 50.0, "reason", "source");
    private static final Setting<Double> FLUTE = Setting.lengthMm("flute", "flute length", 12.0, 0.1, 100.0, "reason", "source");
    private static final StockKind BITS = new StockKind("router-bits", "bits", List.of(DIAMETER, FLUTE));
    private final List<String> remarks = new ArrayList<>();
    private static final Path HERE = Path.of(".");

    private static JobSheet job(String... lines) throws SheetException {
        return JobSheet.of(SheetNode.parse("trial.job.yaml", String.join("\n", lines)), HERE);
    }

    private static ShopSheet shop(String... lines) throws SheetException {
        return ShopSheet.of(SheetNode.parse("shop.yaml", String.join("\n", lines)));
    }

    private static Part part(Role role, String layer, String material, double thicknessMm) {
        return Part.builder("p1", role, (Polygon) CheckTester.wkt("POLYGON ((0 0, 1 0, 1 1, 0 0))")).layer(layer).sheetMaterial(material).thicknessMm(thicknessMm)
                .elements(List.of("letter-a")).build();
    }

    @Test
    void a_job_sheet_is_read_with_its_comments() throws SheetException {
        JobSheet job = job("# the sign over the door", "title: Over the door  # as the customer says", "units: inch", "scale: 1:10", "build: routed panel", "roles:",
                "  - layer: \"Face*\"", "    role: face", "  - {fill: \"#f00\", role: push-through}", "materials:", "  - {role: face, material: acrylic, thickness: 3/16 in}",
                "knock-out: [\"#ffffff\"]", "settings:", "  trial.width: 1/8 in");
        assertEquals("Over the door", job.title());
        assertEquals(UnitSystem.INCH, job.units().orElseThrow());
        assertEquals(10, job.scale().orElseThrow());
        assertEquals(2, job.roles().size());
        assertEquals(0xff0000, job.roles().get(1).selector().fillRgb().orElseThrow());
        assertEquals(4.7625, job.materials().get(0).thicknessMm().orElseThrow(), 1e-12);
        assertTrue(job.knockOut().contains(0xffffff));
        assertEquals("trial.job.yaml line 14", job.settings().get(0).from());
    }

    /** Line and key of the fault, and what would be right. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '~', value = {
        "rolls: []|line 2|rolls|known here",
        "units: furlong|line 2|units|metric or inch",
        "scale: 0|line 2|scale|0.001 to 1000",
        "scale: x|line 2|scale|1:10",
        "build: house|line 2|build|routed panel",
        "roles: [{layer: A}]|line 2|roles|\"role\" is missing",
        "roles: [{role: face}]|line 2|roles|say which shapes",
        "roles: [{layer: A, role: roof}]|line 2|roles.role|push-through",
        "roles: [{fill: #ff0000, role: face}]|line|column|quotes",
        "knock-out: #ff0000|line 2|knock-out|in quotes",
        "roles: [{fill: red, role: face}]|line 2|roles.fill|#rrggbb",
        "materials: [{role: face}]|line 2|materials|\"material\" is missing",
        "materials: [{role: face, material: a, thickness: 3}]|line 2|materials.thickness|unit",
        "materials: [{role: face, material: a, thickness: 0 mm}]|line 2|materials.thickness|above 0",
        "settings: {trial.width: [{role: face}]}|line 2|settings.trial.width|\"value\" is missing",
        "known-dimension: {layer: A}|line 2|known-dimension|width or height",
        "known-dimension: {layer: A, width: -1 mm}|line 2|known-dimension.width|above 0",
        "title: [|line|column|quotes",
        "{scale: 10, scale: 20}|line 2|scale|second time",
        "settings: {trial.width: 1 mm, trial.width: 2 mm}|line 2|settings.trial.width|second time",
        "title: a\ttitle: b\ttitle|line|column|indentation"})
    void a_fault_is_named_with_line_and_key(String text, String line, String key, String advice) {
        SheetException wrong = assertThrows(SheetException.class, () -> job("# comment", text));
        assertTrue(wrong.getMessage().startsWith("trial.job.yaml"), wrong.getMessage());
        assertTrue(wrong.getMessage().contains(line) && wrong.getMessage().contains(key) && wrong.getMessage().contains(advice), wrong.getMessage());
    }

    @Test
    void scale_and_known_dimension_exclude_each_other() {
        assertTrue(assertThrows(SheetException.class, () -> job("scale: 2", "known-dimension: {width: 2 m}")).getMessage().contains("not both"));
    }

    @Test
    void a_sheet_that_is_no_sheet_ends_in_one_message(@TempDir Path folder) throws Exception {
        assertThrows(SheetException.class, () -> JobSheet.read(folder.resolve("none.yaml")));
        assertThrows(SheetException.class, () -> JobSheet.read(Files.writeString(folder.resolve("empty.yaml"), "")));
        assertThrows(SheetException.class, () -> JobSheet.read(Files.writeString(folder.resolve("list.yaml"), "- a\n- b\n")));
        assertThrows(SheetException.class, () -> JobSheet.read(Files.write(folder.resolve("latin.yaml"), "title: é".getBytes(StandardCharsets.ISO_8859_1))));
        assertThrows(SheetException.class, () -> JobSheet.read(Files.writeString(folder.resolve("deep.yaml"), "a: " + "[".repeat(5000) + "]".repeat(5000))));
        assertThrows(SheetException.class, () -> JobSheet.read(Files.writeString(folder.resolve("bomb.yaml"), "a: &a [x]\nb: [*a, *a]\ntitle: *a\n")));
        assertThrows(SheetException.class, () -> JobSheet.read(folder));
    }

    @Test
    void later_sources_outweigh_earlier_ones_and_the_result_says_which() throws SheetException {
        List<GivenValue> given = new ArrayList<>(shop("settings:", "  trial.width: 4 mm").settings());
        assertEquals(4.0, SettingsInForce.of(List.of(WIDTH), given, remarks).get(WIDTH));
        given.addAll(job("settings:", "  trial.width: 5 mm").settings());
        assertEquals(5.0, SettingsInForce.of(List.of(WIDTH), given, remarks).get(WIDTH));
        given.add(SheetSettings.fromCommandLine("trial.width=6 mm"));
        SettingsInForce settings = SettingsInForce.of(List.of(WIDTH), given, remarks);
        assertEquals(6.0, settings.get(WIDTH));
        assertEquals(List.of(new Result.SettingUsed("trial.width", "all", 6.0, "mm", "command line")), settings.used());
        assertEquals(List.of(new Result.SettingUsed("trial.width", "all", 3.0, "mm", "check")), SettingsInForce.of(List.of(WIDTH), List.of(), remarks).used());
    }

    @Test
    void a_scope_holds_for_its_parts_alone_and_the_most_specific_wins() throws SheetException {
        List<GivenValue> given = shop("settings:", "  trial.width:", "    - value: 1 mm", "    - {value: 2 mm, role: face}", "    - {value: 7 mm, part: letter-*}",
                "    - {value: 3 mm, material: acrylic, thickness: 3/16 in}").settings();
        SettingsInForce settings = SettingsInForce.of(List.of(WIDTH), given.stream().filter(value -> !value.text().startsWith("7")).toList(), remarks);
        assertEquals(1.0, settings.get(WIDTH));
        assertEquals(1.0, settings.get(WIDTH, part(Role.BACK, "L", "aluminium", 3)));
        assertEquals(2.0, settings.get(WIDTH, part(Role.FACE, "L", "aluminium", 3)));
        assertEquals(3.0, settings.get(WIDTH, part(Role.FACE, "L", "Acrylic", 4.7625)));
        assertEquals(7.0, SettingsInForce.of(List.of(WIDTH), given, remarks).get(WIDTH, part(Role.FACE, "L", "Acrylic", 4.7625)));
        assertEquals(3, settings.used().size());
    }

    @Test
    void a_value_for_all_from_a_later_source_outweighs_a_scoped_one_from_an_earlier() throws SheetException {
        List<GivenValue> given = new ArrayList<>(shop("settings:", "  trial.width: [{value: 2 mm, role: face}]").settings());
        given.add(SheetSettings.fromCommandLine("trial.width=6 mm"));
        assertEquals(6.0, SettingsInForce.of(List.of(WIDTH), given, remarks).get(WIDTH, part(Role.FACE, "L", "acrylic", 3)));
        given.add(SheetSettings.fromCommandLine("trial.width[role=face, layer=L]=9 mm"));
        SettingsInForce settings = SettingsInForce.of(List.of(WIDTH), given, remarks);
        assertEquals(9.0, settings.get(WIDTH, part(Role.FACE, "L", "acrylic", 3)));
        assertEquals(6.0, settings.get(WIDTH, part(Role.FACE, "M", "acrylic", 3)));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {"trial.widht=1 mm|trial.width", "trial.width=26 mm|0.1 mm to 25 mm", "trial.width=|not a length", "trial.width|KEY=VALUE",
        "trial.width[role=roof]=1 mm|not a role", "trial.width[colour=red]=1 mm|known here", "trial.width[role=face=1 mm|KEY[role=face"})
    void a_wrong_value_on_the_command_line_is_named(String text, String advice) {
        SheetException wrong = assertThrows(SheetException.class, () -> SettingsInForce.of(List.of(WIDTH), List.of(SheetSettings.fromCommandLine(text)), remarks));
        assertTrue(wrong.getMessage().contains(advice), wrong.getMessage());
    }

    @Test
    void reading_a_setting_that_the_check_does_not_declare_is_a_defect() throws SheetException {
        Setting<Double> other = Setting.number("trial.other", "other", Quantity.RATIO, 1.0, 0.0, 2.0, "reason", "source");
        SettingsInForce settings = SettingsInForce.of(List.of(WIDTH), List.of(), remarks);
        assertThrows(IllegalArgumentException.class, () -> settings.get(other));
    }

    @Test
    void stock_is_read_by_the_fields_that_checks_declare() throws SheetException {
        StockList stock = StockList.of(List.of(BITS), shop("stock:", "  router-bits:", "    - {name: eighth, diameter: 1/8 in, flute: 1/2 in}", "    - {diameter: 6 mm}"), remarks);
        assertEquals(2, stock.items(BITS).size());
        assertEquals("eighth", stock.items(BITS).get(0).name());
        assertEquals(3.175, stock.items(BITS).get(0).get(DIAMETER), 1e-12);
        assertEquals(12.0, stock.items(BITS).get(1).get(FLUTE), "the default of the field");
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {"{flute: 5 mm}|diameter", "{diameter: 5}|unit", "{diameter: 99 mm}|0.1 mm to 50 mm", "{diameter: 5 mm, colour: red}|unknown key"})
    void a_fault_in_stock_is_named_with_its_line(String item, String advice) {
        SheetException wrong = assertThrows(SheetException.class, () -> StockList.of(List.of(BITS), shop("stock:", "  router-bits:", "    - " + item), remarks));
        assertTrue(wrong.getMessage().contains("shop.yaml line 3") && wrong.getMessage().contains(advice), wrong.getMessage());
    }

    @Test
    void what_is_for_a_check_that_is_not_installed_is_left_alone_with_a_remark() throws SheetException {
        StockList.of(List.of(BITS), shop("stock:", "  rolls: [{width: 24 in}]"), remarks);
        SettingsInForce.of(List.of(WIDTH), shop("settings:", "  absent.width: 5 mm").settings(), remarks);
        Severities.of(List.of(), shop("severity:", "  - {rule: absent.rule, severity: review, reason: habit}"), remarks);
        assertEquals(3, remarks.size());
        assertTrue(remarks.get(0).contains("shop.yaml line 2, stock.rolls") && remarks.get(1).contains("absent.width") && remarks.get(2).contains("absent.rule"), remarks::toString);
    }

    @Test
    void a_changed_severity_needs_a_reason() throws SheetException {
        assertEquals(1, shop("severity:", "  - {rule: router.bit, severity: review, reason: we always look}").severities().size());
        assertTrue(assertThrows(SheetException.class, () -> shop("severity:", "  - {rule: router.bit, severity: review}")).getMessage().contains("reason"));
        assertTrue(assertThrows(SheetException.class, () -> shop("severity:", "  - {rule: router.bit, severity: bad, reason: x}")).getMessage().contains("stop, review, info"));
    }
}
