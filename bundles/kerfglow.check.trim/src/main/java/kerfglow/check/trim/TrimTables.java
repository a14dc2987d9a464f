// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.trim;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import kerfglow.api.Quantity;
import kerfglow.api.Table;
import kerfglow.api.TableInfo;
import kerfglow.api.TableInfo.Column;
import kerfglow.geometry.Stretch;

/** The numbers that the trim check measures beyond its findings. */
final class TrimTables {
    static final TableInfo FACES = new TableInfo("faces", "Edge moulding of faces", List.of(
            Column.text("face", "Face"),
            Column.text("moulding", "Moulding"),
            Column.number("lip", "Lip", Quantity.LENGTH),
            Column.number("length", "Length of moulding", Quantity.LENGTH),
            Column.number("edges", "Closed edges", Quantity.COUNT),
            Column.number("joints", "Joints", Quantity.COUNT),
            Column.number("area", "Area", Quantity.AREA),
            Column.number("lit-area", "Area that stays lit", Quantity.AREA),
            Column.number("least-lit", "Least width that stays lit, where it is below the least wanted", Quantity.LENGTH),
            Column.number("least-radius", "Least radius, where it is below what the moulding follows", Quantity.LENGTH)));
    static final TableInfo MOULDINGS = new TableInfo("mouldings", "Edge moulding in all", List.of(
            Column.text("moulding", "Moulding"),
            Column.number("length", "Length", Quantity.LENGTH),
            Column.number("edges", "Closed edges", Quantity.COUNT),
            Column.number("joints", "Joints", Quantity.COUNT),
            Column.number("roll", "Length of a roll", Quantity.LENGTH),
            Column.number("rolls", "Rolls", Quantity.COUNT)));
    static final List<TableInfo> ALL = List.of(FACES, MOULDINGS);

    private TrimTables() {
    }

    static List<Table> of(List<TrimmedFace> faces, List<MouldingNeed> needs) {
        List<List<Object>> rows = new ArrayList<>();
        for (TrimmedFace face : faces) {
            OptionalDouble lit = face.dark().stream().filter(stretch -> stretch.kind() != Stretch.Kind.TAPER).mapToDouble(face::litMm).min();
            OptionalDouble radius = face.bends().stream().mapToDouble(Curve::radiusMm).min();
            rows.add(Arrays.<Object>asList(face.task().face().id(), face.task().moulding().name(), face.task().moulding().lipMm(), face.lengthMm(),
                    (double) face.lengthsMm().size(), (double) face.joints(), face.task().face().shape().getArea(), face.lit().getArea(),
                    lit.isPresent() ? lit.getAsDouble() : null, radius.isPresent() ? radius.getAsDouble() : null));
        }
        List<List<Object>> totals = new ArrayList<>();
        for (MouldingNeed need : needs) {
            totals.add(List.of(need.moulding().name(), need.lengthMm(), (double) need.edges(), (double) need.joints(), need.moulding().rollMm(),
                    (double) need.rolls()));
        }
        return List.of(new Table(FACES, rows), new Table(MOULDINGS, totals));
    }
}
