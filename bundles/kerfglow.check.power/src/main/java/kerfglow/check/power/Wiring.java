// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.power;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.function.Function;
import org.locationtech.jts.geom.Coordinate;

/**
 * How strings are wired: where feeds come from, how long cable is for a way, which conductors there are.
 *
 * @param feedFrom the point where the cable of a module's string leaves the sign
 * @param leadInMm cable from there to the supply
 * @param slack cable for each length of way
 * @param passageMm cable more from one part into the next
 * @param conductors those to choose from, thinnest first
 * @param celsius temperature of the copper
 * @param allowedDrop of the supply's voltage
 */
record Wiring(Function<Coordinate, Coordinate> feedFrom, double leadInMm, double slack, double passageMm, List<Conductor> conductors, double celsius,
        double allowedDrop) {
    private static final double MM_PER_M = 1000;
    /** Drops nearer to the limit than this, as a share of the voltage, are on it: rounding. */
    private static final double ROUNDING = 1e-9;

    /** Wires modules in the order given, or the other way round when its end is nearer to the supply, with the thinnest conductor that keeps the drop or else the thickest. */
    LightString string(List<Lamp> lamps, ModuleType type, double supplyVolts, String given) {
        List<Lamp> order = new ArrayList<>(lamps);
        if (feedWay(order.get(order.size() - 1)) < feedWay(order.get(0))) {
            Collections.reverse(order);
        }
        LightString string = null;
        for (Conductor conductor : conductors) {
            string = wired(order, type, supplyVolts, given, conductor);
            if (keepsDrop(string)) {
                return string;
            }
        }
        return string;
    }

    boolean keepsDrop(LightString string) {
        return string.dropShare() <= allowedDrop + ROUNDING;
    }

    private double feedWay(Lamp lamp) {
        return feedFrom.apply(lamp.at()).distance(lamp.at());
    }

    private LightString wired(List<Lamp> order, ModuleType type, double supplyVolts, String given, Conductor conductor) {
        double feedMm = feedWay(order.get(0)) * slack + leadInMm;
        List<Drop.Stretch> stretches = new ArrayList<>();
        stretches.add(new Drop.Stretch(feedMm / MM_PER_M, conductor.ohmPerM(celsius), type.amperes()));
        double ownMm = 0;
        double extendedMm = 0;
        int extended = 0;
        for (int i = 1; i < order.size(); i++) {
            Lamp from = order.get(i - 1);
            Lamp to = order.get(i);
            boolean passes = !from.part().equals(to.part());
            double lengthMm = from.distanceTo(to) * slack + (passes ? passageMm : 0);
            boolean own = type.cablePitchMm() == 0 ? !passes : from.distanceTo(to) <= type.cablePitchMm() && !passes;
            extended += own ? 0 : 1;
            ownMm += own ? lengthMm : 0;
            extendedMm += own ? 0 : lengthMm;
            stretches.add(new Drop.Stretch(lengthMm / MM_PER_M, (own ? type.cable() : conductor).ohmPerM(celsius), type.amperes()));
        }
        return new LightString(order, type, given, supplyVolts, conductor, feedMm, ownMm, extendedMm, extended, Drop.volts(stretches),
                feedFrom.apply(order.get(0).at()));
    }
}
