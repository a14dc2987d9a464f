// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.section;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import kerfglow.api.Quantity;
import kerfglow.api.Setting;
import kerfglow.api.SharedSettings;
import kerfglow.api.UnitSystem;
import kerfglow.api.Units;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Proof;
import kerfglow.api.proof.Role;
import kerfglow.host.JobSheet;
import kerfglow.host.Result;
import kerfglow.host.Scope;
import kerfglow.host.ShopSheet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;

class SectionTest {
    private static final List<Setting<?>> SETTINGS = List.of(SharedSettings.RETURN_DEPTH, SharedSettings.BACK_ALLOWANCE);

    private static Result result(List<Part> parts, Result.SettingUsed... settings) {
        Proof proof = new Proof("x.svg", "", 100, 100, 1, 0.02, List.of(), List.of());
        return new Result(proof, JobSheet.NONE, ShopSheet.NONE, UnitSystem.METRIC, parts, List.of(), List.of(), List.of(settings), List.of());
    }

    private static Part part(String id, Role role, double thicknessMm) {
        return Part.builder(id, role, (Polygon) new GeometryFactory().toGeometry(new Envelope(0, 10, 0, 10))).sheetMaterial("acrylic").thicknessMm(thicknessMm).build();
    }

    private static Result.SettingUsed mm(String key, double value) {
        return new Result.SettingUsed(key, Scope.ALL.toString(), value, "mm", "check");
    }

    private static final Result CAN = result(List.of(part("f", Role.FACE, 4.5), part("b", Role.BACK, 3)), mm("returns.depth", 60), mm("returns.thickness", 1),
            mm("back.allowance", 5), mm("trim.lip", 6));

    @Test
    void the_section_is_to_scale_from_the_values_in_force() {
        Section section = Section.of(CAN);
        Envelope face = area(section, Section.Kind.FACE);
        Envelope back = area(section, Section.Kind.BACK);
        assertEquals(4.5, face.getWidth(), 1e-9);
        assertEquals(60, face.getMinX(), 1e-9, "the face stands before returns of 60 mm");
        assertEquals(3, back.getWidth(), 1e-9);
        assertEquals(5, face.getHeight() - back.getHeight(), 1e-9, "the back is smaller by the allowance, both sides together");
        assertEquals(back.getMinY(), area(section, Section.Kind.CAN).getMaxY(), 1e-9, "the strip stands around the back");
    }

    private static Envelope area(Section section, Section.Kind kind) {
        return section.pieces().stream().filter(piece -> piece.kind() == kind).findFirst().orElseThrow().areas().get(0);
    }

    @Test
    void each_dimension_is_as_long_as_it_says() {
        List<Section.Measure> measures = new ArrayList<>(Section.of(CAN).measures());
        List.of(Builds.values()).forEach(build -> measures.addAll(Section.of(build.result(UnitSystem.METRIC)).measures()));
        for (Section.Measure measure : measures) {
            double drawn = Math.max(measure.along().getWidth(), measure.along().getHeight());
            double sides = measure.target() instanceof Section.Target.OfSetting setting && setting.key().contains("allowance") ? 2 : 1; // drawn at one side
            assertEquals(measure.valueMm() / sides, drawn, 1e-9, measure.title());
        }
    }

    @Test
    void what_the_job_does_not_have_is_not_drawn() {
        List<Section.Kind> flat = Section.of(result(List.of(part("f", Role.FACE, 6)))).pieces().stream().map(Section.Piece::kind).toList();
        assertEquals(List.of(Section.Kind.WALL, Section.Kind.FACE), flat);
        assertEquals(List.of(Section.Kind.WALL), Section.of(result(List.of())).pieces().stream().map(Section.Piece::kind).toList());
    }

    @Test
    void a_typed_dimension_changes_the_job_sheet_alone() {
        Section.Measure depth = Section.of(CAN).measures().stream().filter(measure -> measure.title().contains("depth")).findFirst().orElseThrow();
        SectionEdit edit = SectionEdit.of(depth, "3 in", SETTINGS);
        assertEquals(Optional.empty(), edit.problem());
        JobSheet changed = edit.change().apply(JobSheet.NONE);
        assertEquals("returns.depth", changed.settings().get(0).key());
        assertEquals("3 in", changed.settings().get(0).text());

        Section.Measure face = Section.of(CAN).measures().stream().filter(measure -> measure.title().contains("face") && measure.valueMm() == 4.5).findFirst().orElseThrow();
        JobSheet thicker = SectionEdit.of(face, "6 mm", SETTINGS).change().apply(JobSheet.NONE);
        assertEquals(6, thicker.materials().get(0).thicknessMm().orElseThrow());
        assertEquals(Optional.of(Role.FACE), thicker.materials().get(0).scope().role());
    }

    @Test
    void what_cannot_be_read_or_made_is_told_and_changes_nothing() {
        Section.Measure depth = Section.of(CAN).measures().stream().filter(measure -> measure.title().contains("depth")).findFirst().orElseThrow();
        for (String wrong : List.of("deep", "60", "-3 mm", "9 km", "")) {
            SectionEdit edit = SectionEdit.of(depth, wrong, SETTINGS);
            assertTrue(edit.problem().isPresent(), wrong);
            assertEquals(JobSheet.NONE, edit.change().apply(JobSheet.NONE));
        }
    }

    /** Text is taken to be as wide as on a usual screen: 8 pixels a letter. */
    private static SectionLayout layout(Section section, UnitSystem units, int width, int height) {
        return SectionLayout.of(section, section.measures().stream().map(measure -> Units.format(measure.valueMm(), Quantity.LENGTH, units)).toList(),
                new SectionLayout.Room(width, height, 18, 3.78, text -> 8 * text.length()));
    }

