// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.closeup;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import kerfglow.api.Measure;
import kerfglow.api.OverlayLayer;
import kerfglow.api.Quantity;
import kerfglow.api.Rule;
import kerfglow.api.Severity;
import kerfglow.api.Table;
import kerfglow.api.TableInfo;
import kerfglow.api.UnitSystem;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Proof;
import kerfglow.api.proof.Role;
import kerfglow.host.JobSheet;
import kerfglow.host.Result;
import kerfglow.host.ShopSheet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.io.ParseException;
import org.locationtech.jts.io.WKTReader;

class CloseUpTest {
    private static final GeometryFactory FACTORY = new GeometryFactory();
    private static final Rule RULE = new Rule("router.some-rule", Severity.STOP, "Something", "why", "fix", "geometry");

    private static Part part(String id, String wkt) throws ParseException {
        return Part.builder(id, Role.FACE, (Polygon) new WKTReader().read(wkt)).build();
    }

    private static Result.ReportedFinding finding(Measure measured, Coordinate at, String... parts) {
        Result.Place place = new Result.Place(at, FACTORY.createPoint(at), Optional.of(measured), Optional.empty());
        return new Result.ReportedFinding("1", RULE, Severity.STOP, "", List.of(parts), List.of(), Optional.of(measured), Optional.empty(), List.of(place), "m", "f");
    }

    @Test
    void a_width_is_drawn_from_wall_to_wall() throws ParseException {
        Part bar = part("p1", "POLYGON ((0 0, 100 0, 100 4, 0 4, 0 0))");
        Result.ReportedFinding thin = finding(Measure.mm(4), new Coordinate(50, 2.2), "p1");
        Dimension drawn = Dimension.of(thin, thin.places().get(0), List.of(bar)).orElseThrow();
        assertEquals(4, drawn.from().distance(drawn.to()), 1e-9);
        assertEquals(50, drawn.from().x, 1e-9);
    }

    @Test
    void a_clearance_is_drawn_from_edge_to_edge() throws ParseException {
        Part face = part("p1", "POLYGON ((0 0, 100 0, 100 50, 0 50, 0 0))");
        Part back = part("p2", "POLYGON ((3 3, 97 3, 97 47, 3 47, 3 3))");
        Result.ReportedFinding tight = finding(Measure.mm(3), new Coordinate(3, 20), "p2", "p1");
        Dimension drawn = Dimension.of(tight, tight.places().get(0), List.of(back, face)).orElseThrow();
        assertEquals(3, drawn.from().distance(drawn.to()), 1e-9);
    }

    @Test
    void a_line_that_does_not_show_the_measure_is_not_drawn() throws ParseException {
        Part bar = part("p1", "POLYGON ((0 0, 100 0, 100 4, 0 4, 0 0))");
        Result.ReportedFinding other = finding(Measure.mm(40), new Coordinate(50, 2), "p1");
        assertTrue(Dimension.of(other, other.places().get(0), List.of(bar)).isEmpty());
        Result.ReportedFinding count = finding(Measure.count(3), new Coordinate(50, 2), "p1");
        assertTrue(Dimension.of(count, count.places().get(0), List.of(bar)).isEmpty());
    }

    /** In a straight corner of inside angle a disc of diameter D touches both walls; its centre lies D / 2 / sin(a / 2) from the corner. */
    @ParameterizedTest(name = "{0} degrees")
    @CsvSource({"90", "60", "40"})
    void the_bit_is_put_where_it_touches_both_walls_of_a_corner(double degrees) {
        double half = Math.toRadians(degrees) / 2;
        double far = 500;
        Geometry waste = FACTORY.createPolygon(new Coordinate[] {new Coordinate(0, 0), new Coordinate(far * Math.cos(half), far * Math.sin(half)),
            new Coordinate(far * Math.cos(half), -far * Math.sin(half)), new Coordinate(0, 0)});
        Tool bit = ToolPlacer.bit(UnitSystem.METRIC, waste, new Coordinate(0.1, 0), 6);
        Coordinate centre = bit.shape().getEnvelopeInternal().centre();
        assertEquals(3 / Math.sin(half), centre.x, 0.01);
        assertEquals(0, centre.y, 0.01);
        assertEquals("bit of 6 mm", bit.words());
    }

    @Test
    void a_bit_that_fits_nowhere_lies_upon_the_place_and_says_so() {
        Geometry slot = FACTORY.toGeometry(new org.locationtech.jts.geom.Envelope(0, 100, 0, 2));
        Tool bit = ToolPlacer.bit(UnitSystem.METRIC, slot, new Coordinate(50, 1), 6);
        assertEquals(50, bit.shape().getEnvelopeInternal().centre().x, 1e-6);
        assertEquals("bit of 6 mm, which does not fit", bit.words());
    }

    @Test
    void scales_are_those_of_drawings() {
        assertEquals("5 : 1", Scale.showing(10, 60).toString());
        assertEquals("1 : 1", Scale.showing(60, 60).toString());
        assertEquals("1 : 20", Scale.showing(1000, 60).toString());
    }

    private static final Envelope WINDOW = new Envelope(0, 60, 0, 40);

    private static Result run(List<Part> parts, List<Result.CheckRow> rows, ShopSheet shop) {
        return new Result(new Proof("x.svg", "", 100, 100, 1, 0.02, List.of(), List.of()), JobSheet.NONE, shop, UnitSystem.METRIC, parts, List.of(), rows, List.of(), List.of());
    }

    private static Result.CheckRow row(String check, List<Table> tables, List<OverlayLayer> layers) {
        return new Result.CheckRow(check, "", "1", Result.Status.FINDINGS, 1, "", tables, layers);
    }

