// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.fit;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import kerfglow.api.proof.Part;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.prep.PreparedGeometry;
import org.locationtech.jts.geom.prep.PreparedGeometryFactory;
import org.locationtech.jts.index.strtree.STRtree;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;

/**
 * Finds which inner part belongs to which outer one, by where they lie and not by their order.
 *
 * <p>An inner part belongs to the outer part that it shares most area with, when that is at least half of either. An outer part
 * that no inner one chose joins the inner part that lies under most of it, so that one back can serve several faces. Of inner
 * parts that lie on each other over half of the smaller, one is the partner and the others are left over.
 */
final class Pairing {
    /** Less than half in common, and neither is the other's. */
    private static final double LEAST_SHARE = 0.5;

    private final List<Pair> pairs = new ArrayList<>();
    private final List<Part> lonelyOuters = new ArrayList<>();
    private final List<Part> lonelyInners = new ArrayList<>();
    private final Map<Part, PreparedGeometry> prepared = new HashMap<>();

    /**
     * @param pulse called for every part; may throw to stop the work
     */
    Pairing(List<Part> outers, List<Part> inners, Runnable pulse) {
        STRtree outerIndex = index(outers);
        Map<Part, Part> chosen = new LinkedHashMap<>();
        for (Part inner : inners) {
            pulse.run();
            best(inner, hits(outerIndex, inner), true).ifPresent(outer -> chosen.put(inner, outer));
        }
        Set<Part> doubles = doubles(chosen);
        Groups groups = new Groups();
        chosen.forEach((inner, outer) -> {
            if (!doubles.contains(inner)) {
                groups.join(outer, inner);
            }
        });
        STRtree innerIndex = index(inners);
        for (Part outer : outers) {
            pulse.run();
            if (!groups.knows(outer)) {
                best(outer, hits(innerIndex, outer), false).filter(inner -> !doubles.contains(inner))
                        .ifPresent(inner -> groups.join(outer, inner));
            }
        }
        outers.stream().filter(outer -> !groups.knows(outer)).forEach(lonelyOuters::add);
        inners.stream().filter(inner -> !groups.knows(inner)).forEach(lonelyInners::add);
        groups.collect(outers, inners, pairs);
    }

    List<Pair> pairs() {
        return pairs;
    }

    List<Part> lonelyOuters() {
        return lonelyOuters;
    }

    List<Part> lonelyInners() {
        return lonelyInners;
    }

    private static STRtree index(List<Part> parts) {
        STRtree index = new STRtree();
        parts.forEach(part -> index.insert(part.shape().getEnvelopeInternal(), part));
        index.build();
        return index;
    }

    private static List<Part> hits(STRtree index, Part part) {
        List<Part> hits = new ArrayList<>();
        index.query(part.shape().getEnvelopeInternal(), hit -> hits.add((Part) hit));
        hits.sort(Comparator.comparing(Part::id)); // the order of an index is its own
        return hits;
    }

    private Optional<Part> best(Part part, List<Part> candidates, boolean ofEither) {
        List<Part> touching = candidates.stream().filter(candidate -> prepared(candidate).intersects(part.shape())).toList();
        if (touching.size() == 1 && prepared(touching.get(0)).covers(part.shape())) {
            return Optional.of(touching.get(0));
        }
        Part best = null;
        double most = 0;
        for (Part candidate : touching) {
            double common = common(part.shape(), candidate.shape());
            double least = LEAST_SHARE * (ofEither ? Math.min(part.shape().getArea(), candidate.shape().getArea()) : part.shape().getArea());
            if (common >= least && common > most) {
                most = common;
                best = candidate;
            }
        }
        return Optional.ofNullable(best);
    }

    private PreparedGeometry prepared(Part part) {
        return prepared.computeIfAbsent(part, given -> PreparedGeometryFactory.prepare(given.shape()));
    }

    private static double common(Geometry a, Geometry b) {
        return OverlayNGRobust.overlay(a, b, OverlayNG.INTERSECTION).getArea();
    }

    /** Inner parts that lie on another one of the same outer part; the one nearer in size to the outer part stays. */
    private Set<Part> doubles(Map<Part, Part> chosen) {
        Map<String, List<Part>> byOuter = new TreeMap<>();
        chosen.forEach((inner, outer) -> byOuter.computeIfAbsent(outer.id(), id -> new ArrayList<>()).add(inner));
        Set<Part> doubles = new LinkedHashSet<>();
        for (List<Part> inners : byOuter.values()) {
            List<Part> kept = new ArrayList<>();
            inners.sort(Comparator.comparingDouble((Part part) -> part.shape().getArea()).reversed().thenComparing(Part::id));
            for (Part inner : inners) {
                boolean lies = kept.stream().anyMatch(other -> prepared(other).intersects(inner.shape())
                        && common(other.shape(), inner.shape()) >= LEAST_SHARE * inner.shape().getArea());
                if (lies) {
                    doubles.add(inner);
                } else {
                    kept.add(inner);
                }
            }
        }
        return doubles;
    }

    /** Parts that belong together, however many. */
    private static final class Groups {
        private final Map<Part, Part> above = new HashMap<>();

        boolean knows(Part part) {
            return above.containsKey(part);
        }

        void join(Part a, Part b) {
            Part to = root(b);
            above.put(root(a), to);
            above.put(to, to);
        }

        private Part root(Part part) {
            Part root = part;
            while (above.getOrDefault(root, root) != root) {
                root = above.get(root);
            }
            return root;
        }

        void collect(List<Part> outers, List<Part> inners, List<Pair> pairs) {
            Map<Part, List<Part>> outerOf = new LinkedHashMap<>();
            outers.stream().filter(this::knows).forEach(part -> outerOf.computeIfAbsent(root(part), root -> new ArrayList<>()).add(part));
            Map<Part, List<Part>> innerOf = new HashMap<>();
            inners.stream().filter(this::knows).forEach(part -> innerOf.computeIfAbsent(root(part), root -> new ArrayList<>()).add(part));
            outerOf.forEach((root, members) -> pairs.add(new Pair(members, innerOf.get(root))));
        }
    }
}
