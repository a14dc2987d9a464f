// SPDX-License-Identifier: Apache-2.0
package kerfglow.worker.form;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.lang.reflect.Method;
import java.lang.reflect.Modifier;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import kerfglow.api.CheckInfo;
import kerfglow.api.Concerns;
import kerfglow.api.Finding;
import kerfglow.api.Inspection;
import kerfglow.api.Measure;
import kerfglow.api.Outcome;
import kerfglow.api.OverlayLayer;
import kerfglow.api.PlacedModule;
import kerfglow.api.Quantity;
import kerfglow.api.Rule;
import kerfglow.api.Setting;
import kerfglow.api.Severity;
import kerfglow.api.SharedSettings;
import kerfglow.api.StockKind;
import kerfglow.api.Table;
import kerfglow.api.TableInfo;
import kerfglow.api.UnitSystem;
import kerfglow.api.proof.Effect;
import kerfglow.api.proof.Element;
import kerfglow.api.proof.Gradient;
import kerfglow.api.proof.ImageInfo;
import kerfglow.api.proof.ImportNote;
import kerfglow.api.proof.Outline;
import kerfglow.api.proof.Paint;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Proof;
import kerfglow.api.proof.Role;
import kerfglow.api.proof.TextRun;
import kerfglow.api.proof.Visibility;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.io.ParseException;
import org.locationtech.jts.io.WKTReader;

/** What is written comes back the same, to the last digit, and nothing that the API has is left out. */
class FormTest {
    private static final double THIRD = 1.0 / 3;
    private static final Polygon SQUARE = (Polygon) wkt("POLYGON ((0 0, 10 0, 10 " + THIRD + ", 0 10, 0 0), (1 1, 2 1, 2 0.5, 1 1))");
    private static final Rule RULE = new Rule("acme.seams.rule", Severity.STOP, "It \"fails\" \u2013 öfter", "why", "fix", "source");
    private static final Setting<Double> LIMIT = Setting.lengthMm("acme.seams.limit", "limit", 3.0, 0, 25, "reason", "source");
    private static final Setting<Double> OPEN = Setting.lengthMm("acme.seams.open", "without a default", null, 0, 25, "reason", "source");
    private static final Setting<Integer> COUNT = Setting.count("acme.seams.count", "count", 3, 0, 5, "reason", "source");
    private static final Setting<Boolean> FLAG = Setting.flag("acme.seams.flag", "flag", true, "reason", "source");
    private static final Setting<String> CHOICE = Setting.choice("acme.seams.choice", "choice", "a", List.of("a", "b"), "reason", "source");
    private static final Setting<Double> FIELD = Setting.lengthMm("diameter", "diameter", null, 0, 100, "reason", "source");
    private static final StockKind BITS = new StockKind("bits", "bits", List.of(FIELD));
    private static final TableInfo NUMBERS = new TableInfo("numbers", "numbers", List.of(TableInfo.Column.number("n", "n", Quantity.LENGTH),
            TableInfo.Column.text("t", "t"), TableInfo.Column.flag("f", "f"), TableInfo.Column.geometry("g", "g")));
    private static final CheckInfo INFO = new CheckInfo("acme.seams", "seams", List.of(RULE), List.of(LIMIT, OPEN, COUNT, FLAG, CHOICE, SharedSettings.BACK_ALLOWANCE), List.of(BITS),
            List.of(NUMBERS), "# Seams\n\n## acme.seams.rule\n", Concerns.ofRoles(Role.FACE, Role.KEEP_OUT).inBuilds("cabinet"));

    private static Geometry wkt(String text) {
        try {
            return new WKTReader().read(text);
        } catch (ParseException wrong) {
            throw new IllegalArgumentException(wrong);
        }
    }

