// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.sheet;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import java.util.function.Predicate;
import kerfglow.geometry.RectangleFit;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;

/**
 * Looks for the straight seams that cut a part into the fewest pieces that fit, then cross least that they had better not, then run least
 * through material.
 *
 * <p>Tried are seams upright, level, and along and across the smallest rectangle around the part, all of one direction; among them the
 * fewest pieces are found exactly, since what fits between two seams also fits between two closer ones. Where one direction alone does not
 * do, the part is cut into bands as wide as a sheet allows and each band by itself.
 */
final class Splitter {
    /** Directions closer than this, degrees, are one. */
    private static final double SAME_DIRECTION_DEGREES = 1;
    /** More pieces than this are no plan. */
    private static final int MOST_PIECES = 64;
    /** Bands are cut once more, and that is all: a band as wide as a sheet's side never needs bands of its own. */
    private static final int MOST_LEVELS = 2;
    private static final double HALF_TURN = 180;
    private static final double QUARTER_TURN = 90;
    /** Seams whose lengths agree to this, mm, are equal, and the one nearer the middle of its range is taken. */
    private static final double SAME_LENGTH_MM = 0.1;

    private static final Comparator<Split> BEST = Comparator.comparingInt((Split split) -> split.pieces().size())
            .thenComparingInt(Split::penalty).thenComparingDouble(Split::lengthMm);

    private final List<StockSheet.Usable> sheets;
    private final Sweep.Limits limits;
    private final double chordErrorMm;
    private final Runnable pulse;

    Splitter(List<StockSheet.Usable> sheets, Sweep.Limits limits, double chordErrorMm, Runnable pulse) {
        this.sheets = sheets.stream().filter(sheet -> sheet.shortSideMm() > 0).toList();
        this.limits = limits;
        this.chordErrorMm = chordErrorMm;
        this.pulse = pulse;
    }

    /** Empty when no plan of at most 64 pieces was found. */
    Optional<Split> split(Polygon part) {
        return split(part, 0);
    }

    private boolean fits(Geometry shape) {
        pulse.run();
        RectangleFit fit = new RectangleFit(shape);
        return sheets.stream().anyMatch(sheet -> sheet.fit(fit).isPresent());
    }

    private Optional<Split> split(Polygon part, int level) {
        if (sheets.stream().noneMatch(sheet -> part.getArea() <= MOST_PIECES * sheet.longSideMm() * sheet.shortSideMm())) {
            return Optional.empty(); // a drawing at the wrong scale; looking for its thousands of seams takes minutes
        }
        if (fits(part)) {
            return Optional.of(new Split(List.of(), List.of(part)));
        }
        double rectangle = new RectangleFit(part).smallestRectangle().degrees();
        List<Double> directions = new ArrayList<>();
        for (double each : new double[] {0, QUARTER_TURN, HALF_TURN - rectangle, QUARTER_TURN - rectangle}) {
            double degrees = ((each % HALF_TURN) + HALF_TURN) % HALF_TURN;
            if (directions.stream().noneMatch(other -> Math.min(Math.abs(other - degrees), HALF_TURN - Math.abs(other - degrees)) < SAME_DIRECTION_DEGREES)) {
                directions.add(degrees);
            }
        }
        List<Split> found = new ArrayList<>();
        List<Sweep> sweeps = new ArrayList<>();
        Sweep.Traits traits = Sweep.Traits.of(part, limits, chordErrorMm, pulse);
        for (double degrees : directions) {
            Sweep sweep = new Sweep(part, traits, degrees, limits, pulse);
            sweeps.add(sweep);
            seams(sweep, this::fits).ifPresent(cuts -> found.add(split(sweep, degrees, cuts)));
        }
        if (found.isEmpty() && level < MOST_LEVELS) {
            TreeSet<Double> sides = new TreeSet<>();
            sheets.forEach(sheet -> sides.addAll(List.of(sheet.longSideMm(), sheet.shortSideMm())));
            for (int i = 0; i < directions.size(); i++) {
                for (double side : sides) {
                    bands(sweeps.get(i), directions.get(i), side, level).ifPresent(found::add);
                }
            }
        }
        return found.stream().filter(split -> split.pieces().size() <= MOST_PIECES).min(BEST);
    }

