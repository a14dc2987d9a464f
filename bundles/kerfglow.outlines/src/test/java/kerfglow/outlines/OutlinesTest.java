// SPDX-License-Identifier: Apache-2.0
package kerfglow.outlines;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.StringWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import javax.xml.parsers.DocumentBuilderFactory;
import kerfglow.api.Table;
import kerfglow.api.TableInfo;
import kerfglow.api.UnitSystem;
import kerfglow.api.proof.ImportOptions;
import kerfglow.api.proof.Paint;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Proof;
import kerfglow.api.proof.Role;
import kerfglow.host.CheckCatalogue;
import kerfglow.host.JobSheet;
import kerfglow.host.Result;
import kerfglow.host.RunRequest;
import kerfglow.host.Runner;
import kerfglow.host.ShopSheet;
import kerfglow.host.Watcher;
import kerfglow.svg.SvgImporter;
import kerfglow.testkit.CheckTester;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Polygon;
import org.w3c.dom.Document;

/** DXF files are read back with ezdxf, an independent reader (Debian python3-ezdxf). */
class OutlinesTest {
    private static final double CHORD_ERROR_MM = 0.02;
    private static final double WIDTH_MM = 1000;
    private static final double HEIGHT_MM = 600;
    /** An F has no symmetry at all. */
    private static final double[][] F = {{100, 100}, {260, 100}, {260, 140}, {140, 140}, {140, 220}, {220, 220}, {220, 260}, {140, 260}, {140, 400}, {100, 400}};
    private static final double F_AREA_MM2 = 40 * 300 + 120 * 40 + 80 * 40;

    /** Reads a file, audits it, and tells of every entity where it is, how large, and of what. */
    private static final String READER = """
            import json, sys, ezdxf
            doc = ezdxf.readfile(sys.argv[1])
            found = []
            for e in doc.modelspace():
                about = {'type': e.dxftype(), 'layer': e.dxf.layer}
                if e.dxftype() == 'LWPOLYLINE':
                    points = []
                    for piece, corner in zip(e.virtual_entities(), e.get_points('xyb')):
                        run = [piece.dxf.start, piece.dxf.end] if piece.dxftype() == 'LINE' else list(piece.flattening(0.00002))
                        points += [(p.x, p.y) for p in (run if corner[2] >= 0 else run[::-1])]
                    about['area'] = abs(sum(a[0] * b[1] - b[0] * a[1] for a, b in zip(points, points[1:] + points[:1])) / 2)
                    about['vertices'] = [[p[0], p[1]] for p in e.get_points('xy')]
                    about['arcs'] = sum(1 for p in e.get_points('xyb') if p[2] != 0)
                    about['closed'] = e.closed
                    about['box'] = [min(p[0] for p in points), min(p[1] for p in points), max(p[0] for p in points), max(p[1] for p in points)]
                if e.dxftype() == 'POINT':
                    about['at'] = list(e.dxf.location)[:2]
                if e.dxftype() == 'TEXT':
                    about['text'] = e.dxf.text
                found.append(about)
            audit = doc.audit()
            print(json.dumps({'version': doc.dxfversion, 'units': doc.header['$INSUNITS'], 'errors': [str(x.message) for x in audit.errors], 'fixes': [str(x.message) for x in audit.fixes],
                'layers': [l.dxf.name for l in doc.layers], 'entities': found}))
            """;

    @TempDir
    private Path folder;

    private static String wkt(double[][] points) {
        StringBuilder text = new StringBuilder("POLYGON ((");
        for (double[] point : points) {
            text.append(point[0]).append(' ').append(point[1]).append(", ");
        }
        return text.append(points[0][0]).append(' ').append(points[0][1]).append("))").toString();
    }

    private static Part part(String id, Role role, Polygon shape) {
        return Part.builder(id, role, shape).layer("L").build();
    }

    private static Polygon polygon(String wkt) {
        return (Polygon) CheckTester.wkt(wkt);
    }

