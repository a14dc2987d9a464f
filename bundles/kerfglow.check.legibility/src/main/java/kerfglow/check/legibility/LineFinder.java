// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.legibility;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;

/**
 * Finds the lines of lettering among pieces of one colour.
 *
 * <p>First what goes round most of a circle, then rows that run about level, then stacks, then rows in whatever direction the nearest neighbours of what is left lie.
 * A row that stands on no straight line is tried on a circle, which then takes in what follows along it. What of a row does not stand
 * on the line is tried again by itself. Cost: near n log n in the pieces, times the vertices of each.
 */
final class LineFinder {
    /** Lettering runs in few directions on one sign; more rounds would only find chance. */
    private static final int MOST_DIRECTIONS = 6;
    /** A line this far off the direction of its row may have lost letters to other rows. Assumed. */
    private static final double TURNED = Math.toRadians(1);
    /** A circle through a short straight row must gain so many letters to be believed. Assumed. */
    private static final int MORE_ON_CIRCLE = 2;
    private static final int LONG_ROW = 4;
    private static final double HALF_TURN = Math.PI;
    /** More pieces in a row are no words in one piece each. */
    private static final int MOST_WORDS = 8;
    /** A sign with more words in one piece is a picture; only bounds the work. */
    private static final int MOST_TRIED = 200;
    /** Less of a ring is one of two lines on it, one with heads outward above and one with heads inward below. Assumed. */
    private static final double MOST_OF_RING = 0.85;
    /** Two sizes in one line; small letters without ascenders are never so much smaller than capitals. Assumed. */
    private static final double OTHER_SIZE = 0.5;

    /** What follows along a circle ends within this of the base line and the cap height, in cap heights. Assumed. */
    private static final double DESCENT = 0.4;
    private static final double CAP_SPREAD = 1.15;

    private final double leastConfidence;
    private final Runnable pulse;
    private final Set<Piece> left;
    private final List<Line> lines = new ArrayList<>();
    private int words;

    private LineFinder(List<Piece> pieces, double leastConfidence, Runnable pulse) {
        this.leastConfidence = leastConfidence;
        this.pulse = pulse;
        this.left = new LinkedHashSet<>(pieces);
    }

    /** What was found: the lines, and the pieces that are in none. */
    record Found(List<Line> lines, List<Piece> left) {
    }

    /**
     * Finds the lines of lettering.
     *
     * @param leastConfidence what counts as lettering, 0 to 1
     */
    static Found find(List<Piece> pieces, double leastConfidence, Runnable pulse) {
        LineFinder finder = new LineFinder(pieces, leastConfidence, pulse);
        finder.rings();
        Directions.plain(List.copyOf(finder.left), pulse).ifPresent(finder::rows);
        finder.rows(0);
        finder.stacks();
        for (int i = 0; i < MOST_DIRECTIONS && finder.left.size() > 1; i++) {
            Optional<Double> direction = Directions.common(List.copyOf(finder.left), i, pulse);
            if (direction.isEmpty()) {
                break;
            }
            finder.rows(direction.get());
        }
        return new Found(finder.lines, List.copyOf(finder.left));
    }

    private void rings() {
        for (List<Piece> ring : Rings.of(stroked(), pulse)) {
            Optional<LineFitter.Fit> fit = CircleFitter.through(ring, 0);
            if (fit.isPresent() && fit.get().size() >= MOST_OF_RING * ring.size() && Likeness.of(fit.get().model(), ring.size()) >= leastConfidence) {
                take(alongCircle(fit.get()));
            }
        }
    }

    private void rows(double angle) {
        List<List<Piece>> rows = Rows.along(stroked(), angle, pulse);
        rows.stream().filter(row -> row.size() >= LONG_ROW).forEach(row -> lines(row, angle));
        rows.stream().filter(row -> row.size() < LONG_ROW).forEach(row -> lines(row, angle)); // what a circle has not taken in
    }

    private List<Piece> stroked() {
        return left.stream().filter(piece -> leastConfidence <= 0 || Likeness.isStroked(piece)).toList();
    }

