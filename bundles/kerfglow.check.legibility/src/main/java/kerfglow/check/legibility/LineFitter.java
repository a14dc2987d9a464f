// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.legibility;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.locationtech.jts.algorithm.MinimumDiameter;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.util.AffineTransformation;

/** Finds the straight line or the circle that pieces stand on. */
final class LineFitter {
    /** A frame, and the levels of the pieces in it. */
    record Fit(Frame frame, LineModel model) {
        int size() {
            return model.members().size();
        }
    }

    /** Each round turns the line onto the ends that it explains; the last rounds change nothing that counts. */
    private static final int ROUNDS = 4;
    /** Directions as near to level or upright as this, with no flat end to tell, are meant to be so. Assumed. */
    private static final double SNAP = Math.toRadians(1.5);
    /** Through four points some circle nearly always passes. */
    private static final int LEAST_ON_CIRCLE = 5;
    /** More pieces that hang together are a picture or a straight line of small print; slopes and circles are not tried on them. Assumed. */
    private static final int MOST_ON_CIRCLE = 250;
    /** A flatter arch, its rise in heights of the letters, is a straight line. Assumed. */
    private static final double LEAST_RISE = 0.05;
    /** No lettering stands on a circle smaller than its letters. */
    private static final double LEAST_RADIUS = 1.0;
    /** What counts as standing while the circle settles, in heights of a letter. Assumed. */
    private static final double COARSE = 0.3;
    private static final double FINE = 0.12;
    /** Lettering is set to be read upright; upside down must explain so much more. Assumed. */
    private static final double UPRIGHT_SHARE = 0.6;
    /** A circle must explain so many times better what a line explains too. Assumed. */
    private static final double BETTER = 0.5;
    private static final double STRAIGHT_ENOUGH = 0.005;
    /** Pairs of letters compared for the slope; more tell no more. */
    private static final int MOST_COMPARED = 60;

    private LineFitter() {
    }

    static Fit at(List<Piece> pieces, Frame frame) {
        return new Fit(frame, LineModel.of(pieces.stream().map(piece -> Upright.of(piece, frame)).toList()));
    }

    /**
     * The best line or circle near a direction.
     *
     * @param angle by which the letters are turned clockwise, about, radians
     */
    static Fit best(List<Piece> pieces, double angle) {
        Fit straight = straight(pieces, at(pieces, Frame.straight(angle)));
        if (pieces.size() > MOST_ON_CIRCLE) {
            return straight;
        }
        Fit sloped = sloped(pieces, angle, false);
        Fit middles = sloped(pieces, angle, true); // corners of turned letters mislead where lower ends are compared
        sloped = middles.size() > sloped.size() ? middles : sloped;
        Fit best = sloped.size() > straight.size() ? sloped : straight;
        if (pieces.size() < LEAST_ON_CIRCLE) {
            return best;
        }
        Optional<Fit> round = circle(pieces, angle);
        if (round.isPresent()) {
            boolean more = round.get().size() > best.size();
            boolean closer = round.get().size() == best.size() && best.model().deviationMm() > STRAIGHT_ENOUGH * best.model().capMm()
                    && round.get().model().deviationMm() < BETTER * best.model().deviationMm();
            best = more || closer ? round.get() : best;
        }
        return best;
    }

    /** The direction of the longer side of the least rectangle around a piece, radians clockwise, from -90 to 90 degrees. */
    static double longSide(Piece piece) {
        Coordinate[] box = MinimumDiameter.getMinimumRectangle(piece.shape()).getCoordinates();
        if (box.length < 5) {
            return 0; // a piece without area
        }
        int from = box[0].distance(box[1]) >= box[1].distance(box[2]) ? 0 : 1;
        double dx = box[from + 1].x - box[from].x;
        double dy = box[from + 1].y - box[from].y;
        return dx < 0 ? Math.atan2(-dy, -dx) : Math.atan2(dy, dx);
    }

    private static Fit sloped(List<Piece> pieces, double angle, boolean middles) {
        List<Upright> letters = pieces.stream().map(piece -> Upright.of(piece, Frame.straight(angle))).toList();
        List<Double> slopes = joinedSlopes(letters);
        int step = Math.max(1, letters.size() / MOST_COMPARED);
        double least = letters.stream().mapToDouble(letter -> letter.box().getWidth()).average().orElse(0);
        for (int i = 0; i < letters.size(); i += step) {
            for (int k = i + step; k < letters.size(); k += step) {
                double run = letters.get(k).box().centre().x - letters.get(i).box().centre().x;
                if (Math.abs(run) > least) {
                    slopes.add((height(letters.get(k), middles) - height(letters.get(i), middles)) / run);
                }
            }
        }
        if (slopes.isEmpty()) {
            return at(pieces, Frame.straight(angle));
        }
        Collections.sort(slopes);
        double turned = angle - Math.atan(slopes.get(slopes.size() / 2));
        return straight(pieces, at(pieces, Frame.straight(turned)));
    }

    private static double height(Upright letter, boolean middle) {
        return middle ? letter.box().centre().y : letter.box().getMinY();
    }

