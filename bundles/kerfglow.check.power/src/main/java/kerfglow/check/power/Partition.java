// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.power;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Cuts a route into strings: as few as can be, then so that few parts are cut, then so that they are alike in length. */
final class Partition {
    private Partition() {
    }

    /**
     * The cheapest way to cut, by dynamic programming. Cost: modules times the most that a string holds.
     *
     * @param route in the order of the cable; not empty
     * @param most modules in a string, at least 1
     */
    static List<List<Lamp>> of(List<Lamp> route, int most, Runnable pulse) {
        int n = route.size();
        long[] strings = new long[n + 1];
        long[] cuts = new long[n + 1];
        double[] squares = new double[n + 1];
        int[] from = new int[n + 1];
        Arrays.fill(strings, 1, n + 1, Long.MAX_VALUE);
        for (int end = 1; end <= n; end++) {
            pulse.run();
            boolean cutsPart = end < n && route.get(end - 1).part().equals(route.get(end).part());
            for (int start = Math.max(0, end - most); start < end; start++) {
                long count = strings[start] + 1;
                long cut = cuts[start] + (cutsPart ? 1 : 0);
                double square = squares[start] + (double) (end - start) * (end - start);
                if (count < strings[end] || count == strings[end] && (cut < cuts[end] || cut == cuts[end] && square < squares[end])) {
                    strings[end] = count;
                    cuts[end] = cut;
                    squares[end] = square;
                    from[end] = start;
                }
            }
        }
        List<List<Lamp>> pieces = new ArrayList<>();
        for (int end = n; end > 0; end = from[end]) {
            pieces.add(0, route.subList(from[end], end));
        }
        return pieces;
    }
}