    /** A circle as the importer flattens it: vertices on it, chords inside by the chord error. */
    private static Coordinate[] arc(double x, double y, double radius, double from, double sweep) {
        int chords = (int) Math.ceil(Math.abs(sweep) / (2 * Math.acos(1 - CHORD_ERROR_MM / radius)));
        Coordinate[] points = new Coordinate[chords + 1];
        for (int i = 0; i <= chords; i++) {
            double angle = from + sweep * i / chords;
            points[i] = new Coordinate(x + radius * Math.cos(angle), y + radius * Math.sin(angle));
        }
        return points;
    }

    private static Polygon disc(double x, double y, double radius) {
        Coordinate[] points = arc(x, y, radius, 0.3, 2 * Math.PI);
        points[points.length - 1] = points[0].copy();
        return new GeometryFactory().createPolygon(points);
    }

    private static Table table(String id, String columns, Object... cells) {
        String[] names = columns.split(" ");
        List<TableInfo.Column> infos = new ArrayList<>();
        for (int i = 0; i < names.length; i++) {
            TableInfo.Type type = cells[i] instanceof Double ? TableInfo.Type.NUMBER : cells[i] instanceof Geometry ? TableInfo.Type.GEOMETRY : TableInfo.Type.TEXT;
            infos.add(new TableInfo.Column(names[i], names[i], type, null));
        }
        List<List<Object>> rows = new ArrayList<>();
        for (int i = 0; i < cells.length; i += names.length) {
            rows.add(Arrays.asList(cells).subList(i, i + names.length));
        }
        return new Table(new TableInfo(id, id, infos), rows);
    }

    private static Result.CheckRow row(String check, Table... tables) {
        return new Result.CheckRow(check, check, "1.0.0", Result.Status.PASSED, 1, "", List.of(tables), List.of());
    }

    private static Result result(List<Part> parts, Result.CheckRow... rows) {
        Proof proof = new Proof("letters.svg", "0".repeat(64), WIDTH_MM, HEIGHT_MM, 1, CHORD_ERROR_MM, List.of(), List.of());
        return new Result(proof, JobSheet.NONE, ShopSheet.NONE, UnitSystem.METRIC, parts, List.of(), List.of(rows), List.of(), List.of());
    }

    private interface Writing {
        void to(Writer out) throws IOException;
    }

    private static String text(Writing writing) throws IOException {
        StringWriter out = new StringWriter();
        writing.to(out);
        return out.toString();
    }

    private JsonNode dxf(OutlineSet set) throws Exception {
        Path file = folder.resolve("out.dxf");
        Files.writeString(file, text(out -> DxfOutlines.write(set, out)), StandardCharsets.US_ASCII);
        Process python = new ProcessBuilder("/usr/bin/python3", "-", file.toString()).redirectError(ProcessBuilder.Redirect.INHERIT).start();
        python.getOutputStream().write(READER.getBytes(StandardCharsets.UTF_8));
        python.getOutputStream().close();
        byte[] answer = python.getInputStream().readAllBytes();
        assertEquals(0, python.waitFor(), "needs Debian's python3-ezdxf");
        JsonNode read = new ObjectMapper().readTree(answer);
        assertEquals("AC1015", read.get("version").asText());
        assertEquals(4, read.get("units").asInt());
        assertEquals("[]", read.get("errors").toString());
        assertEquals("[]", read.get("fixes").toString());
        return read;
    }

    private static List<JsonNode> on(JsonNode read, String layer, String type) {
        List<JsonNode> found = new ArrayList<>();
        read.get("entities").forEach(entity -> {
            if (entity.get("layer").asText().equals(layer) && entity.get("type").asText().equals(type)) {
                found.add(entity);
            }
        });
        return found;
    }

    @Test
    void the_corners_of_an_asymmetric_letter_are_where_they_were_drawn_with_y_turned_up() throws Exception {
        JsonNode letter = on(dxf(OutlineSet.of(result(List.of(part("p1", Role.FACE, polygon(wkt(F))))), Set.of())), "Faces", "LWPOLYLINE").get(0);
        assertEquals(F.length, letter.get("vertices").size());
        for (double[] corner : F) {
            boolean there = false;
            for (JsonNode vertex : letter.get("vertices")) {
                there |= Math.hypot(vertex.get(0).asDouble() - corner[0], vertex.get(1).asDouble() - (HEIGHT_MM - corner[1])) < 1e-6;
            }
            assertTrue(there, () -> "no vertex at " + Arrays.toString(corner) + ": " + letter);
        }
        assertEquals(F_AREA_MM2, letter.get("area").asDouble(), 1e-6);
        assertTrue(letter.get("closed").asBoolean());
    }

