// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.trim;

import java.util.List;
import kerfglow.api.Quantity;
import kerfglow.api.Setting;
import kerfglow.api.StockKind;
import kerfglow.api.Units;

/** What the trim check can be told. */
final class TrimSettings {
    static final String ASSIGNED = "assigned";
    static final String EVERY = "all";
    static final String NONE = "none";

    private static final String PRACTICE = "common practice, no source";
    private static final String SHEET = "the shop sheet";
    private static final double QUARTER_INCH_MM = Units.MM_PER_INCH / 4;
    private static final double HALF_INCH_MM = Units.MM_PER_INCH / 2;
    private static final double ROLL_MM = 150 * Units.MM_PER_FOOT;
    private static final double MOST_MM = 200;
    private static final double LONGEST_MM = 1e6;

    static final Setting<String> FACES = Setting.choice("trim.faces", "which faces have edge moulding", ASSIGNED, List.of(ASSIGNED, EVERY, NONE),
            "a shape that counts as a face for want of better may have none; say none for flat cut and halo-lit letters",
            "Assumed: a job that says which shapes are faces wants them checked");
    static final Setting<String> MOULDING = Setting.text("trim.moulding", "name of the stocked edge moulding that is used", "",
            "empty takes the first that the shop sheet lists", "Assumed: shops list what they use most first");
    static final Setting<Double> LIP = Setting.lengthMm("trim.lip", "how much of the face a lip covers, where the shop sheet lists no moulding",
            QUARTER_INCH_MM, 0, MOST_MM, "about 1/4 in on the usual mouldings", PRACTICE);
    static final Setting<Double> LEAST_LIT = Setting.lengthMm("trim.least-lit", "least width of a stroke that must stay lit", QUARTER_INCH_MM, 0.1,
            MOST_MM, "a lit line thinner than the dark lips beside it is lost between them", PRACTICE);
    static final Setting<Double> TIP_LENGTH = Setting.lengthMm("trim.tip-length",
            "how long a tip may stay dark, 0 for three times the width that is wide enough", 0.0, 0, 1000,
            "tips sharper than about 19 degrees run out longer", PRACTICE);
    static final Setting<Double> FACING_ANGLE = Setting.number("trim.facing-angle", "how far walls may lean and still make a stroke",
            Quantity.ANGLE, 30.0, 1, 89, "walls that lean more form a corner, and a corner is no thin stroke",
            "Assumed: between the sharpest serif tips (about 20) and the sharpest common corners of capitals (about 35)");
    static final Setting<Double> OUTSIDE_RADIUS = Setting.lengthMm("trim.outside-radius",
            "least radius round the outside of a bulge, where the shop sheet lists no moulding", HALF_INCH_MM, 0, 1000,
            "bent tighter by hand the usual moulding kinks", PRACTICE);
    static final Setting<Double> INSIDE_RADIUS = Setting.lengthMm("trim.inside-radius",
            "least radius in a hollow or counter, where the shop sheet lists no moulding", HALF_INCH_MM, 0, 1000,
            "bent tighter by hand the usual moulding kinks", PRACTICE);
    static final Setting<Double> CORNER_ANGLE = Setting.number("trim.corner-angle", "turn at one node that makes a corner", Quantity.ANGLE, 30.0, 1,
            180, "there the moulding is notched and folded, not bent", PRACTICE);
    static final Setting<Double> CORNER_RADIUS = Setting.lengthMm("trim.corner-radius", "radius up to which a rounded corner is folded", 1.5, 0, 100,
            "a notched moulding comes out about this round", PRACTICE);
    static final Setting<Double> LEAST_TURN = Setting.number("trim.least-turn", "turn of a curve that is looked at", Quantity.ANGLE, 15.0, 0.1, 180,
            "the moulding springs over less", PRACTICE);
    static final Setting<Double> ROLL_LENGTH = Setting.lengthMm("trim.roll-length", "length of a roll, where the shop sheet lists no moulding",
            ROLL_MM, 100, LONGEST_MM, "150 ft", PRACTICE);
    static final List<Setting<?>> ALL = List.of(FACES, MOULDING, LIP, LEAST_LIT, TIP_LENGTH, FACING_ANGLE, OUTSIDE_RADIUS, INSIDE_RADIUS,
            CORNER_ANGLE, CORNER_RADIUS, LEAST_TURN, ROLL_LENGTH);

    static final Setting<Double> STOCK_LIP = Setting.lengthMm("lip", "how much of the face a lip covers", null, 0, MOST_MM,
            "depends on the moulding", SHEET);
    static final Setting<Double> STOCK_OUTSIDE = Setting.lengthMm("outside-radius", "least radius round the outside of a bulge",
            HALF_INCH_MM, 0, 1000, "bent tighter by hand the usual moulding kinks", PRACTICE);
    static final Setting<Double> STOCK_INSIDE = Setting.lengthMm("inside-radius", "least radius in a hollow or counter", HALF_INCH_MM, 0, 1000,
            "bent tighter by hand the usual moulding kinks", PRACTICE);
    static final Setting<Double> STOCK_ROLL = Setting.lengthMm("roll-length", "length of a roll", ROLL_MM, 100, LONGEST_MM, "150 ft", PRACTICE);
    static final StockKind MOULDINGS = new StockKind("edge-mouldings", "edge mouldings", List.of(STOCK_LIP, STOCK_OUTSIDE, STOCK_INSIDE, STOCK_ROLL));

    private TrimSettings() {
    }
}
