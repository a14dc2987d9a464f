// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.legibility;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.OptionalDouble;
import org.locationtech.jts.geom.Coordinate;

/**
 * Base line, cap height and x-height of letters that stand upright side by side.
 *
 * <p>The base line is the level on which most lower ends stand, so that nearly all others hang below it as descenders of one depth.
 * Heights fall into tall and short letters where there is a gap between them. Among the tall ones the cap height is the level
 * that most flat tops share, letters that are broad at their top first (capitals and figures; b, d, h, k, l and t may end
 * elsewhere). With one class only, its height counts as the cap height: capitals cannot be told from small letters without ascenders.
 * Where no end is flat, the usual overshoot is taken off.
 *
 * @param base level of the base line, mm, up
 * @param capMm height of capitals above it, or of whatever is tall
 * @param xMm height of small letters without ascenders, where the line has such
 * @param members the letters that stand or hang on this base line
 * @param deviationMm root mean square of the flat lower ends about the base line
 */
record LineModel(double base, double capMm, OptionalDouble xMm, List<Upright> members, double deviationMm) {
    // All shares below are of the height of the line's tall letters.
    /** Ends this near belong to one level; overshoot is up to 3 %. Common practice. */
    static final double NEAR = 0.035;
    /** Of one level and flat: drawn to the same height. */
    private static final double SAME = 0.008;
    /** Round and pointed letters overshoot by 1 to 3 % at either end; the mean of twelve open fonts. */
    private static final double OVERSHOOT = 0.018;
    /** Rise over run of a flat end that is meant to be level: 0.7 degrees. Slanted serifs of old-style faces rise more. Assumed. */
    private static final double TRULY_LEVEL = 0.012;
    /** So few flat ends may be facets of round letters. Assumed. */
    private static final double FEW_FLATS = 0.25;
    /** In a drawn word letters of several humps have their highest one count, so a little above the middle of all humps. Assumed. */
    private static final double HUMPS = 0.6;
    /** A drawn word is written more freely than letters are set. Assumed. */
    private static final double JOINED_NEAR = 0.08;
    /** Fewer low rises of a drawn word are the strokes between its letters. Assumed. */
    private static final double LEAST_SHORT = 0.25;
    private static final double DEEPEST = 0.55;
    private static final double DEPTH_SPREAD = 0.06;
    private static final double LEAST_HEIGHT = 0.33;
    /** Below this share of the tallest a letter is a short one: x-height is 0.6 to 0.78 of cap height in most faces. Common practice. */
    private static final double MOST_SHORT = 0.86;
    private static final double LEAST_GAP = 0.06;
    /** How a hanging letter and one that fits nowhere weigh against one that stands on the line. Assumed. */
    private static final double HANGS = 0.7;
    private static final double STRAY = -0.5;
    /** Most letters of any language stand on the base line. */
    private static final double LEAST_STANDING = 0.4;
    /** A capital is at least this wide, and at its top spans at least this share of it. Assumed: E and F of narrow faces. */
    private static final double CAPITAL_WIDTH = 0.42;
    private static final double CAPITAL_TOP = 0.5;
    private static final double TOP_SLICE = 0.88;
    private static final int MOST_CANDIDATES = 100;
    /** Where the letters' heights are taken for the first guess: most of a line are lower. */
    private static final double TALL_QUANTILE = 0.75;

    /** One upper end, above the base line. */
    private record Top(double height, boolean flat, boolean level, boolean broad) {
    }

    /** The best model of the letters; members is empty where they stand on no common line. */
    static LineModel of(List<Upright> letters) {
        List<Double> heights = new ArrayList<>(letters.stream().map(letter -> letter.box().getHeight()).toList());
        Collections.sort(heights);
        double tall = heights.get(Math.min(heights.size() - 1, (int) (heights.size() * TALL_QUANTILE)));
        boolean joined = isJoined(letters);
        double near = (joined ? JOINED_NEAR : NEAR) * tall;
        double base = 0;
        double best = Double.NEGATIVE_INFINITY;
        for (double candidate : candidates(letters)) {
            double score = 0;
            int standing = 0;
            for (Upright letter : letters) {
                score += votes(letter, candidate, near, tall);
                standing += stands(letter, candidate, near) ? 1 : 0;
            }
            score -= standing < LEAST_STANDING * letters.size() ? letters.size() : 0;
            if (score > best) {
                best = score;
                base = candidate;
            }
        }
        return refined(letters, base, near, tall, joined);
    }

    /** The same letters, with heights that are known better than from their outlines. */
    LineModel with(double exactBase, double exactCapMm, OptionalDouble exactXMm) {
        return new LineModel(exactBase, exactCapMm, exactXMm, members, deviationMm);
    }

