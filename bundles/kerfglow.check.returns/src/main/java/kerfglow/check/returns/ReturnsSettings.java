// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.returns;

import java.util.List;
import java.util.Map;
import kerfglow.api.Quantity;
import kerfglow.api.Setting;
import kerfglow.api.SharedSettings;
import kerfglow.api.StockKind;
import kerfglow.api.Units;

/** What the check of returns can be told. */
final class ReturnsSettings {
    static final String OUTSIDE = "outside";
    static final String LOW = "low";
    private static final String PRACTICE = "common practice, no source";
    private static final String K_SOURCE = "K-factor table credited to Machinery's Handbook, 26th edition, as copied on a page about bending: "
            + "aluminium 0.38 to 0.41, cold-rolled steel 0.42 to 0.47, stainless steel 0.44 to 0.48";
    private static final double LEAST_K = 0.01;
    /** The neutral line of a bend lies between its inside and the middle of the strip: 0 < K <= 0.5, pages about bend allowance. */
    private static final double MOST_K = 0.5;

    /** Middles of the ranges of {@link #K_SOURCE}. */
    static final Map<String, Double> K_OF_MATERIAL = Map.of("aluminium", 0.395, "steel", 0.445, "stainless steel", 0.46);

    static final Setting<String> MATERIAL = Setting.choice("returns.material", "material of the strip", "aluminium",
            List.of("aluminium", "steel", "stainless steel"), "what most coils are; it decides the K factor", PRACTICE);
    static final Setting<Double> THICKNESS = Setting.lengthMm("returns.thickness", "thickness of the strip", Units.MM_PER_INCH * 0.040,
            0.1, 10, "0.040 in, the usual coil for letters", PRACTICE);
    static final Setting<Double> K_FACTOR = Setting.number("returns.k-factor",
            "where the neutral line of a bend lies, as a share of the thickness from its inside", Quantity.RATIO, null, LEAST_K, MOST_K,
            "when not given: the middle of the published range of the material", K_SOURCE);
    static final Setting<String> LINE = Setting.choice("returns.line", "on which side of the edge of the back the strip stands", OUTSIDE,
            List.of(OUTSIDE, "inside"), "outside: its inner face lies on the edge; inside: its outer face does", PRACTICE);
    static final Setting<Double> FIT_TOLERANCE = Setting.lengthMm("returns.fit-tolerance",
            "how far an arc of the bend table may lie from the outline", 0.05, 0.001, 5, "well below what a bender holds", PRACTICE);
    static final Setting<Double> LEAST_RADIUS = Setting.lengthMm("returns.least-radius", "least inside radius of a curve", 10.0, 0, 1000,
            "depends on the bender and the strip", PRACTICE);
    static final Setting<Double> LEAST_TURN = Setting.number("returns.least-turn", "how far a curve turns before its radius matters",
            Quantity.ANGLE, 10.0, 0, 90, "the strip springs over a curve that turns less", "Assumed: a few degrees are taken up by the spring of the strip");
    static final Setting<Double> CORNER_RADIUS = Setting.lengthMm("returns.corner-radius",
            "a rounding no larger than this is folded as a corner", 1.5, 0, 50,
            "so small a rounding only softens a corner; an inset adds its own to corners that point inwards", "Assumed: about the rounding of pens and traced corners");
    static final Setting<Double> CORNER_ANGLE = Setting.number("returns.corner-angle", "a corner that turns less is rolled over",
            Quantity.ANGLE, 10.0, 1, 90, "needs no notch", "Assumed: as returns.least-turn");
    static final Setting<Double> FOLD_RADIUS = Setting.lengthMm("returns.fold-radius", "inside radius of a fold", 1.0, 0, 50,
            "about one thickness; 0 for a notch cut to the skin", PRACTICE);
    static final Setting<Double> FOLD_K = Setting.number("returns.fold-k-factor", "K factor of a fold", Quantity.RATIO, 0.4, LEAST_K, MOST_K,
            "a fold is as tight as the strip is thick; within the published range of aluminium", K_SOURCE);
    static final Setting<Double> LEAST_FLANGE = Setting.lengthMm("returns.least-flange", "least distance between two folds", null, 0, 500,
            "when not given: four thicknesses and the inside radius of a fold", PRACTICE);
    static final Setting<Double> LEAST_ANGLE = Setting.number("returns.least-angle", "least inside angle of a fold", Quantity.ANGLE, 30.0, 0, 180,
            "sharper corners do not close on a notch", PRACTICE);
    static final Setting<Double> ARM_WIDTH = Setting.lengthMm("returns.arm-width", "width of the arm of the bender", 12.7, 0.1, 500,
            "1/2 in: a finger and its clearance", PRACTICE);
    static final Setting<Double> LEAST_COUNTER = Setting.lengthMm("returns.least-counter", "least disc that a counter must hold", 25.4, 0, 2000,
            "1 in: room for a tool and for the joint", PRACTICE);
    static final Setting<String> JOINT = Setting.choice("returns.joint", "where the joint is hidden best", LOW, List.of(LOW, "high"),
            "most signs hang above the eye with their lower edges near the wall's shadow; on a high roof sign choose high", PRACTICE);
    static final Setting<Double> JOINT_STRAIGHT = Setting.lengthMm("returns.joint-straight", "least straight that a joint is put in", 50.8, 0, 1000,
            "2 in: an inch of overlap or backing on each side", PRACTICE);
    static final List<Setting<?>> ALL = List.of(SharedSettings.RETURN_DEPTH, MATERIAL, THICKNESS, K_FACTOR, LINE, SharedSettings.BACK_ALLOWANCE,
            SharedSettings.BACK_ALLOWANCE_KIND, SharedSettings.BACK_JOINS, SharedSettings.BACK_MITRE_LIMIT, FIT_TOLERANCE, LEAST_RADIUS,
            LEAST_TURN, CORNER_RADIUS, CORNER_ANGLE, FOLD_RADIUS, FOLD_K, LEAST_FLANGE, LEAST_ANGLE, ARM_WIDTH, LEAST_COUNTER, JOINT,
            JOINT_STRAIGHT);

    static final Setting<Double> COIL_WIDTH = Setting.lengthMm("width", "width of the coil", null, 1, 2000, "depends on the coil", "the shop sheet");
    static final Setting<Double> COIL_LENGTH = Setting.lengthMm("length", "length of the coil", null, 100, 1e6, "depends on the coil", "the shop sheet");
    static final Setting<Double> COIL_THICKNESS = Setting.lengthMm("thickness", "its thickness, 0 for any", 0.0, 0, 10, "0 where the list does not say",
            "the shop sheet");
    static final Setting<String> COIL_MATERIAL = Setting.text("material", "its material", "", "empty is any", "the shop sheet");
    static final StockKind COILS = new StockKind("coils", "coils of return strip", List.of(COIL_WIDTH, COIL_LENGTH, COIL_THICKNESS, COIL_MATERIAL));

    private ReturnsSettings() {
    }
}
