// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.sheet;

import java.util.List;
import kerfglow.api.Quantity;
import kerfglow.api.TableInfo;
import kerfglow.api.TableInfo.Column;

/** The numbers that the check of sheets measures beyond its findings. */
final class SheetTables {
    static final TableInfo PARTS = new TableInfo("parts", "Parts on sheets", List.of(
            Column.text("part", "Part"),
            Column.text("role", "Role"),
            Column.number("length", "Long side of the smallest rectangle around it", Quantity.LENGTH),
            Column.number("width", "Short side of it", Quantity.LENGTH),
            Column.text("sheet", "Smallest sheet that holds it"),
            Column.number("angle", "Turned by", Quantity.ANGLE),
            Column.number("pieces", "Pieces", Quantity.COUNT)));
    static final TableInfo SHEETS = new TableInfo("sheets", "Sheets that the parts take", List.of(
            Column.text("material", "Material"),
            Column.number("thickness", "Thickness", Quantity.LENGTH),
            Column.text("sheet", "Sheet"),
            Column.number("pieces", "Parts and pieces", Quantity.COUNT),
            Column.number("sheets", "Sheets, by packing rectangles", Quantity.COUNT),
            Column.number("at-least", "Sheets at least, by area", Quantity.COUNT),
            Column.number("area", "Area of the parts", Quantity.AREA)));
    static final TableInfo SEAMS = new TableInfo("seams", "Seams of parts that fit no sheet", List.of(
            Column.text("part", "Part"),
            Column.number("length", "Length through material", Quantity.LENGTH),
            Column.number("direction", "Direction, 0 for upright", Quantity.ANGLE),
            Column.text("near", "Crosses or comes close to"),
            Column.geometry("line", "Place")));
    static final List<TableInfo> ALL = List.of(PARTS, SHEETS, SEAMS);

    private SheetTables() {
    }
}
