// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.sheet;

import java.util.List;
import kerfglow.api.Setting;
import kerfglow.api.StockKind;
import kerfglow.api.UnitSystem;
import kerfglow.api.Units;

/** What the check of sheets can be told. */
final class SheetSettings {
    static final String NO_GRAIN = "none";
    static final String ALONG = "along";
    static final String HORIZONTAL = "horizontal";
    private static final String PRACTICE = "common practice, no source";

    static final Setting<Double> MARGIN = Setting.lengthMm("sheet.margin", "margin that stays uncut on each side of a sheet", 10.0, 0, 500,
            "edges are chipped, and clamps and stops stand there; 0 where parts may use the edge", PRACTICE);
    static final Setting<Double> SPACING = Setting.lengthMm("sheet.spacing", "distance between parts on the sheet", 10.0, 0, 500,
            "a 1/4 in bit and a wall that stands beside it", PRACTICE);
    static final Setting<String> GRAIN = Setting.choice("sheet.grain", "how the grain runs on the sign, on sheets that have one", HORIZONTAL,
            List.of(HORIZONTAL, "vertical", "any"), "brushed metal is mostly seen brushed sideways; any lets parts turn freely", PRACTICE);
    static final Setting<Double> CUT_CLEARANCE = Setting.lengthMm("sheet.cut-clearance",
            "how far a seam keeps from corners, counters and necks", 20.0, 0, 500, "room for a backing strip", PRACTICE);
    static final Setting<Double> NECK_WIDTH = Setting.lengthMm("sheet.neck-width", "a stroke narrower than this is a neck that no seam goes through",
            30.0, 0.1, 500, "a seam needs width to hold", PRACTICE);
    static final List<Setting<?>> ALL = List.of(MARGIN, SPACING, GRAIN, CUT_CLEARANCE, NECK_WIDTH);

    static final Setting<Double> WIDTH = Setting.lengthMm("width", "width of the sheet", null, 1, 20_000, "depends on the sheet", "the shop sheet");
    static final Setting<Double> HEIGHT = Setting.lengthMm("height", "height of the sheet", null, 1, 20_000, "depends on the sheet", "the shop sheet");
    static final Setting<String> MATERIAL = Setting.text("material", "its material", "", "empty is any", "the shop sheet");
    static final Setting<Double> THICKNESS = Setting.lengthMm("thickness", "its thickness, 0 for any", 0.0, 0, 300, "0 where the list does not say",
            "the shop sheet");
    static final Setting<String> SHEET_GRAIN = Setting.choice("grain", "whether it has a grain, along its longer side or across it", NO_GRAIN,
            List.of(NO_GRAIN, ALONG, "across"), "most plastics have none", "the shop sheet");
    static final StockKind SHEETS = new StockKind("sheets", "sheets", List.of(WIDTH, HEIGHT, MATERIAL, THICKNESS, SHEET_GRAIN));

    private SheetSettings() {
    }

    /** Sizes that are common where the shop sheet lists none: common practice, no source. */
    static List<StockSheet> usual(UnitSystem units) {
        return units == UnitSystem.INCH ? List.of(inches(48, 96), inches(48, 120), inches(60, 120)) : List.of(mm(1220, 2440), mm(1500, 3050), mm(2050, 3050));
    }

    private static StockSheet inches(int width, int height) {
        return new StockSheet(width + " by " + height + " in", width * Units.MM_PER_INCH, height * Units.MM_PER_INCH, "", 0, NO_GRAIN);
    }

    private static StockSheet mm(int width, int height) {
        return new StockSheet(width + " by " + height + " mm", width, height, "", 0, NO_GRAIN);
    }
}