    /** Lower ends to try; of very many, enough of them that a level which two fifths of all share is among them. */
    private static List<Double> candidates(List<Upright> letters) {
        List<Double> all = new ArrayList<>();
        letters.forEach(letter -> letter.ends().bottoms().forEach(bottom -> all.add(bottom.height())));
        int step = Math.max(1, all.size() / MOST_CANDIDATES);
        List<Double> some = new ArrayList<>();
        for (int i = 0; i < all.size(); i += step) {
            some.add(all.get(i));
        }
        return some;
    }

    /** True when most of the line, by its length, is words in one piece; two letters that touch make no script of a line. */
    static boolean isJoined(List<Upright> letters) {
        double all = letters.stream().mapToDouble(letter -> letter.box().getWidth()).sum();
        double joined = letters.stream().filter(letter -> letter.ends().joined()).mapToDouble(letter -> letter.box().getWidth()).sum();
        return 2 * joined > all;
    }

    private static boolean stands(Upright letter, double base, double near) {
        return letter.ends().bottoms().stream().anyMatch(bottom -> Math.abs(bottom.height() - base) <= near);
    }

    /** A letter's vote for a base line; each end of a joined word votes for its share of the word, times the letters that it may be. */
    private static double votes(Upright letter, double base, double near, double tall) {
        double votes = 0;
        for (Level bottom : letter.ends().bottoms()) {
            if (Math.abs(bottom.height() - base) <= near) {
                votes += 1;
            } else if (bottom.height() < base && bottom.height() >= base - DEEPEST * tall
                    && letter.box().getMaxY() - base >= LEAST_HEIGHT * tall) {
                votes += letter.ends().joined() ? 0 : HANGS;
            } else if (letter.box().getHeight() >= LEAST_HEIGHT * tall && !letter.ends().joined()) {
                votes += STRAY;
            }
        }
        return votes;
    }

    private static LineModel refined(List<Upright> letters, double guess, double near, double tall, boolean joined) {
        List<Level> standing = new ArrayList<>();
        for (Upright letter : letters) {
            letter.ends().bottoms().stream().filter(bottom -> Math.abs(bottom.height() - guess) <= near).forEach(standing::add);
        }
        List<Double> flats = standing.stream().filter(Level::flat).map(Level::height).toList();
        double lowest = mean(standing.stream().filter(level -> !level.flat()).map(Level::height).toList());
        if (flats.size() < FEW_FLATS * standing.size() && mean(flats) < lowest + OVERSHOOT * tall / 2) {
            flats = List.of(); // round ends overshoot what is flat; these do not, so they are facets of round ones
        }
        double base = flats.isEmpty() ? mean(standing.stream().map(Level::height).toList()) + (joined ? 0 : OVERSHOOT * tall)
                : commonest(flats, SAME * tall);
        List<Upright> members = members(letters, base, near, tall);
        if (members.isEmpty()) {
            return new LineModel(base, tall, OptionalDouble.empty(), List.of(), 0);
        }
        double square = 0;
        for (double flat : flats) {
            square += (flat - base) * (flat - base);
        }
        double deviation = flats.isEmpty() ? 0 : Math.sqrt(square / flats.size());
        List<Top> tops = new ArrayList<>();
        boolean single = !joined && members.stream().anyMatch(member -> !member.ends().joined());
        for (Upright member : members) {
            if (single && member.ends().joined()) {
                continue; // letters that touch by chance: rises between them are no tops
            }
            boolean broad = !member.ends().joined() && isBroad(member, base, tall);
            for (Level top : member.ends().tops()) {
                double height = top.height() - base;
                if (height >= LEAST_HEIGHT * tall) {
                    tops.add(new Top(height, top.flat(), top.flat() && Math.abs(top.slope()) <= TRULY_LEVEL, broad));
                }
            }
        }
        return heights(base, tops, members, deviation, joined);
    }

