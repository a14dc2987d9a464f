// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.legibility;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.simplify.DouglasPeuckerSimplifier;

/**
 * Finds the straight line or the circle that words in one piece are drawn along.
 *
 * <p>A word has no letters to tell where it stands; its profile has: along the right line the dips of its outline lie on few levels,
 * and so do the rises. Directions and bends are tried in steps, on a coarse outline, then the best is refined. A bend must make the
 * profile clearly more even, for a few dips lie on some circle by chance.
 */
final class WordFitter {
    private static final GeometryFactory FACTORY = new GeometryFactory();
    /** Directions tried about the guess, radians. Assumed: the longer side of a word tells its direction like this. */
    private static final double[] TURNS = IntStream.rangeClosed(-3, 3).mapToDouble(i -> Math.toRadians(3 * i)).toArray();
    /** Bends tried: the angle that the word spans on its circle, radians; beyond it a word closes to a ring. Assumed. */
    private static final double[] SPANS = {0, 0.2, 0.4, 0.6, 0.8, 1, 1.25, 1.5, 1.75, 2, 2.3, 2.6};
    private static final int REFINED = 6;
    /** Levels are this exact, in heights of the word: drawn letters vary. Assumed. */
    private static final double NEAR = 0.04;
    /** Rises tell less than dips: ascenders are drawn freely. Assumed. */
    private static final double RISES = 0.5;
    /** By so much a bend must be more even, of 1.5 at most. Assumed. */
    private static final double CLEARLY = 0.1;
    /** What is left out of the coarse outline, in heights of the word. */
    private static final double COARSE = 0.006;
    /** Dips and rises looked at; more tell no more. */
    private static final int MOST_ENDS = 40;

    private record Trial(double angle, double bend, List<Double> bottoms, List<Double> tops, double height) {
    }

    private final List<Piece> coarse = new ArrayList<>();
    private final Coordinate middle;
    private final double length;
    private double height = Double.POSITIVE_INFINITY;
    private int most;

    private WordFitter(List<Piece> pieces) {
        Envelope all = new Envelope();
        double x = 0;
        double y = 0;
        double area = 0;
        for (Piece piece : pieces) {
            Envelope box = piece.shape().getEnvelopeInternal();
            all.expandToInclude(box);
            Coordinate centroid = piece.shape().getCentroid().getCoordinate();
            x += piece.shape().getArea() * centroid.x;
            y += piece.shape().getArea() * centroid.y;
            area += piece.shape().getArea();
            double tolerance = COARSE * Math.min(box.getWidth(), box.getHeight());
            coarse.add(DouglasPeuckerSimplifier.simplify(FACTORY.createPolygon(piece.shape().getExteriorRing()), tolerance) instanceof Polygon simple && !simple.isEmpty()
                    ? new Piece(piece.part(), piece.centre(), simple) : piece);
        }
        middle = new Coordinate(x / area, y / area);
        length = Math.hypot(all.getWidth(), all.getHeight());
    }

    /**
     * The line or circle of words.
     *
     * @param angle by which they are turned clockwise, about, radians
     */
    static LineFitter.Fit best(List<Piece> pieces, double angle) {
        WordFitter fitter = new WordFitter(pieces);
        List<Trial> straight = new ArrayList<>();
        List<Trial> bent = new ArrayList<>();
        List<Double> angles = new ArrayList<>(List.of(angle));
        if (pieces.size() == 1) {
            double side = LineFitter.longSide(pieces.get(0));
            angles.add(Math.cos(side - angle) < 0 ? side + Math.PI : side);
        }
        for (double guess : angles) {
            for (double turn : TURNS) {
                for (double span : SPANS) {
                    if (span == 0) {
                        straight.add(fitter.trial(guess + turn, 0));
                    } else {
                        bent.add(fitter.trial(guess + turn, span / fitter.length));
                        bent.add(fitter.trial(guess + turn, -span / fitter.length));
                    }
                }
            }
        }
        Trial line = fitter.refined(straight.stream().max(Comparator.comparingDouble(fitter::evenness)).orElseThrow());
        Trial arch = fitter.refined(bent.stream().max(Comparator.comparingDouble(fitter::evenness)).orElseThrow());
        Trial best = fitter.evenness(arch) > fitter.evenness(line) + CLEARLY ? arch : line;
        return LineFitter.at(pieces, fitter.frame(best.angle(), best.bend()));
    }

