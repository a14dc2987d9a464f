// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.scene;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.Set;
import kerfglow.api.Severity;
import kerfglow.api.UnitSystem;
import kerfglow.api.proof.Role;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.io.ParseException;
import org.locationtech.jts.io.WKTReader;

class SceneTest {
    private static Figure figure(int order, String wkt) {
        try {
            Geometry area = new WKTReader().read(wkt);
            return new Figure(order, "e" + order, "layer", Set.of(Role.FACE), Figure.Kind.PAINTED, 0, area, area.getEnvelopeInternal(), Outlines.of(area));
        } catch (ParseException wrong) {
            throw new IllegalArgumentException(wrong);
        }
    }

    private static final Scene TWO = new Scene(List.of(figure(0, "POLYGON ((0 0, 100 0, 100 100, 0 100, 0 0), (40 40, 60 40, 60 60, 40 60, 40 40))"),
            figure(1, "POLYGON ((80 0, 200 0, 200 100, 80 100, 80 0))")), new Envelope(0, 300, 0, 100));

    @Test
    void the_uppermost_figure_is_hit_and_a_hole_is_not() {
        assertEquals("e1", TWO.topAt(new Coordinate(90, 50), 0, figure -> true).orElseThrow().element());
        assertEquals("e0", TWO.topAt(new Coordinate(90, 50), 0, figure -> figure.order() == 0).orElseThrow().element());
        assertTrue(TWO.topAt(new Coordinate(50, 50), 0, figure -> true).isEmpty());
        assertEquals("e0", TWO.topAt(new Coordinate(42, 50), 3, figure -> true).orElseThrow().element(), "its edge is within reach");
    }

    @Test
    void a_view_meets_what_it_shows_in_paint_order() {
        assertEquals(List.of("e0", "e1"), TWO.meeting(new Envelope(90, 95, 10, 20)).stream().map(Figure::element).toList());
        assertTrue(TWO.meeting(new Envelope(250, 300, 0, 50)).isEmpty());
    }

    @ParameterizedTest(name = "{0} px/mm")
    @ValueSource(doubles = {0.01, 0.1, 1, 20})
    void gathering_loses_no_marker_and_parts_them_again_nearby(double pixelsPerMm) {
        Random random = new Random(7);
        List<Marker> markers = new ArrayList<>();
        for (int i = 0; i < 500; i++) {
            markers.add(new Marker("f" + i, 0, i + 1, Severity.values()[i % 3], new Coordinate(random.nextDouble() * 3000, random.nextDouble() * 2000)));
        }
        List<Badges.Badge> badges = Badges.gather(markers, pixelsPerMm, 26);
        assertEquals(500, badges.stream().mapToInt(badge -> badge.markers().size()).sum());
        for (Badges.Badge badge : badges) {
            assertEquals(badge.markers().stream().map(Marker::severity).max(Enum::compareTo).orElseThrow(), badge.severity());
            badge.markers().forEach(marker -> assertTrue(marker.at().distance(new Coordinate(badge.xMm(), badge.yMm())) * pixelsPerMm < 26));
        }
        for (int i = 0; i < badges.size(); i++) { // first ones of badges are never within reach of one another
            for (int j = 0; j < i; j++) {
                assertTrue(Math.hypot(badges.get(i).xMm() - badges.get(j).xMm(), badges.get(i).yMm() - badges.get(j).yMm()) * pixelsPerMm >= 26);
            }
        }
    }

    @Test
    void rulers_are_figured_in_round_steps_of_the_units() {
        assertEquals(List.of("0", "50", "100"), labels(Ruler.marks(-1, 101, 40, UnitSystem.METRIC)));
        assertEquals(List.of("0 m", "2 m"), labels(Ruler.marks(0, 3000, 1500, UnitSystem.METRIC)));
        assertEquals(List.of("0\u2033", "0.25\u2033", "0.5\u2033"), labels(Ruler.marks(0, 13, 5, UnitSystem.INCH)));
        assertEquals(List.of("0\u2032", "1\u2032", "2\u2032"), labels(Ruler.marks(0, 700, 200, UnitSystem.INCH)));
        assertEquals(304.8, Ruler.marks(0, 700, 200, UnitSystem.INCH).stream().filter(mark -> mark.label().equals("1\u2032")).findFirst().orElseThrow().atMm(), 1e-9);
    }

    private static List<String> labels(List<Ruler.Mark> marks) {
        return marks.stream().map(Ruler.Mark::label).filter(label -> !label.isEmpty()).toList();
    }

    @Test
    void the_gauge_measures_stroke_height_corner_and_radius() {
        Scene bar = new Scene(List.of(figure(0, "POLYGON ((0 0, 100 0, 100 12, 0 12, 0 0))")), new Envelope(0, 100, 0, 20));
        Gauge gauge = new Gauge(bar, figure -> true);
        Gauge.Stroke stroke = gauge.stroke(new Coordinate(50, 4)).orElseThrow();
        assertEquals(12, stroke.widthMm(), 1e-9);
        assertEquals(12, stroke.heightMm(), 1e-9);
        Gauge.Snap corner = gauge.snap(new Coordinate(99, 1), 3).orElseThrow();
        assertEquals(90, corner.angleDegrees().orElseThrow(), 1e-9);
        assertTrue(corner.at().equals2D(new Coordinate(100, 0)));
        Gauge.Snap edge = gauge.snap(new Coordinate(50, 1), 3).orElseThrow();
        assertTrue(edge.at().equals2D(new Coordinate(50, 0)), "on the edge, at the foot");
        assertTrue(gauge.stroke(new Coordinate(50, 15)).isEmpty());

        Geometry disc = new org.locationtech.jts.geom.GeometryFactory().createPoint(new Coordinate(0, 0)).buffer(25, 64);
        Scene round = new Scene(List.of(new Figure(0, "disc", "", Set.of(), Figure.Kind.PAINTED, 0, disc, disc.getEnvelopeInternal(), Outlines.of(disc))), new Envelope(-30, 30, -30, 30));
        assertEquals(25, new Gauge(round, figure -> true).snap(new Coordinate(24.8, 0.2), 2).orElseThrow().radiusMm().orElseThrow(), 0.01);
    }

    @Test
    void a_sign_seen_from_afar_has_the_same_angle_on_the_screen() {
        Sight sight = new Sight(100_000, 600);
        assertEquals(6, 1000 * sight.pixelsPerMm(4) / 4, 1e-9, "1 m at 100 m is 6 mm at 600 mm");
        assertEquals(5, new Sight(6875.49354, 600).minutesOfArc(10), 1e-6); // 10 mm at 6.875 m: five minutes, the letter of 20/20 sight (2 atan(h / 2 d))
    }
}
