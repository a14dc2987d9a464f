// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.glow;

import java.util.List;
import kerfglow.api.Quantity;
import kerfglow.api.Setting;
import kerfglow.api.SharedSettings;
import kerfglow.api.StockKind;
import kerfglow.api.Units;
import kerfglow.light.Finish;
import kerfglow.light.LightModuleType;

/** What the glow check can be told. */
final class GlowSettings {
    static final String BY_BUILD = "by build";
    static final String FACE = "face";
    static final String HALO = "halo";
    static final String NONE = "none";

    private static final String PRACTICE = "common practice, no source";
    private static final String SHEET = "the shop sheet";
    private static final String OR_STOCK = ", where the shop sheet lists no light module";
    private static final double STAND_OFF_MM = 1.5 * Units.MM_PER_INCH;
    private static final double MOST_FLUX_LM = 1e6;
    private static final double MOST_MM = 2000;
    private static final int MOST_EMITTERS = 1000;

    static final Setting<String> LIT = Setting.choice("glow.lit", "what the light modules light", BY_BUILD, List.of(BY_BUILD, FACE, HALO, NONE),
            "by build: the face of face-lit letters and cabinets, the wall behind halo-lit letters, nothing in other builds", "the job sheet's build");
    static final Setting<String> MODULE = Setting.text("glow.module", "name of the stocked light module that is used", "",
            "empty takes the first that the shop sheet lists", "Assumed: shops list what they use most first");

    static final Setting<Double> FLUX = flux("glow.flux", OR_STOCK);
    static final Setting<Double> BEAM = beam("glow.beam-angle", OR_STOCK);
    static final Setting<Double> LENGTH = Setting.lengthMm("glow.module-length", "long side of a module" + OR_STOCK, 70.0, 0, MOST_MM,
            "three emitters on one plate", PRACTICE);
    static final Setting<Double> WIDTH = Setting.lengthMm("glow.module-width", "short side of a module" + OR_STOCK, 15.0, 0, MOST_MM,
            "as wide as its housing", PRACTICE);
    static final Setting<Double> HEIGHT = Setting.lengthMm("glow.emitter-height", "how far the emitting surface stands above the back" + OR_STOCK, 6.0, 0, 500,
            "modules with lenses are about a quarter of an inch high", PRACTICE);
    static final Setting<Integer> EMITTERS = Setting.count("glow.emitters", "emitters of a module, in a row along its long side" + OR_STOCK, 3, 1,
            MOST_EMITTERS, "three is the usual number", PRACTICE);
    static final Setting<Double> EMITTER_PITCH = Setting.lengthMm("glow.emitter-pitch", "from emitter to emitter" + OR_STOCK, 22.0, 0, MOST_MM,
            "spread evenly over the plate", PRACTICE);

    static final Setting<Double> BACK = reflectance("glow.back-reflectance", "reflectance of the back inside", 0.8, "white paint or white film; bare aluminium sends on less");
    static final Setting<Double> WALLS = reflectance("glow.wall-reflectance", "reflectance of the returns inside", 0.8, "white coil; bare aluminium sends on less");
    static final Setting<Double> FACE_REFLECTANCE = reflectance("glow.face-reflectance", "reflectance of the face's inner side", 0.35,
            "opal acrylic sends about a third back into the can");
    static final Setting<Double> TRANSMITTANCE = Setting.number("glow.face-transmittance", "share of the light on the face that leaves it in front",
            Quantity.RATIO, 0.5, 0, 1, "opal acrylic of about 3 mm; with the reflectance at most 1", PRACTICE);
    static final Setting<Double> SPREAD = Setting.lengthMm("glow.spread", "how far the face spreads light sideways: sigma of a Gaussian, 0 for a clear face", 3.0, 0,
            500, "about the thickness of an opal face", "Assumed: light that is scattered in a sheet leaves it about its thickness aside");

    static final Setting<Double> UNIFORMITY = Setting.number("glow.uniformity", "least luminance of a face over its mean that is wanted", Quantity.RATIO, 0.6, 0,
            0.99, "as even as the light on a desk; stroke ends and corners are always darker", "EN 12464-1, uniformity least/mean of task areas: 0.4 in their surroundings, "
                    + "0.6 typical (the latter read in secondary sources only)");
    static final Setting<Double> LEAST_TO_GREATEST = Setting.number("glow.least-to-greatest", "least luminance of a face over its greatest that is wanted",
            Quantity.RATIO, 0.1, 0, 0.99, "no more than 10 : 1 within one colour", "EN 1838, luminance within a colour of a safety sign at most 10 : 1");
    static final Setting<Double> CONTRAST = Setting.number("glow.contrast", "contrast between a bright spot and the face beside it that may remain", Quantity.RATIO,
            0.02, 0.001, 10, "the eye just sees a difference of 2 %", "Weber fraction, classical value 0.02; 1 to 2 % in use. Depends on size and brightness");
    static final Setting<Double> VIEWING_DISTANCE = Setting.lengthMm("glow.viewing-distance", "from where spots are judged, where no reading distance is given", 3000.0,
            1, 5e6, "as near as people pass by", "Assumed: a pavement's width; legibility.distance outweighs it");
    static final Setting<Double> LEAST_PATCH = Setting.number("glow.least-patch", "dark patches smaller than this are passed over", Quantity.AREA, 100.0, 0, 1e6,
            "the tips of corners are always darker", "Assumed: a square centimetre");
    static final Setting<Double> EDGE = Setting.lengthMm("glow.edge-distance", "least distance of a laid out module from the returns", 3.0, 0, 500,
            "room for the wall's flange and a finger", PRACTICE);
    static final Setting<Double> CLEAR = Setting.lengthMm("glow.clear-distance", "least distance of a laid out module from holes and keep-outs", 5.0, 0, 500,
            "a nut and its washer", PRACTICE);
    static final Setting<Double> GAP = Setting.lengthMm("glow.module-gap", "least distance between laid out modules", 5.0, 0, 500, "the cable between them bends there", PRACTICE);

