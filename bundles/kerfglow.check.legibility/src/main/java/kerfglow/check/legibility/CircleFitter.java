// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.legibility;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.util.AffineTransformation;

/** Finds the circle that pieces stand on, heads outward or inward. */
final class CircleFitter {
    /** Each round moves the circle onto the feet that it explains; the last rounds change nothing that counts. */
    private static final int ROUNDS = 4;
    /** Through four points some circle nearly always passes. */
    static final int LEAST_ON_CIRCLE = 5;
    /** A flatter arch, its rise in heights of the letters, is a straight line. Assumed. */
    private static final double LEAST_RISE = 0.05;
    /** No lettering stands on a circle smaller than its letters. */
    private static final double LEAST_RADIUS = 1.0;
    /** What counts as standing while the circle settles, in heights of a letter. Assumed. */
    private static final double COARSE = 0.3;
    private static final double FINE = 0.12;
    /** Lettering is set to be read upright; upside down must explain so much more. Assumed. */
    private static final double UPRIGHT_SHARE = 0.6;
    /** An arch whose middle stands as near to upright as this is not upside down. Assumed. */
    private static final double LEVEL = Math.toRadians(1.5);

    private CircleFitter() {
    }

    /** The circle through the middles of the pieces, then moved onto their lower ends; both ways of facing are tried. */
    static Optional<LineFitter.Fit> through(List<Piece> pieces, double angle) {
        Optional<double[]> guess = throughPoints(pieces.stream().map(Piece::centre).toList());
        Optional<LineFitter.Fit> best = Optional.empty();
        if (guess.isEmpty()) {
            return best;
        }
        for (boolean outward : new boolean[] {true, false}) {
            Optional<LineFitter.Fit> fit = onto(pieces, settled(pieces, guess.get(), outward, angle), outward, angle);
            if (fit.isPresent() && (best.isEmpty() || beats(fit.get(), best.get()))) {
                best = fit;
            }
        }
        return best;
    }

    /** The middles of high and low letters lie on no one circle; the lower ends of all but descenders do. */
    private static double[] settled(List<Piece> pieces, double[] guess, boolean outward, double angle) {
        double[] circle = guess;
        for (int i = 0; i < ROUNDS; i++) {
            Coordinate centre = new Coordinate(circle[0], circle[1]);
            Frame frame = Frame.circle(centre, circle[2], outward, middle(pieces, centre, outward, angle));
            List<Upright> letters = pieces.stream().map(piece -> Upright.of(piece, frame)).toList();
            double[] bottoms = letters.stream().mapToDouble(letter -> letter.box().getMinY()).sorted().toArray();
            double[] heights = letters.stream().mapToDouble(letter -> letter.box().getHeight()).sorted().toArray();
            double usual = bottoms[bottoms.length / 2];
            double near = heights[heights.length / 2] * (i + 1 < ROUNDS ? COARSE : FINE);
            List<Coordinate> feet = letters.stream().filter(letter -> Math.abs(letter.box().getMinY() - usual) <= near)
                    .map(letter -> Frame.inverse(letter.up()).transform(new Coordinate(letter.box().centre().x, letter.box().getMinY()), new Coordinate()))
                    .toList();
            Optional<double[]> next = throughPoints(feet);
            if (next.isEmpty()) {
                return circle;
            }
            circle = next.get();
        }
        return circle;
    }

    /** The circle of a fit moved onto more pieces. */
    static Optional<LineFitter.Fit> extended(List<Piece> pieces, LineFitter.Fit fit) {
        Coordinate centre = fit.frame().centre();
        double[] guess = {centre.x, centre.y, fit.frame().radiusMm()};
        boolean outward = fit.frame().isOutward();
        return onto(pieces, settled(pieces, guess, outward, fit.frame().angle()), outward, fit.frame().angle());
    }

    private static Optional<LineFitter.Fit> onto(List<Piece> pieces, double[] guess, boolean outward, double angle) {
        double[] circle = guess;
        Optional<LineFitter.Fit> fit = Optional.empty();
        for (int i = 0; i < ROUNDS; i++) {
            Coordinate centre = new Coordinate(circle[0], circle[1]);
            LineFitter.Fit next = LineFitter.at(pieces, Frame.circle(centre, circle[2], outward, middle(pieces, centre, outward, angle)));
            if (next.size() < LEAST_ON_CIRCLE || fit.isPresent() && next.size() < fit.get().size()) {
                break;
            }
            fit = Optional.of(next);
            Optional<double[]> refined = throughPoints(feet(next));
            if (refined.isEmpty()) {
                break;
            }
            circle = refined.get();
        }
        return fit.filter(CircleFitter::isArch);
    }

