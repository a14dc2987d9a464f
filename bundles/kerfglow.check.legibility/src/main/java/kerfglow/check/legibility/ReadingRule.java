// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.legibility;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A rule that says how high letters must be for a reading distance; pure data.
 *
 * <p>The height is that of the step for the base line's height above the floor, plus what it grows by: the distance beyond
 * {@code growsFromMm} divided by {@code ratio}. A plain index is one step that asks nothing at distance nought.
 *
 * @param id as the job sheet names it
 * @param about which height it compares
 * @param steps by height above the floor, lowest first
 * @param stroke to height allowed
 * @param spacing to height allowed
 * @param width to height allowed
 * @param source where it comes from
 */
record ReadingRule(String id, Height about, List<Step> steps, Range stroke, Range spacing, Range width, String source) {
    private static final double RESOLUTION_MM = 0.001;

    /** Which height of a line a rule compares. */
    enum Height { CAP, X, FIELD }

    /** A share of the height that is allowed, ends included. */
    record Range(double least, double most) {
        static final Range ANY = new Range(0, Double.POSITIVE_INFINITY);

        boolean holds(double value) {
            return value >= least && value <= most;
        }
    }

    /**
     * What holds for base lines up to some height above the floor.
     *
     * @param fromFloorMm lowest base line, included in the first step and excluded in others, mm
     * @param toFloorMm highest base line, included, mm
     * @param leastMm height asked for up to {@code growsFromMm}
     * @param growsFromMm distance from which on it grows, mm
     * @param ratio distance for each unit of height, same units
     */
    record Step(double fromFloorMm, double toFloorMm, double leastMm, double growsFromMm, double ratio) {
        double requiredMm(double distanceMm) {
            return leastMm + Math.max(0, distanceMm - growsFromMm) / ratio;
        }

        /** The greatest distance for a height, mm; 0 for letters that are too low at any distance. */
        double reachMm(double heightMm) {
            return heightMm < leastMm ? 0 : growsFromMm + (heightMm - leastMm) * ratio;
        }
    }

    static ReadingRule index(String id, Height about, double ratio, String source) {
        return new ReadingRule(id, about, List.of(new Step(0, Double.POSITIVE_INFINITY, 0, 0, ratio)), Range.ANY, Range.ANY, Range.ANY, source);
    }

    /** True when it must know how high the base line is above the floor. */
    boolean asksFloor() {
        return steps.size() > 1 || steps.get(0).fromFloorMm() > 0 || Double.isFinite(steps.get(0).toFloorMm());
    }

    /** The step for a base line; empty below the lowest, above the highest, and when the height above the floor is asked for and not known. */
    Optional<Step> step(OptionalDouble aboveFloorMm) {
        if (!asksFloor()) {
            return Optional.of(steps.get(0));
        }
        if (aboveFloorMm.isEmpty() || aboveFloorMm.getAsDouble() < steps.get(0).fromFloorMm()) {
            return Optional.empty();
        }
        return steps.stream().filter(step -> aboveFloorMm.getAsDouble() <= step.toFloorMm()).findFirst();
    }

    /** Whether a height holds at a distance: equal is enough. Compared to a micrometre, which is rounding. */
    static boolean isEnough(double heightMm, double requiredMm) {
        return heightMm >= requiredMm - RESOLUTION_MM;
    }
}