    /** The slopes between the dips of words in one piece, which stand on the base line by themselves. */
    private static List<Double> joinedSlopes(List<Upright> letters) {
        List<Double> slopes = new ArrayList<>();
        for (Upright letter : letters) {
            List<Level> dips = letter.ends().bottoms();
            int step = Math.max(1, dips.size() / MOST_COMPARED);
            for (int i = 0; i < dips.size(); i += step) {
                for (int k = i + step; k < dips.size(); k += step) {
                    double run = dips.get(k).along() - dips.get(i).along();
                    if (Math.abs(run) > letter.box().getHeight()) {
                        slopes.add((dips.get(k).height() - dips.get(i).height()) / run);
                    }
                }
            }
        }
        return slopes;
    }

    /** Turns a straight line onto its flat ends, or where it has none onto the lower ends of its letters. */
    private static Fit straight(List<Piece> pieces, Fit from) {
        Fit fit = from;
        for (int i = 0; i < ROUNDS && fit.size() > 0; i++) {
            double by = turn(fit);
            double angle = fit.frame().angle() - by;
            if (by == 0) {
                break;
            }
            Fit next = at(pieces, Frame.straight(angle));
            if (next.size() < fit.size()) {
                break;
            }
            fit = next;
        }
        return fit;
    }

    /** By how much the letters of a fit rise, radians. */
    private static double turn(Fit fit) {
        List<Double> flat = new ArrayList<>();
        List<Coordinate> ends = new ArrayList<>();
        for (Upright letter : fit.model().members()) {
            for (Level top : letter.ends().tops()) {
                if (top.flat()) {
                    flat.add(top.slope());
                }
            }
            for (Level bottom : letter.ends().bottoms()) {
                if (bottom.flat()) {
                    flat.add(bottom.slope());
                }
                if (Math.abs(bottom.height() - fit.model().base()) < LineModel.NEAR * fit.model().capMm()) {
                    ends.add(new Coordinate(bottom.along(), bottom.height()));
                }
            }
        }
        if (flat.size() > 1) {
            Collections.sort(flat);
            return Math.atan(flat.get(flat.size() / 2));
        }
        double angle = fit.frame().angle();
        double quarter = Math.rint(angle / (Math.PI / 2)) * Math.PI / 2;
        if (Math.abs(angle - quarter) <= SNAP) {
            return angle - quarter;
        }
        return Math.atan(slope(ends));
    }

    private static double slope(List<Coordinate> points) {
        double meanX = points.stream().mapToDouble(point -> point.x).average().orElse(0);
        double meanY = points.stream().mapToDouble(point -> point.y).average().orElse(0);
        double xx = points.stream().mapToDouble(point -> (point.x - meanX) * (point.x - meanX)).sum();
        double xy = points.stream().mapToDouble(point -> (point.x - meanX) * (point.y - meanY)).sum();
        return xx > 0 ? xy / xx : 0;
    }

    /** The circle through the middles of the pieces, then moved onto their lower ends; both ways of facing are tried. */
    static Optional<Fit> circle(List<Piece> pieces, double angle) {
        Optional<double[]> guess = throughPoints(pieces.stream().map(Piece::centre).toList());
        Optional<Fit> best = Optional.empty();
        if (guess.isEmpty()) {
            return best;
        }
        for (boolean outward : new boolean[] {true, false}) {
            Optional<Fit> fit = circle(pieces, settled(pieces, guess.get(), outward, angle), outward, angle);
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
    static Optional<Fit> extended(List<Piece> pieces, Fit fit) {
        Coordinate centre = fit.frame().centre();
        double[] guess = {centre.x, centre.y, fit.frame().radiusMm()};
        boolean outward = fit.frame().isOutward();
        return circle(pieces, settled(pieces, guess, outward, fit.frame().angle()), outward, fit.frame().angle());
    }

    private static Optional<Fit> circle(List<Piece> pieces, double[] guess, boolean outward, double angle) {
        double[] circle = guess;
        Optional<Fit> fit = Optional.empty();
        for (int i = 0; i < ROUNDS; i++) {
            Coordinate centre = new Coordinate(circle[0], circle[1]);
            Fit next = at(pieces, Frame.circle(centre, circle[2], outward, middle(pieces, centre, outward, angle)));
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
        return fit.filter(LineFitter::isArch);
    }

    private static boolean beats(Fit fit, Fit other) {
        boolean upright = isUpright(fit);
        if (upright != isUpright(other)) {
            return upright ? fit.size() >= UPRIGHT_SHARE * other.size() : UPRIGHT_SHARE * fit.size() > other.size();
        }
        if (fit.size() != other.size()) {
            return fit.size() > other.size();
        }
        return Math.cos(fit.frame().angle()) > Math.cos(other.frame().angle());
    }

    private static boolean isUpright(Fit fit) {
        return Math.cos(fit.frame().angle()) > -Math.sin(SNAP);
    }

    /** The turn of a letter in the middle of the line: the mean direction of the pieces. */
    private static double middle(List<Piece> pieces, Coordinate centre, boolean outward, double angle) {
        double sign = outward ? 1 : -1;
        double x = 0;
        double y = 0;
        for (Piece piece : pieces) {
            double distance = Math.max(piece.centre().distance(centre), Double.MIN_NORMAL);
            x += sign * (piece.centre().x - centre.x) / distance;
            y += sign * (piece.centre().y - centre.y) / distance;
        }
        return x == 0 && y == 0 ? angle : Math.atan2(x, -y);
    }

    /** The feet of the letters that stand on the base line, on the sign. */
    private static List<Coordinate> feet(Fit fit) {
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

    private static boolean isArch(Fit fit) {
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
    private static Optional<double[]> throughPoints(List<Coordinate> points) {
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
