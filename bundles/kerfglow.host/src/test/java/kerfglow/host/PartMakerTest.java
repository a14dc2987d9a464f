// SPDX-License-Identifier: Apache-2.0
package kerfglow.host;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTimeout;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import kerfglow.api.proof.Element;
import kerfglow.api.proof.Paint;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Proof;
import kerfglow.api.proof.Role;
import kerfglow.api.proof.Visibility;
import kerfglow.testkit.CheckTester;
import org.junit.jupiter.api.Test;

/** Areas are of rectangles, so exact. */
class PartMakerTest {
    private static final double EXACT = 1e-9;
    private final List<Element> elements = new ArrayList<>();

    private static String box(double x, double y, double width, double height) {
        return String.format(Locale.ROOT, "POLYGON ((%1$f %2$f, %3$f %2$f, %3$f %4$f, %1$f %4$f, %1$f %2$f))", x, y, x + width, y + height);
    }

    private Element.Builder draw(String id, String layer, int rgb, String wkt) {
        return Element.builder(id).layer(layer).fill(Paint.colour(rgb)).order(elements.size()).idPath(List.of(id)).fillArea(CheckTester.wkt(wkt));
    }

    private void add(Element.Builder element) {
        elements.add(element.build());
    }

    private List<Part> parts(String... sheet) throws SheetException {
        JobSheet job = sheet.length == 0 ? JobSheet.NONE : JobSheet.of(SheetNode.parse("job", String.join("\n", sheet)), Path.of("."));
        return new PartMaker(job, () -> { }).make(new Proof("t.svg", "", 1000, 1000, 1, 0.02, elements, List.of()));
    }

    @Test
    void shapes_of_one_role_layer_and_paint_unite_and_fall_into_connected_pieces() throws SheetException {
        add(draw("a", "L", 1, box(0, 0, 10, 10)));
        add(draw("b", "L", 1, box(5, 0, 10, 10)));
        add(draw("c", "L", 1, box(40, 0, 10, 10)));
        List<Part> parts = parts();
        assertEquals(2, parts.size());
        assertEquals(150, parts.get(0).shape().getArea(), EXACT);
        assertEquals(List.of("a", "b"), parts.get(0).elements());
        assertEquals(List.of("c"), parts.get(1).elements());
        assertFalse(parts.get(0).isAssigned());
        assertEquals(Role.FACE, parts.get(0).role());
    }

    @Test
    void another_colour_or_layer_stays_a_part_of_its_own() throws SheetException {
        add(draw("a", "L", 1, box(0, 0, 10, 10)));
        add(draw("b", "L", 2, box(5, 0, 10, 10)));
        add(draw("c", "M", 1, box(5, 0, 10, 10)));
        assertEquals(3, parts().size());
    }

    @Test
    void two_shapes_that_touch_in_a_corner_are_two_parts() throws SheetException {
        add(draw("a", "L", 1, box(0, 0, 10, 10)));
        add(draw("b", "L", 1, box(10, 10, 10, 10)));
        List<Part> parts = parts();
        assertEquals(2, parts.size());
        assertEquals(List.of("a"), parts.get(0).elements());
        assertEquals(List.of("b"), parts.get(1).elements());
    }

    @Test
    void a_stroke_of_the_same_colour_joins_its_fill_and_one_of_another_does_not() throws SheetException {
        add(draw("a", "L", 1, box(0, 0, 10, 10)).stroke(Paint.colour(1), 2).strokeArea(CheckTester.wkt(box(-1, -1, 12, 12)).difference(CheckTester.wkt(box(1, 1, 8, 8)))));
        List<Part> same = parts();
        assertEquals(1, same.size());
        assertEquals(144, same.get(0).shape().getArea(), EXACT);
        assertEquals(Set.of(Part.Source.SHAPE, Part.Source.STROKE), same.get(0).sources());
        elements.set(0, draw("a", "L", 3, box(0, 0, 10, 10)).order(0).stroke(Paint.colour(1), 2).strokeArea(CheckTester.wkt(box(-1, -1, 12, 12))).build());
        assertEquals(2, parts().size());
    }

