// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.closeup;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import kerfglow.api.Measure;
import kerfglow.api.Rule;
import kerfglow.api.Severity;
import kerfglow.api.UnitSystem;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Role;
import kerfglow.host.Result;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.locationtech.jts.geom.Coordinate;
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
}
