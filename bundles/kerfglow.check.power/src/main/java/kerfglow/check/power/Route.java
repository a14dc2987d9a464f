// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.power;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;

/**
 * The order in which a cable visits modules: part by part as one reads, and within a part along its strokes.
 *
 * <p>Within a part the way begins nearest to where the cable comes from, goes to the nearest module each time, and is then improved by
 * turning stretches round and by moving single modules until nothing gets shorter. The same modules give the same way. Cost: n² in the modules of a part for each improvement.
 */
final class Route {
    /** Shorter by less than this, mm, is rounding. */
    private static final double GAIN_MM = 1e-6;
    /** Assumed: improvements settle in a few rounds; a bound keeps the worst case short. */
    private static final int MOST_ROUNDS = 40;

    private final Runnable pulse;

    Route(Runnable pulse) {
        this.pulse = pulse;
    }

    /** All lamps in the order of the cable. */
    List<Lamp> of(List<Lamp> lamps) {
        List<Lamp> route = new ArrayList<>();
        for (List<Lamp> part : readingOrder(lamps)) {
            Coordinate from = route.isEmpty() ? corner(part) : route.get(route.size() - 1).at();
            route.addAll(within(part, from));
        }
        return route;
    }

    private static Coordinate corner(List<Lamp> part) {
        Envelope box = box(part);
        return new Coordinate(box.getMinX(), box.getMaxY());
    }

    private static Envelope box(List<Lamp> part) {
        Envelope box = new Envelope();
        part.forEach(lamp -> box.expandToInclude(lamp.at()));
        return box;
    }

    /** Parts in lines from the top, each line from the left. A part is of a line when the middle of its height lies within the height of the line's first part. */
    static List<List<Lamp>> readingOrder(List<Lamp> lamps) {
        Map<String, List<Lamp>> parts = new LinkedHashMap<>();
        lamps.forEach(lamp -> parts.computeIfAbsent(lamp.part(), id -> new ArrayList<>()).add(lamp));
        List<List<Lamp>> left = new ArrayList<>(parts.values());
        left.sort(Comparator.comparingDouble((List<Lamp> part) -> box(part).getMinY()).thenComparingDouble(part -> box(part).getMinX()));
        List<List<Lamp>> order = new ArrayList<>();
        while (!left.isEmpty()) {
            Envelope first = box(left.get(0));
            List<List<Lamp>> line = new ArrayList<>(left.stream().filter(part -> box(part).centre().y <= first.getMaxY()).toList());
            left.removeAll(line);
            line.sort(Comparator.comparingDouble((List<Lamp> part) -> box(part).getMinX()).thenComparingDouble(part -> box(part).getMinY()));
            order.addAll(line);
        }
        return order;
    }

    private List<Lamp> within(List<Lamp> part, Coordinate from) {
        List<Lamp> left = new ArrayList<>(part);
        left.sort(Comparator.comparingDouble((Lamp lamp) -> lamp.at().x).thenComparingDouble(lamp -> lamp.at().y));
        List<Lamp> path = new ArrayList<>();
        Coordinate at = from;
        while (!left.isEmpty()) {
            Coordinate here = at;
            Lamp next = left.stream().min(Comparator.comparingDouble(lamp -> lamp.at().distance(here))).orElseThrow();
            left.remove(next);
            path.add(next);
            at = next.at();
        }
        Lamp[] order = path.toArray(new Lamp[0]);
        for (int round = 0; round < MOST_ROUNDS && (turnStretches(order, from) | moveSingles(order, from)); round++) {
            pulse.run();
        }
        return List.of(order);
    }

    private static double step(Lamp[] order, Coordinate from, int a, int b) {
        if (b >= order.length) {
            return 0; // the way ends where it ends
        }
        return a < 0 ? from.distance(order[b].at()) : order[a].distanceTo(order[b]);
    }

    private boolean turnStretches(Lamp[] order, Coordinate from) {
        boolean better = false;
        for (int i = 0; i < order.length - 1; i++) {
            pulse.run();
            for (int j = i + 1; j < order.length; j++) {
                double now = step(order, from, i - 1, i) + step(order, from, j, j + 1);
                double then = step(order, from, i - 1, j) + (j + 1 < order.length ? order[i].distanceTo(order[j + 1]) : 0);
                if (then < now - GAIN_MM) {
                    for (int a = i, b = j; a < b; a++, b--) {
                        Lamp kept = order[a];
                        order[a] = order[b];
                        order[b] = kept;
                    }
                    better = true;
                }
            }
        }
        return better;
    }

    private boolean moveSingles(Lamp[] order, Coordinate from) {
        boolean better = false;
        for (int i = 0; i < order.length; i++) {
            pulse.run();
            double gain = step(order, from, i - 1, i) + step(order, from, i, i + 1) - step(order, from, i - 1, i + 1);
            int best = -1;
            double least = gain - GAIN_MM;
            for (int j = 0; j <= order.length; j++) { // between j - 1 and j
                if (j == i || j == i + 1) {
                    continue;
                }
                double to = j - 1 < 0 ? from.distance(order[i].at()) : order[j - 1].distanceTo(order[i]);
                double on = j < order.length ? order[i].distanceTo(order[j]) : 0;
                double cost = to + on - step(order, from, j - 1, j);
                if (cost < least) {
                    least = cost;
                    best = j;
                }
            }
            if (best >= 0) {
                Lamp moved = order[i];
                int target = best > i ? best - 1 : best;
                if (target > i) {
                    System.arraycopy(order, i + 1, order, i, target - i);
                } else {
                    System.arraycopy(order, target, order, target + 1, i - target);
                }
                order[target] = moved;
                better = true;
            }
        }
        return better;
    }
}
