// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.returns;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import kerfglow.geometry.BitReach;
import kerfglow.geometry.LocalWidth;
import kerfglow.geometry.Opening;
import kerfglow.geometry.Residue;
import kerfglow.geometry.Stretch;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.CoordinateList;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;

/**
 * What of a strip a bender cannot form.
 *
 * @param strip the strip
 * @param tight curves below the least radius, each from end to end
 * @param flanges what is left between folds that stand too close
 * @param sharp corners that two strips have to meet in
 * @param channels where two runs of the strip stand closer than the arm is wide
 * @param counterMm the largest disc in a counter too small to form, mm
 */
record Faults(Strip strip, List<Tight> tight, List<Flange> flanges, List<Step> sharp, List<Channel> channels, OptionalDouble counterMm) {
    /** As in the router's check: walls that lean more towards each other form a corner. Assumed: between serif tips and corners of capitals. */
    private static final double LEAST_FACING_DEGREES = 150;
    /** Measures closer to their limit than this, mm, hold. */
    private static final double RESOLUTION_MM = 0.001;

    /** A curve: its least inside radius (mm), how far it turns (degrees), its line, and the middle of its tightest arc. */
    record Tight(double insideRadiusMm, double degrees, Geometry line, Coordinate at) {
    }

    /** The distance between two folds along the line, mm. */
    record Flange(double lengthMm, Geometry line) {
    }

    /**
     * Two runs that stand close.
     *
     * @param widthMm the narrowest width between them, mm; 0 where they meet in a tip
     * @param tipMm how far they run side by side out to the tip in which they meet, mm; 0 where they do not meet
     * @param inside true when it is in what the contour goes around
     */
    record Channel(double widthMm, double tipMm, boolean inside, Geometry place, Coordinate at) {
    }

    static Faults of(Strip strip, double chordErrorMm, Runnable pulse) {
        Polygon filled = strip.contour().filled();
        double least = strip.tooling().leastCounterMm();
        OptionalDouble counter = OptionalDouble.empty();
        if (strip.contour().counter() && least > 0
                && Opening.erosion(filled, least / 2 - RESOLUTION_MM - chordErrorMm, chordErrorMm).isEmpty()) {
            counter = OptionalDouble.of(LocalWidth.largestDiscMm(filled));
        }
        return new Faults(strip, tight(strip), flanges(strip), strip.steps().stream().filter(step -> step.kind() == Step.Kind.MEETING).toList(),
                // too small to form at all says it once
                counter.isPresent() ? List.of() : channels(filled, strip.tooling().armMm(), pulse), counter);
    }

    private static List<Tight> tight(Strip strip) {
        List<Step> steps = strip.steps();
        int start = 0;
        while (start < steps.size() && isTight(strip, steps.get(start))) {
            start++;
        }
        List<Tight> found = new ArrayList<>();
        List<Step> run = new ArrayList<>();
        for (int i = 0; i <= steps.size(); i++) {
            Step step = i == steps.size() ? null : steps.get((start + i) % steps.size());
            boolean goesOn = step != null && isTight(strip, step) && (run.isEmpty() || run.get(0).convex() == step.convex());
            if (!goesOn && !run.isEmpty()) {
                double degrees = run.stream().mapToDouble(Step::degrees).sum();
                if (degrees >= strip.tooling().leastTurn()) {
                    found.add(tight(strip, run, degrees));
                }
                run.clear();
            }
            if (step != null && isTight(strip, step)) {
                run.add(step);
            }
        }
        return found;
    }

    private static boolean isTight(Strip strip, Step step) {
        return step.kind() == Step.Kind.CURVE
                && strip.tooling().insideRadiusMm(step.lineRadiusMm(), step.convex()) < strip.tooling().leastRadiusMm() - RESOLUTION_MM;
    }

    private static Tight tight(Strip strip, List<Step> run, double degrees) {
        Step tightest = run.get(0);
        for (Step step : run) {
            tightest = step.lineRadiusMm() < tightest.lineRadiusMm() ? step : tightest;
        }
        return new Tight(strip.tooling().insideRadiusMm(tightest.lineRadiusMm(), tightest.convex()), degrees, line(strip, run), tightest.middle());
    }

    private static List<Flange> flanges(Strip strip) {
        List<Step> steps = strip.steps();
        List<Integer> corners = new ArrayList<>();
        for (int i = 0; i < steps.size(); i++) {
            if (steps.get(i).kind().isCorner()) {
                corners.add(i);
            }
        }
        List<Flange> found = new ArrayList<>();
        for (int c = 0; c < corners.size() && corners.size() > 1; c++) {
            int from = corners.get(c);
            int to = corners.get((c + 1) % corners.size());
            List<Step> between = new ArrayList<>();
            double length = (steps.get(from).lineMm() + steps.get(to).lineMm()) / 2;
            between.add(steps.get(from));
            for (int i = (from + 1) % steps.size(); i != to; i = (i + 1) % steps.size()) {
                length += steps.get(i).lineMm();
                between.add(steps.get(i));
            }
            between.add(steps.get(to));
            if (length < strip.tooling().leastFlangeMm() - RESOLUTION_MM) {
                found.add(new Flange(length, line(strip, between)));
            }
        }
        return found;
    }

    private static Geometry line(Strip strip, List<Step> steps) {
        CoordinateList points = new CoordinateList();
        steps.forEach(step -> points.add(step.points(), false));
        return points.size() < 2 ? strip.contour().ring().getFactory().createPoint(points.get(0))
                : strip.contour().ring().getFactory().createLineString(points.toCoordinateArray());
    }

    private static List<Channel> channels(Polygon filled, double armMm, Runnable pulse) {
        List<Channel> found = new ArrayList<>();
        for (Stretch stretch : LocalWidth.narrowerThan(filled, armMm, LEAST_FACING_DEGREES, pulse)) {
            boolean counts = switch (stretch.kind()) {
                case NECK -> true;
                case TAPER -> stretch.lengthMm() > armMm; // shorter ones are corners
                case STUB -> stretch.lengthMm() > stretch.widthMm();
            };
            if (counts) {
                found.add(new Channel(stretch.widthMm(), stretch.kind() == Stretch.Kind.TAPER ? stretch.lengthMm() : 0, true, stretch.axis(), stretch.at()));
            }
        }
        for (Residue residue : new BitReach(armMm, RESOLUTION_MM, LEAST_FACING_DEGREES, pulse).aroundPart(filled, ring -> true)) {
            // a notch less deep than the arm is wide is a corner: the arm has no business in it
            if (residue.kind() == Residue.Kind.GAP && (!residue.isEntered() || residue.depthMm() > armMm)) {
                found.add(new Channel(residue.widthMm(), 0, false, residue.area(), residue.at()));
            }
        }
        return found;
    }
}