    private static Split split(Sweep sweep, double degrees, List<Sweep.Seam> cuts) {
        return new Split(cuts.stream().map(seam -> new Split.Cut(sweep.line(seam), seam.lengthMm(), degrees, seam.near())).toList(), sweep.pieces(cuts));
    }

    private Optional<Split> bands(Sweep sweep, double degrees, double sideMm, int level) {
        List<Sweep.Seam> all = sweep.seams();
        if (all.isEmpty() || (all.get(all.size() - 1).x() - all.get(0).x()) / sideMm > MOST_PIECES) {
            return Optional.empty();
        }
        Optional<List<Sweep.Seam>> cuts = ranges(sweep, (left, right) -> Math.min(right.x(), sweep.end().x() - 1) - Math.max(left.x(), sweep.start().x() + 1) <= sideMm);
        if (cuts.isEmpty() || cuts.get().isEmpty()) {
            return Optional.empty();
        }
        Split bands = split(sweep, degrees, cuts.get());
        List<Split.Cut> lines = new ArrayList<>(bands.cuts());
        List<Polygon> pieces = new ArrayList<>();
        for (Polygon band : bands.pieces()) {
            Optional<Split> own = split(band, level + 1);
            if (own.isEmpty()) {
                return Optional.empty();
            }
            lines.addAll(own.get().cuts());
            pieces.addAll(own.get().pieces());
        }
        return Optional.of(new Split(lines, pieces));
    }

    private Optional<List<Sweep.Seam>> seams(Sweep sweep, Predicate<Geometry> fits) {
        return ranges(sweep, (left, right) -> fits.test(sweep.between(left, right)));
    }

    /** Whether what lies between two seams will do; what lies between closer ones then does too. */
    private interface Range {
        boolean holds(Sweep.Seam left, Sweep.Seam right);
    }

    /** The fewest seams between which everything holds, each the best of those that leave it at that. */
    private static Optional<List<Sweep.Seam>> ranges(Sweep sweep, Range range) {
        List<Sweep.Seam> at = new ArrayList<>(sweep.seams());
        at.add(0, sweep.start());
        at.add(sweep.end());
        int last = at.size() - 1;
        List<Integer> latest = new ArrayList<>();
        for (int from = 0; from < last;) {
            int to = farthest(at, from, range);
            if (to == from || latest.size() > MOST_PIECES) {
                return Optional.empty();
            }
            latest.add(to);
            from = to;
        }
        int cuts = latest.size() - 1;
        int[] earliest = new int[cuts + 1];
        earliest[cuts] = last;
        for (int i = cuts - 1; i >= 0; i--) {
            earliest[i] = nearest(at, earliest[i + 1], range);
        }
        List<Sweep.Seam> chosen = new ArrayList<>();
        int before = 0;
        for (int i = 0; i < cuts; i++) {
            int low = Math.max(earliest[i], before + 1);
            int high = Math.min(farthest(at, before, range), last - 1);
            before = best(at, low, high);
            chosen.add(at.get(before));
        }
        return Optional.of(chosen);
    }

    private static int farthest(List<Sweep.Seam> at, int from, Range range) {
        int low = from;
        int high = at.size() - 1;
        while (low < high) {
            int middle = (low + high + 1) / 2;
            if (range.holds(at.get(from), at.get(middle))) {
                low = middle;
            } else {
                high = middle - 1;
            }
        }
        return low;
    }

    private static int nearest(List<Sweep.Seam> at, int to, Range range) {
        int low = 0;
        int high = to;
        while (low < high) {
            int middle = (low + high) / 2;
            if (range.holds(at.get(middle), at.get(to))) {
                high = middle;
            } else {
                low = middle + 1;
            }
        }
        return low;
    }

    private static int best(List<Sweep.Seam> at, int low, int high) {
        int best = low;
        double middle = (at.get(low).x() + at.get(high).x()) / 2;
        for (int i = low + 1; i <= high; i++) {
            Sweep.Seam seam = at.get(i);
            Sweep.Seam other = at.get(best);
            boolean better = seam.penalty() != other.penalty() ? seam.penalty() < other.penalty()
                    : Math.abs(seam.lengthMm() - other.lengthMm()) > SAME_LENGTH_MM ? seam.lengthMm() < other.lengthMm()
                            : Math.abs(seam.x() - middle) < Math.abs(other.x() - middle);
            best = better ? i : best;
        }
        return best;
    }
}
