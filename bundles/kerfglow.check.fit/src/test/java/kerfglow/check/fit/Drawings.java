// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.fit;

import java.util.ArrayList;
import java.util.List;
import kerfglow.api.Finding;
import kerfglow.api.Outcome;
import kerfglow.api.Rule;
import kerfglow.api.Table;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Role;
import kerfglow.testkit.CheckTester;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Polygon;

/** Shapes with known clearances, and short ways to ask. Curves have their vertices on the true curve, 0.002 mm at most. */
final class Drawings {
    static final GeometryFactory FACTORY = new GeometryFactory();
    static final double CHORD_ERROR_MM = 0.002;

    private Drawings() {
    }

    static CheckTester tester() {
        return CheckTester.of(new FitCheck());
    }

    static Part part(String id, Role role, Polygon shape) {
        return Part.builder(id, role, shape).elements(List.of("e-" + id)).build();
    }

    static Polygon polygon(String wkt) {
        return (Polygon) CheckTester.wkt(wkt);
    }

    static Polygon box(double x, double y, double width, double height) {
        return polygon("POLYGON ((%s %s, %s %s, %s %s, %s %s, %s %s))".formatted(x, y, x + width, y, x + width, y + height, x, y + height, x, y));
    }

    static Polygon frame(Polygon outside, Polygon... holes) {
        LinearRing[] rings = new LinearRing[holes.length];
        for (int i = 0; i < holes.length; i++) {
            rings[i] = holes[i].getExteriorRing();
        }
        return FACTORY.createPolygon(outside.getExteriorRing(), rings);
    }

    static Polygon circle(double x, double y, double radius) {
        return rounded(x, y, 0, 0, radius);
    }

    /** A rectangle of the given half sides grown by a radius: circle, stadium or rounded rectangle. */
    static Polygon rounded(double x, double y, double halfWidth, double halfHeight, double radius) {
        int steps = (int) Math.ceil(Math.PI / 2 / (2 * Math.acos(1 - CHORD_ERROR_MM / radius)));
        List<Coordinate> points = new ArrayList<>();
        for (int quarter = 0; quarter < 4; quarter++) {
            double centreX = x + (quarter == 0 || quarter == 3 ? halfWidth : -halfWidth);
            double centreY = y + (quarter < 2 ? halfHeight : -halfHeight);
            for (int i = 0; i <= steps; i++) {
                double angle = (quarter + (double) i / steps) * Math.PI / 2;
                Coordinate point = new Coordinate(centreX + radius * Math.cos(angle), centreY + radius * Math.sin(angle));
                if (points.isEmpty() || point.distance(points.get(points.size() - 1)) > 1e-6) {
                    points.add(point);
                }
            }
        }
        if (points.get(0).distance(points.get(points.size() - 1)) < 1e-6) {
            points.remove(points.size() - 1);
        }
        points.add(points.get(0).copy());
        return FACTORY.createPolygon(points.toArray(new Coordinate[0]));
    }

    static List<Finding> of(Outcome outcome, Rule rule) {
        return outcome.findings().stream().filter(finding -> finding.rule() == rule).toList();
    }

    static List<String> rules(Outcome outcome) {
        return outcome.findings().stream().map(finding -> finding.rule().id()).distinct().sorted().toList();
    }

    static double measured(Finding finding) {
        return finding.measured().orElseThrow().value();
    }

    static double required(Finding finding) {
        return finding.required().orElseThrow().value();
    }

    /** The cell of a table's row by the name of its column. */
    static Object cell(Outcome outcome, String table, int row, String column) {
        Table found = outcome.tables().stream().filter(each -> each.info().id().equals(table)).findFirst().orElseThrow();
        for (int i = 0; i < found.info().columns().size(); i++) {
            if (found.info().columns().get(i).id().equals(column)) {
                return found.rows().get(row).get(i);
            }
        }
        throw new IllegalArgumentException(column);
    }

    static double number(Outcome outcome, String table, int row, String column) {
        return (Double) cell(outcome, table, row, column);
    }
}