    @Test
    void a_mirrored_layer_is_turned_over_and_says_so() throws Exception {
        JsonNode read = dxf(OutlineSet.of(result(List.of(part("p1", Role.BACK, polygon(wkt(F))))), Set.of("backs")));
        JsonNode letter = on(read, "Backs, mirrored", "LWPOLYLINE").get(0);
        double[] foot = {WIDTH_MM - 100, HEIGHT_MM - 400};
        boolean there = false;
        for (JsonNode vertex : letter.get("vertices")) {
            there |= Math.hypot(vertex.get(0).asDouble() - foot[0], vertex.get(1).asDouble() - foot[1]) < 1e-6;
        }
        assertTrue(there, letter::toString);
        assertTrue(on(read, "Notes", "TEXT").get(0).get("text").asText().contains("cut from behind"));
        assertEquals(List.of(), on(read, "Backs", "LWPOLYLINE"));
    }

    @ParameterizedTest
    @ValueSource(doubles = {1, 5, 50, 400})
    void a_circle_comes_out_as_two_arcs_with_its_area(double radius) throws Exception {
        JsonNode circle = on(dxf(OutlineSet.of(result(List.of(part("p1", Role.OPENING, disc(500, 300, radius)))), Set.of())), "Openings", "LWPOLYLINE").get(0);
        assertEquals(2, circle.get("arcs").asInt());
        assertEquals(Math.PI * radius * radius, circle.get("area").asDouble(), Math.PI * radius * radius * 1e-5 + 0.01);
        assertEquals(500 - radius, circle.get("box").get(0).asDouble(), 0.002);
        assertEquals(300 + radius, circle.get("box").get(3).asDouble(), 0.002);
    }

    /** A stadium: two straights and two half circles, area 4 L R + pi R² with L half the straight. */
    @Test
    void straights_stay_straight_beside_arcs() throws Exception {
        List<Coordinate> points = new ArrayList<>(List.of(arc(400, 300, 50, -Math.PI / 2, -Math.PI)));
        points.addAll(List.of(arc(600, 300, 50, Math.PI / 2, -Math.PI)));
        points.add(points.get(0).copy());
        JsonNode stadium = on(dxf(OutlineSet.of(result(List.of(part("p1", Role.FACE, new GeometryFactory().createPolygon(points.toArray(new Coordinate[0]))))), Set.of())),
                "Faces", "LWPOLYLINE").get(0);
        assertTrue(stadium.get("vertices").size() <= 6, stadium::toString);
        assertEquals(200 * 100 + Math.PI * 2500, stadium.get("area").asDouble(), 0.01);
        assertEquals(350, stadium.get("box").get(0).asDouble(), 0.02);
        assertEquals(650, stadium.get("box").get(2).asDouble(), 0.02);
    }

    /** No arc may lie farther from the outline than 0.02 mm and the chord error. */
    @Test
    void arcs_keep_to_an_outline_whose_radius_changes_all_along() {
        Coordinate[] points = new Coordinate[2001];
        for (int i = 0; i < 2000; i++) { // an ellipse 100 by 25: least radius 6.25, greatest 400
            points[i] = new Coordinate(500 + 100 * Math.cos(2 * Math.PI * i / 2000), 300 + 25 * Math.sin(2 * Math.PI * i / 2000));
        }
        points[2000] = points[0].copy();
        LinearRing ring = new GeometryFactory().createLinearRing(points);
        CutPath path = new ArcPaths(CHORD_ERROR_MM).ring(ring);
        assertTrue(path.vertices().size() < 200, "arcs stand for most of 2000 chords: " + path.vertices().size());
        assertEquals(Math.PI * 100 * 25, Math.abs(path.areaMm2()), 428.92 * 0.02, "off by the tolerance all round at most");
        for (int i = 0; i < path.vertices().size(); i++) {
            CutPath.Vertex from = path.vertices().get(i);
            CutPath.Vertex to = path.next(i);
            if (path.isArc(i)) { // the middle of the arc against the true ellipse
                double half = path.vertices().get(i).bulge();
                double x = (from.xMm() + to.xMm()) / 2 + half * (to.yMm() - from.yMm()) / 2;
                double y = (from.yMm() + to.yMm()) / 2 - half * (to.xMm() - from.xMm()) / 2;
                double off = new GeometryFactory().createPoint(new Coordinate(x, y)).distance(ring);
                assertTrue(off <= 0.021, "arc " + i + " lies off by " + off);
            }
        }
    }