    private void lines(List<Piece> row, double angle) {
        List<Piece> rest = row.stream().filter(left::contains).toList();
        while (!rest.isEmpty()) {
            pulse.run();
            Optional<LineFitter.Fit> fit = fit(rest, angle);
            if (fit.isEmpty()) {
                break;
            }
            take(widened(fit.get(), angle));
            List<Piece> before = rest;
            rest = before.stream().filter(left::contains).toList();
            if (rest.size() == before.size()) {
                break;
            }
        }
    }

    private Optional<LineFitter.Fit> fit(List<Piece> row, double angle) {
        List<LineFitter.Fit> fits = new ArrayList<>(List.of(LineFitter.best(row, angle)));
        if (row.size() <= MOST_WORDS && mayBeWords(row, fits.get(0)) && words++ < MOST_TRIED) {
            return words(row, angle);
        }
        if (row.size() == 1) {
            fits.add(LineFitter.best(row, LineFitter.longSide(row.get(0))));
        }
        for (LineFitter.Fit each : List.copyOf(fits)) {
            if (Math.abs(Math.cos(each.frame().angle())) < Math.sin(Directions.LIKE)) {
                fits.add(LineFitter.best(row, each.frame().angle() + HALF_TURN)); // upright rows read either way
            }
        }
        return fits.stream().filter(fit -> fit.size() > 0 && isLettering(fit, row.size()))
                .max(Comparator.comparingInt(LineFinder::standing).thenComparingInt(LineFitter.Fit::size));
    }

    /** By itself, or as two sizes that are each. */
    private boolean isLettering(LineFitter.Fit fit, int asked) {
        return Likeness.of(fit.model(), asked) >= leastConfidence || Sizes.of(fit, leastConfidence).size() > 1;
    }

    private static boolean mayBeWords(List<Piece> row, LineFitter.Fit fit) {
        return LineModel.isJoined(fit.model().members().isEmpty() ? row.stream().map(piece -> Upright.of(piece, fit.frame())).toList() : fit.model().members())
                || row.size() == 1 && Upright.of(row.get(0), Frame.straight(LineFitter.longSide(row.get(0)))).ends().joined();
    }

    /** Words in one piece each: the direction, the bend and the way up that make their profile most even. */
    private Optional<LineFitter.Fit> words(List<Piece> row, double angle) {
        LineFitter.Fit found = WordFitter.best(row, angle);
        List<LineFitter.Fit> fits = new ArrayList<>(List.of(found));
        if (Math.abs(Math.cos(found.frame().angle())) < Math.sin(Directions.LIKE)) {
            fits.add(WordFitter.best(row, angle + HALF_TURN));
        }
        return fits.stream().filter(fit -> fit.size() > 0 && Likeness.of(fit.model(), row.size()) >= leastConfidence)
                .max(Comparator.comparingDouble(WordFitter::evenness));
    }

    private static int standing(LineFitter.Fit fit) {
        LineModel model = fit.model();
        return (int) model.members().stream()
                .filter(member -> Math.abs(member.ends().bottom().height() - model.base()) <= LineModel.NEAR * model.capMm()).count();
    }

    /** What else stands on the line now that its direction is known, or on a circle that the row was only a short piece of. */
    private LineFitter.Fit widened(LineFitter.Fit found, double angle) {
        if (found.frame().form() == Frame.Form.ARCHED) {
            return alongCircle(found);
        }
        LineFitter.Fit fit = found;
        double exact = found.frame().angle();
        Piece first = found.model().members().get(0).piece();
        if (Math.abs(Math.IEEEremainder(exact - angle, HALF_TURN)) > TURNED) {
            List<Piece> strip = stroked().stream().filter(piece -> isAbreast(piece, found)).toList();
            for (List<Piece> row : Rows.along(strip, exact, pulse)) {
                LineFitter.Fit wider = row.contains(first) ? LineFitter.best(row, exact) : fit;
                fit = wider.size() > fit.size() && Likeness.of(wider.model(), row.size()) >= leastConfidence ? wider : fit;
            }
        }
        Optional<LineFitter.Fit> round = CircleFitter.through(fit.model().members().stream().map(Upright::piece).toList(), exact);
        if (round.isPresent()) {
            LineFitter.Fit arch = alongCircle(round.get());
            return arch.size() >= fit.size() + MORE_ON_CIRCLE ? arch : fit;
        }
        return fit;
    }

