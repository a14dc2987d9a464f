// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.vinyl;

import java.util.List;
import kerfglow.api.Quantity;
import kerfglow.api.Setting;
import kerfglow.api.StockKind;
import kerfglow.api.UnitSystem;
import kerfglow.api.Units;

/** What the check of film can be told. */
final class VinylSettings {
    private static final String PRACTICE = "common practice, no source";
    private static final String SHOPS = "\"Vinyl Cutting\" and \"Cut Vinyl Lettering\", two shops' pages";
    private static final String SHEET = "the shop sheet";
    /** 0.018 in. */
    private static final double UNWEEDABLE_MM = 0.018 * Units.MM_PER_INCH;
    private static final double ROLL_MM = 50_000;

    static final Setting<Double> LEAST_PIECE = Setting.lengthMm("vinyl.least-piece", "side of the least square of film or waste that is weeded", 2.0, 0, 100,
            "smaller ones lift or are lost", SHOPS);
    static final Setting<Double> LEAST_STROKE = Setting.lengthMm("vinyl.least-stroke", "least width of a stroke of film, 0 for any", 2.0, 0, 100,
            "thinner ones stretch and lift", SHOPS);
    static final Setting<Double> LEAST_WASTE = Setting.lengthMm("vinyl.least-waste", "least width of waste between cuts, 0 for any", UNWEEDABLE_MM, 0, 100,
            "0.018 in: film as thin as that could not be weeded, and waste is film",
            "a report of 0.018 in strokes that could not be weeded by normal means, a secondary page");
    static final Setting<Double> TIP_LENGTH = Setting.lengthMm("vinyl.tip-length", "how long a tip may be thin, 0 for three times the least width", 0.0, 0, 1000,
            "tips sharper than about 19 degrees run out longer", PRACTICE);
    static final Setting<Double> FACING_ANGLE = Setting.number("vinyl.facing-angle", "how far edges may lean and still make a stroke",
            Quantity.ANGLE, 30.0, 1, 89, "edges that lean more form a corner",
            "Assumed: between the sharpest serif tips (about 20) and the sharpest common corners of capitals (about 35)");
    static final Setting<Double> MEETING_ANGLE = Setting.number("vinyl.meeting-angle", "how far edges of two colours may lean and still run along each other",
            Quantity.ANGLE, 15.0, 1, 89, "edges that lean more cross: film that lands a little off moves the crossing, and opens no gap",
            "Assumed: below the sharpest serif tips (about 20), whose edges a line crosses");
    static final Setting<Double> LEAST_OVERLAP = Setting.lengthMm("vinyl.least-overlap", "least overlap of colours that meet, 0 for colours that may be laid edge to edge",
            1.5, 0, 50, "1/16 in is usual, 1/32 to 1/8 in the range", PRACTICE);
    static final Setting<Double> MEANT_GAP = Setting.lengthMm("vinyl.meant-gap", "colours with a gap up to this are meant to meet", 1.0, 0, 50,
            "nobody draws a gap on purpose that shows as a hairline", "Assumed: below what film can be laid to by hand");
    static final Setting<Double> REGISTRATION = Setting.lengthMm("vinyl.registration", "how far a layer may land off when it is laid, 0 to leave repeated edges out",
            1.0, 0, 50, "large layers laid wet by hand", PRACTICE);
    static final Setting<Double> LEAST_EDGE = Setting.lengthMm("vinyl.least-edge", "shorter stretches along which colours meet do not count", 3.0, 0.1, 1000,
            "where edges cross they run side by side for a moment", "Assumed: twice the usual overlap");
    static final Setting<Double> FEED_MARGIN = Setting.lengthMm("vinyl.feed-margin", "margin on each side of a roll that is not cut", 10.0, 0, 200,
            "pinch rollers run there", PRACTICE);
    static final Setting<Double> SPACING = Setting.lengthMm("vinyl.spacing", "distance between pieces on the roll", 5.0, 0, 200, "a border to weed from", PRACTICE);
    static final Setting<Double> LEADER = Setting.lengthMm("vinyl.leader", "film lost at both ends of a cut, for each colour", 150.0, 0, 5000,
            "the rollers hold it there", PRACTICE);
    static final Setting<Double> SEAM_OVERLAP = Setting.lengthMm("vinyl.seam-overlap", "overlap of panels of one colour", 10.0, 0, 200,
            "10 to 20 mm for tiled panels", "a print shop's page; 1/4 to 1 in is common practice");
    static final Setting<Double> DETAIL_WIDTH = Setting.lengthMm("vinyl.detail-width", "a stroke narrower than this is detail that no seam goes through", 20.0, 0.1, 500,
            "a seam needs width to hold", PRACTICE);
    static final Setting<Double> DETAIL_CLEARANCE = Setting.lengthMm("vinyl.detail-clearance", "how far a seam keeps from detail", 10.0, 0, 500,
            "room for the overlap", PRACTICE);
    static final Setting<Double> SECONDS_PER_PIECE = Setting.number("vinyl.seconds-per-piece", "time to weed one piece of waste or film", Quantity.TIME, 2.0, 0, 600,
            "pick, lift and look", "Assumed: to compare jobs with; put your own in");
    static final Setting<Double> SECONDS_PER_METRE = Setting.number("vinyl.seconds-per-metre", "time to weed along one metre of cut", Quantity.TIME, 15.0, 0, 600,
            "peeling the waste off its edges", "Assumed: to compare jobs with; put your own in");
    static final List<Setting<?>> ALL = List.of(LEAST_PIECE, LEAST_STROKE, LEAST_WASTE, TIP_LENGTH, FACING_ANGLE, MEETING_ANGLE, LEAST_OVERLAP, MEANT_GAP, REGISTRATION,
            LEAST_EDGE, FEED_MARGIN, SPACING, LEADER, SEAM_OVERLAP, DETAIL_WIDTH, DETAIL_CLEARANCE, SECONDS_PER_PIECE, SECONDS_PER_METRE);

    static final Setting<Double> WIDTH = Setting.lengthMm("width", "width of the roll", null, 10, 10_000, "depends on the roll", SHEET);
    static final Setting<Double> LENGTH = Setting.lengthMm("length", "length of the roll", ROLL_MM, 100, 1e6, "50 m, a full roll", PRACTICE);
    static final Setting<String> COLOUR = Setting.text("colour", "its colour as drawn, #rrggbb", "", "empty is any", SHEET);
    static final StockKind ROLLS = new StockKind("rolls", "rolls of film", List.of(WIDTH, LENGTH, COLOUR));

    private VinylSettings() {
    }

    /** Widths that are common where the shop sheet lists none: 24 and 48 in from an overview of vinyl cutting; 610 and 1220 mm are common practice, no source. */
    static List<Roll> usual(UnitSystem units) {
        return units == UnitSystem.INCH
                ? List.of(new Roll("24 in", 24 * Units.MM_PER_INCH, ROLL_MM, ""), new Roll("48 in", 48 * Units.MM_PER_INCH, ROLL_MM, ""))
                : List.of(new Roll("610 mm", 610, ROLL_MM, ""), new Roll("1220 mm", 1220, ROLL_MM, ""));
    }
}