    /** A half disc, curved to the right: its arc must bulge outwards in every form, or it would lack what it should have. */
    private static Polygon halfDisc() {
        List<Coordinate> points = new ArrayList<>(List.of(arc(500, 300, 100, -Math.PI / 2, Math.PI)));
        points.add(points.get(0).copy());
        return new GeometryFactory().createPolygon(points.toArray(new Coordinate[0]));
    }

    @Test
    void arcs_bulge_the_right_way_when_mirrored() throws Exception {
        JsonNode half = on(dxf(OutlineSet.of(result(List.of(part("p1", Role.BACK, halfDisc()))), Set.of("backs"))), "Backs, mirrored", "LWPOLYLINE").get(0);
        assertEquals(Math.PI * 5000, half.get("area").asDouble(), 0.1);
        assertEquals(WIDTH_MM - 600, half.get("box").get(0).asDouble(), 0.002);
        assertEquals(WIDTH_MM - 500, half.get("box").get(2).asDouble(), 0.002);
    }

    /** Read back by the importer, whose arcs are Batik's. */
    @Test
    void arcs_in_svg_bulge_the_right_way() throws Exception {
        String svg = text(out -> SvgOutlines.write(OutlineSet.of(result(List.of(part("p1", Role.FACE, halfDisc()))), Set.of()), out)).replace("fill=\"none\" stroke=", "fill=\"#000000\" data-stroke=");
        Proof read = new SvgImporter().read(Files.writeString(folder.resolve("half.svg"), svg), ImportOptions.defaults());
        Geometry area = read.elements().stream().map(element -> element.fillArea()).filter(each -> !each.isEmpty()).findFirst().orElseThrow();
        assertEquals(Math.PI * 5000, area.getArea(), 100 * Math.PI * CHORD_ERROR_MM);
        assertEquals(600, area.getEnvelopeInternal().getMaxX(), CHORD_ERROR_MM);
    }

    @Test
    void what_the_checks_made_is_there_and_a_missing_check_leaves_a_gap() throws Exception {
        Polygon back = polygon("POLYGON ((110 110, 250 110, 250 390, 110 390, 110 110))");
        Result.CheckRow[] rows = {row("fit", table("made-backs", "face shape", "p1", back)), row("returns", table("strips", "part joint", "p1", CheckTester.wkt("POINT (120 390)"))),
            row("glow", table("modules", "part x y", "p1", 150.0, 200.0, "p1", 200.0, 200.0))};
        JsonNode read = dxf(OutlineSet.of(result(List.of(part("p1", Role.FACE, polygon(wkt(F)))), rows), Set.of()));
        assertEquals(140 * 280, on(read, "Backs made", "LWPOLYLINE").get(0).get("area").asDouble(), 1e-6);
        assertEquals("[120.0,210.0]", on(read, "Return joints", "POINT").get(0).get("at").toString());
        assertEquals("[150.0,400.0]", on(read, "Module centres", "POINT").get(0).get("at").toString());
        assertEquals(2, on(read, "Module centres", "POINT").size());
        assertEquals(List.of("faces"), OutlineSet.of(result(List.of(part("p1", Role.FACE, polygon(wkt(F))))), Set.of()).layers().stream().map(OutlineLayer::id).toList());
    }

