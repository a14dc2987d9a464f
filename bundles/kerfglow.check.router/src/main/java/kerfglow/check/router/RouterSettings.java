// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.router;

import java.util.List;
import kerfglow.api.Quantity;
import kerfglow.api.Setting;
import kerfglow.api.SharedSettings;
import kerfglow.api.StockKind;
import kerfglow.api.Units;

/** What the router check can be told. */
final class RouterSettings {
    /** Lengths that differ by less are equal; coordinates are no finer. */
    static final double RESOLUTION_MM = 0.001;

    private static final String PRACTICE = "common practice, no source";

    static final Setting<Double> BIT_DIAMETER = Setting.lengthMm("router.bit-diameter", "diameter of the bit that is used, 0 for choose",
            0.0, 0, 50, "0 takes the smallest stocked bit that reaches through the sheet: what even that cannot cut stops the job",
            "Assumed: a shop changes bits where a job asks for it");
    static final Setting<Double> LEAST_STROKE = Setting.lengthMm("router.least-stroke", "least width of a stroke of material",
            3.0, 0.1, 100, "about the thickness of the usual sheet and the diameter of the usual bit; thinner strokes chatter", PRACTICE);
    static final Setting<Double> TAPER_LENGTH = Setting.lengthMm("router.taper-length",
            "how long a stroke may run below its least width to its end, 0 for one least width", 0.0, 0, 1000,
            "an end as short as the stroke is wide is the corner of a letter or a bump, not a hairline", "Assumed: keeps the tips of serifs out");
    static final Setting<Double> FACING_ANGLE = Setting.number("router.facing-angle", "how far walls may lean and still count as opposite",
            Quantity.ANGLE, 30.0, 1, 89,
            "walls that lean more than this towards each other form a corner, neither a stroke nor a gap",
            "Assumed: between the sharpest serif tips (about 20) and the sharpest common corners of capitals (about 35)");
    static final Setting<Double> LEFT_DEPTH = Setting.lengthMm("router.left-depth", "how deep the bit may leave anything uncut",
            0.25, 0.001, 25, "the eye finds a quarter of a millimetre at arm's length and hardly farther off", PRACTICE);
    static final Setting<Double> CORNER_ALLOWANCE = Setting.lengthMm("router.corner-allowance",
            "how deep an inside corner may stay filled where bits are compared", 1.0, 0, 25,
            "every round bit leaves a radius; with nothing allowed no bit would ever cut everything", PRACTICE);
    static final Setting<Double> LEAST_AREA = Setting.number("router.least-area", "least area of a part that vacuum holds", Quantity.AREA,
            1500.0, 0, 1e7,
            "20 N of side force on 0.05 N/mm² of vacuum with friction 0.3 need about 1300 mm²; a little more to be safe",
            "Assumed: orders of magnitude for small bits in plastics; the shop's own table and pump decide");
    static final List<Setting<?>> ALL = List.of(BIT_DIAMETER, LEAST_STROKE, TAPER_LENGTH, FACING_ANGLE, LEFT_DEPTH, CORNER_ALLOWANCE,
            LEAST_AREA, SharedSettings.HAIRLINE);

    static final Setting<Double> DIAMETER = Setting.lengthMm("diameter", "diameter of the bit", null, 0.1, 100, "depends on the bit",
            "the shop sheet");
    static final Setting<Double> FLUTE = Setting.lengthMm("flute-length", "length that cuts, and so the thickest stock", null, 0.1, 300,
            "depends on the bit", "the shop sheet");
    static final Setting<String> MATERIALS = Setting.text("materials", "what it is used for, materials by name with commas between", "",
            "empty is for everything", "the shop sheet");
    static final StockKind BITS = new StockKind("router-bits", "router bits", List.of(DIAMETER, FLUTE, MATERIALS));

    /** 1/8 in with 1/2 in and 1/4 in with 1 in of flute: "CNC routing overview", a workshop page. */
    static final List<Bit> USUAL_BITS = List.of(
            new Bit("1/8 in bit", Units.MM_PER_INCH / 8, Units.MM_PER_INCH / 2, List.of()),
            new Bit("1/4 in bit", Units.MM_PER_INCH / 4, Units.MM_PER_INCH, List.of()));

    private RouterSettings() {
    }
}
