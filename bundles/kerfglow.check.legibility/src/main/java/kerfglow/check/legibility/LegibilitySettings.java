// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.legibility;

import java.util.List;
import kerfglow.api.Quantity;
import kerfglow.api.Setting;
import kerfglow.api.SharedSettings;
import kerfglow.api.StockKind;

/** What the legibility check can be told. */
final class LegibilitySettings {
    private static final String JOB = "the job sheet";
    static final String STANDING = "standing";
    static final String WALKING = "walking";
    static final String DRIVING = "driving";
    static final String FACING = "facing";
    static final String ALONGSIDE = "alongside";
    static final String AUTO = "auto";
    static final String YES = "yes";
    static final String NO = "no";

    static final Setting<String> LETTERING = Setting.choice("legibility.lettering", "whether this is lettering", AUTO, List.of(AUTO, YES, NO),
            "outlines show it in most cases; a single letter or an ornament is for a person to say", JOB);
    static final Setting<Double> CONFIDENCE = Setting.number("legibility.confidence", "how sure it must be that shapes are lettering",
            Quantity.RATIO, 0.5, 0.05, 1, "even odds; two letters on one base line reach it, one letter does not", "Assumed: tried on open fonts and on rows of ornaments");
    static final Setting<String> READER = Setting.choice("legibility.reader", "who reads the sign", STANDING, List.of(STANDING, WALKING, DRIVING),
            "a distance alone says who stands there", JOB);
    static final Setting<Double> DISTANCE = SharedSettings.READING_DISTANCE;
    static final Setting<String> SPEED = Setting.text("legibility.speed", "how fast the reader goes, in mph, km/h or m/s", "",
            "empty: walkers go 1.4 m/s; drivers need it given", JOB);
    static final Setting<Integer> LANES = Setting.count("legibility.lanes", "lanes of the road", 2, 1, 20,
            "the usual street; more lanes leave less time for signs", JOB);
    static final Setting<Double> REACTION_TIME = Setting.number("legibility.reaction-time", "time to notice, read and act, 0 for by the reader",
            Quantity.TIME, 0.0, 0, 60, "0: 8 s on up to two lanes and 10 s on more; walkers 5 s",
            "drivers: recalled from on-premise sign guides, not confirmed; walkers: a trade page's least reading time");
    static final Setting<String> FACES = Setting.choice("legibility.faces", "how the sign stands to the road", FACING, List.of(FACING, ALONGSIDE),
            "most roadside signs face the traffic", JOB);
    static final Setting<Double> OFFSET = Setting.lengthMm("legibility.offset", "how far the sign stands beside the reader's path", 0.0, 0, 1e6,
            "0: on the path; a sign beside it must be read before the eye would have to turn too far", JOB);
    static final Setting<Double> EYE_TURN = Setting.number("legibility.eye-turn", "how far a driver's eye may turn from the path", Quantity.ANGLE,
            15.0, 1, 60, "reading ends when the sign lies farther aside", "\"Traffic Signs for Motorways\" (1962), paragraphs 19 to 21");
    static final Setting<Double> LEAST_VIEW = Setting.number("legibility.least-view-angle", "least angle of sight to a sign alongside", Quantity.ANGLE,
            20.0, 5, 80, "seen flatter than this a sign needs special treatment", "\"An Evidence Based Model Sign Code\", page 37");
    static final Setting<String> RULE = Setting.text("legibility.rule", "the rule of reading distance, by its name", "index-30",
            "30 ft of distance for each inch of capital height is the most used of the indexes", "the page lists the rules and their sources");
    static final Setting<Double> ACUITY = Setting.number("legibility.acuity", "decimal acuity of the readers, for the rule acuity", Quantity.RATIO,
            0.5, 0.05, 2, "0.5 is 20/40; at 1 only readers of full sight would do", "Assumed: the reader to plan for sees half as sharp as normal");
    static final Setting<Double> ABOVE_FLOOR = Setting.lengthMm("legibility.above-floor", "the proof's lower edge above the floor, -1 mm for not given",
            -1.0, -1, 1e6, "only the job knows; the accessibility table asks for it", JOB);
    static final Setting<Double> LEAST_CONTRAST = Setting.number("legibility.least-contrast", "least contrast ratio of lettering, 1 to 21",
            Quantity.RATIO, 3.0, 1, 21, "what WCAG asks of large text on screens; for signs it is a stand-in", "WCAG 2.2, success criterion 1.4.3");
    static final Setting<Double> LEAST_REFLECTANCE = Setting.number("legibility.least-reflectance-contrast",
            "least reflectance contrast (B1 - B2) / B1, 0 for not asked", Quantity.RATIO, 0.0, 0, 1,
            "0: measured and shown; where a code asks 70 %, give 0.7", "the formula: proposal 7-1-12 to ICC A117.1");
    static final Setting<String> WALL_COLOUR = SharedSettings.WALL_COLOUR;
    static final Setting<Double> NIGHT_WALL = Setting.number("legibility.night-wall-luminance", "luminance of the wall and of what else is not lit, by night",
            Quantity.LUMINANCE, 1.0, 0.001, 1000, "10 lx of street light on a wall that reflects a third of it, 10 / 3 / pi",
            "Assumed: a lit street; only the place knows");
    static final Setting<Double> LEAST_NIGHT_CONTRAST = Setting.number("legibility.least-night-contrast", "least ratio of luminances of lettering and what lies behind it, by night",
            Quantity.RATIO, 5.0, 1, 1000, "what is asked between the two colours of a lit safety sign, 5 to 15", "recalled of EN 1838, not confirmed");
    static final List<Setting<?>> ALL = List.of(LETTERING, CONFIDENCE, READER, DISTANCE, SPEED, LANES, REACTION_TIME, FACES, OFFSET, EYE_TURN,
            LEAST_VIEW, RULE, ACUITY, ABOVE_FLOOR, LEAST_CONTRAST, LEAST_REFLECTANCE, WALL_COLOUR, NIGHT_WALL, LEAST_NIGHT_CONTRAST);

