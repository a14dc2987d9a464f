// SPDX-License-Identifier: Apache-2.0
package kerfglow.invariants;

import java.util.Arrays;
import java.util.List;

/** How far findings of one sign may differ between two drawings of it, and why. Everything that is not named here must agree. */
record Latitude(List<Allowance> exceptions) {
    /** Measures: a quarter of the chord error, so that a fault of flattening shows. */
    static final double MEASURE_MM = 0.005;
    /** Places: the chord error, to which a curve's outline is known. */
    private static final double PLACE_MM = 0.02;

    /**
     * One rule, or all that begin alike, that may differ.
     *
     * @param rules what their ids begin with
     * @param why the reason
     * @param share by which measures may differ; infinite when they are not compared at all
     * @param placeMm by which places may differ
     */
    record Allowance(String rules, String why, double share, double placeMm) {
        static Allowance leftOut(String rules, String why) {
            return new Allowance(rules, why, Double.POSITIVE_INFINITY, 0);
        }
    }

    /** The same drawing written otherwise. */
    static final Latitude NONE = new Latitude(List.of(
            new Allowance("trim.little-lit", "the axis of a stretch is drawn by one of its walls, and which of them depends on where the outline begins; the width does not", 0, 1.1),
            new Allowance("returns.narrow-channel", "as trim.little-lit; where channels meet, a short branch of the axis is drawn or not", 0, 10),
            new Allowance("returns.coil", "a strip is as long as arcs that are fitted within returns.fit-tolerance from where an outline begins", 1e-4, 0.05),
            new Allowance("returns.short-flange", "as trim.little-lit", 0, 0.05),
            new Allowance("mount.weight", "return strips are as long as arcs that are fitted within returns.fit-tolerance from where an outline begins", 1e-4, 0.1),
            new Allowance("glow.", "light is reckoned on a map of cells that stand upright, coarse ones in the sample, from a number of rays that begin where an outline begins;"
                    + " the darkest cell and the brightest are now here, now there", 0.15, Double.POSITIVE_INFINITY)));

    /** Turned by any angle. */
    static final Latitude TURNED = NONE.and(Allowance.leftOut("artwork.off-page", "the page is not turned with the sign"),
            Allowance.leftOut("artwork.over-page-edge", "the page is not turned with the sign"),
            Allowance.leftOut("vinyl.use", "film is laid out along the roll in upright rectangles"),
            Allowance.leftOut("mount.wind", "the wind is reckoned on the upright rectangle around the sign"),
            Allowance.leftOut("power.", "feeds come from the nearest edge of the upright rectangle around the sign"));

    /** What a reader sees from the other side, or with his head on one side. */
    static final Allowance UPRIGHT = Allowance.leftOut("legibility.", "lettering has a foot and a head, and is read from left to right");

    /** Made larger or smaller. */
    static final Latitude SCALED = NONE.and(new Allowance("router.thin-stroke", "a taper is as long as its axis was followed into the tip, to a thousandth of a millimetre of width at any size", 1e-3, 0.03),
            new Allowance("trim.little-lit", "as router.thin-stroke", 1e-3, 1.1),
            Allowance.leftOut("print.resolution", "pixels an inch become fewer as a picture is made larger"),
            Allowance.leftOut("power.", "a conductor keeps its gauge, and loses more in a larger sign"),
            Allowance.leftOut("glow.", "the rays of a light map are as many for a large can as for a small one, and on the coarse map of the sample the darkest cell is off by a fifth"));

    Latitude and(Allowance... more) {
        return new Latitude(java.util.stream.Stream.concat(Arrays.stream(more), exceptions.stream()).toList());
    }

    private java.util.Optional<Allowance> of(String rule) {
        return exceptions.stream().filter(each -> rule.startsWith(each.rules)).findFirst();
    }

    boolean isLeftOut(String rule) {
        return of(rule).filter(each -> Double.isInfinite(each.share)).isPresent();
    }

    double share(String rule) {
        return of(rule).map(Allowance::share).orElse(1e-6);
    }

    double placeMm(String rule) {
        return of(rule).map(Allowance::placeMm).orElse(PLACE_MM);
    }
}
