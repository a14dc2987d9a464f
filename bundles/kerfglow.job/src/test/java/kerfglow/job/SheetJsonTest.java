// SPDX-License-Identifier: Apache-2.0
package kerfglow.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.StringWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import kerfglow.api.PlacedModule;
import kerfglow.api.UnitSystem;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Role;
import kerfglow.host.GivenValue;
import kerfglow.host.JobSheet;
import kerfglow.host.Scope;
import kerfglow.host.SheetException;
import kerfglow.testkit.CheckTester;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Polygon;

class SheetJsonTest {
    private static final Path FOLDER = Path.of("jobs").toAbsolutePath();

    private static JobSheet again(JobSheet sheet) throws IOException, SheetException {
        StringWriter out = new StringWriter();
        try (JsonGenerator json = JsonText.generator(out)) {
            SheetJson.write(sheet, FOLDER, json);
        }
        return JobSheet.parse("job", out.toString(), FOLDER);
    }

    /** What a sheet says, without where it says so. */
    private static Object said(JobSheet sheet) {
        return List.of(sheet.title(), sheet.shopSheet().map(Path::normalize), sheet.units(), sheet.scale(), sheet.knownDimension(), sheet.build(), sheet.roles(), sheet.materials(),
                sheet.knockOut(), sheet.settings().stream().map(value -> List.of(value.key(), value.text(), value.scope(), value.origin())).toList(), sheet.modules());
    }

    @Test
    void a_yaml_sheet_with_every_key_reads_the_same_as_json() throws Exception {
        JobSheet sheet = JobSheet.parse("job", """
                title: "Skelderfen: \\"entrance\\", 1 # 2"
                shop: ../shop/shop.yaml
                units: inch
                known-dimension: {id: "panel*", width: 8 ft 6 in}
                build: routed panel
                roles:
                  - {layer: "7", role: panel}
                  - {label: "yes", id: "null", fill: "#0a0", data-part: "- x", role: push-through}
                materials:
                  - {role: face, layer: L, part: p1, fill: "#123456", material: acrylic, thickness: 3/16 in}
                  - {role: back, material: aluminium}
                knock-out: ["#fff", "#000001"]
                settings:
                  router.least-stroke: 3 mm
                  returns.depth:
                    - 60 mm
                    - {value: 1/2 in, role: face, material: acrylic, thickness: 1/8 in, layer: L, part: p12}
                modules:
                  - {x: 120 mm, y: -1/3 in, turn: 90, string: A}
                  - {x: 0.1 mm, y: 85 mm}
                """, FOLDER);
        assertEquals(said(sheet), said(again(sheet)));
    }

    @Test
    void an_empty_sheet_stays_empty() throws Exception {
        assertEquals(said(JobSheet.NONE), said(again(JobSheet.NONE)));
    }

    @ParameterizedTest
    @ValueSource(doubles = {10, 0.001, 1000, 1.0 / 3, 0.1, 12.000000000000002})
    void scales_and_lengths_keep_all_their_digits(double value) throws Exception {
        JobSheet scaled = SheetEdits.withScale(JobSheet.NONE, value);
        assertEquals(value, again(scaled).scale().getAsDouble());
        JobSheet known = SheetEdits.withKnownDimension(scaled, new JobSheet.KnownDimension(selector("L"), false, value));
        assertEquals(OptionalDouble.empty(), known.scale(), "one or the other");
        assertEquals(value, again(known).knownDimension().orElseThrow().lengthMm());
        JobSheet module = SheetEdits.withModule(JobSheet.NONE, new PlacedModule(-value, value, value));
        assertEquals(module.modules(), again(module).modules());
    }

