// SPDX-License-Identifier: Apache-2.0
package kerfglow.light.layout;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.IntPredicate;
import org.locationtech.jts.geom.Coordinate;

/**
 * A number of modules each of which has about as much of the lit face to itself: even rows give junctions and narrow serifs more light than
 * wide strokes, which shows as spots. Each moves to the middle of the cells that lie nearest to it, as long as that changes anything (Lloyd).
 */
final class Shares {
    private static final int MOST_ROUNDS = 30;

    private final List<Coordinate> cells;
    private final List<Site> sites;

    /**
     * @param cells of the lit face, all of one size
     * @param sites where modules may lie
     */
    Shares(List<Coordinate> cells, List<Site> sites) {
        this.cells = cells;
        this.sites = sites;
    }

    /** So many sites, or fewer where there are not so many. */
    List<Integer> of(int count) {
        int[] chosen = farthest(Math.min(count, sites.size()));
        for (int round = 0; round < MOST_ROUNDS; round++) {
            int[] moved = moved(chosen);
            if (Arrays.equals(moved, chosen)) {
                break;
            }
            chosen = moved;
        }
        return new ArrayList<>(Arrays.stream(chosen).boxed().toList());
    }

    /** Beginning in the middle, each time the site that is farthest from those before. */
    private int[] farthest(int count) {
        double x = cells.stream().mapToDouble(each -> each.x).average().orElse(0);
        double y = cells.stream().mapToDouble(each -> each.y).average().orElse(0);
        double[] away = new double[sites.size()];
        Arrays.fill(away, Double.POSITIVE_INFINITY);
        int[] chosen = new int[count];
        for (int n = 0; n < count; n++) {
            int next = n == 0 ? nearest(x, y, site -> true) : 0;
            for (int i = 0; i < away.length && n > 0; i++) {
                next = away[i] > away[next] ? i : next;
            }
            chosen[n] = next;
            for (int i = 0; i < away.length; i++) {
                away[i] = Math.min(away[i], sites.get(i).distanceTo(sites.get(next)));
            }
        }
        return chosen;
    }

    private int[] moved(int[] chosen) {
        double[] x = new double[chosen.length];
        double[] y = new double[chosen.length];
        int[] own = new int[chosen.length];
        for (Coordinate cell : cells) {
            int owner = 0;
            double least = Double.POSITIVE_INFINITY;
            for (int n = 0; n < chosen.length; n++) {
                double distance = away(sites.get(chosen[n]), cell.x, cell.y);
                if (distance < least) {
                    least = distance;
                    owner = n;
                }
            }
            x[owner] += cell.x;
            y[owner] += cell.y;
            own[owner]++;
        }
        int[] moved = chosen.clone();
        for (int n = 0; n < chosen.length; n++) {
            if (own[n] > 0) {
                int self = n;
                moved[n] = nearest(x[n] / own[n], y[n] / own[n], site -> site == moved[self] || Arrays.stream(moved).noneMatch(other -> other == site));
            }
        }
        return moved;
    }

    private int nearest(double x, double y, IntPredicate free) {
        int best = -1;
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i < sites.size(); i++) {
            double distance = away(sites.get(i), x, y);
            if (distance < least && free.test(i)) {
                least = distance;
                best = i;
            }
        }
        return best;
    }

    private static double away(Site site, double x, double y) {
        return (site.x() - x) * (site.x() - x) + (site.y() - y) * (site.y() - y);
    }
}