    private static LineModel heights(double base, List<Top> tops, List<Upright> members, double deviation, boolean joined) {
        if (tops.isEmpty()) {
            return new LineModel(base, 0, OptionalDouble.empty(), List.of(), 0);
        }
        List<Double> sorted = new ArrayList<>(tops.stream().map(Top::height).toList());
        Collections.sort(sorted);
        double most = sorted.get(sorted.size() - 1);
        double limit = Double.NaN;
        double widest = LEAST_GAP * most;
        for (int i = 1; i < sorted.size(); i++) {
            double gap = sorted.get(i) - sorted.get(i - 1);
            if (sorted.get(i - 1) <= MOST_SHORT * most && gap > widest) {
                widest = gap;
                limit = (sorted.get(i) + sorted.get(i - 1)) / 2;
            }
        }
        if (Double.isNaN(limit)) {
            return new LineModel(base, capitals(tops, most, joined), OptionalDouble.empty(), members, deviation);
        }
        double split = limit;
        if (joined && tops.stream().filter(top -> top.height() < split).count() < LEAST_SHORT * tops.size()) {
            return new LineModel(base, capitals(tops.stream().filter(top -> top.height() > split).toList(), most, true), OptionalDouble.empty(), members, deviation);
        }
        double cap = capitals(tops.stream().filter(top -> top.height() > split).toList(), most, joined);
        double x = level(tops.stream().filter(top -> top.height() < split).toList(), most, joined);
        return new LineModel(base, cap, OptionalDouble.of(x), members, deviation);
    }

    /** The level that capitals share: the broad ones decide where the others end elsewhere. */
    private static double capitals(List<Top> tops, double tall, boolean joined) {
        List<Top> broad = tops.stream().filter(Top::broad).toList();
        double all = level(tops, tall, joined);
        if (broad.isEmpty()) {
            return all;
        }
        double capitals = level(broad, tall, joined);
        boolean flat = broad.stream().anyMatch(Top::flat);
        return flat || Math.abs(capitals - all) > NEAR * tall ? capitals : all;
    }

    /** The level that tops of one class share. */
    private static double level(List<Top> tops, double tall, boolean joined) {
        if (joined) {
            return usual(tops.stream().map(Top::height).toList());
        }
        boolean level = tops.stream().anyMatch(Top::level);
        List<Double> flats = tops.stream().filter(level ? Top::level : Top::flat).map(Top::height).toList();
        return flats.isEmpty() ? mean(tops.stream().map(Top::height).toList()) - OVERSHOOT * tall : commonest(flats, SAME * tall);
    }

    private static List<Upright> members(List<Upright> letters, double base, double near, double tall) {
        List<Upright> standing = new ArrayList<>();
        List<Upright> hanging = new ArrayList<>();
        for (Upright letter : letters) {
            if (letter.box().getMaxY() - base < LEAST_HEIGHT * tall) {
                continue;
            }
            if (stands(letter, base, near)) {
                standing.add(letter);
            } else if (letter.box().getMinY() < base && letter.box().getMinY() >= base - DEEPEST * tall) {
                hanging.add(letter);
            }
        }
        if (standing.size() < LEAST_STANDING * letters.size()) {
            return List.of();
        }
        if (!hanging.isEmpty()) {
            double depth = commonest(hanging.stream().map(letter -> letter.box().getMinY()).toList(), DEPTH_SPREAD * tall);
            hanging.removeIf(letter -> Math.abs(letter.box().getMinY() - depth) > 2 * DEPTH_SPREAD * tall);
        }
        List<Upright> members = new ArrayList<>(standing);
        members.addAll(hanging);
        return members;
    }

    /** True when a letter is about as wide at its top as it is altogether, as most capitals and figures are. */
    private static boolean isBroad(Upright letter, double base, double tall) {
        double width = letter.box().getWidth();
        if (width < CAPITAL_WIDTH * tall) {
            return false;
        }
        double from = base + TOP_SLICE * (letter.box().getMaxY() - base);
        double least = Double.POSITIVE_INFINITY;
        double most = Double.NEGATIVE_INFINITY;
        for (Coordinate at : letter.shape().getExteriorRing().getCoordinates()) {
            if (at.y >= from) {
                least = Math.min(least, at.x);
                most = Math.max(most, at.x);
            }
        }
        return most - least >= CAPITAL_TOP * width;
    }

    /** The mean of the values about the one that has most others near it; of equals the lowest. */
    static double commonest(List<Double> values, double near) {
        List<Double> sorted = new ArrayList<>(values);
        Collections.sort(sorted);
        int most = 0;
        double found = sorted.get(0);
        int from = 0;
        int to = 0;
        for (double centre : sorted) {
            while (sorted.get(from) < centre - near) {
                from++;
            }
            while (to < sorted.size() && sorted.get(to) <= centre + near) {
                to++;
            }
            if (to - from > most) {
                most = to - from;
                found = mean(sorted.subList(from, to));
            }
        }
        return found;
    }

    private static double usual(List<Double> humps) {
        List<Double> sorted = new ArrayList<>(humps);
        Collections.sort(sorted);
        return sorted.get((int) (HUMPS * sorted.size()));
    }

    private static double mean(List<Double> values) {
        return values.stream().mapToDouble(Double::doubleValue).average().orElse(0);
    }
}
