// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.mount;

import java.util.ArrayList;
import java.util.List;
import kerfglow.api.Quantity;
import kerfglow.api.Setting;
import kerfglow.api.StockKind;

/** What goes into weights. Densities are in g/cm³, which is kg per m² and mm of thickness. */
final class MountSettings {
    private static final String PRACTICE = "common practice, no source";
    private static final String CALLISTER = "Callister, Materials Science and Engineering, Table B.1";
    private static final double MOST_DENSITY = 25;
    private static final double MOST_MASS = 1e6;

    static final Setting<Double> DENSITY = density("mount.density", "density of a part, 0 for that of its material", 0.0,
            "the job sheet names the material; give a number for one that is not known here", "the maker's data sheet");
    static final Setting<Double> ALUMINIUM = density("mount.density-aluminium", "density of aluminium", 2.70, "alloys differ by a few per cent",
            CALLISTER + "; Gere, Mechanics of Materials");
    static final Setting<Double> STEEL = density("mount.density-steel", "density of steel", 7.85, "carbon steel; stainless steel is a little heavier", CALLISTER);
    static final Setting<Double> POLYCARBONATE = density("mount.density-polycarbonate", "density of polycarbonate", 1.20, "solid sheet", "ACS Omega 2022, 7(16), Table 1");
    static final Setting<Double> ACRYLIC = density("mount.density-acrylic", "density of acrylic", 1.19, "published values run from 1.17 to 1.20",
            "ACS Omega 2022, 7(16), Table 1; " + CALLISTER);
    static final Setting<Double> PVC = density("mount.density-pvc", "density of rigid PVC", 1.40, "published values run from 1.30 to 1.58", "ACS Omega 2022, 7(16), Table 1; " + CALLISTER);
    static final Setting<Double> EXPANDED_PVC = density("mount.density-expanded-pvc", "density of expanded PVC", 0.55, "about 0.5 to 0.7 by make",
            "from memory, not confirmed: the maker's data sheet decides");
    static final Setting<Double> BRASS = density("mount.density-brass", "density of brass", 8.5, "about 8.4 to 8.7 by alloy", "from memory, not confirmed: the maker's data sheet decides");
    static final Setting<Double> CORE = density("mount.density-composite-core", "density of the core of composite sheet", 0.93, "polyethylene; mineral cores are heavier", "ACM data page, makers' data");
    static final Setting<Double> SKIN = Setting.lengthMm("mount.composite-skin", "thickness of each aluminium skin of composite sheet", 0.30, 0, 5,
            "0.21, 0.30 and 0.50 mm are made", "ACM data page, makers' data");
    static final Setting<String> BACK_MATERIAL = Setting.text("mount.back-material", "material of backs that are made from faces", "aluminium",
            "the job sheet names materials of drawn parts alone", PRACTICE);
    static final Setting<Double> BACK_THICKNESS = Setting.lengthMm("mount.back-thickness", "thickness of backs that are made from faces", 2.0, 0.1, 100,
            "0.080 in aluminium is usual", PRACTICE);
    static final Setting<Double> EXTRA_MASS = Setting.number("mount.extra-mass", "mass of what is not counted: moulding, wiring, supplies, frame, fixings", Quantity.MASS, 0.0, 0, MOST_MASS,
            "only the job knows", "the job sheet");
    static final List<Setting<?>> WEIGHTS = List.of(DENSITY, ALUMINIUM, STEEL, POLYCARBONATE, ACRYLIC, PVC, EXPANDED_PVC, BRASS, CORE, SKIN, BACK_MATERIAL, BACK_THICKNESS, EXTRA_MASS);

    static final Setting<Double> MODULE_MASS = Setting.number("mass", "mass of a module with its share of wire, 0 where the list does not say", Quantity.MASS, 0.0, 0, 100,
            "0 where the list does not say", "the shop sheet");
    static final StockKind MODULES = new StockKind("light-modules", "light modules", List.of(MODULE_MASS));

    private MountSettings() {
    }

    static List<Setting<?>> all() {
        List<Setting<?>> all = new ArrayList<>(WEIGHTS);
        all.addAll(WindSettings.ALL);
        return all;
    }

    private static Setting<Double> density(String key, String title, double value, String reason, String source) {
        return Setting.number(key, title + ", g/cm³", Quantity.RATIO, value, 0, MOST_DENSITY, reason, source);
    }
}
