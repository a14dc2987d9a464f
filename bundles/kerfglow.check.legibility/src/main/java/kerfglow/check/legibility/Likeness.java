// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.legibility;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import kerfglow.api.proof.Part;

/**
 * How sure it is that pieces on one base line are lettering.
 *
 * <p>More letters are surer; letters are made of strokes much thinner than they are high, where boxes, bars and blobs are solid; and
 * letters differ, where the dots of a border and the stars of a rating are all alike. Letters of one line are drawn with one pen and end at few
 * heights. Live text is sure.
 */
final class Likeness {
    // Assumed throughout; tried on open fonts of many kinds and on rows of ornaments.
    private static final double[] BY_COUNT = {0, 0.25, 0.7, 0.85, 0.95};
    private static final double MOST = 0.98;
    /** Mean stroke to height: the boldest faces reach 0.3, a square has 0.5. */
    private static final double HEAVY = 0.32;
    private static final double SOLID = 0.42;
    private static final double ALIKE = 0.01;
    /** Mean strokes of the quarter of heavier letters against those of the lighter: within one face, and with several pens. */
    private static final double LIKE_PENS = 1.6;
    private static final double OTHER_PENS = 2.5;
    /** What counts as one level, in cap heights, and what share of letters (t, old-style figures) may end elsewhere. */
    private static final double LEVEL = 0.05;
    private static final double FEW_ELSEWHERE = 0.35;
    private static final double MANY_ELSEWHERE = 0.6;
    private static final double LIKE_STROKES = 0.6;
    private static final double ALL_ALIKE = 0.4;
    private static final double JOINED_WORD = 0.8;
    private static final double WAVE = 0.015;
    private static final double MOSTLY = 0.7;
    private static final double REGULAR = 0.15;
    private static final int LEAST_FEET = 3;
    private static final double SOLE_ENDS = 0.55;
    /** A line may lose every third piece, to points, ornaments and its neighbours, and stay sure. Assumed. */
    private static final double LEAST_EXPLAINED = 0.65;
    private static final double JOINED_NEAR = 0.1;

    private Likeness() {
    }

    static double of(LineModel model, int asked) {
        List<Upright> members = model.members();
        if (members.isEmpty() || !(model.capMm() > 0)) {
            return 0;
        }
        long live = members.stream().filter(member -> member.piece().part().sources().contains(Part.Source.TEXT)).count();
        if (2 * live > members.size()) {
            return 1;
        }
        boolean joined = LineModel.isJoined(members);
        double count = joined ? joined(model) : members.size() < BY_COUNT.length ? BY_COUNT[members.size()] : MOST;
        double explained = (double) members.size() / asked;
        return count * Math.min(1, explained / LEAST_EXPLAINED) * strokes(model) * variety(members) * (joined ? 1 : levels(model) * footing(model));
    }

    /** True when a piece is made of strokes; boxes, discs and blobs are never letters, only points. */
    static boolean isStroked(Piece piece) {
        double size = Math.max(piece.shape().getEnvelopeInternal().getWidth(), piece.shape().getEnvelopeInternal().getHeight());
        return 2 * piece.shape().getArea() / piece.shape().getLength() < SOLID * size;
    }

    private static double strokes(LineModel model) {
        List<Double> shares = new ArrayList<>();
        for (Upright member : model.members()) {
            shares.add(2 * member.shape().getArea() / member.shape().getLength() / model.capMm());
        }
        Collections.sort(shares);
        double unlike = shares.get(3 * (shares.size() - 1) / 4) / shares.get((shares.size() - 1) / 4);
        return falling(shares.get(shares.size() / 2), HEAVY, SOLID, 0) * falling(unlike, LIKE_PENS, OTHER_PENS, ALL_ALIKE);
    }

    /** Letters of a line end at few heights: capitals and ascenders, and small letters. Shapes thrown together end anywhere. */
    private static double levels(LineModel model) {
        if (model.members().size() < BY_COUNT.length - 1) {
            return 1;
        }
        long set = model.members().stream().filter(member -> {
            double top = member.ends().top().height() - model.base();
            double x = model.xMm().orElse(0);
            return top >= (1 - LEVEL) * model.capMm() && top <= (1 + 2 * LEVEL) * model.capMm() || Math.abs(top - x) <= LEVEL * model.capMm();
        }).count();
        return falling(1 - (double) set / model.members().size(), FEW_ELSEWHERE, MANY_ELSEWHERE, ALL_ALIKE);
    }

