// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.desk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import kerfglow.api.PlacedModule;
import kerfglow.api.Quantity;
import kerfglow.api.Table;
import kerfglow.api.TableInfo;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Role;
import kerfglow.host.JobSheet;
import kerfglow.job.SheetEdits;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;

class LightsTest {
    private static final List<Part> PARTS = List.of(part("p1", 0, 100), part("p2", 200, 300));
    private static final TableInfo INFO = new TableInfo("modules", "Light modules", List.of(TableInfo.Column.text("part", "Part"), TableInfo.Column.number("x", "x", Quantity.LENGTH),
            TableInfo.Column.number("y", "y", Quantity.LENGTH), TableInfo.Column.number("turn", "turn", Quantity.ANGLE), TableInfo.Column.text("how", "how")));
    private static final Table LAID_OUT = new Table(INFO, List.of(row("p1", 20, "laid out"), row("p1", 60, "laid out"), row("p2", 250, "laid out"), row("p2", 260, "drawn")));

    private static Part part(String id, double left, double right) {
        return Part.builder(id, Role.FACE, (Polygon) new GeometryFactory().toGeometry(new Envelope(left, right, 0, 100))).build();
    }

    private static List<Object> row(String part, double x, String how) {
        return Arrays.<Object>asList(part, x, 50.0, 90.0, how);
    }

    private static Lights lights(JobSheet sheet) {
        return Lights.of(sheet, PARTS, List.of(LAID_OUT));
    }

    @Test
    void drawn_ones_are_the_artworks_and_other_tables_are_not_looked_at() {
        assertEquals(List.of(20.0, 60.0, 250.0), lights(JobSheet.NONE).all().stream().map(light -> light.module().xMm()).toList());
        Table other = new Table(new TableInfo("modules", "of something else", List.of(TableInfo.Column.text("part", "Part"))), List.of(List.of("p1")));
        assertEquals(List.of(), Lights.of(JobSheet.NONE, PARTS, List.of(other)).all());
    }

    @Test
    void the_first_that_is_moved_takes_the_layout_of_its_part_along_and_no_others() {
        Lights lights = lights(JobSheet.NONE);
        Lights.Edit edit = lights.moved(lights.near(new Coordinate(58, 50), 5).orElseThrow(), new Coordinate(70, 40));
        JobSheet after = edit.change().apply(JobSheet.NONE);
        assertEquals(List.of(new PlacedModule(20, 50, 90), new PlacedModule(70, 40, 90)), after.modules());
        assertEquals(1, edit.index().orElseThrow());
        List<Lights.Light> then = lights(after).all();
        assertEquals(List.of(20.0, 70.0, 250.0), then.stream().map(light -> light.module().xMm()).toList(), "those of the run before are not shown twice");
        assertEquals(List.of(true, true, false), then.stream().map(Lights.Light::isPlaced).toList());
    }

    @Test
    void a_placed_one_is_turned_where_it_is() {
        JobSheet sheet = SheetEdits.withModules(JobSheet.NONE, List.of(new PlacedModule(20, 50, 350, "A"), new PlacedModule(60, 50, 0)));
        Lights lights = lights(sheet);
        JobSheet after = lights.turned(lights.all().get(0), 15).change().apply(sheet);
        assertEquals(List.of(new PlacedModule(20, 50, 5, "A"), new PlacedModule(60, 50, 0)), after.modules());
    }

    @Test
    void one_more_in_a_laid_out_part_keeps_the_others_there() {
        Lights.Edit edit = lights(JobSheet.NONE).with(new Coordinate(210, 10));
        assertEquals(List.of(new PlacedModule(250, 50, 90), new PlacedModule(210, 10, 0)), edit.change().apply(JobSheet.NONE).modules());
        assertEquals(1, edit.index().orElseThrow());
        assertEquals(List.of(new PlacedModule(150, 10, 0)), lights(JobSheet.NONE).with(new Coordinate(150, 10)).change().apply(JobSheet.NONE).modules(), "outside of every part");
    }

    @Test
    void one_that_is_taken_out_leaves_the_rest_of_its_part() {
        Lights lights = lights(JobSheet.NONE);
        Lights.Edit edit = lights.without(lights.all().get(0));
        JobSheet after = edit.change().apply(JobSheet.NONE);
        assertEquals(List.of(new PlacedModule(60, 50, 90)), after.modules());
        assertTrue(edit.index().isEmpty());
        assertEquals(List.of(), lights(after).none().change().apply(after).modules());
    }

    @Test
    void the_nearest_within_reach_is_taken_hold_of() {
        Lights lights = lights(JobSheet.NONE);
        assertEquals(60, lights.near(new Coordinate(41, 50), 30).orElseThrow().module().xMm());
        assertTrue(lights.near(new Coordinate(41, 50), 5).isEmpty());
    }
}