    /** How even the profile is along a fit, 0 to 1.5; for telling two readings of one row apart. */
    static double evenness(LineFitter.Fit fit) {
        WordFitter fitter = new WordFitter(fit.model().members().stream().map(Upright::piece).toList());
        List<Double> bottoms = new ArrayList<>();
        List<Double> tops = new ArrayList<>();
        fit.model().members().forEach(member -> {
            member.ends().bottoms().forEach(bottom -> bottoms.add(bottom.height()));
            member.ends().tops().forEach(top -> tops.add(top.height()));
        });
        fitter.height = fit.model().capMm();
        return fitter.evenness(new Trial(0, 0, bottoms, tops, fit.model().capMm()));
    }

    private Frame frame(double angle, double bend) {
        if (bend == 0) {
            return Frame.straight(angle);
        }
        double radius = 1 / Math.abs(bend);
        double away = bend > 0 ? -radius : radius; // heads outward: the centre lies below
        return Frame.circle(new Coordinate(middle.x + away * Math.sin(angle), middle.y - away * Math.cos(angle)), radius, bend > 0, angle);
    }

    private Trial trial(double angle, double bend) {
        Frame frame = frame(angle, bend);
        List<Double> bottoms = new ArrayList<>();
        List<Double> tops = new ArrayList<>();
        double least = Double.POSITIVE_INFINITY;
        double greatest = Double.NEGATIVE_INFINITY;
        for (Piece piece : coarse) {
            Upright letter = Upright.of(piece, frame);
            letter.ends().bottoms().forEach(bottom -> bottoms.add(bottom.height()));
            letter.ends().tops().forEach(top -> tops.add(top.height()));
            least = Math.min(least, letter.box().getMinY());
            greatest = Math.max(greatest, letter.box().getMaxY());
        }
        height = Math.min(height, greatest - least);
        most = Math.max(most, bottoms.size());
        return new Trial(angle, bend, some(bottoms), some(tops), greatest - least);
    }

    private static List<Double> some(List<Double> all) {
        int step = Math.max(1, all.size() / MOST_ENDS);
        return IntStream.range(0, all.size()).filter(i -> i % step == 0).mapToObj(all::get).toList();
    }

    private Trial refined(Trial from) {
        Trial best = from;
        double turn = TURNS[1] - TURNS[0];
        double bend = from.bend() == 0 ? 0 : (SPANS[1] - SPANS[0]) / length;
        for (int i = 0; i < REFINED; i++) {
            turn /= 2;
            bend /= 2;
            List<Trial> around = new ArrayList<>(List.of(best, trial(best.angle() + turn, best.bend()), trial(best.angle() - turn, best.bend())));
            if (bend > 0) {
                around.add(trial(best.angle(), best.bend() + bend));
                around.add(trial(best.angle(), best.bend() - bend));
            }
            best = around.stream().max(Comparator.comparingDouble(this::evenness)).orElseThrow();
        }
        return best;
    }

    private double evenness(Trial trial) {
        double near = NEAR * height;
        double few = Math.min(1, trial.bottoms().size() / (0.8 * Math.min(most, MOST_ENDS)));
        return few * (onLevels(trial.bottoms(), 1, near) + RISES * onLevels(trial.tops(), 2, near));
    }

    /** The share of values that lie on the best one or two levels; near ones count in part. */
    private static double onLevels(List<Double> values, int levels, double near) {
        int n = values.size();
        double[][] close = new double[n][n];
        double best = 0;
        for (int i = 0; i < n; i++) {
            double sum = 0;
            for (int k = 0; k < n; k++) {
                double off = (values.get(i) - values.get(k)) / near;
                close[i][k] = Math.exp(-off * off);
                sum += close[i][k];
            }
            best = Math.max(best, sum / n);
        }
        for (int i = 0; levels > 1 && i < n; i++) {
            for (int j = 0; j < i; j++) {
                double sum = 0;
                for (int k = 0; k < n; k++) {
                    sum += Math.max(close[i][k], close[j][k]);
                }
                best = Math.max(best, sum / n);
            }
        }
        return best;
    }
}
