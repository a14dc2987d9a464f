// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.legibility;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.locationtech.jts.algorithm.MinimumDiameter;
import org.locationtech.jts.geom.Coordinate;

/** Finds the straight line that pieces stand on, or takes the circle where that explains more. */
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
    /** More pieces that hang together are a picture or a straight line of small print; slopes and circles are not tried on them. Assumed. */
    private static final int MOST_ON_CIRCLE = 250;
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
        List<Upright> letters = pieces.stream().map(piece -> Upright.of(piece, Frame.straight(angle))).toList();
        Fit sloped = sloped(pieces, letters, angle, false);
        Fit middles = sloped(pieces, letters, angle, true); // corners of turned letters mislead where lower ends are compared
        sloped = middles.size() > sloped.size() ? middles : sloped;
        Fit best = sloped.size() > straight.size() ? sloped : straight;
        if (pieces.size() < CircleFitter.LEAST_ON_CIRCLE) {
            return best;
        }
        Optional<Fit> round = CircleFitter.through(pieces, angle);
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

    private static Fit sloped(List<Piece> pieces, List<Upright> letters, double angle, boolean middles) {
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
}
