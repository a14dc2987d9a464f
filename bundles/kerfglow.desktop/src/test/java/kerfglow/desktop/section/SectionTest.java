// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.section;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import kerfglow.api.Setting;
import kerfglow.api.SharedSettings;
import kerfglow.api.UnitSystem;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Proof;
import kerfglow.api.proof.Role;
import kerfglow.host.JobSheet;
import kerfglow.host.Result;
import kerfglow.host.Scope;
import kerfglow.host.ShopSheet;
import org.junit.jupiter.api.Test;
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
        for (Section.Measure measure : Section.of(CAN).measures()) {
            double drawn = Math.max(measure.along().getWidth(), measure.along().getHeight());
            double sides = measure.target().equals(new Section.Target.OfSetting("back.allowance")) ? 2 : 1; // drawn at one side
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

    @Test
    void labels_never_lie_on_each_other() {
        SectionLayout layout = SectionLayout.of(Section.of(CAN), 280, 460, 17, 3.78);
        for (int i = 1; i < layout.labels().size(); i++) {
            assertTrue(layout.labels().get(i).y() >= layout.labels().get(i - 1).y() + layout.labels().get(i - 1).height());
        }
        SectionLayout.Label last = layout.labels().get(layout.labels().size() - 1);
        assertTrue(last.y() + last.height() <= 460);
        assertEquals(Optional.of(0), layout.labelAt(layout.labels().get(0).x() + 5, layout.labels().get(0).y() + 5));
    }
}