    @ParameterizedTest
    @EnumSource(Builds.class)
    void no_text_lies_on_another_nor_beyond_the_canvas_in_any_build_size_or_unit(Builds build) {
        for (UnitSystem units : UnitSystem.values()) {
            Section section = Section.of(build.result(units));
            for (int[] size : new int[][] {{260, 420}, {288, 480}, {420, 700}, {700, 300}, {1200, 800}}) {
                SectionLayout layout = layout(section, units, size[0], size[1]);
                List<SectionLayout.Box> texts = new ArrayList<>(layout.rows());
                layout.lines().forEach(line -> texts.add(line.room()));
                for (int i = 0; i < texts.size(); i++) {
                    SectionLayout.Box text = texts.get(i);
                    assertTrue(text.x() >= 0 && text.y() >= 0 && text.x() + text.width() <= size[0] && text.y() + text.height() <= size[1], build + " " + size[0] + ": " + text);
                    for (int j = 0; j < i; j++) {
                        assertFalse(text.meets(texts.get(j)), build + " at " + size[0] + " by " + size[1] + ": " + text + " on " + texts.get(j));
                    }
                }
            }
        }
    }

    @Test
    void a_dimension_line_is_as_long_as_its_dimension_at_the_scale_that_is_stated() {
        Section section = Section.of(Builds.FACE_LIT.result(UnitSystem.METRIC));
        SectionLayout layout = layout(section, UnitSystem.METRIC, 860, 480);
        for (int i = 0; i < section.measures().size(); i++) {
            SectionLayout.Line line = layout.lines().get(i);
            Envelope along = section.measures().get(i).along();
            double px = Math.hypot(line.x2() - line.x1(), line.y2() - line.y1());
            assertEquals(Math.max(along.getWidth(), along.getHeight()) * layout.scale().factor() * 3.78, px, 1.01, section.measures().get(i).title());
            assertEquals(Optional.of(i), layout.measureAt(line.room().x() + 1, line.room().y() + 1));
            assertEquals(Optional.of(i), layout.measureAt(layout.rows().get(i).x() + 5, layout.rows().get(i).y() + 5));
        }
    }

    private static List<Section.Kind> kinds(Builds build) {
        return Section.of(build.result(UnitSystem.METRIC)).pieces().stream().map(Section.Piece::kind).toList();
    }

    @Test
    void each_build_has_its_own_pieces() {
        assertEquals(List.of(Section.Kind.WALL, Section.Kind.BACK, Section.Kind.CAN, Section.Kind.MODULE, Section.Kind.MOULDING, Section.Kind.FACE), kinds(Builds.FACE_LIT));
        assertEquals(List.of(Section.Kind.WALL, Section.Kind.STAND_OFF, Section.Kind.BACK, Section.Kind.CAN, Section.Kind.MODULE, Section.Kind.FACE), kinds(Builds.HALO_LIT));
        assertEquals(List.of(Section.Kind.WALL, Section.Kind.BACK, Section.Kind.CAN, Section.Kind.MODULE, Section.Kind.FACE, Section.Kind.FILM), kinds(Builds.CABINET));
        assertEquals(List.of(Section.Kind.WALL, Section.Kind.PANEL), kinds(Builds.PANEL_OPEN));
        assertEquals(List.of(Section.Kind.WALL, Section.Kind.BACK, Section.Kind.CAN, Section.Kind.PANEL, Section.Kind.MODULE, Section.Kind.PUSH_THROUGH), kinds(Builds.PANEL_PUSH_THROUGH));
        assertEquals(List.of(Section.Kind.WALL, Section.Kind.FACE, Section.Kind.STUD), kinds(Builds.FLAT_CUT));
        assertEquals(List.of(Section.Kind.WALL, Section.Kind.PANEL, Section.Kind.FILM), kinds(Builds.VINYL));
    }

    @Test
    void a_halo_lit_letter_stands_off_the_wall_and_shines_on_it() {
        Section section = Section.of(Builds.HALO_LIT.result(UnitSystem.METRIC));
        assertEquals(38.1, area(section, Section.Kind.BACK).getMinX(), 1e-9);
        assertEquals(38.1, area(section, Section.Kind.STAND_OFF).getWidth(), 1e-9);
        Section.Beam beam = section.beams().get(0);
        assertEquals(38.1 - 6, beam.from().getMinX(), 1e-9, "from the module that lies on the back");
        assertEquals(0, beam.to().getMinX(), 1e-9, "to the wall");
    }

    @Test
    void the_module_is_as_large_as_the_shop_sheet_says() {
        Envelope module = area(Section.of(Builds.FACE_LIT.result(UnitSystem.METRIC)), Section.Kind.MODULE);
        assertEquals(6, module.getWidth(), 1e-9);
        assertEquals(14, module.getHeight(), 1e-9);
    }

    @Test
    void the_push_through_has_its_clearance_on_both_sides() {
        Section section = Section.of(Builds.PANEL_PUSH_THROUGH.result(UnitSystem.METRIC));
        List<Envelope> panel = section.pieces().stream().filter(piece -> piece.kind() == Section.Kind.PANEL).findFirst().orElseThrow().areas();
        Envelope through = area(section, Section.Kind.PUSH_THROUGH);
        assertEquals(1.5875, panel.get(1).getMinY() - panel.get(0).getMaxY() - through.getHeight(), 1e-9, "in total");
        assertEquals(panel.get(0).getMaxY() + 1.5875 / 2, through.getMinY(), 1e-9);
    }
}
