// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.artwork;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import kerfglow.api.Finding;
import kerfglow.api.Rule;
import kerfglow.api.Setting;
import kerfglow.api.proof.Element;
import kerfglow.api.proof.ImportNote;
import kerfglow.api.proof.Outline;
import kerfglow.api.proof.Paint;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Role;
import kerfglow.api.proof.Visibility;
import kerfglow.testkit.CheckTester;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.util.AffineTransformation;
import org.locationtech.jts.operation.union.UnaryUnionOp;

/** A small proof drawn in a test, with its parts made as the host makes them: the union of what shares role, layer and paint. */
final class Drawn {
    private static final GeometryFactory FACTORY = new GeometryFactory();

    private final List<Element> elements = new ArrayList<>();
    private final Map<String, Role> roles = new LinkedHashMap<>();
    private final Set<String> unassigned = new LinkedHashSet<>();
    private final Map<Setting<?>, Object> settings = new LinkedHashMap<>();
    private final List<ImportNote> notes = new ArrayList<>();
    private double widthMm = 1000;
    private double heightMm = 1000;

    /** A filled path in layer Faces; every line of the WKT is a subpath whose points are its nodes. */
    Drawn path(String id, String linesWkt) {
        return path(id, linesWkt, element -> element);
    }

    Drawn path(String id, String linesWkt, UnaryOperator<Element.Builder> more) {
        return path(id, CheckTester.wkt(linesWkt), more);
    }

    Drawn path(String id, Geometry lines, UnaryOperator<Element.Builder> more) {
        return add(more.apply(outlined(Element.builder(id).layer("Faces").line(elements.size() + 1), lines)).order(elements.size()).build());
    }

    static Element.Builder outlined(Element.Builder builder, Geometry lines) {
        List<Outline> outlines = new ArrayList<>();
        Geometry area = FACTORY.createPolygon();
        for (int i = 0; i < lines.getNumGeometries(); i++) {
            Geometry path = lines.getGeometryN(i);
            boolean closed = path instanceof LineString line && line.isClosed();
            outlines.add(new Outline(path, closed, FACTORY.createMultiPointFromCoords(path.getCoordinates())));
            area = area.symDifference(filled(path));
        }
        return builder.outlines(outlines).fillArea(area);
    }

    /** What a fill paints: an open subpath is closed by a straight line, as SVG does. */
    private static Geometry filled(Geometry path) {
        List<Coordinate> ring = new ArrayList<>(List.of(path.getCoordinates()));
        if (!ring.get(0).equals2D(ring.get(ring.size() - 1))) {
            ring.add(ring.get(0));
        }
        boolean area = ring.size() > 3;
        return area ? FACTORY.createPolygon(ring.toArray(new Coordinate[0])).buffer(0) : FACTORY.createPolygon();
    }

    Drawn add(Element element) {
        elements.add(element);
        return this;
    }

    Drawn role(String layer, Role role) {
        roles.put(layer, role);
        return this;
    }

    Drawn unassigned(String layer) {
        unassigned.add(layer);
        return this;
    }

    <T> Drawn with(Setting<T> setting, T value) {
        settings.put(setting, value);
        return this;
    }

    Drawn note(ImportNote note) {
        notes.add(note);
        return this;
    }

    Drawn page(double pageWidthMm, double pageHeightMm) {
        widthMm = pageWidthMm;
        heightMm = pageHeightMm;
        return this;
    }

    List<Element> elements() {
        return elements;
    }

    /** The same proof turned and moved. */
    Drawn moved(AffineTransformation move) {
        Drawn moved = new Drawn();
        for (Element e : elements) {
            List<Outline> outlines = e.outlines().stream()
                    .map(outline -> new Outline(move.transform(outline.path()), outline.closed(), move.transform(outline.nodes()))).toList();
            moved.add(Element.builder(e.id()).layer(e.layer()).line(e.line()).order(e.order()).fill(e.fill()).stroke(e.stroke(), e.strokeWidthMm())
                    .fillArea(move.transform(e.fillArea())).strokeArea(move.transform(e.strokeArea())).outlines(outlines)
                    .visibility(e.visibility()).build());
        }
        moved.roles.putAll(roles);
        return moved;
    }

    CheckTester tester() {
        CheckTester tester = CheckTester.of(new ArtworkCheck()).page(widthMm, heightMm);
        settings.forEach((setting, value) -> set(tester, setting, value));
        notes.forEach(tester::note);
        elements.forEach(tester::element);
        parts().forEach(tester::part);
        return tester;
    }

    @SuppressWarnings("unchecked") // with(Setting<T>, T) is the only way in
    private static <T> void set(CheckTester tester, Setting<?> setting, Object value) {
        tester.with((Setting<T>) setting, (T) value);
    }

    private record Key(Role role, String layer, Paint paint) {
    }

    /** An area of one paint and what painted it. */
    private record Painted(Element element, Geometry area, Part.Source source) {
    }

    private List<Part> parts() {
        Map<Key, List<Painted>> groups = new LinkedHashMap<>();
        for (Element element : elements) {
            Role role = roles.getOrDefault(element.layer(), Role.FACE);
            boolean seen = element.visibility() == Visibility.SHOWN && element.image().isEmpty();
            if (seen && role.isChecked() && !element.fillArea().isEmpty()) {
                groups.computeIfAbsent(new Key(role, element.layer(), element.fill()), key -> new ArrayList<>())
                        .add(new Painted(element, element.fillArea(), Part.Source.SHAPE));
            }
            if (seen && role.isChecked() && !element.strokeArea().isEmpty()) {
                groups.computeIfAbsent(new Key(role, element.layer(), element.stroke()), key -> new ArrayList<>())
                        .add(new Painted(element, element.strokeArea(), Part.Source.STROKE));
            }
        }
        List<Part> parts = new ArrayList<>();
        groups.forEach((key, members) -> {
            Geometry union = UnaryUnionOp.union(members.stream().map(Painted::area).toList());
            for (int i = 0; i < union.getNumGeometries(); i++) {
                Polygon piece = (Polygon) union.getGeometryN(i);
                List<Painted> within = members.stream().filter(member -> member.area().intersects(piece)).toList();
                parts.add(Part.builder("p" + (parts.size() + 1), key.role(), piece).layer(key.layer()).paint(key.paint())
                        .order(members.get(0).element().order()).assigned(!unassigned.contains(key.layer()))
                        .elements(within.stream().map(member -> member.element().id()).distinct().toList())
                        .sources(within.stream().map(Painted::source).collect(Collectors.toSet())).build());
            }
        });
        return parts;
    }

    List<Finding> findings(Rule rule) {
        return tester().findings(rule);
    }

    /** The ids of the rules that were broken, each once, sorted. */
    List<String> broken() {
        return tester().run().findings().stream().map(finding -> finding.rule().id()).distinct().sorted().toList();
    }
}
