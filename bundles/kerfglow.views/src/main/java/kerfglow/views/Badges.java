// SPDX-License-Identifier: Apache-2.0
package kerfglow.views;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;

/** Finds room for numbered badges near the places that they name, so that none covers another. Pixels. */
final class Badges {
    private static final int DIRECTIONS = 16;
    /** Distances tried from a place, in badge radii. */
    private static final double[] REACHES = {2.4, 3.6, 5, 7, 10, 14, 19};
    /** A badge may touch its neighbour but not cover it. */
    private static final double CLEAR_RADII = 2.15;

    private final Envelope frame;
    private final double radius;
    private final List<Coordinate> places;
    private final List<Coordinate> taken = new ArrayList<>();

    /**
     * A frame to fill.
     *
     * @param frame where badges may stand
     * @param radius of a badge
     * @param places every place that is named; badges keep off them too
     */
    Badges(Envelope frame, double radius, List<Coordinate> places) {
        this.frame = new Envelope(frame);
        this.frame.expandBy(-radius);
        this.radius = radius;
        this.places = places;
    }

    /** Where the badge of this place stands. */
    Coordinate put(Coordinate place) {
        Coordinate best = null;
        double bestCost = Double.POSITIVE_INFINITY;
        for (double reach : REACHES) {
            for (int i = 0; i < DIRECTIONS; i++) {
                double angle = -Math.PI / 4 + i * 2 * Math.PI / DIRECTIONS; // up and to the right first
                Coordinate spot = new Coordinate(place.x + reach * radius * Math.cos(angle), place.y + reach * radius * Math.sin(angle));
                double cost = cost(spot, reach);
                if (cost < bestCost) {
                    bestCost = cost;
                    best = spot;
                }
            }
            if (bestCost < CLEAR_RADII + REACHES[REACHES.length - 1]) {
                break; // clear of all badges; farther away is no better
            }
        }
        taken.add(best);
        return best;
    }

    private double cost(Coordinate spot, double reach) {
        double cost = reach;
        if (!frame.contains(spot)) {
            cost += 1000 + frame.distance(new Envelope(spot));
        }
        for (Coordinate other : taken) {
            cost += other.distance(spot) < CLEAR_RADII * radius ? 100 : 0;
        }
        for (Coordinate other : places) {
            cost += other.distance(spot) < radius * 1.2 ? 5 : 0;
        }
        return cost;
    }
}
