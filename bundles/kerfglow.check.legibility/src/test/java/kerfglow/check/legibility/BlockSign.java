// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.legibility;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import kerfglow.api.Finding;
import kerfglow.api.Outcome;
import kerfglow.api.Rule;
import kerfglow.api.TableInfo;
import kerfglow.api.proof.Element;
import kerfglow.api.proof.Gradient;
import kerfglow.api.proof.Paint;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Role;
import kerfglow.testkit.CheckTester;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.util.AffineTransformation;

/** A sign of block letters of known measures: capitals H, L, T, E of 100 mm with strokes of 20 mm, 15 mm apart. */
final class BlockSign {
    static final String H = "0 0, 20 0, 20 40, 50 40, 50 0, 70 0, 70 100, 50 100, 50 60, 20 60, 20 100, 0 100, 0 0";
    static final String L = "0 0, 20 0, 20 80, 60 80, 60 100, 0 100, 0 0";
    static final String T = "0 0, 70 0, 70 20, 45 20, 45 100, 25 100, 25 20, 0 20, 0 0";
    static final String E = "0 0, 60 0, 60 20, 20 20, 20 40, 55 40, 55 60, 20 60, 20 80, 60 80, 60 100, 0 100, 0 0";
    private static final double GAP = 15;

    final CheckTester tester = CheckTester.of(new LegibilityCheck());
    private int count;

    static CheckTester plain() {
        return new BlockSign().word(1, 0, 500, 500, 0);
    }

    /** The word HTLE, its letters as high as the scale times 100 mm, on a base line. */
    CheckTester word(double scale, int rgb, double x, double base, int order) {
        return word(scale, Paint.colour(rgb), null, x, base, order, Role.FACE);
    }

    CheckTester word(double scale, Paint paint, Gradient gradient, double x, double base, int order, Role role) {
        double at = x;
        for (String letter : List.of(H, T, L, E)) {
            Polygon shape = (Polygon) CheckTester.wkt("POLYGON ((" + letter + "))");
            Polygon placed = (Polygon) AffineTransformation.scaleInstance(scale, scale)
                    .translate(at, base - 100 * scale).transform(shape);
            add(placed, "Letters", paint, gradient, order, role);
            at = placed.getEnvelopeInternal().getMaxX() + GAP * scale;
        }
        return tester;
    }

    void add(Polygon shape, String layer, int rgb, int order, Role role) {
        add(shape, layer, Paint.colour(rgb), null, order, role);
    }

    private void add(Polygon shape, String layer, Paint paint, Gradient gradient, int order, Role role) {
        String id = "p" + count++;
        tester.part(Part.builder(id, role, shape).layer(layer).paint(paint).order(order).elements(List.of(id)).build());
        tester.element(Element.builder(id).layer(layer).order(order).fill(paint).fillGradient(gradient).fillArea(shape).build());
    }

    void background(String rectangle, Paint paint, int order) {
        background(rectangle, paint, null, order);
    }

    void background(String rectangle, Paint paint, Gradient gradient, int order) {
        String id = "b" + count++;
        Polygon shape = (Polygon) CheckTester.wkt("POLYGON ((" + rectangle + "))");
        tester.part(Part.builder(id, Role.PANEL, shape).layer("Panel").paint(paint).order(order).elements(List.of(id)).build());
        tester.element(Element.builder(id).layer("Panel").order(order).fill(paint).fillGradient(gradient).fillArea(shape).build());
    }

    static Finding only(CheckTester tester, Rule rule) {
        List<Finding> findings = tester.findings(rule);
        assertEquals(1, findings.size(), () -> rule.id() + ": " + findings);
        return findings.get(0);
    }

    static Object cell(Outcome outcome, TableInfo info, int row, String column) {
        int index = info.columns().stream().map(TableInfo.Column::id).toList().indexOf(column);
        return outcome.tables().stream().filter(table -> table.info().equals(info)).findFirst().orElseThrow().rows().get(row).get(index);
    }

    static Polygon moved(String ring, double x) {
        return (Polygon) AffineTransformation.translationInstance(x, 0).transform(CheckTester.wkt("POLYGON ((" + ring + "))"));
    }
}