    @Test
    void what_is_not_shown_and_images_are_no_parts() throws SheetException {
        add(draw("a", "L", 1, box(0, 0, 10, 10)).visibility(Visibility.HIDDEN));
        add(draw("b", "L", 1, box(0, 0, 10, 10)).origin(Element.Origin.IMAGE));
        assertTrue(parts().isEmpty());
    }

    @Test
    void roles_come_from_layer_label_id_fill_and_data_part_and_the_first_rule_wins() throws SheetException {
        add(draw("a", "Faces", 1, box(0, 0, 10, 10)));
        add(draw("b-1", "Other", 2, box(20, 0, 10, 10)));
        add(draw("c", "Other", 0xff0000, box(40, 0, 10, 10)));
        add(draw("d", "Other", 3, box(60, 0, 10, 10)).dataPart("rear"));
        add(draw("e", "Other", 3, box(80, 0, 10, 10)).label("Stud 1"));
        add(draw("f", "Other", 3, box(100, 0, 10, 10)).dataPart("push-through"));
        add(draw("g", "Other", 3, box(120, 0, 10, 10)).idPath(List.of("g", "group-9")));
        List<Part> parts = parts("roles:", "  - {layer: faces, role: face}", "  - {id: b-*, role: panel}", "  - {fill: \"#F00\", role: vinyl}", "  - {data-part: rear, role: back}",
                "  - {label: stud*, role: hole}", "  - {id: group-9, role: keep-out}", "  - {layer: faces, role: unused}");
        assertEquals(List.of(Role.FACE, Role.PANEL, Role.VINYL, Role.BACK, Role.HOLE, Role.PUSH_THROUGH, Role.KEEP_OUT), parts.stream().map(Part::role).toList());
        assertTrue(parts.stream().allMatch(Part::isAssigned));
    }

    @Test
    void openings_are_taken_out_of_the_panel_and_may_split_it() throws SheetException {
        add(draw("panel", "P", 1, box(0, 0, 100, 50)));
        add(draw("slot", "O", 2, box(10, 10, 20, 20)));
        String[] sheet = {"roles: [{layer: P, role: panel}, {layer: O, role: opening}]"};
        List<Part> parts = parts(sheet);
        assertEquals(List.of(Role.PANEL, Role.OPENING), parts.stream().map(Part::role).toList());
        assertEquals(5000 - 400, parts.get(0).shape().getArea(), EXACT);
        assertEquals(1, parts.get(0).shape().getNumInteriorRing());
        add(draw("cut", "O", 2, box(50, -1, 10, 60)));
        assertEquals(List.of(Role.PANEL, Role.PANEL, Role.OPENING, Role.OPENING), parts(sheet).stream().map(Part::role).toList());
    }

    @Test
    void a_hole_is_drilled_into_the_uppermost_part_below_it_alone() throws SheetException {
        add(draw("back", "B", 1, box(0, 0, 100, 50)));
        add(draw("face", "F", 2, box(0, 0, 100, 50)));
        add(draw("stud", "H", 3, box(10, 10, 5, 5)));
        List<Part> parts = parts("roles: [{layer: B, role: back}, {layer: F, role: face}, {layer: H, role: hole}]");
        assertEquals(5000, parts.get(0).material().getArea(), EXACT);
        assertEquals(5000, parts.get(1).shape().getArea(), EXACT);
        assertEquals(4975, parts.get(1).material().getArea(), EXACT);
        assertEquals(25, parts.get(1).drilled().getArea(), EXACT);
    }