    @ParameterizedTest
    @ValueSource(strings = {"tab\tand\nbreak", "\u0000\u0007\u001b", "\u007f\u0085\u009f", "\u2028\u2029\ufeff\ufffe", "🙂 ünï", "'\"\\/{}[]#&*!|>%@`", "true", "12", "~"})
    void every_text_comes_back(String text) throws Exception {
        assertEquals(text, again(SheetEdits.withTitle(JobSheet.NONE, text)).title());
        JobSheet roles = SheetEdits.withRoleOfLayer(JobSheet.NONE, text, Role.PANEL);
        assertEquals(roles.roles(), again(roles).roles());
    }

    private static JobSheet.Selector selector(String layer) {
        return new JobSheet.Selector(Optional.of(layer), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty());
    }

    @Test
    void a_new_role_outweighs_older_ones_and_takes_the_place_of_its_own() {
        JobSheet sheet = SheetEdits.withRoleOfLayer(SheetEdits.withRoleOfLayer(JobSheet.NONE, "A", Role.FACE), "B", Role.BACK);
        sheet = SheetEdits.withRoleOfLayer(sheet, "A", Role.PANEL);
        assertEquals(List.of(new JobSheet.RoleRule(selector("A"), Role.PANEL), new JobSheet.RoleRule(selector("B"), Role.BACK)), sheet.roles());
        Part part = Part.builder("p1", Role.FACE, (Polygon) CheckTester.wkt(Samples.LETTERS.get(0))).elements(List.of("e1", "e2")).build();
        assertEquals(List.of("e2", "e1"), SheetEdits.withRoleOfPart(JobSheet.NONE, part, Role.VINYL).roles().stream().map(rule -> rule.selector().id().orElseThrow()).toList());
    }

    @Test
    void a_setting_is_given_once_for_each_scope() {
        Scope faces = new Scope(Optional.of(Role.FACE), Optional.empty(), OptionalDouble.empty(), Optional.empty(), Optional.empty());
        JobSheet sheet = SheetEdits.withSetting(SheetEdits.withSetting(JobSheet.NONE, "returns.depth", "60 mm", Scope.ALL), "returns.depth", "80 mm", faces);
        sheet = SheetEdits.withSetting(sheet, "returns.depth", "70 mm", Scope.ALL);
        assertEquals(List.of("80 mm", "70 mm"), sheet.settings().stream().map(GivenValue::text).toList());
        assertEquals(List.of("70 mm"), SheetEdits.withoutSetting(sheet, "returns.depth", faces).settings().stream().map(GivenValue::text).toList());
    }

    @Test
    void the_digest_tells_sheets_apart_but_not_where_they_are_kept() throws Exception {
        JobSheet here = JobSheet.parse("a", "{title: x, shop: shop.yaml}", Path.of("a").toAbsolutePath());
        JobSheet there = JobSheet.parse("b", "\n\n{title: x, shop: shop.yaml}", Path.of("b").toAbsolutePath());
        assertEquals(DigestMaker.sheet(here), DigestMaker.sheet(there));
        assertEquals(DigestMaker.sheet(JobSheet.parse("a", "{settings: {a.b: 1, c.d: 2}}", FOLDER)), DigestMaker.sheet(JobSheet.parse("a", "{settings: {c.d: 2, a.b: 1}}", FOLDER)));
        assertNotEquals(DigestMaker.sheet(JobSheet.parse("a", "{settings: {a.b: [1, 2]}}", FOLDER)), DigestMaker.sheet(JobSheet.parse("a", "{settings: {a.b: [2, 1]}}", FOLDER)),
                "of two values for everything the last holds");
        assertNotEquals(DigestMaker.sheet(here), DigestMaker.sheet(SheetEdits.withUnits(here, UnitSystem.INCH)));
    }

    @Test
    void what_no_sheet_could_say_is_refused() {
        assertThrows(IllegalArgumentException.class, () -> SheetEdits.withScale(JobSheet.NONE, 0));
        assertThrows(IllegalArgumentException.class, () -> SheetEdits.withBuild(JobSheet.NONE, Optional.of("raft")));
    }
}