    /** True for what lies about as high as a straight line, however far along it. */
    private static boolean isAbreast(Piece piece, LineFitter.Fit fit) {
        double height = fit.frame().upright(piece).transform(piece.centre(), new Coordinate()).y - fit.model().base();
        return Math.abs(height) <= 2 * fit.model().capMm();
    }

    private void take(LineFitter.Fit fit) {
        List<LineModel> models = Sizes.of(fit, leastConfidence);
        models.forEach(model -> model.members().forEach(member -> left.remove(member.piece())));
        for (LineModel model : models) {
            double confidence = Likeness.of(model, model.members().size());
            List<Piece> marks = Marks.of(Line.of(fit.frame(), model, List.of(), confidence), left, leastConfidence, pulse);
            marks.forEach(left::remove);
            lines.add(Line.of(fit.frame(), model, marks, confidence));
        }
    }

    /** Takes in what follows along the circle; what few letters did not tell, whether heads point outward, all of them may. */
    private LineFitter.Fit alongCircle(LineFitter.Fit found) {
        LineFitter.Fit fit = extended(found);
        return CircleFitter.through(fit.model().members().stream().map(Upright::piece).toList(), fit.frame().angle())
                .filter(other -> other.frame().isOutward() != fit.frame().isOutward()).map(this::extended).orElse(fit);
    }

    private LineFitter.Fit extended(LineFitter.Fit found) {
        LineFitter.Fit fit = found;
        while (true) {
            pulse.run();
            List<Piece> members = new ArrayList<>(fit.model().members().stream().map(Upright::piece).toList());
            int before = members.size();
            Set<Piece> known = new HashSet<>(members);
            for (Piece piece : left) {
                if (!known.contains(piece) && follows(piece, fit)) {
                    members.add(piece);
                }
            }
            if (members.size() == before) {
                return fit;
            }
            Optional<LineFitter.Fit> next = CircleFitter.extended(members, fit);
            if (next.isEmpty() || next.get().size() <= fit.size()) {
                return fit;
            }
            fit = next.get();
        }
    }

    private static boolean follows(Piece piece, LineFitter.Fit fit) {
        double cap = fit.model().capMm();
        Envelope box = Upright.of(piece, fit.frame()).box();
        double base = fit.model().base();
        if (Math.abs(box.getMinY() - base) > DESCENT * cap || box.getMaxY() - base > CAP_SPREAD * cap || box.getMaxY() - base < OTHER_SIZE * cap) {
            return false;
        }
        return fit.model().members().stream().anyMatch(member -> Marks.gap(member.box(), box) <= Rows.MOST_GAP * cap);
    }

    private void stacks() {
        List<List<Piece>> turned = Rows.along(List.copyOf(left), HALF_TURN / 2, pulse);
        for (List<Piece> stack : Rows.stacks(List.copyOf(left), pulse)) {
            if (stack.size() > 2 && !isSideways(stack, turned)) {
                LineFitter.Fit fit = LineFitter.at(stack, Frame.stacked());
                if (fit.size() > 0 && Likeness.of(fit.model(), stack.size()) >= leastConfidence) {
                    take(fit);
                }
            }
        }
    }

    /** True when more pieces stand on one line that is turned by a quarter, or these alone are as wide as one another but not as high. */
    private static boolean isSideways(List<Piece> stack, List<List<Piece>> turned) {
        for (List<Piece> row : turned) {
            if (row.contains(stack.get(0)) && LineFitter.best(row, HALF_TURN / 2).size() > stack.size()) {
                return true;
            }
        }
        return spread(stack.stream().mapToDouble(piece -> piece.shape().getEnvelopeInternal().getWidth()).sorted().toArray())
                < spread(stack.stream().mapToDouble(piece -> piece.shape().getEnvelopeInternal().getHeight()).sorted().toArray());
    }

    private static double spread(double[] sorted) {
        return (sorted[sorted.length - 1] - sorted[0]) / sorted[sorted.length - 1];
    }
}
