// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.artwork;

import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.locationtech.jts.index.chain.MonotoneChain;
import org.locationtech.jts.index.chain.MonotoneChainBuilder;
import org.locationtech.jts.index.chain.MonotoneChainOverlapAction;
import org.locationtech.jts.index.hprtree.HPRtree;

/**
 * Finds the outlines of one run (what is cut together) that come near each other. Monotone chains under a tree: about n log n
 * for drawings, and as many more steps as there are near segments.
 */
final class NearPairs {
    /** A checkpoint costs more than a chain; this many chains take about a millisecond. */
    private static final int CHAINS_PER_CHECKPOINT = 256;

    private final double withinMm;
    private final double greatestSine;
    private final Map<Long, NearPair> pairs = new TreeMap<>();
    private final Map<Contour, double[]> stations = new IdentityHashMap<>();

    private NearPairs(double withinMm, double greatestAngleDegrees) {
        this.withinMm = withinMm;
        this.greatestSine = Math.sin(Math.toRadians(greatestAngleDegrees));
    }

    /**
     * The near pairs, in the order of their outlines.
     *
     * @param contours those to look at
     * @param withinMm how far apart segments may lie
     * @param angleDegrees how far from parallel segments side by side may be
     * @param from the fraction of the check's work that was done before; this takes it to {@code to}
     */
    static List<NearPair> find(Artwork artwork, List<Contour> contours, double withinMm, double angleDegrees, double from, double to) {
        NearPairs near = new NearPairs(withinMm, angleDegrees);
        Map<String, List<Contour>> runs = new LinkedHashMap<>();
        contours.forEach(contour -> runs.computeIfAbsent(contour.run(), run -> new ArrayList<>()).add(contour));
        int done = 0;
        for (List<Contour> run : runs.values()) {
            double start = from + (to - from) * done / contours.size();
            done += run.size();
            double end = from + (to - from) * done / contours.size();
            near.addRun(artwork, run, start, end);
        }
        return List.copyOf(near.pairs.values());
    }

    private void addRun(Artwork artwork, List<Contour> run, double from, double to) {
        List<MonotoneChain> chains = new ArrayList<>();
        HPRtree tree = new HPRtree();
        for (Contour contour : run) {
            stations.put(contour, contour.stations());
            for (Object each : MonotoneChainBuilder.getChains(contour.points(), contour)) {
                MonotoneChain chain = (MonotoneChain) each;
                chain.setId(chains.size());
                chain.setOverlapDistance(withinMm);
                chains.add(chain);
                tree.insert(chain.getEnvelope(withinMm), chain);
            }
        }
        tree.build();
        Segments segments = new Segments();
        for (MonotoneChain chain : chains) {
            if (chain.getId() % CHAINS_PER_CHECKPOINT == 0) {
                artwork.inspection().checkpoint(from + (to - from) * chain.getId() / chains.size());
            }
            tree.query(chain.getEnvelope(withinMm), found -> {
                MonotoneChain other = (MonotoneChain) found;
                if (other.getId() > chain.getId()) { // a chain runs in one quadrant, so it never meets itself
                    chain.computeOverlaps(other, withinMm, segments);
                }
            });
        }
    }

    private final class Segments extends MonotoneChainOverlapAction {
        @Override
        public void overlap(MonotoneChain one, int i, MonotoneChain two, int j) {
            Contour a = (Contour) one.getContext();
            Contour b = (Contour) two.getContext();
            boolean neighbours = a == b && (Math.abs(i - j) == 1 || a.isRing() && Math.abs(i - j) == a.points().length - 2);
            if (neighbours && !foldsBack(a, i, j)) {
                return;
            }
            long key = (long) a.index() << Integer.SIZE | b.index();
            pairs.computeIfAbsent(key, any -> new NearPair(a, stations.get(a), b, stations.get(b), withinMm, greatestSine)).add(i, j);
        }

        /** Neighbours meet at their common node; only a line that runs back over itself is worth a look. */
        private boolean foldsBack(Contour a, int i, int j) {
            var p = a.points();
            double dot = (p[i + 1].x - p[i].x) * (p[j + 1].x - p[j].x) + (p[i + 1].y - p[i].y) * (p[j + 1].y - p[j].y);
            return dot < 0;
        }
    }
}