    @Test
    void a_knock_out_colour_takes_out_what_lies_below_in_its_layer_and_is_no_part() throws SheetException {
        add(draw("o", "L", 1, box(0, 0, 20, 20)));
        add(draw("elsewhere", "M", 1, box(0, 0, 20, 20)));
        add(draw("counter", "L", 0xffffff, box(5, 5, 10, 10)));
        add(draw("above", "L", 2, box(6, 6, 2, 2)));
        List<Part> parts = parts("knock-out: [\"#ffffff\"]");
        assertEquals(List.of(300.0, 400.0, 4.0), parts.stream().map(part -> part.shape().getArea()).toList());
    }

    @Test
    void what_is_painted_above_a_knock_out_stays() throws SheetException {
        add(draw("outer", "L", 1, box(0, 0, 20, 20)));
        add(draw("ring", "L", 0xffffff, box(5, 5, 10, 10)));
        add(draw("centre", "L", 1, box(8, 8, 4, 4)));
        add(draw("bridge", "L", 1, box(15, 9, 10, 2)));
        List<Part> parts = parts("knock-out: [\"#ffffff\"]");
        assertEquals(List.of(400.0 - 100 + 5 * 2, 16.0), parts.stream().map(part -> part.shape().getArea()).toList());
        assertEquals(List.of(List.of("outer", "bridge"), List.of("centre")), parts.stream().map(Part::elements).toList());
    }

    @Test
    void a_knock_out_may_split_a_part_and_leaves_alone_what_it_covers_wholly() throws SheetException {
        add(draw("bar", "L", 1, box(0, 0, 30, 4)));
        add(draw("gone", "L", 1, box(50, 0, 4, 4)));
        add(draw("gap", "L", 0xffffff, box(10, -1, 5, 6)));
        add(draw("lid", "L", 0xffffff, box(49, -1, 6, 6)));
        List<Part> parts = parts("knock-out: [\"#ffffff\"]");
        assertEquals(List.of(40.0, 60.0), parts.stream().map(part -> part.shape().getArea()).toList());
        assertEquals(List.of(List.of("bar"), List.of("bar")), parts.stream().map(Part::elements).toList());
    }

    @Test
    void materials_follow_the_first_rule_that_fits() throws SheetException {
        add(draw("a", "L", 1, box(0, 0, 10, 10)));
        add(draw("b", "M", 1, box(20, 0, 10, 10)));
        List<Part> parts = parts("materials:", "  - {layer: M, material: aluminium composite, thickness: 3 mm}", "  - {role: face, material: acrylic}");
        assertEquals("acrylic", parts.get(0).sheetMaterial().orElseThrow());
        assertTrue(parts.get(0).thicknessMm().isEmpty());
        assertEquals("aluminium composite", parts.get(1).sheetMaterial().orElseThrow());
        assertEquals(3, parts.get(1).thicknessMm().orElseThrow());
    }

    /** 14,000 holes: what a plain predicate of the geometry library needs for each of the bars takes minutes in all. */
    @Test
    void a_lattice_is_united_in_seconds() throws SheetException {
        int bars = 120;
        for (int i = 0; i < bars; i++) {
            add(draw("v" + i, "L", 1, box(i * 8, 0, 1, 8 * bars)));
            add(draw("h" + i, "L", 1, box(0, i * 8, 8 * bars, 1)));
        }
        List<Part> parts = assertTimeout(Duration.ofSeconds(20), () -> parts());
        assertEquals(1, parts.size());
        assertEquals(2 * bars, parts.get(0).elements().size());
        assertEquals(2.0 * bars * 8 * bars - bars * bars, parts.get(0).shape().getArea(), 1e-6);
    }

    @Test
    void ids_are_the_same_from_run_to_run() throws SheetException {
        for (int i = 0; i < 50; i++) {
            add(draw("e" + i, "L" + i % 3, i % 2, box(i * 7 % 100, i * 13 % 90, 12, 9)));
        }
        List<String> first = parts().stream().map(part -> part.id() + part.shape()).toList();
        assertEquals(first, parts().stream().map(part -> part.id() + part.shape()).toList());
        assertTrue(first.size() > 3);
    }
}
