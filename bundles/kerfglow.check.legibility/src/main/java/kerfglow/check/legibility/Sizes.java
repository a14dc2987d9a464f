// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.legibility;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * Tells letters of two sizes on one base line apart, so that each size has its own heights.
 *
 * <p>Words of another size follow each other, and with the size goes the pen: where capitals are followed by small letters of the same
 * size the strokes stay as they are. So a line is cut between words where strokes and heights both change, or where cap height and
 * x-height change by one factor. Then letters far lower than the others are taken out wherever they stand. Parts of one size are put
 * together again. A change of less than a tenth with capitals alone is not seen.
 */
final class Sizes {
    /** Stretches of fewer letters tell neither their pen nor their heights. Assumed. */
    private static final int LEAST_LETTERS = 3;
    /** Strokes that differ more are of two pens: within one face small letters have 0.9 of the capitals' strokes and more. Assumed. */
    private static final double OTHER_PEN = 0.86;
    /** The same where one stretch may be the small letters of the other: a stretch of i and t has thin strokes by chance. Assumed. */
    private static final double SURELY_OTHER_PEN = 0.78;
    /** Less than any space between words, in heights of a letter. Assumed. */
    private static final double WORD_SPACE = 0.15;
    /** Heights that differ less are one size. Assumed. */
    private static final double SAME_SIZE = 0.05;
    /** Ascenders alone may stand so much above capitals. Assumed. */
    private static final double ASCENDERS = 0.08;
    /** Cap height and x-height of two sizes of one face have one ratio. */
    private static final double SAME_RATIO = 0.025;
    /** Small letters without ascenders are never so much lower than capitals. Assumed. */
    private static final double OTHER_SIZE = 0.5;

    private Sizes() {
    }

    /** The sizes of a line, each with its letters; one, unless all of them are lettering by themselves. */
    static List<LineModel> of(LineFitter.Fit fit, double leastConfidence) {
        List<Upright> letters = new ArrayList<>(fit.model().members());
        if (LineModel.isJoined(letters) || fit.frame().form() == Frame.Form.STACKED) {
            return List.of(fit.model());
        }
        letters.sort(Comparator.comparingDouble(letter -> letter.box().centre().x));
        List<List<Upright>> runs = new ArrayList<>();
        cut(letters, fit.frame(), runs);
        List<LineModel> models = new ArrayList<>();
        for (List<List<Upright>> size : together(runs, fit.frame())) {
            models.addAll(byHeight(size.stream().flatMap(List::stream).toList(), fit.frame(), leastConfidence));
        }
        boolean sure = models.stream().allMatch(model -> isSure(model, leastConfidence));
        return sure && !models.isEmpty() ? models : List.of(fit.model());
    }

    private static boolean isSure(LineModel model, double leastConfidence) {
        return !model.members().isEmpty() && Likeness.of(model, model.members().size()) >= leastConfidence;
    }

    private static LineModel model(List<Upright> letters, Frame frame) {
        return LineFitter.at(letters.stream().map(Upright::piece).toList(), frame).model();
    }

    private static void cut(List<Upright> letters, Frame frame, List<List<Upright>> runs) {
        Optional<Integer> at = widest(letters).filter(k -> smaller(pen(letters.subList(0, k)), pen(letters.subList(k, letters.size()))) <= OTHER_PEN
                || differ(letters.subList(0, k), letters.subList(k, letters.size()), frame));
        if (at.isEmpty()) {
            runs.add(letters);
        } else {
            cut(letters.subList(0, at.get()), frame, runs);
            cut(letters.subList(at.get(), letters.size()), frame, runs);
        }
    }

    /** The space between words where the pens before and after differ most: the greatest variance between the two, of the logarithm. */
    private static Optional<Integer> widest(List<Upright> letters) {
        double[] pens = letters.stream().mapToDouble(letter -> Math.log(pen(letter))).toArray();
        Optional<Integer> best = Optional.empty();
        double most = 0;
        for (int k = LEAST_LETTERS; k <= pens.length - LEAST_LETTERS; k++) {
            double before = Arrays.stream(pens, 0, k).average().orElseThrow();
            double after = Arrays.stream(pens, k, pens.length).average().orElseThrow();
            double between = (double) k * (pens.length - k) * (before - after) * (before - after);
            if (between > most && Marks.gap(letters.get(k - 1).box(), letters.get(k).box()) >= WORD_SPACE * letters.get(k).box().getHeight()) {
                most = between;
                best = Optional.of(k);
            }
        }
        return best;
    }

    /** The mean stroke of a letter: twice its area along its outline. */
    private static double pen(Upright letter) {
        return 2 * letter.shape().getArea() / letter.shape().getLength();
    }

    private static double pen(List<Upright> letters) {
        double[] pens = letters.stream().mapToDouble(Sizes::pen).sorted().toArray();
        return pens[pens.length / 2];
    }

    private static boolean differ(List<Upright> before, List<Upright> after, Frame frame) {
        LineModel a = model(before, frame);
        LineModel b = model(after, frame);
        if (a.members().isEmpty() || b.members().isEmpty()) {
            return false;
        }
        double caps = smaller(a.capMm(), b.capMm());
        if (a.xMm().isPresent() && b.xMm().isPresent()) {
            double x = smaller(a.xMm().getAsDouble(), b.xMm().getAsDouble());
            return caps < 1 - SAME_SIZE && Math.abs(caps - x) <= SAME_RATIO && a.capMm() > b.capMm() == a.xMm().getAsDouble() > b.xMm().getAsDouble();
        }
        LineModel large = a.capMm() > b.capMm() ? a : b;
        LineModel small = large == a ? b : a;
        boolean mayBeSmallLetters = large.xMm().isPresent() && Math.abs(small.capMm() / large.xMm().getAsDouble() - 1) <= SAME_SIZE;
        return caps < 1 - ASCENDERS && smaller(pen(before), pen(after)) <= (mayBeSmallLetters ? SURELY_OTHER_PEN : OTHER_PEN)
                && pen(before) > pen(after) == (large == a);
    }

    private static double smaller(double a, double b) {
        return Math.min(a, b) / Math.max(a, b);
    }

    private static List<List<List<Upright>>> together(List<List<Upright>> runs, Frame frame) {
        List<List<List<Upright>>> sizes = new ArrayList<>();
        for (List<Upright> run : runs) {
            Optional<List<List<Upright>>> same = sizes.stream().filter(size -> size.stream().noneMatch(other -> differ(other, run, frame))).findFirst();
            if (same.isPresent()) {
                same.get().add(run);
            } else {
                sizes.add(new ArrayList<>(List.of(run)));
            }
        }
        return sizes;
    }

    /** Letters less than half as high as the highest are of another size wherever they stand. */
    private static List<LineModel> byHeight(List<Upright> letters, Frame frame, double leastConfidence) {
        LineModel all = model(letters, frame);
        double most = all.members().stream().mapToDouble(member -> member.box().getMaxY() - all.base()).max().orElse(0);
        List<Upright> large = all.members().stream().filter(member -> member.box().getMaxY() - all.base() > OTHER_SIZE * most).toList();
        List<Upright> small = all.members().stream().filter(member -> !large.contains(member)).toList();
        if (small.size() < 2 || large.isEmpty()) {
            return List.of(all);
        }
        List<LineModel> apart = List.of(model(large, frame), model(small, frame));
        return apart.stream().allMatch(model -> isSure(model, leastConfidence)) ? apart : List.of(all);
    }
}