    private static final String SHOP = "the shop sheet";
    static final Setting<String> RULE_NAME = Setting.text("rule", "name of the rule, as legibility.rule gives it", null,
            "several items of one name are its steps by height above the floor", SHOP);
    static final Setting<Double> RULE_RATIO = Setting.number("distance-per-height", "reading distance divided by letter height", Quantity.RATIO,
            null, 1, 5000, "360 is 30 ft for each inch", SHOP);
    static final Setting<String> RULE_HEIGHT = Setting.choice("height", "the height that it is about", "cap", List.of("cap", "x", "field"),
            "most rules mean capitals", SHOP);
    static final Setting<Double> RULE_LEAST = Setting.lengthMm("least-height", "height that it asks for up to the distance where it grows", 0.0, 0, 1e5,
            "0: in proportion from the start", SHOP);
    static final Setting<Double> RULE_FROM = Setting.lengthMm("grows-from", "distance from which on the height grows", 0.0, 0, 1e6,
            "0: from the start", SHOP);
    static final Setting<Double> RULE_FLOOR = Setting.lengthMm("up-to-floor-height", "for base lines up to this height above the floor", 1e6, 0, 1e6,
            "anything", SHOP);
    static final Setting<Double> RULE_STROKE_LEAST = share("least-stroke", "least stroke to height", 0.0);
    static final Setting<Double> RULE_STROKE_MOST = share("most-stroke", "greatest stroke to height", 1.0);
    static final Setting<Double> RULE_SPACING_LEAST = share("least-spacing", "least spacing to height", 0.0);
    static final Setting<Double> RULE_SPACING_MOST = share("most-spacing", "greatest spacing to height", 1.0);
    static final Setting<String> RULE_SOURCE = Setting.text("source", "where the rule comes from", "the shop's own", "said in findings", SHOP);
    static final StockKind RULES = new StockKind("reading-rules", "rules of reading distance", List.of(RULE_NAME, RULE_RATIO, RULE_HEIGHT, RULE_LEAST,
            RULE_FROM, RULE_FLOOR, RULE_STROKE_LEAST, RULE_STROKE_MOST, RULE_SPACING_LEAST, RULE_SPACING_MOST, RULE_SOURCE));

    private LegibilitySettings() {
    }

    private static Setting<Double> share(String key, String title, double value) {
        return Setting.number(key, title, Quantity.RATIO, value, 0, 1, "as good as not asked", SHOP);
    }
}
