// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.router;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import kerfglow.api.Inspection;
import kerfglow.api.Quantity;
import kerfglow.api.Table;
import kerfglow.api.TableInfo;
import kerfglow.api.TableInfo.Column;
import kerfglow.geometry.Stretch;

/** The numbers that the router check measures beyond its findings. */
final class RouterTables {
    static final TableInfo BITS = new TableInfo("bits", "What each bit leaves", List.of(
            Column.text("sheet", "Material and thickness"),
            Column.text("bit", "Bit"),
            Column.number("diameter", "Diameter", Quantity.LENGTH),
            Column.flag("reaches", "Reaches through"),
            Column.flag("cuts-everything", "Cuts everything"),
            Column.number("gaps", "Gaps it does not pass", Quantity.COUNT),
            Column.number("corners", "Inside corners left", Quantity.COUNT),
            Column.number("area-left", "Area left", Quantity.AREA),
            Column.number("deepest", "Deepest corner left", Quantity.LENGTH)));
    static final TableInfo PARTS = new TableInfo("parts", "Parts on the router", List.of(
            Column.text("part", "Part"),
            Column.text("role", "Role"),
            Column.text("sheet", "Material and thickness"),
            Column.number("area", "Area", Quantity.AREA),
            Column.number("perimeter", "Length of cut", Quantity.LENGTH),
            Column.number("least-width", "Least width of a stroke, where it is below the least wanted", Quantity.LENGTH),
            Column.text("used-bit", "Bit that findings are about")));
    static final List<TableInfo> ALL = List.of(BITS, PARTS);

    private RouterTables() {
    }

    static List<Table> of(List<SheetSummary> sheets, List<PartResult> results, Inspection inspection) {
        List<List<Object>> bits = new ArrayList<>();
        for (SheetSummary sheet : sheets) {
            for (SheetSummary.Tally tally : sheet.tallies()) {
                bits.add(List.of(sheet.sheet().words(inspection), tally.bit().name(), tally.bit().diameterMm(), tally.reaches(),
                        tally.isEnough(), (double) tally.gaps(), (double) tally.corners(), tally.areaMm2(), tally.deepestMm()));
            }
        }
        List<List<Object>> parts = new ArrayList<>();
        for (PartResult result : results) {
            OptionalDouble least = result.thin().stream().filter(stretch -> stretch.kind() != Stretch.Kind.TAPER)
                    .mapToDouble(Stretch::widthMm).min();
            parts.add(Arrays.<Object>asList(result.part().id(), result.part().role().word(), result.task().sheet().words(inspection),
                    result.part().shape().getArea(), result.part().shape().getLength(), least.isPresent() ? least.getAsDouble() : null,
                    result.task().used().map(Bit::name).orElse(null)));
        }
        return List.of(new Table(BITS, bits), new Table(PARTS, parts));
    }
}