    static final Setting<Double> STAND_OFF = Setting.lengthMm("glow.stand-off", "how far the back of a halo-lit letter stands off the wall", STAND_OFF_MM, 1, MOST_MM,
            "1-1/2 in spacers", PRACTICE);
    static final Setting<Double> OUTSIDE = reflectance("glow.halo-reflectance", "reflectance of the wall behind halo-lit letters", 0.5, "a wall neither light nor dark");

    static final Setting<Double> CELL = Setting.lengthMm("glow.cell", "cell of the map", 2.0, 0.2, 50, "shows every spot that a module makes", "Assumed: far below any depth");
    static final Setting<Boolean> GRID = Setting.flag("glow.grid", "whether the map itself is given as a table", false, "it is long: a row for each cell", "Assumed: few programs read it");

    static final List<Setting<?>> ALL = List.of(SharedSettings.RETURN_DEPTH, SharedSettings.BACK_ALLOWANCE, SharedSettings.BACK_ALLOWANCE_KIND, SharedSettings.BACK_JOINS,
            SharedSettings.BACK_MITRE_LIMIT, SharedSettings.READING_DISTANCE, LIT, MODULE, FLUX, BEAM, LENGTH, WIDTH, HEIGHT, EMITTERS, EMITTER_PITCH, BACK, WALLS,
            FACE_REFLECTANCE, TRANSMITTANCE, SPREAD, UNIFORMITY, LEAST_TO_GREATEST, CONTRAST, VIEWING_DISTANCE, LEAST_PATCH, EDGE, CLEAR, GAP, STAND_OFF, OUTSIDE, CELL, GRID);

    static final Setting<Double> STOCK_FLUX = flux("flux", "");
    static final Setting<Double> STOCK_BEAM = beam("beam-angle", "");
    static final Setting<Double> STOCK_LENGTH = Setting.lengthMm("length", "long side", null, 0, MOST_MM, "depends on the module", SHEET);
    static final Setting<Double> STOCK_WIDTH = Setting.lengthMm("width", "short side", null, 0, MOST_MM, "depends on the module", SHEET);
    static final Setting<Double> STOCK_HEIGHT = Setting.lengthMm("emitter-height", "how far the emitting surface stands above the back", 6.0, 0, 500,
            "modules with lenses are about a quarter of an inch high", PRACTICE);
    static final Setting<Integer> STOCK_EMITTERS = Setting.count("emitters", "emitters, in a row along the long side", 1, 1, MOST_EMITTERS, "one where the list does not say", SHEET);
    static final Setting<Double> STOCK_EMITTER_PITCH = Setting.lengthMm("emitter-pitch", "from emitter to emitter", 0.0, 0, MOST_MM, "without meaning for one emitter", SHEET);
    static final Setting<Double> STOCK_CABLE_PITCH = Setting.lengthMm("cable-pitch", "greatest distance to the next module on the module's own cable, 0 for any", 0.0, 0, 5000,
            "0 where the list does not say", SHEET);
    static final StockKind MODULES = new StockKind("light-modules", "light modules", List.of(STOCK_FLUX, STOCK_BEAM, STOCK_LENGTH, STOCK_WIDTH, STOCK_HEIGHT,
            STOCK_EMITTERS, STOCK_EMITTER_PITCH, STOCK_CABLE_PITCH));

    private GlowSettings() {
    }

    private static Setting<Double> flux(String key, String where) {
        return Setting.number(key, "light of a whole module" + where, Quantity.LUMINOUS_FLUX, where.isEmpty() ? null : 80.0, 0.01, MOST_FLUX_LM,
                where.isEmpty() ? "depends on the module" : "a module of about 0.7 W", where.isEmpty() ? SHEET : PRACTICE);
    }

    private static Setting<Double> beam(String key, String where) {
        return Setting.number(key, "full angle between the directions of half the axial intensity" + where, Quantity.ANGLE, where.isEmpty() ? null : 160.0,
                LightModuleType.LEAST_BEAM_DEGREES, LightModuleType.MOST_BEAM_DEGREES, where.isEmpty() ? "depends on the module" : "modules for shallow cans have wide lenses",
                where.isEmpty() ? SHEET : PRACTICE);
    }

    private static Setting<Double> reflectance(String key, String title, double value, String reason) {
        return Setting.number(key, title, Quantity.RATIO, value, 0, Finish.MOST_REFLECTANCE, reason, PRACTICE);
    }
}