    @Test
    void an_opening_is_cut_once_and_a_counter_of_the_panel_stays() throws Exception {
        Polygon panel = polygon("POLYGON ((0 0, 1000 0, 1000 600, 0 600, 0 0), (100 100, 100 200, 200 200, 200 100, 100 100), (700 100, 700 200, 800 200, 800 100, 700 100))");
        JsonNode read = dxf(OutlineSet.of(result(List.of(part("p1", Role.PANEL, panel), part("p2", Role.OPENING, polygon("POLYGON ((100 100, 200 100, 200 200, 100 200, 100 100))")))), Set.of()));
        assertEquals(2, on(read, "Panels", "LWPOLYLINE").size());
        assertEquals(1, on(read, "Openings", "LWPOLYLINE").size());
    }

    @Test
    void film_has_a_layer_a_colour() {
        Part red = Part.builder("v", Role.VINYL, polygon(wkt(F))).paint(Paint.colour(0xc03020)).build();
        assertEquals("Film #c03020", OutlineSet.of(result(List.of(red)), Set.of()).layers().get(0).name());
    }

    @Test
    void svg_is_at_real_size_with_a_group_a_kind_and_the_same_arcs() throws Exception {
        Result result = result(List.of(part("p1", Role.FACE, polygon(wkt(F))), part("p2", Role.OPENING, disc(500, 300, 50))),
                row("glow", table("modules", "part x y", "p1", 150.0, 200.0)));
        String svg = text(out -> SvgOutlines.write(OutlineSet.of(result, Set.of("faces")), out));
        Document document = DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(new ByteArrayInputStream(svg.getBytes(StandardCharsets.UTF_8)));
        assertEquals("1000mm", document.getDocumentElement().getAttribute("width"));
        assertEquals("0 0 1000 600", document.getDocumentElement().getAttribute("viewBox"));
        assertTrue(svg.contains("<g id=\"faces-mirrored\"") && svg.contains("<g id=\"openings\"") && svg.contains("<g id=\"module-centres\""), svg);
        assertTrue(svg.contains("A50 50 0"), svg);
        assertTrue(svg.contains("Faces, mirrored: mirrored, to be cut from behind"), svg);
        assertTrue(svg.contains("M900 100"), "the F stands at 1000 less 100: " + svg);
    }

    /** Real lettering, film and panels: every outline of the sample keeps its area within the fit all along its edge, and its extent. */
    @Test
    void the_lettering_of_the_sample_keeps_its_areas_and_extents() throws Exception {
        Path shop = Files.writeString(folder.resolve("shop.yaml"), "name: none\n");
        Result result = new Runner(new SvgImporter(), new CheckCatalogue()).run(new RunRequest(Path.of(System.getProperty("testdata"), "plain-letters.svg"), Optional.empty(), Optional.of(shop),
                List.of(), List.of()), Watcher.NONE);
        List<JsonNode> letters = on(dxf(OutlineSet.of(result, Set.of())), "Faces", "LWPOLYLINE");
        List<Polygon> faces = result.parts().stream().filter(part -> part.role() == Role.FACE).map(Part::shape).toList();
        List<LinearRing> rings = new ArrayList<>();
        faces.forEach(face -> {
            rings.add(face.getExteriorRing());
            for (int i = 0; i < face.getNumInteriorRing(); i++) {
                rings.add(face.getInteriorRingN(i));
            }
        });
        assertEquals(rings.size(), letters.size());
        assertTrue(rings.size() >= 3, "rings: " + rings.size());
        for (int i = 0; i < rings.size(); i++) {
            double area = rings.get(i).getFactory().createPolygon(rings.get(i)).getArea();
            assertEquals(area, letters.get(i).get("area").asDouble(), rings.get(i).getLength() * 2 * CHORD_ERROR_MM, "outline " + i);
            assertEquals(rings.get(i).getEnvelopeInternal().getMinX(), letters.get(i).get("box").get(0).asDouble(), 2 * CHORD_ERROR_MM);
            assertEquals(result.proof().heightMm() - rings.get(i).getEnvelopeInternal().getMinY(), letters.get(i).get("box").get(3).asDouble(), 2 * CHORD_ERROR_MM);
        }
    }
}