    private static FormNode sent(Map<String, ?> fields) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        new FormWriter(bytes).message("trial", fields);
        FormReader reader = new FormReader(new ByteArrayInputStream(bytes.toByteArray()), bytes.size());
        FormNode message = reader.next();
        assertEquals("trial", message.text("kind"));
        assertNull(reader.next());
        return message;
    }

    private static Element element() {
        Gradient gradient = new Gradient(Gradient.Kind.RADIAL, Gradient.Spread.REPEAT, new Gradient.Scale(THIRD, 2, 3), new Gradient.Scale(4, 5, 6), 0.1, 0.2, 0.3,
                List.of(new Gradient.Stop(0, new Gradient.Shade(0x123456, 0.5)), new Gradient.Stop(1, new Gradient.Shade(0, 1))));
        return Element.builder("e1").tag("rect").layer("Letters").label("label").dataPart("face").idPath(List.of("e1", "g1")).line(7).order(3).origin(Element.Origin.TEXT)
                .fill(Paint.colour(0xabcdef)).fillGradient(gradient).stroke(new Paint(Paint.Kind.PATTERN, 1), THIRD).strokeGradient(gradient).fillArea(SQUARE).strokeArea(wkt("POLYGON EMPTY"))
                .outlines(List.of(new Outline(wkt("LINESTRING (0 0, 1 1)"), true, wkt("MULTIPOINT ((0 0), (1 1))"))))
                .visibility(Visibility.HIDDEN).effects(Set.of(Effect.MASK, Effect.FILTER))
                .text(new TextRun("Hi", "Asked", "Used", true, 12.5, OptionalDouble.of(THIRD), OptionalDouble.empty(), Optional.of((LineString) wkt("LINESTRING (0 0, 5 0)"))))
                .image(new ImageInfo(10, 20, 30.5, 40.5, true)).build();
    }

    private static Part part(String id) {
        return Part.builder(id, Role.PUSH_THROUGH, SQUARE).assigned(false).layer("L").paint(Paint.colour(3)).order(4).drilled(wkt("POLYGON ((3 3, 4 3, 4 4, 3 3))"))
                .elements(List.of("e1")).sources(Set.of(Part.Source.TEXT, Part.Source.STROKE)).sheetMaterial("acrylic").thicknessMm(THIRD).build();
    }

    /** The values of every getter, geometry as text, so that two objects can be compared. */
    private static Map<String, String> getters(Object object) {
        Map<String, String> values = new LinkedHashMap<>();
        Arrays.stream(object.getClass().getDeclaredMethods()).filter(each -> Modifier.isPublic(each.getModifiers()) && !Modifier.isStatic(each.getModifiers()))
                .filter(each -> each.getParameterCount() == 0 && !Set.of("toString", "hashCode").contains(each.getName())).sorted((a, b) -> a.getName().compareTo(b.getName()))
                .forEach(each -> values.put(each.getName(), told(each, object)));
        return values;
    }

    private static String told(Method getter, Object object) {
        try {
            Object value = getter.invoke(object);
            return value instanceof Set<?> set ? new TreeSet<>(set.stream().map(Object::toString).toList()).toString() : String.valueOf(value);
        } catch (ReflectiveOperationException closed) {
            throw new IllegalStateException(closed);
        }
    }

    @Test
    void an_element_and_a_part_come_back_whole() throws IOException {
        Proof proof = new Proof("a.svg", "0".repeat(64), 100.1, 50, 10, 0.02, List.of(element(), Element.builder("plain").build()),
                List.of(new ImportNote(ImportNote.Kind.SCRIPT, "e1", 3, "not run")));
        Part plain = Part.builder("p2", Role.FACE, SQUARE).build();
        FormNode message = sent(Map.of("proof", proof, "parts", List.of(part("p1"), plain)));
        Proof read = message.value("proof", Proof.class);
        assertEquals(getters(element()), getters(read.elements().get(0)));
        assertEquals(getters(Element.builder("plain").build()), getters(read.elements().get(1)));
        assertEquals(proof.notes(), read.notes());
        assertEquals(100.1, read.widthMm());
        assertEquals(getters(part("p1")), getters(message.values("parts", Part.class).get(0)));
        assertEquals(getters(plain), getters(message.values("parts", Part.class).get(1)));
    }

    /** Holds that a getter added to the API is not forgotten here: each has a field of its name. */
    @Test
    void every_getter_of_the_api_has_a_field() {
        assertEquals(getters(element()).keySet(), new TreeSet<>(ElementForm.fields(element()).keySet()));
        Set<String> ofParts = getters(part("p")).keySet().stream().map(name -> name.equals("isAssigned") ? "assigned" : name).filter(name -> !name.equals("material"))
                .collect(Collectors.toCollection(TreeSet::new));
        assertEquals(ofParts, new TreeSet<>(PartForm.fields(part("p")).keySet()));
        assertEquals(getters(Finding.of(RULE, "m").build()).keySet(), new TreeSet<>(FindingForm.fields(Finding.of(RULE, "m").build()).keySet()));
        assertEquals(new TreeSet<>(Arrays.stream(Outcome.class.getRecordComponents()).map(each -> each.getName()).toList()),
                new TreeSet<>(OutcomeForm.fields(Outcome.of(List.of()), 1).keySet()));
        Set<String> questions = Arrays.stream(Inspection.class.getMethods()).map(Method::getName).collect(Collectors.toCollection(TreeSet::new));
        assertEquals(new TreeSet<>(Set.of("build", "checkpoint", "length", "parts", "placedModules", "proof", "settings", "stock", "table", "tables", "units")), questions,
                "what a check can ask for; GivenForm and ReadInspection carry all of it");
    }

    @Test
    void the_identity_of_a_check_comes_back_and_shared_settings_are_the_shared_ones() throws IOException {
        CheckInfo read = sent(Map.of("info", INFO)).value("info", CheckInfo.class);
        assertEquals(INFO.rules(), read.rules());
        assertEquals(INFO.tables(), read.tables());
        assertEquals(INFO.page(), read.page());
        assertEquals(INFO.concerns(), read.concerns());
        assertEquals(INFO.stock().get(0).fields().size(), read.stock().get(0).fields().size());
        for (int i = 0; i < INFO.settings().size(); i++) {
            assertEquals(getters(INFO.settings().get(i)), getters(read.settings().get(i)));
        }
        assertSame(SharedSettings.BACK_ALLOWANCE, read.settings().get(5));
    }

    @Test
    void an_outcome_comes_back_whole() throws IOException {
        Finding finding = Finding.of(RULE, "message").place(SQUARE).at(new Coordinate(THIRD, 2)).measured(Measure.mm(THIRD)).required(Measure.count(2)).parts("p1")
                .elements(List.of("e1")).fix("fix").suggestion(wkt("LINESTRING (0 0, 1 1)")).cause("cause").build();
        OverlayLayer.Raster raster = new OverlayLayer.Raster(1, 2, THIRD, 2, 1, new int[] {0xff00ff00, 0x01020304});
        OverlayLayer layer = new OverlayLayer("heat", "heat", List.of(new OverlayLayer.Item(SQUARE, Double.NaN, "a"), new OverlayLayer.Item(SQUARE, 0.5, "")), Optional.of(raster),
                List.of(new OverlayLayer.LegendEntry(0xff0000, "hot")));
        Table table = new Table(NUMBERS, List.of(Arrays.<Object>asList(THIRD, "t", true, SQUARE), Arrays.<Object>asList(null, null, null, null)));
        Outcome outcome = Outcome.of(List.of(finding, Finding.of(RULE, "plain").build())).withTables(List.of(table)).withLayers(List.of(layer)).withMissing(List.of("one"));
        Outcome read = OutcomeForm.read(sent(OutcomeForm.fields(outcome, 10)), INFO);
        assertEquals(getters(finding), getters(read.findings().get(0)));
        assertEquals(getters(outcome.findings().get(1)), getters(read.findings().get(1)));
        assertEquals(table, read.tables().get(0));
        assertEquals(layer.items().toString(), read.layers().get(0).items().toString());
        assertEquals(layer.legend(), read.layers().get(0).legend());
        assertArrayEquals(raster.argb(), read.layers().get(0).raster().orElseThrow().argb());
        assertEquals(List.of("one"), read.missing());
        assertTrue(!OutcomeForm.read(sent(OutcomeForm.fields(Outcome.notMeasured("x"), 10)), INFO).measured());
    }

    @Test
    void findings_beyond_the_most_are_left_out_and_that_is_said() throws IOException {
        Finding finding = Finding.of(RULE, "m").build();
        Outcome read = OutcomeForm.read(sent(OutcomeForm.fields(Outcome.of(List.of(finding, finding, finding)), 2)), INFO);
        assertEquals(2, read.findings().size());
        assertTrue(read.missing().get(0).startsWith("It reported 3 findings; the first 2 are kept"), read.missing().get(0));
    }

    @Test
    void what_a_check_is_given_comes_back() throws IOException {
        Map<String, Object> values = Map.of("acme.seams.limit", Map.of("value", 3.5, "parts", Map.of("p1", 4.5)), "acme.seams.count", Map.of("value", 2, "parts", Map.of()),
                "acme.seams.flag", Map.of("value", false, "parts", Map.of()), "acme.seams.choice", Map.of("value", "b", "parts", Map.of()),
                "back.allowance", Map.of("value", 4, "parts", Map.of()), "acme.seams.open", Map.of("parts", Map.of()));
        Table table = new Table(NUMBERS, List.of(Arrays.<Object>asList(1.0, "t", true, SQUARE)));
        FormNode node = sent(Map.of("settings", values, "stock", Map.of("bits", List.of(Map.of("name", "eighth", "fields", Map.of("diameter", 3.175)))),
                "units", UnitSystem.INCH, "build", Optional.of("cabinet"), "modules", List.of(new PlacedModule(1, 2, 3)), "tables", Map.of("fit", List.of(table))));
        Inspection read = new ReadInspection(INFO, new Proof("f", "0", 1, 1, 1, 1, List.of(), List.of()), List.of(part("p1"), part("p2")), node, fraction -> { });
        assertEquals(3.5, read.settings().get(LIMIT));
        assertEquals(4.5, read.settings().get(LIMIT, part("p1")));
        assertEquals(3.5, read.settings().get(LIMIT, part("p2")));
        assertEquals(2, read.settings().get(COUNT));
        assertEquals(false, read.settings().get(FLAG));
        assertEquals("b", read.settings().get(CHOICE));
        assertEquals(4.0, read.settings().get(SharedSettings.BACK_ALLOWANCE));
        assertEquals(Optional.empty(), read.settings().given(OPEN, part("p1")));
        assertEquals(3.175, read.stock(BITS).get(0).get(FIELD));
        assertEquals(UnitSystem.INCH, read.units());
        assertEquals(Optional.of("cabinet"), read.build());
        assertEquals(List.of(new PlacedModule(1, 2, 3)), read.placedModules());
        assertEquals(table, read.table("fit", "numbers").orElseThrow());
        assertThrows(IllegalArgumentException.class, () -> read.settings().get(SharedSettings.HAIRLINE), "it does not declare it");
        assertThrows(IllegalArgumentException.class, () -> read.tables("router"), "it does not read it");
    }

    @Test
    void what_is_not_of_the_form_is_refused_in_words() throws IOException {
        FormNode wrong = sent(Map.of("info", Map.of("id", "acme", "title", "t", "rules", List.of(Map.of("id", "acme.r", "severity", "WORST")))));
        assertTrue(assertThrows(FormException.class, () -> wrong.value("info", CheckInfo.class)).getMessage().contains("severity cannot be WORST"));
        FormNode geometry = sent(Map.of("place", "AAAA"));
        assertThrows(FormException.class, () -> geometry.value("place", Geometry.class));
        FormNode foreign = sent(OutcomeForm.fields(Outcome.of(List.of(Finding.of(new Rule("acme.other.rule", Severity.INFO, "a", "b", "c", "d"), "m").build())), 1));
        assertTrue(assertThrows(FormException.class, () -> OutcomeForm.read(foreign, INFO)).getMessage().contains("does not declare"));
        byte[] text = "hello\n".getBytes(StandardCharsets.UTF_8);
        assertThrows(IOException.class, () -> new FormReader(new ByteArrayInputStream(text), 100).next());
        byte[] huge = ("{\"kind\":\"" + "x".repeat(100_000) + "\"}").getBytes(StandardCharsets.UTF_8);
        assertTrue(assertThrows(FormException.class, () -> new FormReader(new ByteArrayInputStream(huge), 50_000).next()).getMessage().contains("longer"));
    }
}