    private static boolean beats(LineFitter.Fit fit, LineFitter.Fit other) {
        boolean upright = isUpright(fit);
        if (upright != isUpright(other)) {
            return upright ? fit.size() >= UPRIGHT_SHARE * other.size() : UPRIGHT_SHARE * fit.size() > other.size();
        }
        if (fit.size() != other.size()) {
            return fit.size() > other.size();
        }
        return Math.cos(fit.frame().angle()) > Math.cos(other.frame().angle());
    }

    private static boolean isUpright(LineFitter.Fit fit) {
        return Math.cos(fit.frame().angle()) > -Math.sin(LEVEL);
    }

    /** The turn of a letter in the middle of the line: opposite the widest stretch of the circle that is bare of middles. */
    private static double middle(List<Piece> pieces, Coordinate centre, boolean outward, double angle) {
        double sign = outward ? 1 : -1;
        double[] turns = pieces.stream().filter(piece -> piece.centre().distance(centre) > 0)
                .mapToDouble(piece -> Math.atan2(sign * (piece.centre().x - centre.x), -sign * (piece.centre().y - centre.y))).sorted().toArray();
        double[] bare = barest(turns);
        return turns.length == 0 ? angle : Math.IEEEremainder(bare[0] + bare[1] / 2 + Math.PI, 2 * Math.PI);
    }

    /**
     * The widest stretch between neighbours on a circle.
     *
     * @param turns radians, rising
     * @return where it begins, and how far it goes
     */
    static double[] barest(double[] turns) {
        double[] bare = {0, 0};
        for (int i = 0; i < turns.length; i++) {
            double next = i + 1 < turns.length ? turns[i + 1] : turns[0] + 2 * Math.PI;
            if (next - turns[i] > bare[1]) {
                bare[0] = turns[i];
                bare[1] = next - turns[i];
            }
        }
        return bare;
    }

    /** The feet of the letters that stand on the base line, on the sign. */
    private static List<Coordinate> feet(LineFitter.Fit fit) {
        List<Coordinate> feet = new ArrayList<>();
        for (Upright letter : fit.model().members()) {
            AffineTransformation back = Frame.inverse(letter.up());
            Level bottom = letter.ends().bottom();
            if (Math.abs(bottom.height() - fit.model().base()) < LineModel.NEAR * fit.model().capMm()) {
                double along = letter.box().centre().x;
                feet.add(back.transform(new Coordinate(along, bottom.height()), new Coordinate()));
            }
        }
        return feet;
    }

    private static boolean isArch(LineFitter.Fit fit) {
        double cap = fit.model().capMm();
        double least = Double.POSITIVE_INFINITY;
        double most = Double.NEGATIVE_INFINITY;
        for (Upright letter : fit.model().members()) {
            least = Math.min(least, letter.box().centre().x);
            most = Math.max(most, letter.box().centre().x);
        }
        double radius = fit.frame().radiusMm();
        double half = Math.min((most - least) / radius / 2, Math.PI);
        return radius >= LEAST_RADIUS * cap && radius * (1 - Math.cos(half)) >= LEAST_RISE * cap;
    }

    /**
     * The circle of least squared algebraic distance (I. Kasa, A circle fitting procedure and its error analysis, 1976).
     *
     * @return centre x, centre y, radius; empty for fewer than four points and for points on a line
     */
    static Optional<double[]> throughPoints(List<Coordinate> points) {
        if (points.size() < LEAST_ON_CIRCLE) {
            return Optional.empty();
        }
        double meanX = points.stream().mapToDouble(point -> point.x).average().orElseThrow();
        double meanY = points.stream().mapToDouble(point -> point.y).average().orElseThrow();
        double uu = 0;
        double uv = 0;
        double vv = 0;
        double uz = 0;
        double vz = 0;
        for (Coordinate point : points) {
            double u = point.x - meanX;
            double v = point.y - meanY;
            double z = u * u + v * v;
            uu += u * u;
            uv += u * v;
            vv += v * v;
            uz += u * z;
            vz += v * z;
        }
        double det = uu * vv - uv * uv;
        if (det <= Math.ulp(uu + vv) * (uu + vv)) {
            return Optional.empty();
        }
        double a = (uz * vv - vz * uv) / det / 2;
        double b = (vz * uu - uz * uv) / det / 2;
        return Optional.of(new double[] {a + meanX, b + meanY, Math.sqrt(a * a + b * b + (uu + vv) / points.size())});
    }
}