    private static Result.ReportedFinding of(String rule, Coordinate at, String... parts) {
        Result.ReportedFinding plain = finding(Measure.mm(3), at, parts);
        return new Result.ReportedFinding("1", new Rule(rule, Severity.STOP, "Something", "why", "fix", "geometry"), Severity.STOP, "", List.of(parts), List.of(), plain.measured(),
                Optional.empty(), plain.places(), "m", "f");
    }

    private static Optional<Tool> tool(Result result, Result.ReportedFinding finding) {
        List<Part> concerned = result.parts().stream().filter(part -> finding.parts().contains(part.id())).toList();
        return new ToolPlacer(new ShopFacts(result), UnitSystem.METRIC).place(finding, finding.places().get(0), concerned, WINDOW);
    }

    @Test
    void a_fit_finding_shows_the_drawn_back_inside_its_face_also_when_the_finding_names_the_face_alone() throws ParseException {
        Part face = part("p1", "POLYGON ((0 0, 50 0, 50 30, 0 30, 0 0))");
        Part back = Part.builder("p2", Role.BACK, (Polygon) new WKTReader().read("POLYGON ((3 3, 47 3, 47 27, 3 27, 3 3))")).build();
        Part other = Part.builder("p3", Role.BACK, (Polygon) new WKTReader().read("POLYGON ((103 3, 147 3, 147 27, 103 27, 103 3))")).build();
        Result result = run(List.of(face, back, other), List.of(), ShopSheet.NONE);
        for (String[] names : new String[][] {{"p1", "p2"}, {"p1"}}) {
            Tool tool = tool(result, of("fit.clearance", new Coordinate(3, 10), names)).orElseThrow();
            assertTrue(tool.shape().equalsTopo(back.shape()), tool.shape().toText());
            assertEquals("back", tool.words());
        }
    }

    @Test
    void where_no_back_is_drawn_the_made_one_is_shown() throws ParseException {
        Part face = part("p1", "POLYGON ((0 0, 50 0, 50 30, 0 30, 0 0))");
        Geometry made = new WKTReader().read("POLYGON ((2 2, 48 2, 48 28, 2 28, 2 2))");
        Geometry ofAnother = new WKTReader().read("POLYGON ((202 2, 248 2, 248 28, 202 28, 202 2))");
        OverlayLayer layer = new OverlayLayer("made-backs", "Backs", List.of(new OverlayLayer.Item(ofAnother, Double.NaN, ""), new OverlayLayer.Item(made, Double.NaN, "")));
        Tool tool = tool(run(List.of(face), List.of(row("fit", List.of(), List.of(layer))), ShopSheet.NONE), of("fit.split", new Coordinate(2, 2), "p1")).orElseThrow();
        assertTrue(tool.shape().equalsTopo(made));
        assertEquals("back made from the face", tool.words());
    }

    /** A rectangle of L by W turned by a has an extent of L |cos a| + W |sin a| by L |sin a| + W |cos a|. */
    @ParameterizedTest
    @CsvSource({"0", "30", "90", "200"})
    void light_modules_are_drawn_to_size_and_turned(double degrees) throws ParseException {
        TableInfo info = new TableInfo("modules", "Light modules", List.of(TableInfo.Column.text("part", "Part"), TableInfo.Column.number("x", "x", Quantity.LENGTH),
                TableInfo.Column.number("y", "y", Quantity.LENGTH), TableInfo.Column.number("turn", "Turn", Quantity.ANGLE), TableInfo.Column.text("type", "Type")));
        Table table = new Table(info, List.of(Arrays.<Object>asList("p1", 30.0, 20.0, degrees, "two-lens"), Arrays.<Object>asList("p1", 500.0, 20.0, degrees, "two-lens")));
        ShopSheet shop = new ShopSheet("", "", Optional.empty(), Map.of("light-modules", List.of(new ShopSheet.RawItem(Map.of("name", new ShopSheet.RawField("other", ""), "length",
                new ShopSheet.RawField("9 mm", ""), "width", new ShopSheet.RawField("9 mm", "")), ""), new ShopSheet.RawItem(Map.of("name", new ShopSheet.RawField("two-lens", ""), "length",
                new ShopSheet.RawField("62 mm", ""), "width", new ShopSheet.RawField("14 mm", "")), ""))), List.of(), List.of());
        Part face = part("p1", "POLYGON ((0 0, 100 0, 100 40, 0 40, 0 0))");
        Tool tool = tool(run(List.of(face), List.of(row("glow", List.of(table), List.of())), shop), of("glow.hot-spot", new Coordinate(30, 20), "p1")).orElseThrow();
        Envelope extent = tool.shape().getEnvelopeInternal();
        double cos = Math.abs(Math.cos(Math.toRadians(degrees)));
        double sin = Math.abs(Math.sin(Math.toRadians(degrees)));
        assertEquals(62 * cos + 14 * sin, extent.getWidth(), 1e-9);
        assertEquals(62 * sin + 14 * cos, extent.getHeight(), 1e-9);
        assertEquals(30, extent.centre().x, 1e-9, "the one far away is not seen");
        assertEquals(62 * 14, tool.shape().getArea(), 1e-9);
        assertEquals("light module of 62 mm by 14 mm", tool.words());
        Coordinate end = new Coordinate(30 + 31 * Math.cos(Math.toRadians(degrees)), 20 + 31 * Math.sin(Math.toRadians(degrees)));
        assertEquals(0, tool.shape().getBoundary().distance(FACTORY.createPoint(end)), 1e-9, "its short side stands where the turn puts it");
    }
}