    /** Few shapes are letters only when they end flat, or all end exactly on the base line. */
    private static double footing(LineModel model) {
        List<Upright> members = model.members();
        if (members.size() >= BY_COUNT.length) {
            return 1;
        }
        long flat = members.stream().filter(member -> member.ends().bottom().flat() || member.ends().top().flat()).count();
        double lowest = members.stream().mapToDouble(member -> member.box().getMinY()).min().orElse(0);
        double highest = members.stream().mapToDouble(member -> member.box().getMinY()).max().orElse(0);
        return 2 * flat >= members.size() || highest - lowest <= ALIKE * model.capMm() ? 1 : ALL_ALIKE;
    }

    /** 1 up to a value, a least share from another on, straight between. */
    private static double falling(double value, double from, double to, double least) {
        return value <= from ? 1 : value >= to ? least : 1 - (1 - least) * (value - from) / (to - from);
    }

    private static double variety(List<Upright> members) {
        if (members.size() == 2) {
            return isPair(members.get(0), members.get(1)) ? 1 : ALL_ALIKE;
        }
        if (members.size() < 2) {
            return 1;
        }
        Upright first = members.get(0);
        return members.stream().allMatch(member -> alike(first, member)) ? ALL_ALIKE : 1;
    }

    /** Two shapes alone are letters only when they differ, have like strokes, and stand exactly on a line. */
    private static boolean isPair(Upright a, Upright b) {
        double first = a.shape().getArea() / a.shape().getLength();
        double second = b.shape().getArea() / b.shape().getLength();
        double height = Math.max(a.box().getHeight(), b.box().getHeight());
        boolean onLine = a.ends().bottom().flat() || b.ends().bottom().flat()
                || Math.abs(a.box().getMinY() - b.box().getMinY()) <= ALIKE * height && Math.abs(a.box().getMaxY() - b.box().getMaxY()) <= ALIKE * height;
        return !alike(a, b) && Math.min(first, second) >= LIKE_STROKES * Math.max(first, second) && onLine;
    }

    private static boolean alike(Upright a, Upright b) {
        return near(a.shape().getArea(), b.shape().getArea()) && near(a.shape().getLength(), b.shape().getLength())
                && near(a.box().getHeight(), b.box().getHeight());
    }

    private static boolean near(double a, double b) {
        return Math.abs(a - b) <= ALIKE * Math.max(a, b);
    }

    /** True when most rises are equally high and there are no counters, or all steps are alike, as in a wave, a zigzag or a chain. */
    private static boolean isWave(LineModel model) {
        List<Double> tops = model.members().stream().flatMap(member -> member.ends().tops().stream()).map(Level::height).toList();
        double near = WAVE * model.capMm();
        double usual = LineModel.commonest(tops, near);
        boolean level = tops.stream().filter(top -> Math.abs(top - usual) <= near).count() >= MOSTLY * tops.size();
        return level && (model.members().stream().allMatch(member -> member.shape().getNumInteriorRing() == 0) || isRegular(model));
    }

    /** True when the rises follow each other at one distance. */
    private static boolean isRegular(LineModel model) {
        List<Double> along = new ArrayList<>(model.members().stream().flatMap(member -> member.ends().tops().stream()).map(Level::along).sorted().toList());
        List<Double> steps = new ArrayList<>();
        for (int i = 1; i < along.size(); i++) {
            steps.add(along.get(i) - along.get(i - 1));
        }
        Collections.sort(steps);
        return steps.isEmpty() || steps.get(3 * (steps.size() - 1) / 4) - steps.get((steps.size() - 1) / 4) <= REGULAR * steps.get(steps.size() / 2);
    }

    /** In a drawn word most dips reach the base line. */
    private static double joined(LineModel model) {
        long bottoms = 0;
        long standing = 0;
        for (Upright member : model.members()) {
            for (Level bottom : member.ends().bottoms()) {
                bottoms++;
                standing += Math.abs(bottom.height() - model.base()) <= JOINED_NEAR * model.capMm() ? 1 : 0;
            }
        }
        double share = (double) standing / bottoms;
        if (isWave(model)) {
            return ALL_ALIKE * JOINED_WORD;
        }
        return standing < LEAST_FEET ? 0 : share >= SOLE_ENDS ? JOINED_WORD : JOINED_WORD * share / SOLE_ENDS;
    }
}
