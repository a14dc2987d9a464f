// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.returns;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.LineSegment;

/**
 * The strip of one contour, laid flat from its joint.
 *
 * @param contour the line that it follows
 * @param tooling the settings that hold
 * @param steps from the joint round to the joint
 * @param joint where it begins and ends, mm
 * @param jointOn {@code straight}, {@code curve} or {@code corner}
 */
record Strip(Contour contour, Tooling tooling, List<Step> steps, Coordinate joint, String jointOn) {
    /** A curve of fewer points cannot be split at one of them. */
    private static final int LEAST_SPLIT = 3;

    static Strip of(Contour contour, Tooling tooling, double chordErrorMm) {
        List<Step> steps = Steps.of(contour, tooling, chordErrorMm);
        int best = bestStraight(steps, tooling);
        if (best >= 0) {
            Step straight = steps.get(best);
            return cut(contour, tooling, steps, best, straight.middle(), segmentOf(straight, straight.middle()), "straight");
        }
        for (int i = 0; i < steps.size(); i++) {
            if (steps.get(i).kind() == Step.Kind.CURVE && (best < 0 || extreme(steps.get(i), tooling) > extreme(steps.get(best), tooling))) {
                best = i;
            }
        }
        if (best >= 0) {
            Step curve = steps.get(best);
            int vertex = extremeVertex(curve, tooling);
            boolean closed = curve.points()[0].equals2D(curve.points()[curve.points().length - 1]);
            if (closed && steps.size() == 1) {
                return new Strip(contour, tooling, List.of(turnedTo(curve, vertex)), curve.points()[vertex], "curve");
            }
            boolean splits = curve.points().length >= LEAST_SPLIT && vertex > 0 && vertex < curve.points().length - 1;
            Coordinate at = splits ? curve.points()[vertex] : curve.middle();
            return cut(contour, tooling, steps, best, at, splits ? vertex : segmentOf(curve, at), "curve");
        }
        return new Strip(contour, tooling, steps, steps.isEmpty() ? contour.ring().getCoordinate() : steps.get(0).points()[0], "corner");
    }

    private static Strip cut(Contour contour, Tooling tooling, List<Step> steps, int index, Coordinate at, int segment, String on) {
        Step[] halves = steps.get(index).split(at, segment);
        List<Step> ordered = new ArrayList<>();
        ordered.add(halves[1]);
        ordered.addAll(steps.subList(index + 1, steps.size()));
        ordered.addAll(steps.subList(0, index));
        ordered.add(halves[0]);
        return new Strip(contour, tooling, ordered, at, on);
    }

    /** The straight that hides a joint best: long enough, then lowest (or highest); else the longest that has two flanges. */
    private static int bestStraight(List<Step> steps, Tooling tooling) {
        int best = -1;
        for (int i = 0; i < steps.size(); i++) {
            Step step = steps.get(i);
            if (step.kind() == Step.Kind.STRAIGHT && step.lineMm() >= 2 * tooling.leastFlangeMm() && step.lineMm() > 0
                    && (best < 0 || isBetter(step, steps.get(best), tooling))) {
                best = i;
            }
        }
        return best;
    }

    private static boolean isBetter(Step step, Step other, Tooling tooling) {
        boolean enough = step.lineMm() >= tooling.jointStraightMm();
        if (enough != other.lineMm() >= tooling.jointStraightMm()) {
            return enough;
        }
        return enough ? hidden(step.middle(), tooling) > hidden(other.middle(), tooling) : step.lineMm() > other.lineMm();
    }

    /** Greater is better hidden; y points down. */
    private static double hidden(Coordinate at, Tooling tooling) {
        return tooling.jointLow() ? at.y : -at.y;
    }

    private static double extreme(Step step, Tooling tooling) {
        return hidden(step.points()[extremeVertex(step, tooling)], tooling);
    }

    private static int extremeVertex(Step step, Tooling tooling) {
        int best = 0;
        for (int i = 1; i < step.points().length; i++) {
            best = hidden(step.points()[i], tooling) > hidden(step.points()[best], tooling) ? i : best;
        }
        return best;
    }

    private static int segmentOf(Step step, Coordinate at) {
        int best = 1;
        double nearest = Double.POSITIVE_INFINITY;
        for (int i = 1; i < step.points().length; i++) {
            double off = new LineSegment(step.points()[i - 1], step.points()[i]).distance(at);
            if (off < nearest) {
                nearest = off;
                best = i;
            }
        }
        return best;
    }

    private static Step turnedTo(Step ring, int vertex) {
        int edges = ring.points().length - 1;
        Coordinate[] turned = new Coordinate[edges + 1];
        for (int i = 0; i <= edges; i++) {
            turned[i] = ring.points()[(vertex + i) % edges];
        }
        return new Step(ring.kind(), turned, ring.turn(), ring.lineRadiusMm(), ring.residualMm(), ring.lineMm(), ring.stripMm());
    }

    /** Flat length from joint to joint, mm. */
    double lengthMm() {
        return steps.stream().mapToDouble(Step::stripMm).sum();
    }

    /** Everything but straights, in order. */
    List<Bend> bends() {
        List<Bend> bends = new ArrayList<>();
        double at = 0;
        double free = 0; // a fold takes the beginning of what follows it
        for (Step step : steps) {
            double allowance = step.kind() == Step.Kind.FOLD ? tooling.allowanceMm(step.turn())
                    : step.kind() == Step.Kind.CURVE ? step.stripMm() : 0;
            double inside = step.kind() == Step.Kind.CURVE ? tooling.insideRadiusMm(step.lineRadiusMm(), step.convex())
                    : step.kind() == Step.Kind.FOLD ? tooling.foldRadiusMm() : 0;
            if (step.kind() != Step.Kind.STRAIGHT) {
                double start = Math.max(free, at + (step.stripMm() - allowance) / 2);
                bends.add(new Bend(step, start, allowance, inside));
                free = step.kind() == Step.Kind.FOLD ? start + allowance : free;
            }
            at += step.stripMm();
        }
        return bends;
    }

    /**
     * A bend on the flat strip.
     *
     * @param step what is bent
     * @param startMm where it begins, from the joint, mm
     * @param allowanceMm how long it is on the flat strip, mm
     * @param insideRadiusMm its inside radius, mm; 0 where two strips meet
     */
    record Bend(Step step, double startMm, double allowanceMm, double insideRadiusMm) {
    }
}
