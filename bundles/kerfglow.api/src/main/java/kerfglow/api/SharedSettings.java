// SPDX-License-Identifier: Apache-2.0
package kerfglow.api;

import java.util.List;

/**
 * Settings that several checks read, so that a shop gives them once: a back that is cut by one allowance and a return that is bent by
 * another do not meet. A check that reads one lists it among its own in {@link CheckInfo#settings()}.
 */
public final class SharedSettings {
    /** {@link #BACK_ALLOWANCE_KIND}: both sides together. */
    public static final String IN_TOTAL = "total";
    /** {@link #BACK_ALLOWANCE_KIND}: one side. */
    public static final String PER_SIDE = "per side";
    /** {@link #BACK_JOINS}: the edges of the back are prolonged until they meet. */
    public static final String MITRE = "mitre";
    /** {@link #BACK_JOINS}: an arc about the corner of the face. */
    public static final String ROUND = "round";
    /** {@link #BACK_JOINS}: a straight cut. */
    public static final String BEVEL = "bevel";

    private static final String PRACTICE = "common practice, no source";

    /** How much smaller a back is than its face. */
    public static final Setting<Double> BACK_ALLOWANCE = Setting.lengthMm("back.allowance", "how much smaller a back is than its face",
            3 * Units.MM_PER_INCH / 16, 0, 200, "3/16 in overall, 3/32 in a side: room for the can's wall and the edge moulding", PRACTICE);

    /** Whether allowances are told for both sides together or for one. */
    public static final Setting<String> BACK_ALLOWANCE_KIND = Setting.choice("back.allowance-kind", "what allowances say: both sides together, or one side",
            IN_TOTAL, List.of(IN_TOTAL, PER_SIDE), "shops say 3/16 overall; mixing the two up doubles or halves the play", PRACTICE);

    /** What becomes of the inward corners of a face in a back that is made from it. */
    public static final Setting<String> BACK_JOINS = Setting.choice("back.joins", "inward corners of made backs", MITRE, List.of(MITRE, ROUND, BEVEL),
            "a back with the corners of its face takes the returns of its face", PRACTICE);

    /** How far a mitre of a made back may reach, in clearances of one side. */
    public static final Setting<Double> BACK_MITRE_LIMIT = Setting.number("back.mitre-limit", "how far a mitre of a made back may reach, in clearances",
            Quantity.RATIO, 4.0, 1, 20, "4 keeps mitres of corners down to 29 degrees", "SVG 1.1, stroke-miterlimit, initial value");

    /** Up to this width a stroke says where to cut and is no strip of material. */
    public static final Setting<Double> HAIRLINE = Setting.lengthMm("drawn.hairline", "widest stroke that is a drawn cut line, not a strip of material", 0.36, 0, 5,
            "cut files are drawn in hairlines up to one point (0.353 mm); no material is cut as thin as that", PRACTICE);

    /** How deep the returns are, and so how far the light modules stand from the face. */
    public static final Setting<Double> RETURN_DEPTH = Setting.lengthMm("returns.depth", "depth of the returns", null, 1, 2000,
            "without a depth the sign has no returns", "the job sheet");

    /** From where the sign is looked at. */
    public static final Setting<Double> READING_DISTANCE = Setting.lengthMm("legibility.distance", "from where it must be read, 0 for not given", 0.0, 0, 5e6,
            "only the job knows; without it heights are measured and not compared", "the job sheet");

    /** The colour of the wall. */
    public static final Setting<String> WALL_COLOUR = Setting.text("legibility.wall-colour", "colour of the wall, #rrggbb", "",
            "only the job knows; without it lettering on the bare wall is not compared", "the job sheet");

    /** All of them. */
    public static final List<Setting<?>> ALL = List.of(HAIRLINE, BACK_ALLOWANCE, BACK_ALLOWANCE_KIND, BACK_JOINS, BACK_MITRE_LIMIT,
            RETURN_DEPTH, READING_DISTANCE, WALL_COLOUR);

    private SharedSettings() {
    }
}
