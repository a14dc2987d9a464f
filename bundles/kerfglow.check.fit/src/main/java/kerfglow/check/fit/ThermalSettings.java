// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.fit;

import java.util.List;
import kerfglow.api.Quantity;
import kerfglow.api.Setting;

/** Temperatures, materials and what uses up the allowance. Coefficients of expansion are in millionths per kelvin. */
final class ThermalSettings {
    static final String OVER = "over the can";
    static final String INSIDE = "inside a frame";

    private static final double MOST = 500;
    private static final String PRACTICE = "common practice, no source";
    private static final String OUTDOORS = "Assumed: a temperate climate; 40 K either way of the shop";

    static final Setting<Double> ASSEMBLY = temperature("fit.assembly-temperature", "temperature at which face and can are put together", 20,
            "a heated shop", "Assumed: usual room temperature");
    static final Setting<Double> COLDEST = temperature("fit.coldest", "lowest temperature of the sign in service", -20,
            "a cold winter night", OUTDOORS);
    static final Setting<Double> HOTTEST = temperature("fit.hottest", "highest temperature of the sign in service", 60,
            "a dark face in the summer sun", OUTDOORS);
    static final Setting<String> FACE_SITS = Setting.choice("fit.face-sits", "where the face sits", OVER, List.of(OVER, INSIDE),
            "a face over the can binds when it shrinks more, a face inside a frame when it grows more", "geometry");
    static final Setting<Double> WALL = Setting.lengthMm("fit.wall-thickness", "thickness of the can's wall", 1.0, 0, 20,
            "0.040 in aluminium coil, the usual one", PRACTICE);
    static final Setting<Double> LEG = Setting.lengthMm("fit.leg-thickness", "thickness of a leg of the edge moulding beside the wall", 0.0, 0, 20,
            "0 leaves the legs out, as for a moulding that gives; give the thickness of a stiff one", "Assumed: depends on the moulding");
    static final Setting<String> CAN_MATERIAL = Setting.text("fit.can-material", "material of the can or frame", "aluminium",
            "most cans are of aluminium coil", PRACTICE);
    static final Setting<Double> CAN_EXPANSION = coefficient("fit.can-expansion", "expansion of the can, 0 for that of its material", 0,
            "its material is named", "the maker's data sheet");
    static final Setting<Double> EXPANSION = coefficient("fit.expansion", "expansion of a face, 0 for that of its material", 0,
            "the job sheet names the material; give a number for a material that is not known here", "the maker's data sheet");

    static final Setting<Double> ALUMINIUM = coefficient("fit.expansion-aluminium", "expansion of aluminium", 23.6,
            "between the alloys (23) and the pure metal (24)",
            "Gere, Mechanics of Materials, Table 3 for 23 and 24; 23.6 itself is from memory, not confirmed");
    static final Setting<Double> STEEL = coefficient("fit.expansion-steel", "expansion of carbon steel", 11.7,
            "carbon steel has 11 to 12; stainless steel has more and is not meant",
            "secondary pages for 11 to 12; 11.7 itself is from memory, not confirmed");
    static final Setting<Double> POLYCARBONATE = coefficient("fit.expansion-polycarbonate", "expansion of polycarbonate", 68,
            "published values run from 65 to 68, and one table says 122: choose on purpose", "ACS Omega 2022, 7(16), Table 1");
    static final Setting<Double> ACRYLIC = coefficient("fit.expansion-acrylic", "expansion of acrylic", 75,
            "published values run from 50 to 90; a widely copied 234 for extruded sheet is an outlier",
            "\"Coefficients of Linear Thermal Expansion\"; Lange's Handbook, Table 10.2, for the range");
    static final Setting<Double> PVC = coefficient("fit.expansion-pvc", "expansion of rigid or expanded PVC", 53,
            "published values run from 50 to 100",
            "\"Properties of Plastic Materials\", a secondary page; ACS Omega 2022, 7(16), Table 1, for the range");
    static final Setting<Double> COMPOSITE = coefficient("fit.expansion-composite", "expansion of aluminium composite sheet", 24,
            "2.4 mm per metre and 100 K, that of its skins", "ACM data page, makers' data");

    static final List<Setting<?>> ALL = List.of(ASSEMBLY, COLDEST, HOTTEST, FACE_SITS, WALL, LEG, CAN_MATERIAL, CAN_EXPANSION, EXPANSION,
            ALUMINIUM, STEEL, POLYCARBONATE, ACRYLIC, PVC, COMPOSITE);

    private ThermalSettings() {
    }

    private static Setting<Double> temperature(String key, String title, double celsius, String reason, String source) {
        return Setting.number(key, title, Quantity.TEMPERATURE, celsius, -90, 150, reason, source);
    }

    private static Setting<Double> coefficient(String key, String title, double millionths, String reason, String source) {
        return Setting.number(key, title + ", millionths per kelvin", Quantity.RATIO, millionths, 0, MOST, reason, source);
    }
}
